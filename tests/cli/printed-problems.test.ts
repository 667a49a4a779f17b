import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { columnsOf } from '../../src/cli/columns.ts'
import { excerptOf } from '../../src/cli/excerpt.ts'
import { scyeHere, temporaryFolder } from '../scye.ts'
import { ARGUMENT_CASES, fileOf, MADE_ELSEWHERE, NO_CASE, PROBLEM_CASES } from './problem-cases.ts'

const root = new URL('../../', import.meta.url).pathname

interface Problem {
  readonly code: string
  readonly where: { readonly file: string; readonly line: number; readonly column: number }
  readonly actual: string
}

async function printed(text: string) {
  const file = join(temporaryFolder(), 'lamplighter.yaml')
  writeFileSync(file, text)
  const plain = await scyeHere(['check', file])
  const json = await scyeHere(['check', file, '--json'])
  return { file, plain, problems: (JSON.parse(json.stdout) as { problems: Problem[] }).problems }
}

/** The codes in `src` that problems have; those of findings have a severity beside them. */
function codesInSource(): string[] {
  const files = readdirSync(join(root, 'src'), { recursive: true })
    .map(String)
    .filter((file) => file.endsWith('.ts') && !file.startsWith('checks/'))
  return files.flatMap((file) => {
    const text = readFileSync(join(root, 'src', file), 'utf8')
    const direct = [...text.matchAll(/\bcode: ([^,\n]*'[a-z-]+'[^,\n]*),?\s*(severity)?/g)]
      .filter(([, , severity]) => severity === undefined)
      .flatMap(([, codes]) =>
        [...(codes as string).matchAll(/'([a-z]+(?:-[a-z]+)*)'/g)].map(([, code]) => code as string),
      )
    const said = [...text.matchAll(/\b(?:fault|refused)\((?:[a-z]+, )?'([a-z]+(?:-[a-z]+)+)'/g)].map(
      ([, c]) => c as string,
    )
    return [...direct, ...said]
  })
}

test('every code in the source has a case, is made by another test, or has a reason why not', () => {
  const known = new Set([...PROBLEM_CASES.map(({ code }) => code), ...ARGUMENT_CASES.map(([code]) => code)])
  const codes = new Set(codesInSource())
  expect(codes.size).toBeGreaterThan(140)
  const without = [...codes].filter((code) => !known.has(code) && !(code in MADE_ELSEWHERE) && !(code in NO_CASE))
  expect(without).toEqual([])
  // Nor does a list name what is not there any more.
  const listed = [...known, ...Object.keys(MADE_ELSEWHERE), ...Object.keys(NO_CASE)]
  expect(listed.filter((code) => !codes.has(code))).toEqual([])
  for (const [code, file] of Object.entries(MADE_ELSEWHERE))
    expect(readFileSync(join(root, 'tests', file), 'utf8'), `${file} has no ${code}`).toContain(`'${code}'`)
})

describe('a problem as it is printed', () => {
  test.each(PROBLEM_CASES)('$code', async (one) => {
    const text = fileOf(one)
    const { file, plain, problems } = await printed(text)
    expect({ status: plain.status, stdout: plain.stdout }).toEqual({ status: 2, stdout: '' })
    const problem = problems.find(({ code }) => code === one.code)
    if (!problem) throw new Error(`${one.code} is not among ${problems.map(({ code }) => code)}`)
    const { line, column } = problem.where
    const lines = plain.stderr.split('\n')
    const head = lines.findIndex((said) => said.startsWith(`${file}:${line}:${column}`))
    expect(head, plain.stderr).toBeGreaterThanOrEqual(0)
    const source = text.split('\n')[line - 1] as string
    if (source.trim() !== '') {
      const mark = (lines[head + 2] as string).indexOf('^')
      expect(lines[head + 2]).toMatch(/^ {6}\| *\^$/)
      if (one.mark !== undefined) expect(lines[head + 1]?.slice(mark).startsWith(one.mark), plain.stderr).toBe(true)
      else if (source.length < 60) expect(lines[head + 1]?.slice(mark)).toBe(source.slice(column - 1))
    }
    const body = lines.slice(head, lines.indexOf('', head)).join('\n')
    expect(body).toMatch(/^ {2}found {5}\S.*$(?:\n {12}.*$)*\n {2}expected {2}\S.*$(?:\n {12}.*$)*\n {2}do this {3}\S/m)
    for (const said of lines.filter((l) => !l.includes(file))) expect(columnsOf(said), said).toBeLessThanOrEqual(80)
    expect(plain.stderr).toMatch(new RegExp(`\\n${problems.length} problems?\\n$`))
  })

  test.each(ARGUMENT_CASES)('%s', async (code, ...args) => {
    const folder = temporaryFolder()
    const paths: Record<string, string> = {
      FILE: join(folder, 'a.yaml'),
      OTHER: join(folder, 'b.yaml'),
      SAME: join(folder, 'a.yml'),
      LARGE: join(folder, 'large.yaml'),
      out: join(folder, 'out'),
    }
    for (const name of ['FILE', 'OTHER', 'SAME']) writeFileSync(paths[name] as string, fileOf({ code }))
    if (args.includes('LARGE')) writeFileSync(paths.LARGE as string, '#'.repeat(5_000_001))
    const typed = args.map((arg) => paths[arg] ?? arg)
    const plain = await scyeHere(typed)
    const isPartly = code === 'same-folder'
    expect({ status: plain.status, stdout: plain.stdout === '' }).toEqual({ status: 2, stdout: !isPartly })
    expect(plain.stderr).toMatch(
      /^ {2}found {5}\S.*$(?:\n {12}.*$)*\n {2}expected {2}\S.*$(?:\n {12}.*$)*\n {2}do this {3}\S/m,
    )
    expect(plain.stderr).toMatch(/\n\d+ problems?(?:; nothing was written(?: for these files)?)?\n$/)
    expect(plain.stderr).not.toContain('\u001b')
    const json = await scyeHere([...typed, '--json'])
    expect(json.stderr).toBe('')
    const { problems } = JSON.parse(json.stdout) as { problems: Problem[] }
    expect(problems.map((problem) => problem.code)).toContain(code)
  })

  test('word for word', async () => {
    const text = fileOf({
      code: '',
      draft: '{ clothe: muslin }',
      body: { 'bust girth': '959 3', 'bust point width': '197 ⅞ cm' },
    })
    const { file, plain } = await printed(text)
    expect(plain.stderr.replaceAll(file, 'F')).toBe(WORD_FOR_WORD)
  })
})

const WORD_FOR_WORD = `F:7:15 · body.bust girth
    7 |   bust girth: 959 3
      |               ^
  found     "959 3" is more, or less, than one number
  expected  a length such as 15 1/2 in, 39.4 cm or 394 mm
  do this   write a number such as 15, 15 1/2, 15-1/2, 15.5 or 15,5

F:22:10 · draft.clothe
   22 | draft: { clothe: muslin }
      |          ^
  found     "clothe"
  expected  one of: fit, cloth, opening, ease, bust dart, bust, elbow intake,
            elbow darts, shoulder dart, biceps width, cap height, least cap
            height
  do this   did you mean "cloth"?

2 problems
`

/** One mistake in each section, in the order of the file. */
const TEN = `performer: Lamplighter
units: in
measured: 2026-02-30
body:
  bust girth: 37 3/4 3
  wasit girth: 29 7/8
  back waist length: 16 3/8
  Back-Waist-Length: 16
  upper arm girth: { left: 11 3/4, right: twelve }
  outer arm length: 22 3/4
draft:
  fit: snug
  ease: { uper arm: 2 }
mock-up:
  allowance: { default: -1 }
fittings:
  - label: first fitting
    corrections:
      - do: let out
        seam: cap
        by: 3/8
        tapr to: shoulder notch
  - label: first fitting
`

test('ten mistakes in as many sections are told in one run, in the order of the file, and nothing else', async () => {
  const { plain, problems } = await printed(TEN)
  expect(problems.map(({ code, where }) => `${where.line} ${code}`)).toEqual([
    '3 not-a-date',
    '5 not-a-length',
    '6 unknown-key',
    '8 duplicate-key',
    '9 not-a-length',
    '12 unknown-name',
    '13 unknown-key',
    '15 length-out-of-range',
    '22 unknown-key',
    '23 duplicate-label',
  ])
  for (const near of ['waist girth', 'upper arm', 'taper to']) expect(plain.stderr).toContain(`did you mean "${near}"?`)
  expect(plain.stderr).toContain('10 problems')
})

describe('the mark stands under its letter', () => {
  test.each([
    ['beside tabs', 'a:\t\tlarge', 'large', 'a:  large', 4],
    ['behind wide letters', '漢字: large', 'large', '漢字: large', 6],
    ['behind letters that combine', 'e\u0301te\u0301: large', 'large', 'e\u0301te\u0301: large', 5],
    ['behind a picture', '🎭: large', 'large', '🎭: large', 4],
    ['behind turned text', 'a\u202eb: large', 'large', 'a b: large', 5],
  ])('%s', (_, line, at, shown, indent) => {
    expect(excerptOf(line, line.indexOf(at), 72)).toEqual({ shown, indent })
  })

  test('in a long line, whatever it is made of, at 80 columns', () => {
    for (const filler of ['x', '漢', 'e\u0301', '\u0301', '🎭', '\t']) {
      const line = `${filler.repeat(3000)}large${filler.repeat(3000)}`
      const { shown, indent } = excerptOf(line, line.indexOf('large'), 72)
      expect(columnsOf(shown)).toBeLessThanOrEqual(72)
      const letters = [...shown]
      const here = letters.findIndex((_, k) => columnsOf(letters.slice(0, k + 1).join('')) > indent)
      const under = letters.slice(here).join('')
      expect(under.startsWith('large'), filler).toBe(true)
    }
  })
})
