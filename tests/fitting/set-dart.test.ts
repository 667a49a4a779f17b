import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../src/base/result.ts'
import type { OperationResult } from '../../src/fitting/operation.ts'
import { isGone } from '../../src/fitting/position-map.ts'
import { reMark } from '../../src/fitting/re-mark.ts'
import { setDart } from '../../src/fitting/set-dart.ts'
import { slideDart } from '../../src/fitting/slide-dart.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Dart, Piece } from '../../src/pattern/piece.ts'
import { pieceOf, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { fixturePattern } from './fixture.ts'
import { largestCorner, lengthOf, outlineOf, seam, type XY } from './measure.ts'

const PATTERNS: readonly Pattern[] = [fixturePattern(), drafted()]
const DARTS = PATTERNS.flatMap((pattern) =>
  pattern.pieces.flatMap((piece) => piece.darts.map((dart) => ({ pattern, piece, dart }))),
)

function done(result: Result<OperationResult>): OperationResult {
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}

const far = (a: XY, b: XY) => Math.hypot(a.x - b.x, a.y - b.y)
const width = (dart: Dart) => far(dart.mouth[0], dart.mouth[1])

function dartNow(pattern: Pattern, piece: Piece, dart: Dart): Dart {
  const now = pieceOf(pattern, piece.id)
  expect(outlineOf(now).gaps).toBe(0)
  const found = now.darts.find((d) => d.id === dart.id) as Dart
  expect(Math.abs(far(found.mouth[0], found.point) - far(found.mouth[1], found.point))).toBeLessThan(1e-6)
  const { parts } = seamOf(now, dart.seam)
  const at = parts.findIndex((part) => far(part.at(-1)?.p3 as XY, found.mouth[0]) < 1e-9)
  expect(far(parts[at + 1]?.[0]?.p0 as XY, found.mouth[1])).toBeLessThan(1e-9)
  for (const part of parts) expect(largestCorner(part)).toBeLessThan(2e-3)
  return found
}

function expectMonotone(result: OperationResult, piece: Piece, id: string): void {
  const length = seamLength(seamOf(piece, id))
  let last = -1
  for (let i = 0; i <= 60; i++) {
    const there = result.map.seam({ piece: piece.id, seam: id, along: (length * i) / 60 })[0]
    if (!there || isGone(there)) continue
    expect(there.along).toBeGreaterThanOrEqual(last)
    last = there.along
  }
  expect(last).toBeCloseTo(seamLength(seamOf(pieceOf(result.pattern, piece.id), id)), 6)
}

describe('setDart', () => {
  it('takes a change of intake out of the seam, or gives it back', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: DARTS.length - 1 }),
        fc.double({ min: 0.3, max: 1.8, noNaN: true }),
        (index, factor) => {
          const { pattern, piece, dart } = DARTS[index] as (typeof DARTS)[number]
          const intake = width(dart) * factor
          const attempt = setDart(pattern, { piece: piece.id, dart: dart.id, intake })
          // Between the two elbow darts there is little seam.
          if (!attempt.ok) {
            expect(dart.id).toMatch(/elbow/)
            expect(attempt.problems[0]?.code).toBe('no-room-for-dart')
            return
          }
          const now = dartNow(attempt.value.pattern, piece, dart)
          expect(width(now)).toBeCloseTo(intake, 9)
          expect(now.point).toEqual(dart.point)
          const change =
            lengthOf(seam(pieceOf(attempt.value.pattern, piece.id), dart.seam)) - lengthOf(seam(piece, dart.seam))
          expect(Math.abs(change + (intake - width(dart)))).toBeLessThan(0.03 * Math.abs(intake - width(dart)) + 0.02)
          expectMonotone(attempt.value, piece, dart.seam)
          const now2 = pieceOf(attempt.value.pattern, piece.id)
          for (const s of piece.seams) if (s.id !== dart.seam) expect(seam(now2, s.id)).toBe(s)
        },
      ),
      { numRuns: 40 },
    )
  })

  it('moves the point along the axis, or where it is told, with equal legs', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: DARTS.length - 1 }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (index, x, y) => {
          const { pattern, piece, dart } = DARTS[index] as (typeof DARTS)[number]
          const point = { x: dart.point.x + x, y: dart.point.y + y }
          const result = done(setDart(pattern, { piece: piece.id, dart: dart.id, point }))
          const now = dartNow(result.pattern, piece, dart)
          expect(now.point).toEqual(point)
          expect(width(now)).toBeCloseTo(width(dart), 9)
          expectMonotone(result, piece, dart.seam)
        },
      ),
      { numRuns: 40 },
    )
    for (const { pattern, piece, dart } of DARTS) {
      const length = 60
      const now = dartNow(done(setDart(pattern, { piece: piece.id, dart: dart.id, length })).pattern, piece, dart)
      const middle = { x: (now.mouth[0].x + now.mouth[1].x) / 2, y: (now.mouth[0].y + now.mouth[1].y) / 2 }
      expect(far(middle, now.point)).toBeCloseTo(length, 6)
      expect(width(now)).toBeCloseTo(width(dart), 6)
    }
  })

  it('is the very same pattern where nothing changes, and says what cannot be', () => {
    const { pattern, piece, dart } = DARTS[0] as (typeof DARTS)[number]
    const options = { piece: piece.id, dart: dart.id }
    expect(done(setDart(pattern, { ...options, point: dart.point })).pattern).toBe(pattern)
    const wide = setDart(pattern, { ...options, intake: 400 })
    expect(wide.ok ? '' : wide.problems[0]?.code).toBe('no-room-for-dart')
    expect(() => setDart(pattern, { ...options, intake: 0 })).toThrow(RangeError)
    expect(() => setDart(pattern, { piece: piece.id, dart: 'no dart' })).toThrow(RangeError)
  })
})

