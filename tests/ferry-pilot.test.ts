import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { type MadePattern, makePattern, type Pattern, pieceOf, seamOf, slipText, writePattern } from '../src/index.ts'
import { lengthOf } from './fitting/measure.ts'

const file = fileURLToPath(new URL('../examples/ferry-pilot.yaml', import.meta.url))
const text = readFileSync(file, 'utf8')

function made(until?: string): MadePattern {
  const result = makePattern(text, 'ferry-pilot.yaml', until === undefined ? {} : { until })
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}

const pilot = made()

/** Sewn length by dense samples, darts closed. */
const length = (pattern: Pattern, piece: string, seam: string) => lengthOf(seamOf(pieceOf(pattern, piece), seam))

const tip = (pattern: Pattern, piece: string, seam: string) => seamOf(pieceOf(pattern, piece), seam).parts[0]?.[0]?.p0

describe('the ferry pilot, fitted twice', () => {
  test('has no error and no warning in the end', () => {
    expect(pilot.report.findings.filter((finding) => finding.severity !== 'note')).toEqual([])
    expect(pilot.versions.map((version) => version.label)).toEqual(['draft', 'first fitting', 'second fitting'])
  })

  test('has no error after the first fitting either', () => {
    expect(made('first fitting').report.findings.filter((finding) => finding.severity === 'error')).toEqual([])
  })

  test('has a right shoulder 3/8 in lower than the left one', () => {
    const left = tip(pilot.pattern, 'bodice back left', 'armscye')
    const right = tip(pilot.pattern, 'bodice back right', 'shoulder')
    const drafted = tip(pilot.draft.pattern, 'bodice back', 'shoulder')
    if (!left || !right || !drafted) throw new Error('no shoulder')
    expect(Math.hypot(right.x - drafted.x, right.y - drafted.y)).toBeCloseTo(9.525, 2)
    expect(right.y).toBeLessThan(drafted.y - 8)
    // The left back is the mirror image of the drafted right one up to the back armscye, which was let out.
    expect(left.x).toBeCloseTo(-drafted.x, 6)
  })

  test('has a right sleeve 3/4 in wider at the upper arm, its cap drawn again to the same ease', () => {
    const width = (piece: string) => {
      const front = seamOf(pieceOf(pilot.pattern, piece), 'front cap')
      const back = seamOf(pieceOf(pilot.pattern, piece), 'back cap')
      const ends = [front, back].flatMap((s) => [s.parts[0]?.[0]?.p0, s.parts.at(-1)?.at(-1)?.p3])
      const low = ends.flatMap((p) => (p ? [p] : [])).sort((a, b) => a.y - b.y)
      return Math.abs((low[0]?.x ?? 0) - (low[1]?.x ?? 0))
    }
    expect(width('sleeve right') - width('sleeve left')).toBeCloseTo(19.05, 1)
    for (const side of ['left', 'right']) {
      const armscye = length(pilot.pattern, 'bodice front', `armscye ${side}`)
      const cap = length(pilot.pattern, `sleeve ${side}`, 'front cap')
      const target = pilot.pattern.joins.find((join) => join.id === `front cap ${side}`)?.ease.target
      expect(cap - armscye).toBeCloseTo(target ?? Number.NaN, 1)
    }
  })

  test('can lift the arm farther than before', () => {
    const lift = (version: string, side: string) =>
      pilot.report.movement.find((row) => row.version === version && row.side === side)?.neutralLift ?? Number.NaN
    expect(lift('second fitting', 'left')).toBeLessThan(lift('draft', 'both') - 1)
    expect(lift('second fitting', 'right')).toBeLessThan(lift('second fitting', 'left') - 2)
  })

  test('keeps what was voided on the slip, and names no one', () => {
    const slip = slipText(pilot.report.slip, { performer: 'Ferry Pilot', production: 'The Tin Orchard', units: 'in' })
    expect(slip).toContain('The Tin Orchard, Ferry Pilot')
    expect(slip.replace(/\s+/g, ' ')).toContain('voided: pinned over a belt that is not worn')
    expect(slip).toContain('Right side: widen the upper arm by 3/4 in')
    expect(text).toMatch(/^performer: Ferry Pilot\b/m)
  })

  test('writes left and right pieces, named so', async () => {
    const written = await writePattern(pilot, {
      formats: ['svg', 'json'],
      date: '2026-10-28',
      font: () => new Uint8Array(),
    })
    if (!written.ok) throw new Error(written.problems[0]?.actual)
    const svg = String(written.value.files.find(({ name }) => name === 'pattern.svg')?.content)
    for (const words of ['SLEEVE LEFT', 'SLEEVE RIGHT', 'BODICE BACK LEFT', 'voided: first fitting, correction 4'])
      expect(svg).toContain(words)
  })
})
