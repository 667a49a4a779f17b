import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../src/base/result.ts'
import { hinge } from '../../src/fitting/hinge.ts'
import type { OperationResult } from '../../src/fitting/operation.ts'
import { isGone, type PositionMap } from '../../src/fitting/position-map.ts'
import { rotateDart } from '../../src/fitting/rotate-dart.ts'
import { spread } from '../../src/fitting/spread.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pieceOf, pointOnSeam, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { fixturePattern } from './fixture.ts'
import { lengthOf, outlineOf, seam, type XY } from './measure.ts'

const PATTERNS: readonly Pattern[] = [fixturePattern(), ...BODIES.map(([bust, arm]) => drafted(bust, arm))]
const anyPattern = fc.nat({ max: PATTERNS.length - 1 })
const patternOf = (index: number) => PATTERNS[index] as Pattern

function done(result: Result<OperationResult>): OperationResult {
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}

function far(a: XY, b: XY): number {
  return Math.hypot(a.x - b.x, a.y - b.y)
}

/** Area of the outline by the exact integral over each cubic, dart mouths bridged: Gauss with 5 points is exact. */
function areaOf(piece: Piece): number {
  const nodes = [0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664]
  const weights = [0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891, 0.2369268850561891]
  let sum = 0
  let last: XY | undefined
  const first = piece.seams[0]?.parts[0]?.[0]?.p0 as XY
  for (const part of piece.seams.flatMap((s) => s.parts)) {
    for (const c of part) {
      if (last) sum += (last.x * c.p0.y - c.p0.x * last.y) / 2
      nodes.forEach((node, i) => {
        const t = (node + 1) / 2
        const u = 1 - t
        const p = (k: 'x' | 'y') =>
          u ** 3 * c.p0[k] + 3 * u * u * t * c.p1[k] + 3 * u * t * t * c.p2[k] + t ** 3 * c.p3[k]
        const d = (k: 'x' | 'y') =>
          3 * (u * u * (c.p1[k] - c.p0[k]) + 2 * u * t * (c.p2[k] - c.p1[k]) + t * t * (c.p3[k] - c.p2[k]))
        sum += ((weights[i] as number) / 4) * (p('x') * d('y') - p('y') * d('x'))
      })
      last = c.p3
    }
  }
  return sum + ((last as XY).x * first.y - first.x * (last as XY).y) / 2
}

/** Positions keep their order along every seam of the piece, and a place at the end stays the end. */
function expectMonotone(before: Piece, map: PositionMap, after: Pattern): void {
  for (const s of before.seams) {
    const length = seamLength(s)
    let last = -1
    for (let i = 0; i <= 40; i++) {
      const moved = map.seam({ piece: before.id, seam: s.id, along: (length * i) / 40 })
      expect(moved).toHaveLength(1)
      const there = moved[0]
      if (!there || isGone(there)) continue
      expect(there.along).toBeGreaterThanOrEqual(last - 1e-9)
      last = there.along
    }
    const now = seamOf(pieceOf(after, before.id), s.id)
    expect(last).toBeCloseTo(seamLength(now), 5)
    expect(lengthOf(now)).toBeCloseTo(seamLength(now), 3)
  }
}

function expectSound(piece: Piece): void {
  expect(outlineOf(piece).gaps).toBe(0)
  for (const dart of piece.darts) {
    const [a, b] = dart.mouth
    expect(Math.abs(far(a, dart.point) - far(b, dart.point))).toBeLessThan(1e-4)
    const parts = seamOf(piece, dart.seam).parts
    expect(
      parts.some((part, i) => far(part.at(-1)?.p3 as XY, a) < 1e-9 && far(parts[i + 1]?.[0]?.p0 as XY, b) < 1e-9),
    ).toBe(true)
  }
  const breaks = piece.seams.reduce((sum, s) => sum + s.parts.length - 1, 0)
  expect(breaks).toBe(piece.darts.length)
}

/** A line across a bodice half, from the center to the side seam, a share of the way up the side seam. */
function across(piece: Piece, share: number) {
  const center = piece.seams.find((s) => s.id.startsWith('center')) as Piece['seams'][number]
  const side = seamOf(piece, 'side seam')
  const at = { seam: 'side seam', along: share * seamLength(side) }
  const level = pointOnSeam(side, at.along).y
  const top = center.parts[0]?.[0]?.p0.y as number
  return { side: at, center: { seam: center.id, along: top - level }, width: pointOnSeam(side, at.along).x, level }
}

