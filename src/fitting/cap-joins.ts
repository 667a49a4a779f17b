import type { Join, Pattern } from '../pattern/pattern.ts'
import { isCapJoin, joinLengths, lineOf } from '../pattern/sewn-line.ts'
import type { CapHalf, CapLine } from './cap-line.ts'

/** The join that sews a half of the cap in, of both sides of the body the first; undefined where none does. */
export function capJoin(pattern: Pattern, cap: CapLine, half: CapHalf): Join | undefined {
  return capJoins(pattern, cap, half)[0]
}

/** All joins that sew a half of the cap in: two where one pair of sleeves is set into a bodice whose sides differ. */
export function capJoins(pattern: Pattern, cap: CapLine, half: CapHalf): Join[] {
  return pattern.joins.filter(
    (join) =>
      isCapJoin(join) &&
      lineOf(pattern, join.a).stretches.some(
        ({ piece, seam, from, to }) =>
          piece.id === cap.piece.id && seam.id === half.seam.id && to - from > half.length / 2,
      ),
  )
}

/** Cap less armscye, mm. */
export function easeOf(pattern: Pattern, join: Join): number {
  return joinLengths(pattern, join).ease
}
