import type { Finding } from '../base/problem.ts'
import { inflections } from '../geometry/inflections.ts'
import type { Path } from '../geometry/path.ts'
import { tangentAt } from '../geometry/path-length.ts'
import { type Point, turnBetween } from '../geometry/point.ts'
import { seamAfter } from '../pattern/corners.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import type { Check } from './check.ts'

/** A bend of less than this is the pencil's width and no change of direction: a quarter of a degree. */
const UNSEEN = Math.PI / 720

/** Each side of a sleeve cap is hollow at the underarm and round at the crown, with one change between. */
export const capInflections: Check = {
  name: 'cap-inflections',
  looksAt: 'one change from hollow to round on each side of the cap, none at the crown',
  mild: true,
  run: ({ pattern }) =>
    pattern.pieces.flatMap((piece) =>
      piece.seams.filter((seam) => /^(front|back) cap\b/.test(seam.id)).flatMap((seam) => inflectionsOf(piece, seam)),
    ),
}

function inflectionsOf(piece: Piece, seam: Seam): Finding[] {
  const runs = bends(seam.parts.flat())
  // Anticlockwise round the piece a hollow turns clockwise, and the first of the two halves runs up to the crown.
  const upwards = /cap/.test(seamAfter(piece, seam).id) ? runs : [...runs].reverse()
  if (upwards.length === 2 && (upwards[0] as number) < 0) return []
  const words = upwards.map((turn) => (turn < 0 ? 'hollow' : 'round')).join(', ')
  return [
    {
      code: 'cap-not-fair',
      severity: 'warning',
      where: { piece: piece.id, seam: seam.id },
      actual: `from underarm to crown the cap is ${words || 'straight'}`,
      expected: 'hollow, then round',
      hint: 'spread the correction over a longer stretch, or smooth the cap by hand within 1 mm',
    },
  ]
}

/**
 * By how much a path turns between its inflections, radians, anticlockwise positive, corners between its cubics
 * included; bends too small to see are left out.
 */
export function bends(path: Path): number[] {
  const turns: number[] = []
  let last: Point | undefined
  for (const c of path) {
    for (const t of [0, ...inflections(c), 1]) {
      const next = tangentAt(c, t)
      if (last) turns.push(turnBetween(last, next))
      last = next
    }
  }
  return runsOf(runsOf(turns).filter((turn) => Math.abs(turn) >= UNSEEN))
}

/** Neighbours of one sign added together. */
function runsOf(turns: readonly number[]): number[] {
  const runs: number[] = []
  for (const turn of turns) {
    const last = runs[runs.length - 1]
    if (last !== undefined && Math.sign(last) === Math.sign(turn)) runs[runs.length - 1] = last + turn
    else if (turn !== 0) runs.push(turn)
  }
  return runs
}