const halves = ['bodice front', 'bodice back']

describe('spread', () => {
  it('by d along a line of length w adds w · d, exactly, and moves the far side as it is', () => {
    fc.assert(
      fc.property(
        anyPattern,
        fc.constantFrom(...halves),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (index, id, share, by) => {
          const pattern = patternOf(index)
          const piece = pieceOf(pattern, id)
          const { side, center, width } = across(piece, share)
          const { pattern: after, map } = done(spread(pattern, { piece: id, from: center, to: side, by, blend: 0 }))
          const now = pieceOf(after, id)
          expect(areaOf(now) - areaOf(piece)).toBeCloseTo(width * by, 4)
          expectSound(now)
          expectMonotone(piece, map, after)
          for (const s of ['armscye', 'shoulder', 'neckline']) expect(seam(now, s)).toBe(seam(piece, s))
          const waist = seam(piece, 'waist').parts.flat()
          seam(now, 'waist')
            .parts.flat()
            .forEach((c, i) => {
              expect(c.p3.x).toBeCloseTo(waist[i]?.p3.x as number, 9)
              expect(c.p3.y - (waist[i]?.p3.y as number)).toBeCloseTo(-by, 9)
            })
          for (const s of ['side seam', center.seam])
            expect(lengthOf(seam(now, s)) - lengthOf(seam(piece, s))).toBeCloseTo(by, 4)
          for (const other of pattern.pieces) if (other !== piece) expect(after.pieces).toContain(other)
        },
      ),
      { numRuns: 20 },
    )
  })

  it('is the very same pattern for zero', () => {
    for (const pattern of PATTERNS) {
      const { side, center } = across(pieceOf(pattern, 'bodice back'), 0.4)
      expect(done(spread(pattern, { piece: 'bodice back', from: center, to: side, by: 0 })).pattern).toBe(pattern)
    }
  })

  it('draws seams again straight or smooth: longer or shorter by the amount, nearly', () => {
    fc.assert(
      fc.property(
        anyPattern,
        fc.constantFrom(...halves),
        fc.double({ min: 0.3, max: 0.6, noNaN: true }),
        fc.double({ min: -25, max: 25, noNaN: true }),
        (index, id, share, by) => {
          const pattern = patternOf(index)
          fc.pre(Math.abs(by) > 0.5)
          const piece = pieceOf(pattern, id)
          const { side, center } = across(piece, share)
          const { pattern: after, map } = done(spread(pattern, { piece: id, from: center, to: side, by }))
          const now = pieceOf(after, id)
          expectSound(now)
          expectMonotone(piece, map, after)
          expect(lengthOf(seam(now, center.seam)) - lengthOf(seam(piece, center.seam))).toBeCloseTo(by, 4)
          expect(Math.abs(lengthOf(seam(now, 'side seam')) - lengthOf(seam(piece, 'side seam')) - by)).toBeLessThan(
            0.02 * Math.abs(by),
          )
          expect(seam(now, 'side seam').parts.flat()).toHaveLength(seam(piece, 'side seam').parts.flat().length)
          // A mark below keeps its distance from the waist, one above from the armscye.
          const at = (along: number) => map.seam({ piece: id, seam: 'side seam', along })[0]
          expect(at(2)).toMatchObject({ along: expect.closeTo(2, 6) })
          // Darts: the mouth moved, the point above the line stayed.
          now.darts.forEach((dart, i) => {
            const old = piece.darts[i]
            if (!old) throw new Error('a dart is missing')
            expect(far(dart.mouth[0], dart.mouth[1])).toBeCloseTo(far(old.mouth[0], old.mouth[1]), 9)
          })
        },
      ),
      { numRuns: 20 },
    )
  })

  it('moves a sleeve below a line, its darts with it, and says what it cannot', () => {
    const pattern = drafted()
    const sleeve = pieceOf(pattern, 'sleeve')
    const front = seamLength(seamOf(sleeve, 'front underarm seam'))
    const options = {
      piece: 'sleeve',
      from: { seam: 'back underarm seam', along: 90 },
      to: { seam: 'front underarm seam', along: front - 90 },
      by: { x: 0, y: -15 },
    }
    const { pattern: after, map } = done(spread(pattern, options))
    const now = pieceOf(after, 'sleeve')
    expectSound(now)
    expectMonotone(sleeve, map, after)
    for (const id of ['front underarm seam', 'back underarm seam'])
      expect(Math.abs(lengthOf(seam(now, id)) - lengthOf(seam(sleeve, id)) - 15)).toBeLessThan(0.3)
    expect(now.darts.map((d, i) => far(d.point, sleeve.darts[i]?.point as XY))).toEqual(
      [15, 15].map((x) => expect.closeTo(x, 9)),
    )
    for (const id of ['front cap', 'back cap']) expect(seam(now, id)).toBe(seam(sleeve, id))
    const line = now.lines.find((l) => l.id === 'biceps line')
    expect(line).toBe(sleeve.lines.find((l) => l.id === 'biceps line'))
    const tight = spread(pattern, { ...options, by: { x: 0, y: 300 } })
    expect(tight.ok ? '' : tight.problems[0]?.code).toBe('seam-too-short')
    expect(() => spread(pattern, { ...options, by: -3, blend: 0 })).toThrow(RangeError)
  })
})

