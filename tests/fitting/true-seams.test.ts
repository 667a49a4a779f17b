import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { walkJoins } from '../../src/checks/report.ts'
import { isGone } from '../../src/fitting/position-map.ts'
import { splitSides } from '../../src/fitting/split-sides.ts'
import { trueSeams } from '../../src/fitting/true-seams.ts'
import { roomToTurn, turnEdge } from '../../src/fitting/turn-edge.ts'
import { distance } from '../../src/geometry/point.ts'
import { centerJunctions, dartJunctions, type Junction, joinJunctions } from '../../src/pattern/junctions.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Seam } from '../../src/pattern/piece.ts'
import { notchPoints, pieceOf, pointOnSeam, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { farthest } from './measure.ts'

const degrees = (value: number) => (value * Math.PI) / 180

const junctionsOf = (pattern: Pattern): Junction[] => [
  ...joinJunctions(pattern),
  ...dartJunctions(pattern),
  ...centerJunctions(pattern),
]

const drafts = BODIES.map(([bust, arm]) => drafted(bust, arm, { 'front waist length': 465 }))
const split = ['sleeve', 'bodice front', 'bodice back'].reduce(
  (p, id) => splitSides(p, id).pattern,
  drafts[1] as Pattern,
)
const patterns = [...drafts, split]

/** A pattern, and a list of its junctions with corners in degrees that a pencil has made there. */
const slips = fc.integer({ min: 0, max: patterns.length - 1 }).chain((which) =>
  fc.tuple(
    fc.constant(patterns[which] as Pattern),
    fc.uniqueArray(
      fc.record({
        junction: fc.integer({ min: 0, max: junctionsOf(patterns[which] as Pattern).length - 1 }),
        corner: fc.oneof(
          fc.double({ min: -14, max: -0.6, noNaN: true }),
          fc.double({ min: 0.6, max: 14, noNaN: true }),
        ),
      }),
      { selector: ({ junction }) => junction, minLength: 1, maxLength: 6 },
    ),
  ),
)

/** The first edge of each junction turned at its end within 25 mm, so that the junction has this corner. */
function slipped(
  pattern: Pattern,
  corners: readonly { readonly junction: number; readonly corner: number }[],
): Pattern {
  return corners.reduce((now, { junction, corner }) => {
    const edge = (junctionsOf(pattern)[junction] as Junction).edges[0]
    if (!edge) throw new Error('no edge')
    const name = { piece: edge.piece.id, seam: edge.seam.id, part: edge.part, which: edge.which }
    const turned = turnEdge(now, name, Math.tan(degrees(corner)), Math.min(25, roomToTurn(now, name)))
    if (!turned) throw new Error('cannot be turned')
    return turned.result.pattern
  }, pattern)
}

describe('truing', () => {
  it('leaves what is true as it is: the same objects, of any draft, together or apart', () => {
    for (const pattern of patterns) {
      const done = trueSeams(pattern)
      expect(done.pattern).toBe(pattern)
      expect(done.trued).toEqual([])
    }
  })

  it('mends small corners and changes no length by more than 0.5 mm, no notch, no point beyond its reach', () => {
    fc.assert(
      fc.property(slips, ([draft, corners]) => {
        const pattern = slipped(draft, corners)
        const before = junctionsOf(pattern)
        const { pattern: now, trued, map } = trueSeams(pattern)
        const after = junctionsOf(now)
        for (const { junction } of corners) {
          const was = (before[junction] as Junction).corner
          const is = (after[junction] as Junction).corner
          // Mended whole, or told nothing and left.
          const told = trued.some(
            ({ across, corner }) =>
              across === before[junction]?.across && Math.abs(corner - (was * 180) / Math.PI) < 1e-6,
          )
          expect(told ? Math.abs(is) < 1e-6 : is === was || Math.abs(is - was) < 1e-9).toBe(true)
          expect(told).toBe(true)
        }
        for (const piece of pattern.pieces) {
          const next = pieceOf(now, piece.id)
          for (const seam of piece.seams) {
            const drawn = seamOf(next, seam.id)
            const rows = trued.filter((row) => row.piece === piece.id && row.seam === seam.id)
            if (rows.length === 0) {
              expect(drawn).toBe(seam)
              continue
            }
            expect(Math.abs(seamLength(drawn) - seamLength(seam))).toBeLessThanOrEqual(0.5)
            expect(seamLength(drawn) - seamLength(seam)).toBeCloseTo(
              rows.reduce((sum, { longer }) => sum + longer, 0),
              6,
            )
            const most = Math.max(...rows.map(({ move }) => move))
            expect(moved(seam, drawn)).toBeLessThanOrEqual(most + 0.03)
            expect(most).toBeLessThanOrEqual(1.6)
          }
          for (const [i, notch] of piece.notches.entries()) {
            const old = notchPoints(piece, notch)
            const moved = notchPoints(next, next.notches[i] as typeof notch)
            for (const [k, p] of old.entries()) expect(distance(p, moved[k] as typeof p)).toBeLessThan(1e-4)
            const [place] = map.seam({ piece: piece.id, seam: notch.seam, along: notch.along })
            if (!place || isGone(place)) throw new Error('a notch is gone')
            expect(place.along).toBeCloseTo((next.notches[i] as typeof notch).along, 9)
          }
        }
      }),
      { numRuns: 40 },
    )
  })

  it('keeps the order of places on every seam, and their points beyond the reach', () => {
    const pattern = slipped(drafts[0] as Pattern, [{ junction: 2, corner: 9 }])
    const { pattern: now, map, trued } = trueSeams(pattern)
    expect(trued.length).toBe(2)
    for (const { piece, seam, reach } of trued) {
      const [old, drawn] = [pattern, now].map((p) => seamOf(pieceOf(p, piece), seam))
      if (!old || !drawn) throw new Error('no seam')
      const places = Array.from({ length: 41 }, (_, i) => (seamLength(old) * i) / 40)
      const mapped = places.map((along) => {
        const [place] = map.seam({ piece, seam, along })
        if (!place || isGone(place)) throw new Error('gone')
        return place.along
      })
      expect([...mapped].sort((a, b) => a - b)).toEqual(mapped)
      const stayed = places.filter(
        (along, i) => distance(pointOnSeam(old, along), pointOnSeam(drawn, mapped[i] as number)) < 1e-4,
      )
      expect(stayed.length).toBeGreaterThan(((seamLength(old) - reach) / seamLength(old)) * 40 - 2)
    }
  })

  it('is done after once: again it is the same within 0.01 mm', () => {
    fc.assert(
      fc.property(slips, ([draft, corners]) => {
        const once = trueSeams(slipped(draft, corners)).pattern
        const twice = trueSeams(once)
        for (const piece of once.pieces) {
          for (const seam of piece.seams)
            expect(moved(seam, seamOf(pieceOf(twice.pattern, piece.id), seam.id))).toBeLessThan(0.01)
        }
      }),
      { numRuns: 15 },
    )
  })

  it('leaves a corner of more than 15°, one under 0.5° and one that was meant', () => {
    const [draft] = drafts as [Pattern]
    // The armscye over the shoulder.
    const junction = joinJunctions(draft).findIndex(({ edges }) => edges[0]?.seam.id === 'armscye')
    for (const corner of [17, -17, 0.4, -0.4]) {
      const pattern = slipped(draft, [{ junction, corner }])
      expect(trueSeams(pattern).pattern).toBe(pattern)
    }
    const pattern = slipped(draft, [{ junction, corner: -6 }])
    expect(trueSeams(pattern).trued.map(({ across }) => across)).toEqual(['shoulder', 'shoulder'])
    const corners = ['bodice front', 'bodice back'].map((piece) => ({
      kind: 'corner made' as const,
      piece,
      seam: 'armscye',
      angle: degrees(6),
    }))
    expect(trueSeams(pattern, { corners }).pattern).toBe(pattern)
  })

  it('changes no walk by more than 0.5 mm', () => {
    const pattern = slipped(
      drafts[1] as Pattern,
      [0, 1, 2, 3, 4, 5].map((junction) => ({ junction, corner: 8 })),
    )
    const [was, is] = [walkJoins(pattern), walkJoins(trueSeams(pattern).pattern)]
    was.forEach(({ ease, spans }, i) => {
      expect(Math.abs((is[i]?.ease ?? Number.NaN) - ease)).toBeLessThanOrEqual(1)
      expect(is[i]?.spans.length).toBe(spans.length)
    })
  })

  it('wants a reach', () => {
    expect(() => trueSeams(drafts[0] as Pattern, { reach: 0 })).toThrow(RangeError)
    const pattern = slipped(drafts[0] as Pattern, [{ junction: 2, corner: 9 }])
    for (const row of trueSeams(pattern, { reach: 15 }).trued) expect(row.reach).toBeLessThanOrEqual(15)
  })
})

/** The farthest that any part of a seam lies from where it was, mm. */
function moved(old: Seam, now: Seam): number {
  return Math.max(...old.parts.map((part, i) => farthest(part, now.parts[i] as typeof part)))
}
