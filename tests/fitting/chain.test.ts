import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/checks.ts'
import { correctionNamed } from '../../src/fitting/corrections.ts'
import type { CornerMade } from '../../src/fitting/operation.ts'
import type { CorrectionSide } from '../../src/fitting/record.ts'
import type { Join, Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { attempt, recordOf } from './check-correction.ts'
import { crossingsOf, lengthOf, outlineOf, seam } from './measure.ts'
import { SAMPLES } from './samples/samples.ts'

const patterns = BODIES.map(([bust, arm]) => drafted(bust, arm))
const all = Object.entries(SAMPLES)
  .filter(([name]) => correctionNamed(name))
  .flatMap(([name, samples]) => samples.map((sample) => ({ name, sample })))

const RUNS = 3

interface Link {
  readonly choice: number
  /** How much of the legal amount, per cent. */
  readonly share: number
  readonly side: CorrectionSide
}

/** Links fitted one after the other, each on a mock-up of its own; those that are refused are left out. */
function chain(start: Pattern, links: readonly Link[]) {
  let pattern = start
  let made = 0
  const corners: CornerMade[] = []
  for (const { choice, share, side } of links) {
    const { name, sample } = all[choice % all.length] as (typeof all)[number]
    const [least, most] = sample.amounts
    // Half of what is legal at once: forty of them on one pattern are many.
    const amount = Math.round(10 * (least + ((most - least) * share) / 200)) / 10
    const record = recordOf({ do: name, settings: sample.written(amount) }, sample.oneSided === false ? 'both' : side)
    const next = attempt(pattern, [record])
    if (!next.ok) {
      // Refused in words, never thrown.
      for (const { code, actual, expected, hint } of next.problems)
        for (const words of [code, actual, expected, hint]) expect(words, `${name}: ${code}`).toMatch(/\w{3}/)
      continue
    }
    made++
    corners.push(...next.value.corners)
    pattern = next.value.pattern
  }
  return { pattern, made, corners }
}

/** What a join sews, by dense samples of the lines. */
function sewn(pattern: Pattern, parts: Join['a']): number {
  return parts.reduce((sum, part) => {
    const length = lengthOf(seam(pieceOf(pattern, part.piece), part.seam))
    return sum + (part.to ?? length) - (part.from ?? 0)
  }, 0)
}

/** Self-crossings and mismatches found by dense samples are all in the report; returns how many mismatches there were. */
function everythingNamed(pattern: Pattern, corners: readonly CornerMade[]): number {
  let mismatches = 0
  const findings = runChecks({ pattern, measures: [], units: 'mm', corners })
  for (const piece of pattern.pieces) {
    expect(outlineOf(piece).gaps).toBeLessThan(1e-6)
    if (crossingsOf(piece) === 0) continue
    const named = findings.filter((f) => f.where.piece === piece.id && f.code === 'outline-crosses-itself')
    expect(named, `${piece.id} crosses itself`).not.toEqual([])
  }
  for (const join of pattern.joins) {
    const ease = sewn(pattern, join.a) - sewn(pattern, join.b)
    // Dense samples are good to a few hundredths.
    if (ease > join.ease.min - 0.05 && ease < join.ease.max + 0.05) continue
    mismatches++
    expect(
      findings.filter((f) => f.where.join === join.id && f.severity !== 'note'),
      `${join.id} has ${ease} mm of ease, declared ${join.ease.min} to ${join.ease.max}`,
    ).not.toEqual([])
  }
  return mismatches
}

describe('a chain of forty random corrections', () => {
  it('never crosses itself, nor sews unlike lengths, without the report naming it', () => {
    const link = fc.record<Link>({
      choice: fc.nat(997),
      share: fc.integer({ min: 0, max: 100 }),
      side: fc.constantFrom<CorrectionSide>('left', 'right', 'both'),
    })
    let total = 0
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: patterns.length - 1 }),
        fc.array(link, { minLength: 40, maxLength: 40 }),
        (body, links) => {
          const { pattern, made, corners } = chain(patterns[body] as Pattern, links)
          total += made
          everythingNamed(pattern, corners)
        },
      ),
      { numRuns: RUNS, endOnFailure: true },
    )
    // Most of them could be made.
    expect(total).toBeGreaterThan(RUNS * 20)
  })
  it('would be seen to mismatch and to cross', () => {
    // A cap let out three times over and never matched again has more ease than any cloth takes.
    const index = all.findIndex(({ name }) => name === 'let out')
    const often = Array.from({ length: 6 }, (): Link => ({ choice: index, share: 100, side: 'both' }))
    const { pattern, corners } = chain(patterns[1] as Pattern, often)
    expect(everythingNamed(pattern, corners)).toBeGreaterThan(1)
    const sleeve = pieceOf(pattern, 'sleeve')
    const [wrist] = sleeve.seams
    const [c] = wrist?.parts[0] ?? []
    if (!wrist || !c) throw new Error('no wrist')
    const loop = { ...c, p1: { x: c.p3.x + 200, y: c.p3.y + 40 }, p2: { x: c.p0.x - 200, y: c.p0.y + 40 } }
    expect(
      crossingsOf({
        ...sleeve,
        seams: [{ ...wrist, parts: [[loop, ...(wrist.parts[0] ?? []).slice(1)]] }, ...sleeve.seams.slice(1)],
      }),
    ).toBeGreaterThan(0)
  })
})