describe('hinge', () => {
  const options = (pattern: Pattern, id: string, share: number, angle: number, blend?: number) => {
    const { side, center } = across(pieceOf(pattern, id), share)
    return {
      piece: id,
      edge: center,
      hinge: side,
      angle,
      moves: 'before' as const,
      ...(blend === undefined ? {} : { blend }),
    }
  }

  it('opens a wedge: the far edge keeps its length, the edge grows by the chord, the area by the triangle', () => {
    fc.assert(
      fc.property(
        anyPattern,
        fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        fc.double({ min: 0.002, max: 0.12, noNaN: true }),
        fc.constantFrom('after', 'before'),
        (index, share, angle, moves) => {
          const pattern = patternOf(index)
          const id = 'bodice back'
          const piece = pieceOf(pattern, id)
          const { side, center, width } = across(piece, share)
          const { pattern: after, map } = done(
            hinge(pattern, { piece: id, edge: side, hinge: center, angle, moves, blend: 0 }),
          )
          const now = pieceOf(after, id)
          expect(lengthOf(seam(now, 'center back'))).toBeCloseTo(lengthOf(seam(piece, 'center back')), 4)
          expect(lengthOf(seam(now, 'side seam')) - lengthOf(seam(piece, 'side seam'))).toBeCloseTo(
            2 * width * Math.sin(angle / 2),
            4,
          )
          // The triangle of the wedge.
          expect(areaOf(now) - areaOf(piece)).toBeCloseTo((width * width * Math.sin(angle)) / 2, 3)
          expect(outlineOf(now).gaps).toBe(0)
          expectMonotone(piece, map, after)
          const still = moves === 'after' ? 'waist' : 'neckline'
          expect(seam(now, still)).toBe(seam(piece, still))
        },
      ),
      { numRuns: 20 },
    )
  })

  it('folds a wedge away, the far edge keeping its length', () => {
    for (const pattern of PATTERNS) {
      const piece = pieceOf(pattern, 'bodice back')
      const { pattern: after, map } = done(hinge(pattern, options(pattern, 'bodice back', 0.4, -0.05)))
      const now = pieceOf(after, 'bodice back')
      expectMonotone(piece, map, after)
      expect(outlineOf(now).gaps).toBe(0)
      expect(lengthOf(seam(now, 'side seam'))).toBeCloseTo(lengthOf(seam(piece, 'side seam')), 4)
      const { width } = across(piece, 0.4)
      expect(lengthOf(seam(now, 'center back')) - lengthOf(seam(piece, 'center back'))).toBeCloseTo(
        -2 * width * Math.sin(0.025),
        0,
      )
      expect(done(hinge(pattern, options(pattern, 'bodice back', 0.4, 0))).pattern).toBe(pattern)
    }
  })
})

