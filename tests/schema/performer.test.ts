import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parse, stringify } from 'yaml'
import { correctionReaders, performerJsonSchema, readPerformer } from '../../src/index.ts'
import { SAMPLES } from '../fitting/samples/samples.ts'

const schema = performerJsonSchema()
const isValid = new Ajv2020({ allowUnionTypes: true, strict: false }).compile(schema)
const example = (name: string) => readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8')
const EXAMPLES = ['lamplighter', 'ferry-pilot', 'test-sleeve']
const lamplighter = example('lamplighter')

const isRead = (text: string) => readPerformer(text, 'a.yaml', correctionReaders).ok

describe('the schema of performer files', () => {
  test.each(EXAMPLES)('takes %s', (name) => {
    expect(isValid(parse(example(name))), JSON.stringify(isValid.errors)).toBe(true)
  })

  test.each([
    ['a key that nobody knows', 'bust girth:', 'bust grith:'],
    ['a section that nobody knows', 'draft:', 'drafts:'],
    ['a measure that is missing', '  bust girth: 37 3/4 ', '  # '],
    ['a measure with parts that has no sides', 'bust girth: 37 3/4', 'bust girth: { left: 18, right: 19 }'],
    ['a list for a length', 'bust girth: 37 3/4', 'bust girth: [37, 3/4]'],
    ['words for a length', 'bust girth: 37 3/4', 'bust girth: large'],
    ['an angle without its unit', 'shoulder slope: 22 deg', 'shoulder slope: 22'],
    ['a fit that is none', 'fit: close', 'fit: tight'],
    ['a unit that is none', 'units: in', 'units: feet'],
    ['a date in another order', 'measured: 2026-10-02', 'measured: 2 October'],
    ['a correction that is none', 'do: let out', 'do: let it out'],
    ['a setting of another correction', 'along cap: 1 1/2', 'taper to: underarm'],
    ['a correction without its amount', 'by: 3/8', '# by'],
    ['an amount below zero', 'by: 3/8', 'by: -0.375'],
    ['a place with a setting that is none', 'side of cap: front', 'half: front'],
    ['a section for a list', '  - label: first fitting', '    label: first fitting'],
    ['a fitting without a label', '- label: first fitting', '- name: first fitting'],
  ])('refuses %s, as the program does', (_name, from, to) => {
    expect(lamplighter).toContain(from)
    const text = lamplighter.replace(from, to)
    expect(isRead(text)).toBe(false)
    expect(isValid(parse(text))).toBe(false)
  })

  test('says how every measure is taken, and what every correction does', () => {
    const text = JSON.stringify(schema)
    expect(text).toContain('Round the upper arm, midway from shoulder point to elbow, arm hanging relaxed.')
    expect(text).toContain('when absent: 1 1/2 in')
    for (const name of Object.keys(SAMPLES)) expect(text).toContain(`{"const":"${name}","description":"`)
  })

  test('never refuses what the program reads, however it is spelled', () => {
    let read = 0
    fc.assert(
      fc.property(fc.array(change, { maxLength: 2 }), fc.nat(), (changes, pick) => {
        const tree = changes.reduce((one, each) => each(one), spelled(written(pick), pick))
        const text = stringify(tree)
        if (!isRead(text)) return
        read++
        if (!isValid(parse(text))) throw new Error(`${JSON.stringify(isValid.errors)}\n${text}`)
      }),
      { numRuns: 150 },
    )
    expect(read).toBeGreaterThan(40)
  })
})

type Tree = null | boolean | number | string | readonly Tree[] | { readonly [key: string]: Tree }

/** A file with one correction of the samples in it, beside everything that a file can have. */
function written(pick: number): Tree {
  const samples = Object.entries(SAMPLES).flatMap(([name, each]) => each.map((sample) => ({ name, sample })))
  const { name, sample } = samples[pick % samples.length] as (typeof samples)[number]
  const settings = sample.written(sample.amounts[0]) as { readonly [key: string]: Tree }
  return {
    ...(parse(lamplighter) as { readonly [key: string]: Tree }),
    'mock ups': { 1: { allowance: 25 }, 2: { allowance: { cap: '1 1/2', default: 20 } } },
    fittings: [
      { label: 1, date: '2026-10-09', 'mock up': 2, provisional: true, corrections: [{ do: name, ...settings }] },
      { label: 'second', corrections: [{ do: name, side: 'Both', voided: 'no', seen: 12, ...settings }] },
    ],
  }
}

const GAPS = [' ', '-', '_', '\u2010', ' _ ']

/** The same with every other key in another spelling. */
function spelled(tree: Tree, pick: number): Tree {
  if (typeof tree !== 'object' || tree === null) return tree
  if (Array.isArray(tree)) return tree.map((one, k) => spelled(one, pick + k))
  const entries = Object.entries(tree).map(([key, value], k) => {
    const turn = (pick + k * 7) % 11
    const gap = GAPS[turn % GAPS.length] as string
    const capital = turn % 3 === 0 ? key.toUpperCase() : turn % 3 === 1 ? key.replace('k', '\u212a') : key
    return [turn % 2 === 0 ? capital.replaceAll(' ', gap) : key, spelled(value, pick + k)] as const
  })
  return Object.fromEntries(entries)
}

const VALUES: readonly Tree[] = [
  null,
  true,
  0,
  12,
  -3,
  1e21,
  '15 1/2',
  '15½″',
  '39,4 cm',
  '15 1/2 in (39.4 cm)',
  '22 deg',
  '22 1/2º',
  '6 %',
  '6 per cent',
  'YES',
  'flat',
  'Center-Back',
  'LET_OUT',
  'cap line',
  '2026-10-09',
  ' ',
  [],
  {},
  ['underarm', 'front notch'],
  { left: '11 3/4', right: 12 },
  { left: null, RIGHT: 12 },
  { landmark: 'underarm' },
  { from: 'underarm', toward: 'front notch', Distance: '1 1/2' },
  { between: ['underarm', 'front notch'], share: '40 %' },
]

/** One change somewhere in the tree: another value, nothing, a key more. */
const change: fc.Arbitrary<(tree: Tree) => Tree> = fc
  .record({ at: fc.array(fc.nat({ max: 40 }), { minLength: 1, maxLength: 6 }), value: fc.constantFrom(...VALUES) })
  .map(
    ({ at, value }) =>
      (tree) =>
        changed(tree, at, value),
  )

function changed(tree: Tree, [index = 0, ...deeper]: readonly number[], value: Tree): Tree {
  if (typeof tree !== 'object' || tree === null) return value
  const entries: readonly (readonly [string, Tree])[] = Array.isArray(tree)
    ? tree.map((one, k) => [`${k}`, one] as const)
    : Object.entries(tree)
  if (entries.length === 0) return value
  if (deeper.length === 0 && index % 4 === 0 && !Array.isArray(tree)) return { ...tree, [`extra ${index}`]: value }
  const [key, one] = entries[index % entries.length] as readonly [string, Tree]
  const next = deeper.length === 0 ? value : changed(one, deeper, value)
  return Array.isArray(tree) ? tree.with(Number(key), next) : { ...tree, [key]: next }
}
