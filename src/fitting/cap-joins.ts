import type { Join, Pattern } from '../pattern/pattern.ts'
import type { CapHalf, CapLine } from './cap-line.ts'
import { joinSpans, lineLength } from './join-line.ts'

/** The join that sews a half of the cap in, of both sides of the body the first; undefined where none does. */
export function capJoin(pattern: Pattern, cap: CapLine, half: CapHalf): Join | undefined {
  return capJoins(pattern, cap, half)[0]
}

/** All joins that sew a half of the cap in: two where one pair of sleeves is set into a bodice whose sides differ. */
export function capJoins(pattern: Pattern, cap: CapLine, half: CapHalf): Join[] {
  return pattern.joins.filter(
    (join) =>
      /^(front|back) cap\b/.test(join.id) &&
      joinSpans(pattern, join.a).some(
        (span) => span.piece === cap.piece.id && span.seam === half.seam.id && span.to - span.from > half.length / 2,
      ),
  )
}

/** Cap less armscye, mm. */
export function easeOf(pattern: Pattern, join: Join): number {
  return lineLength(joinSpans(pattern, join.a)) - lineLength(joinSpans(pattern, join.b))
}
