import type { Finding } from '../base/problem.ts'
import { type BodyHalf, measureOf } from '../body/body.ts'
import { seamOf, seamStart } from '../pattern/seam.ts'
import { LIKELY } from './defaults.ts'
import { type DraftedPieces, remeasure } from './remeasure.ts'

/**
 * What the draft came to that is unlike other drafts, or unlike measures that serve as checks only: warnings that name
 * the measures to take again.
 */
export function unlikelyDraft(half: BodyHalf, pieces: DraftedPieces): Finding[] {
  return [...neckWidth(half, pieces), ...armscyeGirth(half, pieces), ...centerFront(half, pieces)]
}

/** The back neck width, solved for the girth, lies between N/6 and N/5 (read: School Sewing; 1916 "To Draft Shirt"). */
function neckWidth(half: BodyHalf, { back }: DraftedPieces): Finding[] {
  const girth = measureOf(half, 'neck base girth')
  const width = seamStart(seamOf(back, 'neckline')).x
  if (width >= girth / LIKELY.neckWidth.most && width <= girth / LIKELY.neckWidth.least) return []
  return [
    {
      code: 'neck-width-unusual',
      severity: 'warning',
      where: { field: 'body.neck base girth', piece: 'bodice back', seam: 'neckline' },
      actual: `a back neck width of ${width.toFixed(1)} mm, which goes ${(girth / width).toFixed(2)} times into the neck base girth of ${girth.toFixed(0)} mm`,
      expected: `from a sixth to a fifth, ${(girth / LIKELY.neckWidth.most).toFixed(1)} mm to ${(girth / LIKELY.neckWidth.least).toFixed(1)} mm`,
      hint: 'measure neck base girth and shoulder slope again; with neckline ease the neck is as much wider',
    },
  ]
}

function armscyeGirth(half: BodyHalf, pieces: DraftedPieces): Finding[] {
  const body = half['armscye girth']
  const drafted = remeasure(pieces)['armscye girth']
  if (!body || drafted === undefined) return []
  const share = drafted / body.value
  const { least, most } = LIKELY.armscye
  if (share >= least && share <= most) return []
  return [
    {
      code: 'armscye-unlike-body',
      severity: 'warning',
      where: { field: 'body.armscye girth', piece: 'bodice front', seam: 'armscye' },
      actual: `the armscye is drafted ${drafted.toFixed(0)} mm round on an armscye girth of ${body.value.toFixed(0)} mm`,
      expected: `${(least * body.value).toFixed(0)} mm to ${(most * body.value).toFixed(0)} mm`,
      hint: 'measure armscye girth, scye depth, shoulder length, back width and front width again',
    },
  ]
}

function centerFront(half: BodyHalf, pieces: DraftedPieces): Finding[] {
  const body = half['front neck to waist']
  const drafted = remeasure(pieces)['front neck to waist']
  if (!body || drafted === undefined || Math.abs(drafted - body.value) <= LIKELY.centerFront) return []
  return [
    {
      code: 'center-front-unlike-body',
      severity: 'warning',
      where: { field: 'body.front neck to waist', piece: 'bodice front', seam: 'center front' },
      actual: `the center front is drafted ${drafted.toFixed(0)} mm long on a front neck to waist of ${body.value.toFixed(0)} mm`,
      expected: `within ${LIKELY.centerFront} mm of it`,
      hint: 'measure front neck to waist, front waist length and back waist length again',
    },
  ]
}
