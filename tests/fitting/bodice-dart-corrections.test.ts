import { describe, expect, it } from 'vitest'
import { dartIntake } from '../../src/fitting/corrections/dart-intake.ts'
import { lengthen } from '../../src/fitting/corrections/lengthen.ts'
import { letOut } from '../../src/fitting/corrections/let-out.ts'
import { moveBustPoint } from '../../src/fitting/corrections/move-bust-point.ts'
import { moveDart } from '../../src/fitting/corrections/move-dart.ts'
import { roundBack } from '../../src/fitting/corrections/round-back.ts'
import { swayBack } from '../../src/fitting/corrections/sway-back.ts'
import { cutLine } from '../../src/pattern/cut-line.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import {
  apart,
  attempt,
  codeOf,
  DARTED,
  dartOf,
  done,
  grown,
  HALVES,
  intake,
  len,
  newFindings,
  newTrouble,
  PATTERNS,
} from './bodice-tape.ts'
import { cubics, densePoints, seam, type XY } from './measure.ts'

describe.each(PATTERNS)('darts and backs on a bodice with %s', (_, pattern) => {
  it('sway back: the center loses the wedge, the side seam stays, the waist is trued (case 14)', () => {
    const { pattern: now, map } = done(pattern, swayBack, { by: '1/2' })
    expect(grown(pattern, now, 'bodice back', 'center back')).toBeCloseTo(-12.7, 4)
    const [old, next] = [pieceOf(pattern, 'bodice back'), pieceOf(now, 'bodice back')]
    for (const id of ['side seam', 'armscye', 'shoulder', 'neckline']) expect(seam(next, id)).toBe(seam(old, id))
    expect(Math.abs(grown(pattern, now, 'bodice back', 'waist'))).toBeLessThan(1)
    expect(pieceOf(now, 'bodice front')).toBe(pieceOf(pattern, 'bodice front'))
    expect(dartOf(now, 'bodice back', 'waist dart').point).toEqual(dartOf(pattern, 'bodice back', 'waist dart').point)
    expect(intake(dartOf(now, 'bodice back', 'waist dart'))).toBeCloseTo(
      intake(dartOf(pattern, 'bodice back', 'waist dart')),
      1,
    )
    expect(
      map.seam({ piece: 'bodice back', seam: 'center back', along: len(old, 'center back') - 45 })[0],
    ).toHaveProperty('gone')
    expect(newTrouble(pattern, now)).toEqual([])
    expect(codeOf(attempt(pattern, swayBack, { by: '1/2', 'above waist': '1/4' }))).toBe('wedge-below-waist')
    expect(codeOf(attempt(pattern, swayBack, { by: '1/2' }, 'right'))).toBe('both-sides-only')
  })

  it('round back: the center gains the wedge and stays straight, all sewn lengths stay', () => {
    const { pattern: now } = done(pattern, roundBack, { by: '3/8' })
    expect(grown(pattern, now, 'bodice back', 'center back')).toBeCloseTo(9.525, 4)
    for (const c of cubics(pieceOf(now, 'bodice back'), 'center back'))
      for (const p of [c.p0, c.p1, c.p2, c.p3]) expect(Math.abs(p.x)).toBeLessThan(1e-9)
    for (const id of ['shoulder', 'neckline', 'side seam', 'waist'])
      expect(Math.abs(grown(pattern, now, 'bodice back', id))).toBeLessThan(1e-4)
    expect(Math.abs(grown(pattern, now, 'bodice back', 'armscye'))).toBeLessThan(0.2)
    const dart = dartOf(now, 'bodice back', 'shoulder dart')
    expect(intake(dart)).toBeGreaterThan(6)
    expect(newTrouble(pattern, now)).toEqual([])
    // Once more: the dart that is there takes up the wedge.
    const twice = done(now, roundBack, { by: '1/8' }).pattern
    expect(pieceOf(twice, 'bodice back').darts.filter((d) => d.seam === 'shoulder')).toHaveLength(1)
    expect(intake(dartOf(twice, 'bodice back', 'shoulder dart'))).toBeGreaterThan(intake(dart))
    expect(
      len(pieceOf(twice, 'bodice back'), 'center back') - len(pieceOf(now, 'bodice back'), 'center back'),
    ).toBeCloseTo(3.175, 4)
  })

  it('moves the bust point and the darts that aim at it, intakes and sewn lengths staying', () => {
    for (const [direction, x, y] of [
      ['up', 0, 1],
      ['down', 0, -1],
      ['in', -1, 0],
      ['out', 1, 0],
    ] as const) {
      const { pattern: now } = done(pattern, moveBustPoint, { by: '3/8', direction })
      const [old, next] = [pieceOf(pattern, 'bodice front'), pieceOf(now, 'bodice front')]
      const at = (p: Piece) => p.landmarks.find((l) => l.id === 'bust point') as { at: XY }
      expect(at(next).at).toEqual({
        x: expect.closeTo(at(old).at.x + 9.525 * x, 9),
        y: expect.closeTo(at(old).at.y + 9.525 * y, 9),
      })
      for (const dart of old.darts) {
        const moved = dartOf(now, 'bodice front', dart.id)
        expect(apart(moved.point, { x: dart.point.x + 9.525 * x, y: dart.point.y + 9.525 * y })).toBeLessThan(1e-9)
        expect(intake(moved)).toBeCloseTo(intake(dart), 9)
      }
      for (const s of old.seams) expect(Math.abs(grown(pattern, now, 'bodice front', s.id))).toBeLessThan(0.5)
      const end = next.lines.find((l) => l.id === 'bust line')?.path.at(-1)?.p3 as XY
      expect(apart(end, at(next).at)).toBeLessThan(1e-9)
      expect(newTrouble(pattern, now)).toEqual([])
      expect(pieceOf(now, 'bodice back')).toBe(pieceOf(pattern, 'bodice back'))
    }
  })

  it('takes more or less into a dart', () => {
    for (const [direction, mm] of [
      ['more', 6.35],
      ['less', -6.35],
    ] as const) {
      const { pattern: now } = done(pattern, dartIntake, { dart: 'waist dart', by: '1/4', direction })
      for (const id of HALVES) {
        expect(intake(dartOf(now, id, 'waist dart')) - intake(dartOf(pattern, id, 'waist dart'))).toBeCloseTo(mm, 6)
        expect(Math.abs(grown(pattern, now, id, 'waist') + mm)).toBeLessThan(0.1)
      }
      expect(newTrouble(pattern, now)).toEqual([])
      const front = done(pattern, dartIntake, { dart: 'waist dart', of: 'front', by: '1/4', direction }).pattern
      expect(pieceOf(front, 'bodice back')).toBe(pieceOf(pattern, 'bodice back'))
    }
    expect(codeOf(attempt(pattern, dartIntake, { dart: 'hip dart', by: '1/4', direction: 'more' }))).toBe(
      'no-such-dart',
    )
    expect(codeOf(attempt(pattern, dartIntake, { dart: 'waist dart', by: 3, direction: 'less' }))).toBe(
      'dart-too-small',
    )
    expect(codeOf(attempt(pattern, dartIntake, { dart: 'waist dart', by: 4, direction: 'more' }))).toBe(
      'dart-too-large',
    )
  })

  it('turns a dart to another seam: the angle and every sewn length stay', () => {
    for (const to of ['side seam', 'armscye', 'shoulder', 'neckline']) {
      for (const share of [undefined, '50 %']) {
        const { pattern: now } = done(pattern, moveDart, {
          dart: 'waist dart',
          of: 'front',
          'to seam': to,
          ...(share ? { share } : {}),
          ...(to === 'side seam' ? { at: { from: 'waist', toward: 'underarm', distance: 2 } } : {}),
        })
        const next = pieceOf(now, 'bodice front')
        for (const s of pieceOf(pattern, 'bodice front').seams)
          expect(Math.abs(grown(pattern, now, 'bodice front', s.id))).toBeLessThan(1e-4)
        expect(next.darts.filter((d) => d.seam === to).length).toBeGreaterThan(0)
        expect(newFindings(pattern, now)).toEqual([])
      }
    }
    const one = done(pattern, moveDart, { dart: 'waist dart', of: 'front', 'to seam': 'shoulder' }, 'right').pattern
    expect(dartOf(one, 'bodice front', 'waist dart right').seam).toBe('shoulder right')
    expect(dartOf(one, 'bodice front', 'waist dart left').seam).toBe('waist left')
    expect(codeOf(attempt(pattern, moveDart, { dart: 'waist dart', 'to seam': 'center front' }))).toBe('no-such-seam')
  })
})

