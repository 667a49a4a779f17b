import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { withOwnCheck } from '../examples/own-check.ts'
import { coverWrist, withOwnCorrection } from '../examples/own-correction.ts'
import { replayFittings, withoutLast } from '../examples/replay-a-fitting.ts'
import { type Pattern, pieceOf, pointOnSeam, seamLength, seamOf } from '../src/index.ts'

const folder = new URL('../examples/', import.meta.url)

test('every program is under 60 lines', () => {
  const programs = ['', 'slider/'].flatMap((sub) =>
    readdirSync(new URL(sub || '.', folder))
      .filter((name) => /\.ts$|^index\.html$/.test(name))
      .map((name) => `${sub}${name}`),
  )
  expect(programs.length).toBeGreaterThanOrEqual(6)
  for (const name of programs) {
    expect(readFileSync(new URL(name, folder), 'utf8').trimEnd().split('\n').length, name).toBeLessThan(60)
  }
})

test('an own correction is written, replayed and worded like any other', () => {
  const made = withOwnCorrection('3/8')
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const { versions, report } = made.value
  const wrist = (pattern: Pattern) => seamOf(pieceOf(pattern, 'sleeve'), 'wrist')
  const [before, after] = versions.slice(-2).map(({ pattern }) => wrist(pattern))
  if (!before || !after) throw new Error('no wrist')
  // The middle goes down by the amount, square to the line; both ends stay.
  const from = pointOnSeam(before, seamLength(before) / 2)
  const away = Math.min(
    ...Array.from({ length: 4001 }, (_, k) => pointOnSeam(after, (k / 4000) * seamLength(after))).map((p) =>
      Math.hypot(p.x - from.x, p.y - from.y),
    ),
  )
  expect(away).toBeGreaterThan(9.525 - 0.3)
  expect(away).toBeLessThan(9.525 + 0.01)
  for (const share of [0, 1]) {
    const [a, b] = [before, after].map((seam) => pointOnSeam(seam, share * seamLength(seam)))
    expect(Math.hypot((a?.x ?? 0) - (b?.x ?? 9), (a?.y ?? 0) - (b?.y ?? 9))).toBeLessThan(1e-6)
  }
  const untouched = versions.slice(-2).map(({ pattern }) => pieceOf(pattern, 'bodice back'))
  expect(untouched[0]).toBe(untouched[1])
  expect(report.slip.at(-1)?.what).toBe('bring the wrist down by 3/8 in')
  expect(report.slip.at(-1)?.moves.map(({ seam }) => seam)).toEqual(['wrist'])
  expect(report.findings.filter(({ severity }) => severity === 'error')).toEqual([])
})

test('what an own correction cannot do points at its setting in the file', () => {
  const made = withOwnCorrection('2')
  if (made.ok) throw new Error('2 in is too much')
  const file = readFileSync(new URL('lamplighter.yaml', folder), 'utf8').trimEnd()
  const [problem] = made.problems
  expect(made.problems).toHaveLength(1)
  expect(problem?.code).toBe('amount-too-large')
  expect(problem?.where.line).toBe(file.split('\n').length + 4)
  expect(problem?.where.fitting).toBe('at the bench')
  const misspelt = withOwnCorrection('3/8\n        bye: 1')
  expect(misspelt.ok ? [] : misspelt.problems.map(({ code }) => code)).toEqual(['unknown-key'])
  expect(coverWrist.defaults).toEqual([])
})

test('an own check is among the findings until the file says what it asks for', () => {
  const codes = (made: ReturnType<typeof withOwnCheck>) =>
    made.ok ? made.value.report.findings.filter(({ code }) => code === 'little-to-let-out') : []
  const found = codes(withOwnCheck())
  expect(found.map(({ where, severity, actual }) => [where.piece, where.seam, severity, actual])).toEqual([
    ['bodice back', 'side seam', 'warning', '1 in of allowance'],
    ['bodice front', 'side seam', 'warning', '1 in of allowance'],
  ])
  const file = readFileSync(new URL('lamplighter.yaml', folder), 'utf8')
  const wide = file.replace('{ default: 1, neckline: 1/2 }', '{ default: 1, neckline: 1/2, side seam: 1 1/2 }')
  expect(wide).not.toBe(file)
  expect(withOwnCheck(wide).ok).toBe(true)
  expect(codes(withOwnCheck(wide))).toEqual([])
})

test('fittings are replayed one by one, and without the last correction as if it had never been', () => {
  const all = replayFittings()
  expect(all.versions.map(({ label }) => label)).toEqual(['draft', 'first fitting', 'second fitting'])
  expect(all.lines).toContainEqual(
    expect.stringMatching(/^first fitting: bodice front, armscye right moved by up to 3\/8 in/),
  )
  expect(all.lines.join()).not.toContain('up to 0 in')
  const less = replayFittings(withoutLast)
  expect(less.slip).toHaveLength(all.slip.length - 1)
  expect(less.slip).toEqual(all.slip.slice(0, -1))
  expect(less.versions[1]?.pattern).toEqual(all.versions[1]?.pattern)
  expect(less.versions[2]?.pattern).not.toEqual(all.versions[2]?.pattern)
})
