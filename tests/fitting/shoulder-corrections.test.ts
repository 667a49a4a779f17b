import { describe, expect, it } from 'vitest'
import { forwardShoulder } from '../../src/fitting/corrections/forward-shoulder.ts'
import { shoulderSlope } from '../../src/fitting/corrections/shoulder-slope.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { corner, done, grown, HALVES, len, newTrouble, PATTERNS, walked } from './bodice-tape.ts'
import { seam } from './measure.ts'

describe.each(PATTERNS)('shoulders on a bodice with %s', (_, pattern) => {
  it.each(['down', 'up'])(
    'slope %s: both shoulders alike, the armscye goes with them and keeps its length (case 12)',
    (direction) => {
      const { pattern: now } = done(pattern, shoulderSlope, { by: '1/4', direction })
      for (const id of HALVES) {
        const [old, next] = [pieceOf(pattern, id), pieceOf(now, id)]
        expect(len(next, 'shoulder')).toBeCloseTo(len(old, 'shoulder'), 6)
        const [a, b] = [corner(old, 'armscye', -1), corner(next, 'armscye', -1)]
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(6.35, 6)
        expect(b.y < a.y).toBe(direction === 'down')
        // The sleeve still fits: front and back armscye apart.
        expect(Math.abs(grown(pattern, now, id, 'armscye'))).toBeLessThan(0.005)
        const [u, v] = [corner(old, 'armscye', 0), corner(next, 'armscye', 0)]
        expect(v.x).toBeCloseTo(u.x, 9)
        expect(Math.abs(v.y - u.y)).toBeGreaterThan(4)
        expect(Math.abs(v.y - u.y)).toBeLessThan(8)
        expect(corner(next, 'neckline', 0)).toEqual(corner(old, 'neckline', 0))
        expect(Math.abs(grown(pattern, now, id, 'neckline'))).toBeLessThan(0.3)
      }
      const total = HALVES.reduce((sum, id) => sum + grown(pattern, now, id, 'armscye'), 0)
      expect(Math.abs(total)).toBeLessThan(0.01)
      expect(Math.abs(walked(now, 'side seam').ease - walked(pattern, 'side seam').ease)).toBeLessThan(0.05)
      expect(newTrouble(pattern, now)).toEqual([])
    },
  )

  it('leaves the armscye at the underarm when told to', () => {
    const { pattern: now } = done(pattern, shoulderSlope, { by: '1/4', direction: 'down', armscye: 'stays' })
    for (const id of HALVES) {
      expect(seam(pieceOf(now, id), 'side seam')).toBe(seam(pieceOf(pattern, id), 'side seam'))
      expect(grown(pattern, now, id, 'armscye')).toBeLessThan(-4)
    }
  })

  it('goes forward: the front armscye loses, the back gains, the total stays, the sleeve notch moves (case 11)', () => {
    for (const [direction, sign] of [
      ['forward', 1],
      ['back', -1],
    ] as const) {
      const { pattern: now } = done(pattern, forwardShoulder, { by: '3/8', direction })
      expect(grown(pattern, now, 'bodice front', 'armscye')).toBeCloseTo(-sign * 9.525, 4)
      expect(grown(pattern, now, 'bodice back', 'armscye')).toBeCloseTo(sign * 9.525, 4)
      for (const id of ['front cap', 'back cap', 'shoulder']) {
        expect(Math.abs(walked(now, id).ease - walked(pattern, id).ease)).toBeLessThan(0.1)
        walked(now, id).spans.forEach((span, i) => {
          const old = walked(pattern, id).spans[i]
          expect(`${span.from} ${span.to}`).toBe(`${old?.from} ${old?.to}`)
          expect(Math.abs(span.ease - (old?.ease as number))).toBeLessThan(0.1)
        })
      }
      const [old, next] = [pieceOf(pattern, 'sleeve'), pieceOf(now, 'sleeve')]
      expect(next.seams).toBe(old.seams)
      const at = (p: Piece) => {
        const notch = p.notches.find((n) => n.id === 'shoulder notch')
        return notch?.seam === 'front cap' ? notch.along : len(p, 'front cap') + (notch?.along ?? 0)
      }
      expect(at(next) - at(old)).toBeCloseTo(-sign * 9.525, 3)
      for (const id of HALVES)
        expect(corner(pieceOf(now, id), 'neckline', 0)).toEqual(corner(pieceOf(pattern, id), 'neckline', 0))
      expect(newTrouble(pattern, now)).toEqual([])
    }
  })

  it('do the same on one side, mirrored', () => {
    for (const [correction, settings] of [
      [forwardShoulder, { by: '3/8' }],
      [shoulderSlope, { by: '1/4', direction: 'down' }],
    ] as const) {
      const both = done(pattern, correction, settings).pattern
      const left = done(pattern, correction, settings, 'left').pattern
      const right = done(pattern, correction, settings, 'right').pattern
      for (const [half, side] of [
        [left, 'left'],
        [right, 'right'],
      ] as const) {
        const other = side === 'left' ? 'right' : 'left'
        expect(pieceOf(half, 'bodice front').side).toBe('whole')
        for (const id of ['armscye', 'shoulder', 'side seam']) {
          expect(len(pieceOf(half, 'bodice front'), `${id} ${side}`)).toBeCloseTo(
            len(pieceOf(both, 'bodice front'), id),
            2,
          )
          expect(len(pieceOf(half, 'bodice front'), `${id} ${other}`)).toBeCloseTo(
            len(pieceOf(pattern, 'bodice front'), id),
            4,
          )
          expect(len(pieceOf(half, `bodice back ${side}`), id)).toBeCloseTo(len(pieceOf(both, 'bodice back'), id), 2)
        }
        expect(newTrouble(pattern, half).filter((f) => !/ (left|right)/.test(f))).toEqual([])
      }
    }
  })
})