describe('rotateDart', () => {
  const angleOf = (dart: Piece['darts'][number]) => {
    const a = Math.atan2(dart.mouth[0].y - dart.point.y, dart.mouth[0].x - dart.point.x)
    const b = Math.atan2(dart.mouth[1].y - dart.point.y, dart.mouth[1].x - dart.point.x)
    return (b - a + 4 * Math.PI) % (2 * Math.PI)
  }

  it('keeps the angle at the point and every sewn length, wherever the dart goes', () => {
    fc.assert(
      fc.property(
        anyPattern,
        fc.constantFrom(...halves),
        fc.constantFrom('side seam', 'armscye', 'shoulder', 'waist'),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.2, max: 0.95, noNaN: true }),
        fc.boolean(),
        (index, id, to, place, part, whole) => {
          const pattern = patternOf(index)
          const share = whole ? 1 : part
          const piece = pieceOf(pattern, id)
          const old = piece.darts.find((d) => d.seam === 'waist') as Piece['darts'][number]
          const rotated = rotateDart(pattern, {
            piece: id,
            dart: old.id,
            to: { seam: to, along: place * seamLength(seamOf(piece, to)) },
            share,
          })
          if (!rotated.ok) {
            expect(['dart-already-there', 'dart-leaves-piece']).toContain(rotated.problems[0]?.code)
            return
          }
          const { pattern: after, map } = rotated.value
          const now = pieceOf(after, id)
          expectSound(now)
          expectMonotone(piece, map, after)
          for (const s of piece.seams) expect(lengthOf(seam(now, s.id))).toBeCloseTo(lengthOf(s), 4)
          const angles = now.darts.filter((d) => far(d.point, old.point) < 1e-9).map(angleOf)
          expect(angles).toHaveLength(share === 1 ? 1 : 2)
          expect(angles.reduce((a, b) => a + b, 0)).toBeCloseTo(angleOf(old), 9)
          const center = piece.seams.at(-1) as Piece['seams'][number]
          expect(seam(now, center.id)).toBe(center)
        },
      ),
      { numRuns: 40 },
    )
  })

  it('splits a dart in two and joins them again', () => {
    for (const pattern of PATTERNS) {
      const piece = pieceOf(pattern, 'bodice back')
      const dart = piece.darts[0] as Piece['darts'][number]
      const split = done(
        rotateDart(pattern, { piece: piece.id, dart: dart.id, to: { seam: 'waist', along: 130 }, share: 0.5 }),
      ).pattern
      const two = pieceOf(split, piece.id).darts
      expect(two.map((d) => d.id)).toEqual(expect.arrayContaining([dart.id, `${dart.id} 2`]))
      const joined = done(rotateDart(split, { piece: piece.id, dart: `${dart.id} 2`, to: { dart: dart.id } }))
      const again = pieceOf(joined.pattern, piece.id)
      expectSound(again)
      expect(far(again.darts[0]?.mouth[0] as XY, again.darts[0]?.mouth[1] as XY)).toBeCloseTo(
        far(dart.mouth[0], dart.mouth[1]),
        6,
      )
      again.seams.forEach((s, i) => {
        s.parts.flat().forEach((c, k) => {
          if (s.id !== 'waist') expect(far(c.p3, piece.seams[i]?.parts.flat()[k]?.p3 as XY)).toBeLessThan(1e-6)
        })
        expect(lengthOf(s)).toBeCloseTo(lengthOf(piece.seams[i] as Piece['seams'][number]), 4)
      })
      expect(areaOf(again)).toBeCloseTo(areaOf(piece), 3)
    }
  })

  it('says what cannot be', () => {
    const pattern = drafted()
    const code = (result: Result<unknown>) => (result.ok ? '' : result.problems[0]?.code)
    expect(
      code(rotateDart(pattern, { piece: 'bodice back', dart: 'waist dart', to: { seam: 'waist', along: 72.7 } })),
    ).toBe('dart-already-there')
    expect(() =>
      rotateDart(pattern, { piece: 'bodice back', dart: 'bust dart', to: { seam: 'waist', along: 9 } }),
    ).toThrow(RangeError)
    const sleeve = rotateDart(pattern, { piece: 'sleeve', dart: 'elbow dart upper', to: { dart: 'elbow dart lower' } })
    expect(code(sleeve)).toBe('darts-do-not-share-a-point')
  })
})
