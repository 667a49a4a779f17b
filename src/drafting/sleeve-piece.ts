import { endOf, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { point } from '../geometry/point.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { allowanceFor, type SeamAllowances } from './allowances.ts'
import { CAP, MARKS, NOTCH } from './defaults.ts'
import { levelLine, straightLine } from './lines.ts'
import { backNotchAt, frontNotchAt } from './notches.ts'
import type { Sleeve } from './sleeve.ts'

/** The sleeve as a piece: the wearer's right sleeve, face up. Notches by walking: as far from the underarm as the armscye's. */
export function sleevePiece(sleeve: Sleeve, allowances: SeamAllowances): Piece {
  const { cap, arm } = sleeve
  const seam = (id: string, parts: Seam['parts']): Seam => ({ id, parts, allowance: allowanceFor(allowances, id) })
  const frontLength = pathLength(cap.front)
  const backLength = pathLength(cap.back)
  const capLine = levelLine('cap line', [cap.front, cap.back], CAP.capLine * cap.height)
  return {
    id: 'sleeve',
    name: 'sleeve',
    side: 'pair',
    cut: 2,
    seams: [
      seam('wrist', [arm.wrist]),
      seam('front underarm seam', [arm.frontSeam]),
      seam('front cap', [cap.front]),
      seam('back cap', [cap.back]),
      seam('back underarm seam', arm.backSeam),
    ],
    darts: arm.darts,
    notches: [
      { id: 'front notch', seam: 'front cap', along: frontNotchAt(sleeve.frontArmscye), marks: 1 },
      { id: 'shoulder notch', seam: 'front cap', along: frontLength, marks: 1 },
      {
        id: 'back notch',
        seam: 'back cap',
        along: backLength - backNotchAt(sleeve.backArmscye),
        marks: 2,
        step: -NOTCH.pairStep,
      },
      { id: 'elbow notch', seam: 'front underarm seam', along: arm.frontElbowAlong, marks: 1 },
    ],
    lines: [
      straightLine(
        'grain',
        point(0, cap.height * MARKS.sleeveGrain.above),
        point(0, startOf(arm.elbowLine).y * MARKS.sleeveGrain.below),
      ),
      ...(capLine ? [capLine] : []),
      straightLine('biceps line', endOf(cap.back), startOf(cap.front)),
      { id: 'elbow line', path: arm.elbowLine },
      { id: 'forearm line', path: arm.forearmLine },
    ],
    landmarks: [
      { id: 'underarm', seam: 'front cap', along: 0 },
      { id: 'underarm', seam: 'back cap', along: backLength },
    ],
  }
}
