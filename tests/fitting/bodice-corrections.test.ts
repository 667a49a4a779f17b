import { describe, expect, it } from 'vitest'
import { backWidth } from '../../src/fitting/corrections/back-width.ts'
import { dropNeckline } from '../../src/fitting/corrections/drop-neckline.ts'
import { frontWidth } from '../../src/fitting/corrections/front-width.ts'
import { lengthen } from '../../src/fitting/corrections/lengthen.ts'
import { letOut } from '../../src/fitting/corrections/let-out.ts'
import { lowerUnderarm } from '../../src/fitting/corrections/lower-underarm.ts'
import { raiseNeckline } from '../../src/fitting/corrections/raise-neckline.ts'
import { raiseUnderarm } from '../../src/fitting/corrections/raise-underarm.ts'
import { shorten } from '../../src/fitting/corrections/shorten.ts'
import { shoulderLength } from '../../src/fitting/corrections/shoulder-length.ts'
import { takeIn } from '../../src/fitting/corrections/take-in.ts'
import { isGone } from '../../src/fitting/position-map.ts'
import type { Cubic } from '../../src/geometry/cubic.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { attempt, codeOf, DARTED, done, grown, HALVES, len, newFindings, PATTERNS, walked } from './bodice-tape.ts'
import { cubics, mostWider, seam, shiftAt } from './measure.ts'

