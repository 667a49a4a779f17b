import { pathLength } from '../geometry/path-length.ts'
import type { Join } from '../pattern/pattern.ts'
import type { Bodice } from './bodice.ts'
import { CAP, EQUAL_SEAMS, SHOULDER } from './defaults.ts'
import type { Sleeve } from './sleeve.ts'

/** How the pieces of a symmetrical pattern are sewn; `Join` says which is `a` and in which order lists run. */
export function draftJoins(bodice: Bodice, sleeve: Sleeve): Join[] {
  const { capEase } = sleeve
  const sideEase = eased(bodice)
  const shoulderEase = bodice.frame.back.shoulder.dart ? 0 : SHOULDER.backEase
  return [
    {
      id: 'front cap',
      a: [{ piece: 'sleeve', seam: 'front cap', reversed: false }],
      b: [{ piece: 'bodice front', seam: 'armscye', reversed: false }],
      ease: { min: 0, target: capEase.front, max: capEase.most * (1 - CAP.backShare) },
    },
    {
      id: 'back cap',
      a: [{ piece: 'sleeve', seam: 'back cap', reversed: true }],
      b: [{ piece: 'bodice back', seam: 'armscye', reversed: false }],
      ease: { min: 0, target: capEase.back, max: capEase.most * CAP.backShare },
    },
    {
      id: 'underarm seam',
      a: [{ piece: 'sleeve', seam: 'back underarm seam', reversed: false }],
      b: [{ piece: 'sleeve', seam: 'front underarm seam', reversed: true }],
      ease: { min: -EQUAL_SEAMS, target: 0, max: EQUAL_SEAMS },
    },
    {
      id: 'shoulder',
      a: [{ piece: 'bodice back', seam: 'shoulder', reversed: true }],
      b: [{ piece: 'bodice front', seam: 'shoulder', reversed: true }],
      ease: { min: shoulderEase - EQUAL_SEAMS, target: shoulderEase, max: shoulderEase + EQUAL_SEAMS },
    },
    {
      id: 'side seam',
      a: [{ piece: 'bodice back', seam: 'side seam', reversed: true }],
      b: [{ piece: 'bodice front', seam: 'side seam', reversed: true }],
      ease: { min: sideEase - EQUAL_SEAMS, target: sideEase, max: sideEase + EQUAL_SEAMS },
    },
  ]
}

/** Side seam back less front, mm: 0 with a bust dart; without one a small bust difference is eased into the back. */
function eased(bodice: Bodice): number {
  const length = (half: Bodice['back']) => half.side.parts.reduce((sum, part) => sum + pathLength(part), 0)
  return bodice.front.side.dart ? 0 : length(bodice.back) - length(bodice.front)
}
