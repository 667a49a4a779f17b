import { describe, expect, it } from 'vitest'
import { bends } from '../../src/checks/cap-inflections.ts'
import { runChecks } from '../../src/checks/checks.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, seamOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { cubics, frameAt, largestCorner, lengthOf, outlineOf, seam, shiftAt, type XY } from './measure.ts'
import { codeOf, corrected, done, ease } from './replayed.ts'

const length = (pattern: Pattern, id: string) => lengthOf(seam(pieceOf(pattern, 'sleeve'), id))

/** From underarm to underarm, and from the biceps line to the crown, on the drawing. */
function bicepsWidth(pattern: Pattern): number {
  const sleeve = pieceOf(pattern, 'sleeve')
  const [a, b] = [cubics(sleeve, 'front cap')[0]?.p0 as XY, cubics(sleeve, 'back cap').at(-1)?.p3 as XY]
  return Math.hypot(a.x - b.x, a.y - b.y)
}

function capHeight(pattern: Pattern): number {
  const sleeve = pieceOf(pattern, 'sleeve')
  return (cubics(sleeve, 'front cap').at(-1)?.p3.y as number) - (cubics(sleeve, 'front cap')[0]?.p0.y as number)
}

/** How far the seam lies from the other along the elbow line, on the side of the elbow line's end that is nearest to it. */
function elbowWidth(pattern: Pattern): number {
  const sleeve = pieceOf(pattern, 'sleeve')
  const line = sleeve.lines.find((l) => l.id === 'elbow line')?.path ?? []
  const [a, b] = [line[0]?.p0 as XY, line.at(-1)?.p3 as XY]
  return Math.hypot(a.x - b.x, a.y - b.y)
}

describe.each(BODIES)('on a bust of %d and an arm of %d', (bust, arm) => {
  const draft = drafted(bust, arm)
  const sleeve = pieceOf(draft, 'sleeve')

  it.each([
    ['widen', 1],
    ['narrow', -1],
  ] as const)(
    '%s at the upper arm changes the biceps line by the amount and keeps the length of the cap',
    (name, sign) => {
      const now = done(draft, [name, { at: 'upper arm', by: '1' }]).pattern
      const next = pieceOf(now, 'sleeve')
      expect(bicepsWidth(now) - bicepsWidth(draft)).toBeCloseTo(sign * 25.4, 6)
      for (const id of ['front cap', 'back cap']) {
        expect(length(now, id)).toBeCloseTo(length(draft, id), 3)
        expect(ease(now, id)).toBeCloseTo(ease(draft, id), 3)
        expect(bends(cubics(next, id))).toHaveLength(2)
        expect(largestCorner(cubics(next, id))).toBeLessThan(largestCorner(cubics(sleeve, id)) + 1e-6)
      }
      // A wider arm under the same length of cap: the cap is lower, and the other way round.
      expect(Math.sign(capHeight(now) - capHeight(draft))).toBe(-sign)
      const grown = ['front underarm seam', 'back underarm seam'].map((id) => length(now, id) - length(draft, id))
      expect(Math.abs((grown[0] as number) - (grown[1] as number))).toBeLessThan(0.1)
      // The underarm part of the cap goes along as it is.
      const [old, moved] = [sleeve, next].map((piece) => cubics(piece, 'front cap'))
      for (const along of [10, 25, 37]) {
        const [a, b] = [frameAt(old as never, along).point, frameAt(moved as never, along).point]
        expect(b.x - a.x).toBeCloseTo(sign * 12.7, 4)
        expect(b.y - a.y).toBeCloseTo(0, 4)
      }
      expect(seamOf(next, 'wrist')).toBe(seamOf(sleeve, 'wrist'))
      expect(next.darts).toEqual(sleeve.darts)
      expect(outlineOf(next).gaps).toBeLessThan(1e-9)
      const codes = runChecks({ pattern: now, measures: [], units: 'mm' }).filter((f) => f.severity === 'error')
      expect(codes).toEqual([])
    },
  )

  it('widen at the upper arm can keep the cap height instead, and the cap gets longer', () => {
    const now = done(draft, ['widen', { at: 'upper arm', by: '1/2', keep: 'cap height' }]).pattern
    expect(bicepsWidth(now) - bicepsWidth(draft)).toBeCloseTo(12.7, 6)
    expect(capHeight(now)).toBeCloseTo(capHeight(draft), 6)
    for (const id of ['front cap', 'back cap']) {
      expect(ease(now, id) - ease(draft, id)).toBeGreaterThan(2)
      expect(ease(now, id) - ease(draft, id)).toBeLessThan(6.35)
    }
    const matched = done(now, ['rematch cap', {}]).pattern
    for (const id of ['front cap', 'back cap']) expect(ease(matched, id)).toBeCloseTo(ease(draft, id), 2)
  })

  it.each([
    ['widen', 1],
    ['narrow', -1],
  ] as const)('%s at the wrist changes its stitching line by the amount, half at each seam', (name, sign) => {
    const now = done(draft, [name, { at: 'wrist', by: '1/2' }]).pattern
    expect(length(now, 'wrist') - length(draft, 'wrist')).toBeCloseTo(sign * 12.7, 1)
    const [old, next] = [sleeve, pieceOf(now, 'sleeve')].map((piece) => cubics(piece, 'wrist'))
    const ends = (path: typeof old) => [path?.[0]?.p0 as XY, path?.at(-1)?.p3 as XY] as const
    for (const k of [0, 1] as const) {
      const [a, b] = [ends(old)[k], ends(next)[k]]
      expect(Math.abs(Math.hypot(a.x - b.x, a.y - b.y) - 6.35)).toBeLessThan(0.05)
    }
    expect(length(now, 'back underarm seam') - length(now, 'front underarm seam')).toBeCloseTo(
      length(draft, 'back underarm seam') - length(draft, 'front underarm seam'),
      4,
    )
    expect(seamOf(pieceOf(now, 'sleeve'), 'front cap')).toBe(seamOf(sleeve, 'front cap'))
    expect(runChecks({ pattern: now, measures: [], units: 'mm' })).toEqual([])
  })

  it.each([
    ['widen', 1],
    ['narrow', -1],
  ] as const)('%s at the elbow changes the elbow line by the amount', (name, sign) => {
    const now = done(draft, [name, { at: 'elbow', by: '1/2' }]).pattern
    // The drafted line ends up to 0.2 mm short of the seam between the darts; now it meets the seam.
    expect(Math.abs(elbowWidth(now) - elbowWidth(draft) - sign * 12.7)).toBeLessThan(0.25)
    const front = cubics(sleeve, 'front underarm seam')
    const notch = sleeve.notches.find((n) => n.id === 'elbow notch')?.along as number
    const out = shiftAt(front, notch, cubics(pieceOf(now, 'sleeve'), 'front underarm seam'))
    // Square to the seam, which leans to the elbow line by up to 13°.
    expect(Math.abs(out - sign * 6.35)).toBeLessThan(0.2)
    expect(length(now, 'back underarm seam') - length(now, 'front underarm seam')).toBeCloseTo(
      length(draft, 'back underarm seam') - length(draft, 'front underarm seam'),
      4,
    )
    expect(Math.abs(length(now, 'wrist') - length(draft, 'wrist'))).toBeLessThan(0.02)
    expect(bicepsWidth(now)).toBe(bicepsWidth(draft))
    expect(runChecks({ pattern: now, measures: [], units: 'mm' })).toEqual([])
  })

  it('let out and take in move underarm seams and wrist evenly front and back', () => {
    for (const [name, sign] of [
      ['let out', 1],
      ['take in', -1],
    ] as const) {
      const now = done(draft, [
        name,
        { seam: 'underarm seam', at: { from: 'underarm', toward: 'wrist', distance: '3' }, by: '1/4' },
      ]).pattern
      for (const id of ['front underarm seam', 'back underarm seam']) {
        const [old, next] = [sleeve, pieceOf(now, 'sleeve')].map((piece) => seam(piece, id))
        const down = id.startsWith('front') ? lengthOf(old as never) - 76.2 : 76.2
        const part = id.startsWith('front') ? cubics(sleeve, id) : (old?.parts[0] ?? [])
        const moved = id.startsWith('front') ? cubics(pieceOf(now, 'sleeve'), id) : (next?.parts[0] ?? [])
        expect(Math.abs(shiftAt(part, down, moved) - sign * 6.35)).toBeLessThan(0.05)
      }
      const change = (id: string) => length(now, id) - length(draft, id)
      expect(Math.abs(change('front underarm seam') - change('back underarm seam'))).toBeLessThan(0.5)
      const hem = done(draft, [name, { seam: 'wrist', by: '1/2' }]).pattern
      for (const id of ['front underarm seam', 'back underarm seam']) {
        expect(Math.abs(length(hem, id) - length(draft, id) - sign * 12.7)).toBeLessThan(0.05)
      }
    }
  })
})

