import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import {
  correctionReaders,
  MEASURE_NAMES,
  MEASURES,
  makePattern,
  type Problem,
  readPerformer,
} from '../../src/index.ts'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const VALUES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  in: {
    'bust girth': '37 3/4',
    'waist girth': '29 7/8',
    'back waist length': '16 3/8',
    'upper arm girth': '{ left: 11 3/4, right: 12 }',
    'outer arm length': '22 3/4',
  },
  cm: {
    'bust girth': '95.9',
    'waist girth': '75,9',
    'back waist length': '41.6',
    'upper arm girth': '29.8',
    'outer arm length': '57.8',
  },
}

/** The file with values where its measures are blank, the remarks left where they are. */
function filledIn(text: string, values: Readonly<Record<string, string>>): string {
  return Object.entries(values).reduce(
    (now, [name, value]) => now.replace(new RegExp(`^( {2}${name}:)`, 'm'), `$1 ${value}`),
    text,
  )
}

const begin = async (file: string, ...more: string[]) => scyeHere(['begin', file, ...more])

describe('scye begin', () => {
  test('as a process: writes the file for its owner only, names what to fill in, and never overwrites', () => {
    const folder = temporaryFolder()
    const first = scye(['begin', 'ferry-pilot.yaml'], { cwd: folder })
    expect({ status: first.status, stderr: first.stderr }).toEqual({ status: 0, stderr: '' })
    expect(first.stdout).toMatch(/^Written: ferry-pilot\.yaml\n.*Ferry Pilot, in inches/)
    for (const line of first.stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
    const path = join(folder, 'ferry-pilot.yaml')
    expect(statSync(path).mode & 0o777).toBe(0o600)
    writeFileSync(path, 'mine')
    const second = scye(['begin', 'ferry-pilot.yaml'], { cwd: folder })
    expect(second).toMatchObject({ status: 2, stdout: '' })
    expect(second.stderr).toContain('ferry-pilot.yaml')
    expect(readFileSync(path, 'utf8')).toBe('mine')
    expect(readdirSync(folder)).toEqual(['ferry-pilot.yaml'])
  })

  test.each(['in', 'cm', 'mm'])('in %s it has every measure once, with how to take it', async (units) => {
    const { stdout } = await begin('-', '--units', units)
    const words = stdout.replace(/\n *# /g, ' ')
    for (const name of MEASURE_NAMES) {
      expect(stdout.match(new RegExp(`^ {2}${name}:`, 'gm')), name).toHaveLength(1)
      expect(words).toContain(MEASURES[name].how)
      const line = new RegExp(`^ {2}${name}: +# (.*)$`, 'm').exec(stdout)?.[1] ?? ''
      expect(line.startsWith('REQUIRED'), name).toBe(MEASURES[name].required)
      expect(line.includes('left, right'), name).toBe(MEASURES[name].sided)
    }
    expect(stdout).toMatch(/^# yaml-language-server: \$schema=file:.*\/schema\/performer\.schema\.json$/m)
    expect(stdout).toMatch(/CONFIDENTIAL/)
    expect(stdout).toMatch(/common practice/)
    expect(stdout).toMatch(/instead of a\s+# legal name/)
    for (const line of stdout.split('\n').slice(1)) expect(line.length, line).toBeLessThanOrEqual(80)
  })

  test('as written it lacks its required measures and nothing else', async () => {
    const { stdout } = await begin('-')
    const read = readPerformer(stdout, 'begun.yaml', correctionReaders)
    const problems: readonly Problem[] = read.ok ? [] : read.problems
    expect(problems.map(({ code, actual }) => `${code}: ${actual}`)).toEqual(
      MEASURE_NAMES.filter((name) => MEASURES[name].required).map((name) => `missing: no ${name}`),
    )
    for (const { hint, where } of problems) {
      expect(hint).toMatch(/^measure it: /)
      expect(stdout.split('\n')[(where.line ?? 0) - 1]).toMatch(/REQUIRED/)
    }
  })

  test.each(['in', 'cm'])(
    'with its required measures written in, in %s, it drafts as if nothing else were said',
    async (units) => {
      const { stdout } = await begin('-', '--units', units)
      const values = VALUES[units] ?? {}
      const made = makePattern(filledIn(stdout, values), 'begun.yaml')
      if (!made.ok) throw new Error(JSON.stringify(made.problems))
      const body = Object.entries(values).map(([name, value]) => `  ${name}: ${value}\n`)
      const bare = makePattern(`performer: A\nunits: ${units}\nbody:\n${body.join('')}`, 'bare.yaml')
      if (!bare.ok) throw new Error(JSON.stringify(bare.problems))
      expect(made.value.pattern).toEqual(bare.value.pattern)
      expect(made.value.performer.allowances).toEqual(bare.value.performer.allowances)
    },
  )

  test('every line behind # in draft, mock-ups and fittings can be taken out of it', async () => {
    for (const units of ['in', 'cm', 'mm']) {
      const { stdout } = await begin('-', '--units', units)
      const at = stdout.indexOf('\ndraft:')
      // A key and a value behind the mark, not a sentence.
      const opened = stdout
        .slice(at)
        .replace(/^( *)# (?= *(?:- )?[a-z0-9][a-z0-9 -]*:(?: |$))/gm, '$1')
        .replace(/^ {2}bust: flat.*\n/m, '')
      const values = units === 'mm' ? { ...VALUES.cm } : VALUES[units]
      const text = filledIn(
        stdout.slice(0, at),
        Object.fromEntries(
          Object.entries(values ?? {}).map(([name, value]) => [name, units === 'mm' ? `${value} cm` : value]),
        ),
      )
      const read = readPerformer(text + opened, 'begun.yaml', correctionReaders)
      if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1))
      expect(Object.keys(read.value.choices).length).toBe(12)
      expect(Object.keys(read.value.choices.ease).length).toBe(10)
      expect(read.value.allowances.byMockUp[2]).toBeDefined()
      expect(read.value.fittings).toMatchObject([{ label: 'first fitting', corrections: [{ do: 'let out' }] }])
    }
  })

  test('--from takes choices, production and allowances, said for the other unit, and nothing of the body', async () => {
    const folder = temporaryFolder()
    const other = join(folder, 'lamplighter.yaml')
    writeFileSync(
      other,
      readFileSync(lamplighter, 'utf8')
        .replace('ease: { upper arm: 2 } ', 'elbow darts: one\n  ease: { upper arm: 2 1/4, cap: 7 % } ')
        .replace('production: The Tin Orchard', 'production: "The Tin: Orchard #2"')
        .replace('fittings:', 'mock-ups: { 2: { allowance: { default: 3/4 } } }\nfittings:'),
    )
    const path = join(folder, 'cover.yaml')
    const { status, stdout } = await begin(path, '--from', other, '--units', 'cm')
    expect(status).toBe(0)
    expect(stdout).toMatch(/Taken from .*lamplighter\.yaml: production, /)
    expect(stdout.replace(/\s+/g, ' ')).toContain(
      'Not taken, they belong to that body: the date it was measured, its measures, its fittings.',
    )
    const text = readFileSync(path, 'utf8')
    for (const number of ['37 3/4', '22 3/4', '14 5/8']) expect(text.split('\nbody:')[1]).not.toContain(number)
    const [mine, its] = [filledIn(text, VALUES.cm ?? {}), readFileSync(other, 'utf8')].map((content) =>
      readPerformer(content, 'x.yaml', correctionReaders),
    )
    if (!mine?.ok || !its?.ok) throw new Error(JSON.stringify(mine))
    expect(mine.value.choices).toEqual(its.value.choices)
    expect(mine.value.allowances).toEqual(its.value.allowances)
    expect(mine.value.production).toBe('The Tin: Orchard #2')
    expect(mine.value.fittings).toEqual([])
    expect(Object.keys(mine.value.body).sort()).toEqual(Object.keys(VALUES.cm ?? {}).sort())
  })

  test('--json prints begin/1; with - the text is in it', async () => {
    const folder = temporaryFolder()
    const path = join(folder, 'cover.yaml')
    const document = JSON.parse((await begin(path, '--from', lamplighter, '--json')).stdout)
    expect(document).toMatchObject({ scyewright: 'begin/1', file: path, performer: 'Cover', units: 'in' })
    expect(document.required).toHaveLength(5)
    expect(document.from).toEqual({
      file: lamplighter,
      took: ['production', 'draft.fit', 'draft.cloth', 'draft.opening', 'draft.ease', 'mock-up.allowance'],
      left: ['measured', 'body', 'fittings'],
    })
    const printed = JSON.parse((await begin('-', '--json')).stdout)
    expect(printed.text).toBe((await begin('-')).stdout)
  })

  test.each([
    ['a unit that is none', ['--units', 'ft'], 'unknown-unit'],
    ['two files', ['other.yaml'], 'one-file'],
    ['choices from a file that is not there', ['--from', 'not-there.yaml'], 'no-such-file'],
    ['choices that cannot be read', ['--from', 'package.json'], 'missing'],
  ])('%s is refused and nothing is written', async (_name, args, code) => {
    const folder = temporaryFolder()
    const { status, stdout } = await begin(join(folder, 'a.yaml'), ...args, '--json')
    expect(status).toBe(2)
    expect(JSON.parse(stdout).problems.map((problem: Problem) => problem.code)).toContain(code)
    expect(readdirSync(folder)).toEqual([])
  })

  test('a folder that is not there is a problem with its place', async () => {
    const { status, stderr } = await begin(join(temporaryFolder(), 'none', 'a.yaml'))
    expect(status).toBe(2)
    expect(stderr).toContain('make the folder first')
  })
})