/** A point laid over the line through a and b, as cloth folded there. */
function folded(p: XY, a: XY, b: XY): XY {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const off = (2 * ((p.x - a.x) * dy - (p.y - a.y) * dx)) / (dx * dx + dy * dy)
  return { x: p.x - off * dy, y: p.y + off * dx }
}

it.each([
  ['as drafted', undefined, {}],
  ['lengthened', lengthen, { part: 'bodice', by: '1/2' }],
  ['with more in the dart', dartIntake, { dart: 'waist dart', by: '1/4', direction: 'more' }],
  ['after a sway back', swayBack, { by: '1/2' }],
  ['let out at the waist', letOut, { seam: 'waist', by: '1/4' }],
])(
  'has cloth at the fold of every waist dart, %s: the allowance is the mirror of what it folds onto (case 20)',
  (_, correction, settings) => {
    const now = correction ? done(DARTED, correction, settings).pattern : DARTED
    for (const id of HALVES) {
      const piece = pieceOf(now, id)
      const { mouth, point } = dartOf(now, id, 'waist dart')
      const cut = densePoints(cutLine(piece))
      const side = (p: XY, a: XY, b: XY) => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)
      const middle = { x: (mouth[0].x + mouth[1].x) / 2, y: (mouth[0].y + mouth[1].y) / 2 }
      // Below the mouth, between the legs carried on.
      const wedge = cut.filter(
        (p) =>
          side(p, point, mouth[0]) > 1e-6 &&
          side(p, point, mouth[1]) < -1e-6 &&
          apart(p, point) > apart(mouth[0], point) - 1,
      )
      expect(wedge.length).toBeGreaterThan(20)
      for (const p of wedge) {
        // Folded at the middle, then laid over the leg toward the center.
        const half = side(p, point, middle) > 0 ? folded(p, point, middle) : p
        const on = folded(half, point, mouth[0])
        expect(Math.min(...cut.map((q) => apart(q, on)))).toBeLessThan(0.3)
      }
    }
  },
)

it('turns a bust dart to the shoulder and takes it up again there', () => {
  const now = done(DARTED, moveDart, { dart: 'bust dart', 'to seam': 'shoulder' }).pattern
  const front = pieceOf(now, 'bodice front')
  expect(seam(front, 'side seam').parts).toHaveLength(1)
  expect(dartOf(now, 'bodice front', 'bust dart').seam).toBe('shoulder')
  const again = done(now, moveDart, {
    dart: 'bust dart',
    'to seam': 'side seam',
    at: { from: 'underarm', toward: 'waist', distance: 2 },
  })
  expect(again.map.seam({ piece: 'bodice front', seam: 'side seam', along: 40 })).toEqual([
    { piece: 'bodice front', seam: 'side seam', along: 40 },
  ])
  expect(newFindings(DARTED, again.pattern)).toEqual([])
})
