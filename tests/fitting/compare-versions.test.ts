import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import { compareVersions, type VersionComparison } from '../../src/fitting/compare-versions.ts'
import { correctionNamed } from '../../src/fitting/corrections.ts'
import { describePlace } from '../../src/fitting/describe-place.ts'
import { farthestMove, stretchMoves } from '../../src/fitting/farthest-move.ts'
import type { CorrectionSide, FittingRecord } from '../../src/fitting/record.ts'
import { type PatternVersion, replay } from '../../src/fitting/replay.ts'
import { resolvePlace } from '../../src/fitting/resolve-place.ts'
import { seamRun } from '../../src/fitting/seam-run.ts'
import { line } from '../../src/geometry/cubic.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import { movePath } from '../../src/geometry/path.ts'
import { splitPath } from '../../src/geometry/path-length.ts'
import { point } from '../../src/geometry/point.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { cubics, farthest } from './measure.ts'

const read = makeReaders('mm')
const draft = drafted()

function fitting(label: string, written: Record<string, unknown>, side: CorrectionSide = 'both', name = 'let out') {
  const settings = correctionNamed(name)?.settings(read).parse(written)
  return { label, mockUp: 1, corrections: [{ do: name, side, settings, where: {} }], where: {} } as FittingRecord
}

function versions(...fittings: FittingRecord[]): readonly PatternVersion[] {
  const done = replay(draft, fittings, { standard: { default: 25.4 }, byMockUp: {} })
  if (!done.ok) throw new Error(done.problems.map((p) => p.actual).join('; '))
  return done.value.versions
}

function rowOf(comparison: VersionComparison, piece: string, seam: string) {
  const row = comparison.seams.find((s) => s.piece === piece && s.seam === seam)
  if (!row) throw new Error(`no ${piece} ${seam}`)
  return row
}

const capLet = (by: string) => ({
  seam: 'cap',
  at: [
    { line: 'cap line', 'side of cap': 'front' },
    { line: 'cap line', 'side of cap': 'back' },
  ],
  by,
  'taper to': ['shoulder notch', 'front notch', 'back notch'],
})

describe('the farthest that a line moved', () => {
  const curve = hobbySpline([
    { at: point(0, 0), direction: point(1, 0.4) },
    { at: point(90, 40) },
    { at: point(200, 10) },
  ])

  it('is exact for a shift along a straight line, and nothing for the same line', () => {
    const flat = [line(point(0, 0), point(100, 0))]
    const raised = movePath(flat, (p) => point(p.x, p.y + 7))
    expect(farthestMove([flat], [raised]).distance).toBeCloseTo(7, 9)
    expect(farthestMove([flat], [flat]).distance).toBe(0)
    // Longer at its end by 12: the end moved along itself.
    const longer = [line(point(0, 0), point(112, 0))]
    const { distance, from, to } = farthestMove([flat], [longer])
    expect([distance, from, to]).toEqual([12, point(100, 0), point(112, 0)])
    // And the same the other way round, from the old end back to the new one.
    expect(farthestMove([longer], [flat])).toEqual({ distance: 12, from: point(112, 0), to: point(100, 0) })
  })

  it('agrees with dense samples of both lines', () => {
    fc.assert(
      fc.property(fc.double({ min: -14, max: 14, noNaN: true }), fc.integer({ min: 1, max: 3 }), (by, waves) => {
        const moved = movePath(curve, (p) => point(p.x + by * 0.3, p.y + by * Math.sin((p.x / 200) * Math.PI * waves)))
        const measured = Math.max(farthest(curve, moved), farthest(moved, curve))
        expect(Math.abs(farthestMove([curve], [moved]).distance - measured)).toBeLessThan(0.02)
      }),
      { numRuns: 25 },
    )
  })

  it('does not see where a line was cut in two', () => {
    const [a, b] = splitPath(curve, 77)
    expect(farthestMove([curve], [[...a, ...b]]).distance).toBeLessThan(1e-6)
    expect(stretchMoves([curve], [[...a, ...b]], 0.05)).toEqual([])
  })
})