describe.each(PATTERNS)('on a bodice with %s', (_, pattern) => {
  it('lets whole side seams out alike, front and back', () => {
    for (const [correction, by, sign] of [
      [letOut, '1/2', 1],
      [takeIn, '1/4', -1],
    ] as const) {
      const { pattern: now } = done(pattern, correction, { seam: 'side seam', by })
      // Taken in, the seams end where they meet the hollows of the armscye, which differ front and back by a hair.
      const off = Math.abs(walked(now, 'side seam').ease - walked(pattern, 'side seam').ease)
      expect(off).toBeLessThan(sign > 0 ? 0.02 : 0.2)
      for (const id of HALVES) {
        const [old, next] = [pieceOf(pattern, id), pieceOf(now, id)]
        expect(
          Math.abs(
            shiftAt(seam(old, 'side seam').parts[0] as never, 20, seam(next, 'side seam').parts[0] as never) -
              sign * (by === '1/2' ? 12.7 : 6.35),
          ),
        ).toBeLessThan(0.02)
        expect(next.darts.map((d) => d.point)).toEqual(old.darts.map((d) => d.point))
      }
    }
  })

  it.each(['side seam', 'shoulder', 'waist', 'center back', 'armscye', 'neckline'])(
    'lets out and takes in the %s',
    (id) => {
      for (const correction of [letOut, takeIn]) {
        const { pattern: now } = done(pattern, correction, { seam: id, by: '1/8' })
        const changed = now.pieces.filter((p) => !pattern.pieces.includes(p))
        expect(changed.map((p) => p.id)).toEqual(
          id === 'center back' ? ['bodice back'] : expect.arrayContaining(['bodice back', 'bodice front']),
        )
      }
    },
  )

  it('lengthens and shortens the bodice inside: partners alike, notches meet, the rest as it was (case 19)', () => {
    for (const [correction, by, mm] of [
      [lengthen, '1/2', 12.7],
      [shorten, '3/8', -9.525],
      [lengthen, 2, 50.8],
    ] as const) {
      const { pattern: now, map } = done(pattern, correction, { part: 'bodice', by })
      for (const id of HALVES) {
        const piece = pieceOf(pattern, id)
        for (const same of ['armscye', 'shoulder', 'neckline'])
          expect(seam(pieceOf(now, id), same)).toBe(seam(piece, same))
        const center = id === 'bodice front' ? 'center front' : 'center back'
        expect(grown(pattern, now, id, center)).toBeCloseTo(mm, 4)
        // The part of the side seam that was cut is a straight line from its lower end to its moved upper one.
        const [low, high] = [0, -1].map((k) => seam(piece, 'side seam').parts[0]?.at(k)) as [Cubic, Cubic]
        const straight = (by: number) => Math.hypot(high.p3.x - low.p0.x, high.p3.y - low.p0.y + by)
        expect(grown(pattern, now, id, 'side seam')).toBeCloseTo(straight(mm) - straight(0), 4)
        expect(grown(pattern, now, id, 'waist')).toBeCloseTo(0, 4)
        const notch = (p: Pattern) => pieceOf(p, id).notches.find((n) => n.id === 'side notch')?.along as number
        // The notch lies on the line: it moves half way with what is below it or above it, on both pieces alike.
        const moved = map.seam({ piece: id, seam: 'side seam', along: notch(pattern) })[0]
        expect(moved && !isGone(moved) ? moved.along : Number.NaN).toBeCloseTo(notch(now), 6)
      }
      expect(
        Math.abs(grown(pattern, now, 'bodice front', 'side seam') - grown(pattern, now, 'bodice back', 'side seam')),
      ).toBeLessThan(0.1)
      const spans = walked(now, 'side seam').spans
      for (const [i, span] of spans.entries())
        expect(Math.abs(span.ease - (walked(pattern, 'side seam').spans[i]?.ease as number))).toBeLessThan(0.1)
      expect(newFindings(pattern, now)).toEqual([])
      expect(pieceOf(now, 'sleeve')).toBe(pieceOf(pattern, 'sleeve'))
    }
  })

  it('lengthens and shortens the sleeve above and below the elbow: darts and notches below move along (case 19)', () => {
    for (const part of ['above elbow', 'below elbow']) {
      for (const [correction, by, mm] of [
        [lengthen, '3/4', 19.05],
        [shorten, '1/2', -12.7],
      ] as const) {
        const { pattern: now } = done(pattern, correction, { part, by })
        const [old, next] = [pieceOf(pattern, 'sleeve'), pieceOf(now, 'sleeve')]
        for (const id of ['front cap', 'back cap']) expect(seam(next, id)).toBe(seam(old, id))
        // Less by the slant of the seam against the line it moves along, at most 19° on a large arm.
        for (const id of ['front underarm seam', 'back underarm seam'])
          expect(Math.abs(grown(pattern, now, 'sleeve', id) - mm)).toBeLessThan(0.055 * Math.abs(mm))
        expect(Math.abs(walked(now, 'underarm seam').ease - walked(pattern, 'underarm seam').ease)).toBeLessThan(0.2)
        expect(newFindings(pattern, now)).toEqual([])
        const intake = (p: Piece) =>
          p.darts.map((d) => Math.hypot(d.mouth[0].x - d.mouth[1].x, d.mouth[0].y - d.mouth[1].y))
        for (const [i, width] of intake(next).entries()) expect(width).toBeCloseTo(intake(old)[i] as number, 9)
        const elbow = (p: Piece) => p.lines.find((l) => l.id === 'elbow line')?.path[0]?.p0.y as number
        expect(elbow(next) - elbow(old)).toBeCloseTo(part === 'above elbow' ? -mm : 0, 6)
        expect(len(next, 'wrist')).toBeCloseTo(len(old, 'wrist'), 6)
      }
    }
    const one = done(pattern, lengthen, { part: 'above elbow', by: '3/4' }, 'left').pattern
    expect(len(pieceOf(one, 'sleeve right'), 'back underarm seam')).toBeCloseTo(
      len(pieceOf(pattern, 'sleeve'), 'back underarm seam'),
      5,
    )
    const both = done(pattern, lengthen, { part: 'above elbow', by: '3/4' }).pattern
    expect(len(pieceOf(one, 'sleeve left'), 'back underarm seam')).toBeCloseTo(
      len(pieceOf(both, 'sleeve'), 'back underarm seam'),
      2,
    )
  })

  it('raises and lowers the underarm: both side seams alike, the armscye says what it did', () => {
    for (const [correction, by, mm] of [
      [raiseUnderarm, '1/4', 6.35],
      [lowerUnderarm, '3/8', -9.525],
    ] as const) {
      const { pattern: now } = done(pattern, correction, { by })
      expect(Math.abs(walked(now, 'side seam').ease - walked(pattern, 'side seam').ease)).toBeLessThan(0.05)
      for (const id of HALVES) {
        expect(Math.abs(grown(pattern, now, id, 'side seam') - mm)).toBeLessThan(0.1)
        expect(
          Math.abs(shiftAt(cubics(pieceOf(pattern, id), 'armscye'), 0, cubics(pieceOf(now, id), 'armscye')) - mm),
        ).toBeLessThan(0.05)
        const change = grown(pattern, now, id, 'armscye')
        expect(Math.sign(change)).toBe(-Math.sign(mm))
      }
    }
  })

  it('makes back and front wider or narrower at the width line, on each side', () => {
    for (const [correction, id] of [
      [backWidth, 'bodice back'],
      [frontWidth, 'bodice front'],
    ] as const) {
      for (const [direction, sign] of [
        ['wider', 1],
        ['narrower', -1],
      ] as const) {
        const { pattern: now } = done(pattern, correction, { by: '1/4', direction })
        const [old, next] = [pieceOf(pattern, id), pieceOf(now, id)]
        expect(Math.abs(mostWider(cubics(old, 'armscye'), cubics(next, 'armscye')) - sign * 6.35)).toBeLessThan(0.03)
        for (const same of ['side seam', 'shoulder', 'waist', 'neckline'])
          expect(seam(next, same)).toBe(seam(old, same))
      }
    }
  })

  it('makes shoulders longer or shorter, front and back alike', () => {
    for (const [direction, mm] of [
      ['longer', 6.35],
      ['shorter', -6.35],
    ] as const) {
      const { pattern: now } = done(pattern, shoulderLength, { by: '1/4', direction })
      for (const id of HALVES) {
        expect(Math.abs(grown(pattern, now, id, 'shoulder') - mm)).toBeLessThan(0.2)
        expect(seam(pieceOf(now, id), 'side seam')).toBe(seam(pieceOf(pattern, id), 'side seam'))
      }
      expect(Math.abs(walked(now, 'shoulder').ease - walked(pattern, 'shoulder').ease)).toBeLessThan(0.1)
    }
  })

  it('drops and raises the neckline at the center, the fold staying a fold', () => {
    const { pattern: now } = done(pattern, dropNeckline, { by: '1/2', at: 'center front' })
    expect(grown(pattern, now, 'bodice front', 'center front')).toBeCloseTo(-12.7, 3)
    expect(pieceOf(now, 'bodice back')).toBe(pieceOf(pattern, 'bodice back'))
    const raised = done(pattern, raiseNeckline, { by: '1/4', at: ['center front', 'center back'] }).pattern
    expect(grown(pattern, raised, 'bodice front', 'center front')).toBeCloseTo(6.35, 3)
    expect(grown(pattern, raised, 'bodice back', 'center back')).toBeCloseTo(6.35, 3)
    for (const c of cubics(pieceOf(now, 'bodice front'), 'center front')) expect(c.p0.x).toBe(0)
    expect(codeOf(attempt(pattern, dropNeckline, { by: 1, at: 'center front' }, 'left'))).toBe('both-sides-only')
  })
})

it('names what it cannot do', () => {
  expect(codeOf(attempt(DARTED, lengthen, { part: 'bodice', by: 1 }, 'left'))).toBe('both-sides-only')
  expect(codeOf(attempt(DARTED, lengthen, { part: 'bodice', by: 12 }))).toBe('amount-too-large')
  expect(codeOf(attempt({ pieces: [], joins: [] }, lengthen, { part: 'above elbow', by: 1 }))).toBe('no-such-seam')
})
