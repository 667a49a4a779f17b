import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import { CORRECTIONS } from '../../src/fitting/corrections.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { BODIES, drafted } from './bodies.ts'
import { checkCorrection } from './check-correction.ts'
import { SAMPLES } from './samples/samples.ts'

const patterns = BODIES.map(([bust, arm]) => drafted(bust, arm))

const all = CORRECTIONS.flatMap(({ name }) =>
  (SAMPLES[name] ?? []).map((sample) => [name, sample.name, sample] as const),
)

describe('the table of corrections', () => {
  it('has a sample of every one, and no sample of another', () => {
    expect(Object.keys(SAMPLES).sort()).toEqual(CORRECTIONS.map((correction) => correction.name).sort())
    for (const [name, samples] of Object.entries(SAMPLES)) expect(samples.length, name).toBeGreaterThan(0)
  })

  it('names each once, says what it does and what it answers, and where its defaults come from', () => {
    const names = CORRECTIONS.map((correction) => correction.name)
    expect(new Set(names).size).toBe(names.length)
    for (const { name, does, answers, defaults, settings } of CORRECTIONS) {
      expect(does.length, name).toBeGreaterThan(20)
      expect(answers.length, name).toBeGreaterThan(0)
      const keys = Object.keys(settings(makeReaders('mm')).shape)
      for (const row of defaults) {
        expect(row.source, name).not.toBe('')
        for (const setting of row.setting.split(', ')) expect(keys, `${name}: ${setting}`).toContain(setting)
      }
      // A setting that nobody knows is refused, not lost.
      expect(settings(makeReaders('mm')).safeParse({ 'no such setting': '1' }).success).toBe(false)
    }
  })
})

describe('the gallery', () => {
  it('shows every correction there is: npm run gallery draws it again', () => {
    const page = readFileSync(new URL('../../examples/corrections.html', import.meta.url), 'utf8')
    const headings = [...page.matchAll(/<h2>(.*?)<\/h2>/g)].map((match) => match[1])
    expect(headings).toEqual(CORRECTIONS.map((correction) => correction.name))
    expect(page.match(/<svg /g)?.length).toBe(all.length)
  })
})

describe.each(all)('%s: %s', (name, _, sample) => {
  it('holds what every correction holds, on any body and any legal amount', () => {
    const [least, most] = sample.amounts
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: patterns.length - 1 }),
        fc.integer({ min: Math.round(least * 10), max: Math.round(most * 10) }),
        (body, tenths) => checkCorrection(name, sample, patterns[body] as Pattern, tenths / 10),
      ),
      { numRuns: 3 },
    )
    // The largest legal amount on the smallest body and the least on the largest: where limits would be felt.
    checkCorrection(name, sample, patterns[0] as Pattern, most)
    checkCorrection(name, sample, patterns[patterns.length - 1] as Pattern, least)
  })
})
