import type { Finding } from '../base/problem.ts'
import { area } from '../geometry/area.ts'
import { endOf, startOf } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'
import type { Piece } from '../pattern/piece.ts'
import { seamEnd, seamStart } from '../pattern/seam.ts'
import { bridgedOutline } from './bridged-outline.ts'
import type { Check } from './check.ts'
import { ofPieces } from './of-pieces.ts'

/** A wider gap between two curves is seen as a gap, mm. */
const TOUCHING = 0.001

/** The outline of every piece is closed: seams touch end to end and run anticlockwise; gaps are the mouths of darts. */
export const outline: Check = {
  name: 'outline',
  looksAt: 'closed outlines, seams end to end, anticlockwise',
  run: ofPieces((piece) => [...outlineGaps(piece), ...turning(piece)]),
}

/** What is open in the outline of a piece, apart from the mouths of its darts. */
export function outlineGaps(piece: Piece): Finding[] {
  return piece.seams.flatMap((seam, i) => {
    const next = piece.seams[(i + 1) % piece.seams.length] as typeof seam
    const open: [Point, Point][] = [[seamEnd(seam), seamStart(next)]]
    for (const part of seam.parts) {
      part.forEach((c, k) => {
        const following = part[k + 1]
        if (following) open.push([c.p3, following.p0])
      })
    }
    seam.parts.forEach((part, k) => {
      const following = seam.parts[k + 1]
      if (!following) return
      const mouth = piece.darts.some(
        (d) => distance(d.mouth[0], endOf(part)) < TOUCHING && distance(d.mouth[1], startOf(following)) < TOUCHING,
      )
      if (!mouth) open.push([endOf(part), startOf(following)])
    })
    return open
      .filter(([a, b]) => !(distance(a, b) < TOUCHING))
      .map(
        ([a, b]): Finding => ({
          code: 'outline-open',
          severity: 'error',
          where: { piece: piece.id, seam: seam.id },
          actual: `a gap of ${distance(a, b).toFixed(3)} mm`,
          expected: 'a closed outline, open only at the mouths of darts',
          hint: 'the outline must be closed to be cut: void the last correction of this seam',
        }),
      )
  })
}

function turning(piece: Piece): Finding[] {
  const enclosed = area(bridgedOutline(piece))
  if (enclosed > 0) return []
  return [
    {
      code: 'outline-turned',
      severity: 'error',
      where: { piece: piece.id },
      actual: 'the seams run clockwise',
      expected: 'seams that run anticlockwise round the piece',
      hint: 'the piece is drawn face down or turned inside out: void the last correction of this piece',
    },
  ]
}