describe('the width of one sleeve', () => {
  const draft = drafted()

  it('changes on one side only, and alike on the left and on the right', () => {
    for (const at of ['upper arm', 'elbow', 'wrist']) {
      const make = (side: 'left' | 'right') => done(draft, ['widen', { at, by: '1/2' }, side]).pattern
      const [left, right] = [pieceOf(make('left'), 'sleeve left'), pieceOf(make('right'), 'sleeve right')]
      for (const s of right.seams) expect(lengthOf(s), `${at} ${s.id}`).toBeCloseTo(lengthOf(seam(left, s.id)), 2)
      for (const s of pieceOf(make('left'), 'sleeve right').seams)
        expect(s).toEqual(seamOf(pieceOf(draft, 'sleeve'), s.id))
    }
  })

  it('is refused where it cannot be', () => {
    expect(codeOf(corrected(draft, ['widen', { at: 'upper arm', by: '12' }]))).toBe('too-much-at-once')
    expect(codeOf(corrected(draft, ['widen', { at: 'wrist', by: '1', keep: 'cap height' }]))).toBe('nothing-to-keep')
    expect(
      codeOf(corrected(draft, ['widen', { at: 'upper arm', by: '3' }], ['widen', { at: 'upper arm', by: '3' }])),
    ).toMatch(/^cap-/)
    expect(codeOf(corrected({ pieces: [], joins: [] }, ['widen', { at: 'wrist', by: '1' }]))).toBe('no-such-seam')
    const plain = {
      ...draft,
      pieces: draft.pieces.map((p) => ({ ...p, notches: p.notches.filter((n) => n.id !== 'elbow notch') })),
    }
    expect(codeOf(corrected(plain, ['widen', { at: 'elbow', by: '1/2' }]))).toBe('no-elbow-notch')
  })
})
