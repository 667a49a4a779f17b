import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { makePattern } from '../../src/index.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { complaints, type RawPattern } from '../independent-reader.ts'
import { judgeFile } from './judge-file.ts'
import { soundFiles } from './sound-files.ts'

/** An example with one line written otherwise. */
function spoilt(example: string, line: RegExp, written: string): string {
  const text = readFileSync(new URL(`../../examples/${example}.yaml`, import.meta.url), 'utf8')
  expect(text).toMatch(line)
  return text.replace(line, written)
}

const WIDE_WRIST = spoilt('ferry-pilot', /wrist girth: .*/, 'wrist girth: 18.85')
const UNLIKE = spoilt('test-sleeve', /allowance: .*/, 'allowance: 0.11')
/** A neckline that turns square to the fold within a few millimetres. */
const STEEP = soundFiles()
  .find((text) => text.includes('do: move elbow darts'))
  ?.replace('shoulder slope: 22 deg', 'shoulder slope: 59.84 deg')
const allowance = (of: string) =>
  spoilt('ferry-pilot', /allowance: \{.*/, `allowance: { default: ${of}, neckline: 1/2 }`)

test.each([
  ['a seam between two elbow darts more hollow than its allowance is wide', WIDE_WRIST],
  ['the leg of an elbow dart passes beyond the short cutting line beside it', allowance('1.56')],
  ['allowances as wide as the sleeve, over both elbow darts at once', allowance('15 1/2')],
  ['a neckline that turns more sharply into the fold than its allowance is wide', STEEP ?? ''],
  ['hardly any allowance on the shoulder, drawn on past a neckline that has some', UNLIKE],
])('%s: the cutting line has the whole allowance', async (_, text) => {
  const { drafted, errors, faults } = await judgeFile(text)
  expect({ drafted, errors, faults }).toEqual({ drafted: true, errors: [], faults: [] })
})

test('a cap lowered to what its cloth takes, where more was asked, is sound', async () => {
  const text = soundFiles().find((one) => one.includes('cap: 5 %') && one.includes('do: lower cap')) ?? ''
  const { drafted, faults } = await judgeFile(text.replace('cap: 5 %', 'cap: 9.15 %'))
  expect({ drafted, faults }).toEqual({ drafted: true, faults: [] })
})

test('the reader still sees a neckline that has less than it says beside a narrow shoulder', () => {
  const made = makePattern(UNLIKE, 'lamplighter.yaml')
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const pattern = patternJson(made.value.pattern, { performer: 'x', version: 'x' }) as unknown as RawPattern
  const pieces = pattern.pieces.map((piece) => ({
    ...piece,
    seams: piece.seams.map((seam) => (seam.id === 'neckline' ? { ...seam, allowance: seam.allowance + 0.1 } : seam)),
  }))
  expect(complaints({ ...pattern, pieces }).join('\n')).toMatch(/^bodice back cut line only 12\.[67]\d* mm outside/m)
})
