import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Finding } from '../../src/base/problem.ts'
import { makePattern } from '../../src/pipeline.ts'

const FILE = readFileSync(new URL('../../examples/lamplighter.yaml', import.meta.url), 'utf8')
const BEFORE = FILE.slice(0, FILE.indexOf('fittings:'))

interface Case {
  readonly code: string
  readonly where: Finding['where']
  /** A correction that provokes it. */
  readonly written: readonly string[]
  readonly mend: RegExp
  /** The file up to its fittings; that of the Lamplighter when absent. */
  readonly file?: string
}

function provoked(code: string, where: Finding['where'], mend: RegExp, ...written: readonly string[]): Case {
  return { code, where, mend, written }
}

const CASES: readonly Case[] = [
  provoked('cap-too-short', { join: 'front cap' }, /^- do: rematch cap$/, 'do: lower cap', 'by: 3/4'),
  provoked(
    'cap-too-short',
    { join: 'front cap right' },
    /^- do: rematch cap\n {2}side: right$/,
    'do: lower cap',
    'by: 3/4',
    'side: right',
  ),
  provoked(
    'cap-too-full',
    { join: 'back cap' },
    /^- do: rematch cap$/,
    'do: let out',
    'seam: cap',
    'by: 3/4',
    'from: front notch',
    'to: back notch',
  ),
  provoked(
    'notches-do-not-meet',
    { join: 'front cap' },
    /^- do: rematch cap$/,
    'do: hollow',
    'seam: front cap',
    'by: 1/2',
  ),
  provoked(
    'join-too-long',
    { join: 'side seam' },
    /^- do: let out\n {2}seam: front waist\n {2}at: side seam\n {2}by: \d/,
    'do: let out',
    'seam: back waist',
    'at: side seam',
    'taper to: center back',
    'by: 1/4',
  ),
  provoked(
    'join-too-short',
    { join: 'side seam' },
    /^- do: let out\n {2}seam: back waist/,
    'do: let out',
    'seam: front waist',
    'at: side seam',
    'taper to: center front',
    'by: 3/8',
  ),
  provoked(
    'join-too-short',
    { join: 'side seam left' },
    /side: left$/,
    'do: let out',
    'seam: front waist',
    'at: side seam',
    'taper to: center front',
    'by: 3/8',
    'side: left',
  ),
  provoked(
    'join-too-short',
    { join: 'shoulder' },
    /seam: back armscye\n {2}at: shoulder point/,
    'do: take in',
    'seam: back armscye',
    'at: shoulder point',
    'taper to: back notch',
    'by: 1/4',
  ),
  provoked(
    'join-too-long',
    { join: 'shoulder' },
    /seam: front armscye\n {2}at: shoulder point/,
    'do: take in',
    'seam: front armscye',
    'at: shoulder point',
    'taper to: front notch',
    'by: 1/4',
  ),
  provoked(
    'join-too-long',
    { join: 'underarm seam' },
    /seam: wrist/,
    'do: let out',
    'seam: wrist',
    'at: back underarm seam',
    'taper to: front underarm seam',
    'by: 1/4',
  ),
  provoked(
    'little-ease',
    { field: 'body.upper arm girth' },
    /^- do: widen\n {2}at: upper arm\n {2}by: [\d/ ]+ in$/,
    'do: narrow',
    'at: upper arm',
    'by: 1 1/4',
  ),
  provoked('little-ease', { field: 'body.wrist girth' }, /at: wrist/, 'do: narrow', 'at: wrist', 'by: 1/2'),
  provoked(
    'smaller-than-body',
    { field: 'body.wrist girth' },
    /at: wrist/,
    'do: narrow',
    'at: wrist',
    'by: 1',
    'side: left',
  ),
  provoked('little-ease', { field: 'body.elbow girth' }, /at: elbow/, 'do: narrow', 'at: elbow', 'by: 1'),
  provoked(
    'smaller-than-body',
    { field: 'body.bust girth' },
    /^- do: let out\n {2}seam: side seam\n {2}by: [\d/ ]+ in$/,
    'do: take in',
    'seam: side seam',
    'by: 3/4',
  ),
  provoked(
    'little-ease',
    { field: 'body.waist girth' },
    /seam: side seam\n {2}by: [\d/ ]+ in\n {2}taper to: underarm$/,
    'do: take in',
    'seam: side seam',
    'taper to: underarm',
    'by: 1/8',
  ),
  provoked(
    'little-ease',
    { field: 'body.back width' },
    /^- do: back width/,
    'do: back width',
    'direction: narrower',
    'by: 1/4',
  ),
  provoked(
    'little-ease',
    { field: 'body.front width' },
    /^- do: front width/,
    'do: front width',
    'direction: narrower',
    'by: 1/4',
  ),
  provoked(
    'hand-does-not-pass',
    { piece: 'sleeve' },
    /^- do: widen\n {2}at: wrist/,
    'do: narrow',
    'at: wrist',
    'by: 1/8',
  ),
  {
    // Much ease over the upper arm makes a low cap, and a lower one is flat.
    ...provoked('cap-flat', { piece: 'sleeve' }, /^- do: narrow\n {2}at: upper arm/, 'do: lower cap', 'by: 1/8'),
    file: BEFORE.replace('upper arm: 2', 'upper arm: 5'),
  },
]

const fitting = (label: string, mockUp: number, lines: readonly string[]) =>
  [`  - label: ${label}`, `    mock-up: ${mockUp}`, '    corrections:', ...lines.map((line) => `      ${line}`)].join(
    '\n',
  )

function found(text: string): readonly Finding[] {
  const made = makePattern(text, 'lamplighter.yaml')
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.value.report.findings
}

const isIt =
  ({ code, where }: Case) =>
  (f: Finding) =>
    f.code === code && f.where.join === where.join && f.where.piece === where.piece && f.where.field === where.field

describe('a mend', () => {
  test('is shown for every code that can have one', () => {
    const table = readFileSync(new URL('../../src/checks/README.md', import.meta.url), 'utf8')
    const mended = table
      .split('\n')
      .flatMap((line) => (/^\| `/.test(line) && !line.endsWith('| – |') ? [line.split('`')[1]] : []))
    expect([...new Set(CASES.map(({ code }) => code))].sort()).toEqual(mended.sort())
  })

  test.each(CASES.map((c) => [c.code, c.written.join(', '), c] as const))('of %s after %s', (_code, _how, c) => {
    const first = `${c.file ?? BEFORE}fittings:\n${fitting(
      'first',
      1,
      c.written.map((line, i) => `${i === 0 ? '- ' : '  '}${line}`),
    )}\n`
    const before = found(first)
    const finding = before.find(isIt(c))
    expect(finding, before.map((f) => `${f.code} ${JSON.stringify(f.where)} ${f.mend}`).join('\n')).toBeDefined()
    expect(finding?.mend).toMatch(c.mend)
    // Written into the file as a further fitting, on the next mock-up.
    const after = found(`${first}${fitting('second', 2, (finding?.mend ?? '').split('\n'))}\n`)
    expect(after.filter(isIt(c))).toEqual([])
    const errors = (list: readonly Finding[]) => list.filter((f) => f.severity === 'error').length
    expect(errors(after)).toBeLessThanOrEqual(errors(before))
  })
})
