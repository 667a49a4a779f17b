import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { dartJunctions } from '../src/pattern/junctions.ts'
import { type MadePattern, makePattern } from '../src/pipeline.ts'
import { scye } from './scye.ts'

const FILE = readFileSync(new URL('../examples/lamplighter.yaml', import.meta.url), 'utf8')
const BEFORE = FILE.slice(0, FILE.indexOf('fittings:'))
const FITTED = `${BEFORE}fittings:
  - label: first fitting
    corrections:
      - do: dart intake
        dart: waist dart
        by: 5/16
        direction: more
`

function made(text: string, raw: boolean): MadePattern {
  const result = makePattern(text, 'lamplighter.yaml', { raw })
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** The largest corner that a waist turns across a folded dart, degrees. */
function corner({ pattern }: MadePattern): number {
  return Math.max(...dartJunctions(pattern).map((junction) => (Math.abs(junction.corner) * 180) / Math.PI))
}

describe('a pattern from a file', () => {
  it('is trued after its fittings, and says what moved', () => {
    const [trued, raw] = [made(FITTED, false), made(FITTED, true)]
    // A deeper dart leaves a peak in the waist where it is folded.
    expect(corner(raw)).toBeGreaterThan(2)
    expect(corner(trued)).toBeLessThan(1e-6)
    expect(raw.report.trued).toEqual([])
    expect(trued.report.trued.map(({ piece, seam, across, fitting }) => [piece, seam, across, fitting])).toEqual(
      ['bodice back', 'bodice back', 'bodice front', 'bodice front'].map((piece) => [
        piece,
        'waist',
        'waist dart',
        'first fitting',
      ]),
    )
    for (const { move, reach, longer } of trued.report.trued) {
      expect(move).toBeGreaterThan(0.05)
      expect(reach).toBeLessThanOrEqual(40)
      expect(Math.abs(longer)).toBeLessThan(0.5)
    }
    const notes = (one: MadePattern) => one.report.findings.filter(({ code }) => code === 'trued')
    expect(notes(raw)).toEqual([])
    expect(notes(trued)).toHaveLength(1)
    expect(notes(trued)[0]?.actual).toMatch(
      /^the waist of bodice front is trued across the waist dart by 0\.\d mm at most/,
    )
    // What no fitting touched is the draft's own.
    expect(trued.pattern.pieces.find(({ id }) => id === 'sleeve')).toBe(
      trued.versions[0]?.pattern.pieces.find(({ id }) => id === 'sleeve'),
    )
  })

  it('without a fitting is the draft, object by object', () => {
    const draft = made(BEFORE, false)
    expect(draft.pattern).toBe(draft.versions[0]?.pattern)
    expect(draft.report.trued).toEqual([])
  })

  it('stays raw with --no-true', () => {
    const report = (...flags: string[]) =>
      JSON.parse(scye(['check', ...flags, '--json', '-'], { input: FITTED }).stdout)
    expect(report().trued).toHaveLength(4)
    expect(report('--no-true').trued).toEqual([])
  })
})
