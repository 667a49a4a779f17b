import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/checks.ts'
import type { Dart, Piece } from '../../src/pattern/piece.ts'
import { pieceOf, pointOnSeam, seamOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { cubics, largestCorner, lengthOf, outlineOf, seam, type XY } from './measure.ts'
import { codeOf, corrected, done } from './replayed.ts'

const far = (a: XY, b: XY) => Math.hypot(a.x - b.x, a.y - b.y)
const intake = ({ mouth }: Dart) => far(mouth[0], mouth[1])
const legs = ({ mouth, point }: Dart) => [far(mouth[0], point), far(mouth[1], point)] as const
const sleeveOf = (pattern: Parameters<typeof pieceOf>[0]) => pieceOf(pattern, 'sleeve')
const elbowDarts = (piece: Piece) => piece.darts.filter((dart) => dart.seam === 'back underarm seam')

describe.each(BODIES)('elbow darts on a bust of %d and an arm of %d', (bust, arm) => {
  const draft = drafted(bust, arm)
  const sleeve = sleeveOf(draft)

  it.each([
    ['up', '1/2', 12.7],
    ['down', '1/2', -12.7],
    ['up', '1', 25.4],
    ['down', '1', -25.4],
  ] as const)(
    'move %s by %s with their intakes, lengths and legs, and the seam sews as it did',
    (direction, by, up) => {
      const now = sleeveOf(done(draft, ['move elbow darts', { direction, by }]).pattern)
      elbowDarts(now).forEach((dart, i) => {
        const old = elbowDarts(sleeve)[i] as Dart
        expect(intake(dart)).toBeCloseTo(intake(old), 9)
        expect(legs(dart)[0]).toBeCloseTo(legs(old)[0], 9)
        expect(legs(dart)[1]).toBeCloseTo(legs(old)[1], 9)
        expect(far(dart.point, old.point)).toBeGreaterThan(Math.abs(up) - 1e-6)
        expect(far(dart.point, old.point)).toBeLessThan(Math.abs(up) * 1.1)
        expect(Math.sign(dart.point.y - old.point.y)).toBe(Math.sign(up))
      })
      // Back less its intakes: the mouths are gaps in the seam, so its parts are what is sewn to the front.
      expect(lengthOf(seam(now, 'back underarm seam'))).toBeCloseTo(lengthOf(seam(sleeve, 'back underarm seam')), 4)
      expect(seamOf(now, 'front underarm seam')).toBe(seamOf(sleeve, 'front underarm seam'))
      for (const id of ['front cap', 'back cap', 'wrist']) expect(seamOf(now, id)).toBe(seamOf(sleeve, id))
      const along = (piece: Piece) => piece.notches.find((n) => n.id === 'elbow notch')?.along as number
      expect(along(now) - along(sleeve)).toBeCloseTo(up, 6)
      expect(outlineOf(now).gaps).toBeLessThan(1e-9)
      for (const part of seam(now, 'back underarm seam').parts) expect(largestCorner(part)).toBeLessThan(0.01)
      const { pattern } = done(draft, ['move elbow darts', { direction, by }])
      expect(runChecks({ pattern, measures: [], units: 'mm' })).toEqual([])
    },
  )

  it('have their points moved along them, and nothing else', () => {
    for (const [direction, by] of [
      ['forward', 9.525],
      ['back', -9.525],
    ] as const) {
      const now = sleeveOf(done(draft, ['move elbow darts', { direction, by: '3/8' }]).pattern)
      expect(now.seams).toEqual(sleeve.seams)
      elbowDarts(now).forEach((dart, i) => {
        const old = elbowDarts(sleeve)[i] as Dart
        expect(dart.mouth).toEqual(old.mouth)
        const middle = { x: (old.mouth[0].x + old.mouth[1].x) / 2, y: (old.mouth[0].y + old.mouth[1].y) / 2 }
        expect(far(dart.point, middle) - far(old.point, middle)).toBeCloseTo(by, 9)
        expect(Math.abs(legs(dart)[0] - legs(dart)[1])).toBeLessThan(1e-9)
      })
    }
  })

  it.each([
    ['1', 25.4],
    ['1 1/2', 38.1],
    ['2', 50.8],
  ])('take %s together: the forearm turns, both seams keep their lengths', (written, total) => {
    const { pattern } = done(draft, ['elbow dart intake', { intake: written }])
    const now = sleeveOf(pattern)
    expect(elbowDarts(now).reduce((sum, dart) => sum + intake(dart), 0)).toBeCloseTo(total, 6)
    for (const dart of elbowDarts(now)) expect(Math.abs(legs(dart)[0] - legs(dart)[1])).toBeLessThan(1e-9)
    for (const id of ['front underarm seam', 'back underarm seam', 'wrist']) {
      expect(Math.abs(lengthOf(seam(now, id)) - lengthOf(seam(sleeve, id))), id).toBeLessThan(0.12)
    }
    expect(seamOf(now, 'front cap')).toBe(seamOf(sleeve, 'front cap'))
    // The wrist comes forward with more intake and goes back with less.
    const middle = (piece: Piece) => pointOnSeam(seamOf(piece, 'wrist'), lengthOf(seam(piece, 'wrist')) / 2).x
    const before = elbowDarts(sleeve).reduce((sum, dart) => sum + intake(dart), 0)
    expect(Math.sign(middle(now) - middle(sleeve))).toBe(Math.sign(total - before))
    expect(outlineOf(now).gaps).toBeLessThan(1e-9)
    expect(largestCorner(cubics(now, 'front underarm seam'))).toBeLessThan(0.01)
    expect(runChecks({ pattern, measures: [], units: 'mm' })).toEqual([])
  })

  it('come back to what they were when the intake is set back', () => {
    const there = done(
      draft,
      ['elbow dart intake', { intake: '1 1/2' }],
      ['elbow dart intake', { intake: '32 mm' }],
    ).pattern
    elbowDarts(sleeveOf(there)).forEach((dart, i) => {
      expect(far(dart.point, (elbowDarts(sleeve)[i] as Dart).point)).toBeLessThan(0.05)
    })
    expect(done(draft, ['elbow dart intake', { intake: '32 mm' }]).pattern).toBe(draft)
  })
})

describe('elbow darts', () => {
  const draft = drafted()

  it('move alike on the left and on the right', () => {
    for (const step of [
      ['move elbow darts', { direction: 'up', by: '1/2' }],
      ['elbow dart intake', { intake: '1 1/2' }],
    ] as const) {
      const left = pieceOf(done(draft, [step[0], step[1], 'left']).pattern, 'sleeve left')
      const right = pieceOf(done(draft, [step[0], step[1], 'right']).pattern, 'sleeve right')
      for (const dart of elbowDarts(right)) {
        const twin = elbowDarts(left).find((d) => d.id === dart.id) as Dart
        expect(twin.point.x).toBeCloseTo(-dart.point.x, 4)
        expect(twin.point.y).toBeCloseTo(dart.point.y, 4)
      }
      for (const s of right.seams) expect(lengthOf(s)).toBeCloseTo(lengthOf(seam(left, s.id)), 3)
      const elbow = (piece: Piece) => piece.lines.find((l) => l.id === 'elbow line')?.path.at(-1)?.p3 as XY
      expect(elbow(left).x).toBeCloseTo(-elbow(right).x, 4)
    }
  })

  it('are refused what cannot be', () => {
    expect(codeOf(corrected(draft, ['move elbow darts', { direction: 'up', by: '4' }]))).toBe('no-room-for-darts')
    expect(codeOf(corrected(draft, ['move elbow darts', { direction: 'forward', by: '3' }]))).toBe(
      'dart-length-out-of-range',
    )
    expect(codeOf(corrected(draft, ['elbow dart intake', { intake: '4' }]))).toBe('elbow-intake-out-of-range')
    const none = {
      ...draft,
      pieces: draft.pieces.map((p) => (p.id === 'sleeve' ? { ...p, darts: [] } : p)),
    }
    expect(codeOf(corrected(none, ['elbow dart intake', { intake: '1' }]))).toBe('no-elbow-darts')
    expect(codeOf(corrected({ pieces: [], joins: [] }, ['move elbow darts', { direction: 'up', by: '1' }]))).toBe(
      'no-such-seam',
    )
  })
})