describe('two versions of a pattern', () => {
  it('say nothing moved between a version and itself', () => {
    const [version] = versions()
    const same = compareVersions(version as PatternVersion, version as PatternVersion)
    expect(same.seams.map((s) => s.move)).toEqual(same.seams.map(() => 0))
    expect(same.joins).toEqual([])
    for (const piece of same.pieces) {
      expect(Object.values(piece.changed).flat()).toEqual([])
      expect(piece.unchanged.seams).toHaveLength(pieceOf(draft, piece.piece).seams.length)
    }
  })

  it('find the amount that a cap was let out by, and where, and leave the other pieces alone', () => {
    for (const by of [2, 9.5, 15]) {
      const [before, after] = versions(fitting('first', capLet(`${by} mm`)))
      if (!before || !after) throw new Error('two versions')
      const comparison = compareVersions(before, after)
      for (const half of ['front', 'back']) {
        const row = rowOf(comparison, 'sleeve', `${half} cap`)
        expect(row.move).toBeCloseTo(by, 1)
        const [old, now] = [before, after].map((v) => cubics(pieceOf(v.pattern, 'sleeve'), `${half} cap`))
        if (!old || !now) throw new Error('two caps')
        expect(Math.abs(row.move - Math.max(farthest(old, now), farthest(now, old)))).toBeLessThan(0.02)
        expect(row.peaks.map((peak) => peak.way)).toEqual(['out'])
        // Two thirds up the cap lies well above the notch and well below the crown.
        expect(row.peaks[0]?.along).toBeGreaterThan(0.3 * row.after)
        expect(row.peaks[0]?.along).toBeLessThan(0.8 * row.after)
      }
      expect(
        comparison.seams
          .filter((s) => s.move > 0)
          .map((s) => s.seam)
          .sort(),
      ).toEqual(['back cap', 'front cap'])
      const sleeve = comparison.pieces.find((p) => p.piece === 'sleeve')
      expect(sleeve?.unchanged.seams).toEqual(['wrist', 'front underarm seam', 'back underarm seam'])
      expect(sleeve?.unchanged.darts).toHaveLength(2)
      expect(comparison.pieces.find((p) => p.piece === 'bodice back')?.changed.seams).toEqual([])
      expect(comparison.joins.map((j) => j.join).sort()).toEqual(['back cap', 'front cap'])
      // Backwards the same line moved as far the other way.
      const back = rowOf(compareVersions(after, before), 'sleeve', 'front cap')
      expect(back.move).toBeCloseTo(by, 1)
      expect(back.peaks[0]?.way).toBe('in')
    }
  })

  it('name the joins of a seam that moved and kept its length', () => {
    const [before, after] = versions(fitting('first', capLet('9.5 mm')))
    if (!before || !after) throw new Error('two versions')
    const aside = {
      ...before.pattern,
      pieces: before.pattern.pieces.map((piece) =>
        piece.id === 'bodice back'
          ? {
              ...piece,
              seams: piece.seams.map((seam) =>
                seam.id === 'shoulder'
                  ? {
                      ...seam,
                      parts: seam.parts.map((part) =>
                        part.map(({ p0, p1, p2, p3 }) => {
                          const [a, b, c, d] = [p0, p1, p2, p3].map(({ x, y }) => ({ x: x + 3, y }))
                          return { p0: a, p1: b, p2: c, p3: d } as (typeof part)[number]
                        }),
                      ),
                    }
                  : seam,
              ),
            }
          : piece,
      ),
    }
    const comparison = compareVersions(before, { ...before, pattern: aside })
    expect(rowOf(comparison, 'bodice back', 'shoulder').move).toBeGreaterThan(1)
    expect(comparison.joins.map(({ join }) => join)).toEqual(['shoulder'])
    expect(comparison.joins[0]?.after.a).toBeCloseTo(comparison.joins[0]?.before.a ?? 0, 6)
  })

  it('compare left with left where a pair was cut apart meanwhile', () => {
    const [before, after] = versions(fitting('first', capLet('8 mm'), 'right'))
    if (!before || !after) throw new Error('two versions')
    const comparison = compareVersions(before, after)
    expect(comparison.pieces.map(({ piece, was }) => [piece, was])).toContainEqual(['sleeve left', 'sleeve'])
    expect(rowOf(comparison, 'sleeve right', 'front cap').move).toBeCloseTo(8, 1)
    const left = comparison.pieces.find((p) => p.piece === 'sleeve left')
    expect(Object.values(left?.changed ?? {}).flat()).toEqual([])
    expect(comparison.joins.map((j) => j.join).sort()).toEqual(['back cap right', 'front cap right'])
    // Later the sides are apart in both: nothing was cut apart meanwhile.
    expect(compareVersions(after, after).pieces.every((p) => p.was === undefined)).toBe(true)
  })

  it('compare the halves of a piece on the fold that was opened', () => {
    const [before, after] = versions(fitting('first', { seam: 'front side seam', by: '6 mm' }, 'left'))
    if (!before || !after) throw new Error('two versions')
    const comparison = compareVersions(before, after)
    expect(rowOf(comparison, 'bodice front', 'side seam left').move).toBeGreaterThan(5.9)
    expect(rowOf(comparison, 'bodice front', 'side seam right').move).toBe(0)
    expect(comparison.pieces.find((p) => p.piece === 'bodice front')?.was).toBe('bodice front')
  })
})

describe('a place described', () => {
  it('is found again where it was', () => {
    const lines = draft.pieces.flatMap((piece) => piece.seams.map((seam) => [piece, seam.id] as const))
    fc.assert(
      fc.property(fc.constantFrom(...lines), fc.double({ min: 0, max: 1, noNaN: true }), ([piece, seam], share) => {
        const run = seamRun(piece, [seam])
        const at = share * run.length
        const found = resolvePlace(describePlace(run, at), [run], seam)
        if (!found.ok) throw new Error(found.problems[0]?.actual)
        expect(Math.min(...found.value.map((place) => Math.abs(place.along - at)))).toBeLessThan(0.5)
      }),
    )
  })
})