describe('slideDart', () => {
  it('moves a dart along its seam, its intake, length and angle to the seam with it', () => {
    fc.assert(
      fc.property(fc.nat({ max: DARTS.length - 1 }), fc.double({ min: -20, max: 20, noNaN: true }), (index, by) => {
        fc.pre(Math.abs(by) > 1.5)
        const { pattern, piece, dart } = DARTS[index] as (typeof DARTS)[number]
        const result = slideDart(pattern, { piece: piece.id, dart: dart.id, by })
        // Elbow darts stand 9 mm apart: one cannot be moved onto the other.
        if (!result.ok) {
          expect(dart.id).toMatch(/elbow/)
          return
        }
        const now = dartNow(result.value.pattern, piece, dart)
        expect(width(now)).toBeCloseTo(width(dart), 9)
        const length = (d: Dart) =>
          far({ x: (d.mouth[0].x + d.mouth[1].x) / 2, y: (d.mouth[0].y + d.mouth[1].y) / 2 }, d.point)
        // The middle of the mouth lies on a trued seam: exact but for its bow.
        expect(Math.abs(length(now) - length(dart))).toBeLessThan(0.1)
        expectMonotone(result.value, piece, dart.seam)
        const after = pieceOf(result.value.pattern, piece.id)
        for (const s of piece.seams) expect(Math.abs(lengthOf(seam(after, s.id)) - lengthOf(s))).toBeLessThan(0.5)
      }),
      { numRuns: 30 },
    )
    const { pattern, piece, dart } = DARTS[0] as (typeof DARTS)[number]
    expect(done(slideDart(pattern, { piece: piece.id, dart: dart.id, by: 0 })).pattern).toBe(pattern)
    const off = slideDart(pattern, { piece: piece.id, dart: dart.id, by: 400 })
    expect(off.ok ? '' : off.problems[0]?.code).toBe('dart-off-seam')
  })
})

describe('reMark', () => {
  it('moves marks along their seams and nothing else', () => {
    for (const pattern of PATTERNS) {
      const sleeve = pieceOf(pattern, 'sleeve')
      const { pattern: after, map } = done(
        reMark(pattern, { piece: 'sleeve', marks: [{ id: 'front notch', along: 75 }] }),
      )
      const now = pieceOf(after, 'sleeve')
      expect(now.notches.find((n) => n.id === 'front notch')?.along).toBe(75)
      expect(now.seams).toBe(sleeve.seams)
      expect(map.seam({ piece: 'sleeve', seam: 'front cap', along: 3 })).toEqual([
        { piece: 'sleeve', seam: 'front cap', along: 3 },
      ])
      const old = sleeve.notches.find((n) => n.id === 'front notch')?.along as number
      expect(done(reMark(pattern, { piece: 'sleeve', marks: [{ id: 'front notch', along: old }] })).pattern).toBe(
        pattern,
      )
      const off = reMark(pattern, { piece: 'sleeve', marks: [{ id: 'back notch', along: 5 }] })
      expect(off.ok ? '' : off.problems[0]?.code).toBe('mark-off-seam')
      expect(() => reMark(pattern, { piece: 'sleeve', marks: [{ id: 'hip notch', along: 5 }] })).toThrow(RangeError)
    }
  })
})
