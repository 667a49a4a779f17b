import { startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { point } from '../geometry/point.ts'
import type { Landmark, Line, Notch, Piece, Seam } from '../pattern/piece.ts'
import { allowanceFor, openingAllowance, type SeamAllowances } from './allowances.ts'
import type { Bodice, BodiceHalf } from './bodice.ts'
import type { Choices, Opening } from './choices.ts'
import { MARKS, NOTCH } from './defaults.ts'
import { levelLine, straightLine, uprightLine } from './lines.ts'
import { backNotchAt, frontNotchAt } from './notches.ts'

/** The back of half a bodice as a piece: the wearer's right back, face up. */
export function bodiceBack(bodice: Bodice, choices: Choices, allowances: SeamAllowances): Piece {
  const { back } = bodice
  const at = backNotchAt(pathLength(back.armscye))
  return piece(back, {
    id: 'bodice back',
    opening: 'center back',
    choices,
    allowances,
    notches: [{ id: 'back notch', seam: 'armscye', along: at, marks: 2, step: NOTCH.pairStep }, sideNotch(bodice)],
    lines: [
      ...present(levelLine('bust line', [...back.side.parts, back.center], bodice.frame.bust.point.y)),
      uprightLine(
        'back width line',
        back.frame.width,
        back.frame.underarm.y,
        back.frame.shoulder.tip.y - MARKS.belowShoulder,
      ),
    ],
    landmarks: [],
  })
}

/** The front of half a bodice as a piece: the wearer's left front, face up. */
export function bodiceFront(bodice: Bodice, choices: Choices, allowances: SeamAllowances): Piece {
  const { front } = bodice
  const at = frontNotchAt(pathLength(front.armscye))
  return piece(front, {
    id: 'bodice front',
    opening: 'center front',
    choices,
    allowances,
    notches: [{ id: 'front notch', seam: 'armscye', along: at, marks: 1 }, sideNotch(bodice)],
    lines: [
      // Only to the bust point: beyond it the bust dart lies on the line.
      straightLine('bust line', point(0, bodice.frame.bust.point.y), bodice.frame.bust.point),
      uprightLine(
        'front width line',
        front.frame.width,
        front.frame.underarm.y,
        front.frame.shoulder.tip.y - MARKS.belowShoulder,
      ),
    ],
    landmarks: [{ id: 'bust point', at: bodice.frame.bust.point }],
  })
}

interface PiecePlan {
  readonly id: 'bodice back' | 'bodice front'
  /** The opening that parts this piece at its center. */
  readonly opening: Opening
  readonly choices: Choices
  readonly allowances: SeamAllowances
  readonly notches: readonly Notch[]
  readonly lines: readonly Line[]
  readonly landmarks: readonly Landmark[]
}

function piece(half: BodiceHalf, plan: PiecePlan): Piece {
  const open = plan.choices.opening === plan.opening
  const seam = (id: string, parts: Seam['parts']): Seam => ({ id, parts, allowance: allowanceFor(plan.allowances, id) })
  const center = plan.opening
  const armscyeLength = pathLength(half.armscye)
  return {
    id: plan.id,
    name: plan.id,
    side: open ? 'pair' : 'fold',
    cut: open ? 2 : 1,
    seams: [
      seam('waist', half.waist.parts),
      seam('side seam', half.side.parts),
      seam('armscye', [half.armscye]),
      seam('shoulder', half.shoulder),
      seam('neckline', [half.neckline]),
      { id: center, parts: [half.center], allowance: open ? openingAllowance(plan.allowances, center) : 0 },
    ],
    darts: half.darts,
    notches: plan.notches,
    lines: [
      grain(half),
      straightLine('underarm line', point(0, half.frame.underarm.y), half.frame.underarm),
      ...plan.lines,
      straightLine('waist line', point(0, 0), point(half.frame.underarm.x * MARKS.waistLine, 0)),
    ],
    landmarks: [
      { id: 'underarm', seam: 'armscye', along: 0 },
      { id: 'shoulder point', seam: 'armscye', along: armscyeLength },
      { id: 'neck point', seam: 'shoulder', along: half.shoulder.reduce((sum, part) => sum + pathLength(part), 0) },
      ...plan.landmarks,
    ],
  }
}

/** Parallel to the center, halfway to the first waist dart, or to the width line's quarter where there is none. */
function grain(half: BodiceHalf): Line {
  const mouth = half.waist.darts[0]?.mouth[0].x ?? half.frame.width / 2
  // Below the neckline, which is lowest at the center.
  const top = Math.min(half.frame.shoulder.tip.y * MARKS.bodiceGrain.to, startOf(half.center).y - MARKS.belowNeckline)
  return straightLine('grain', point(mouth / 2, half.frame.underarm.y * MARKS.bodiceGrain.from), point(mouth / 2, top))
}

/** A balance mark on the side seam, halfway up the part below the bust dart: the same distance from the waist on both sides. */
function sideNotch(bodice: Bodice): Notch {
  const below = bodice.front.side.parts[0]
  return { id: 'side notch', seam: 'side seam', along: below ? pathLength(below) / 2 : 0, marks: 1 }
}

function present<T>(value: T | undefined): T[] {
  return value === undefined ? [] : [value]
}
