import type { Finding } from '../base/problem.ts'
import type { LengthUnit } from '../base/units.ts'
import { cornerOfLine } from '../pattern/corners.ts'
import type { Join, Pattern } from '../pattern/pattern.ts'
import { isCapJoin, joinLines } from '../pattern/sewn-line.ts'
import type { Check } from './check.ts'
import { sayLength } from './words.ts'

/** Hems that differ by no more turn up as one, mm. */
const EQUAL = 0.5

/** Hems turn up evenly across the seams that end at them: waist and wrist have one depth on both sides of a seam. */
export const hems: Check = {
  name: 'hems',
  looksAt: 'hems of one depth on both sides of every seam that ends at them',
  mild: true,
  run: ({ pattern, units }) =>
    pattern.joins
      .filter((join) => !isCapJoin(join))
      .flatMap((join) => (['start', 'end'] as const).flatMap((which) => even(pattern, join, which, units))),
}

function even(pattern: Pattern, join: Join, which: 'start' | 'end', units: LengthUnit): Finding[] {
  const lines = joinLines(pattern, join)
  const a = lines && cornerOfLine(lines.a, which)?.neighbor
  const b = lines && cornerOfLine(lines.b, which)?.neighbor
  if (!a || !b || !/^(waist|wrist|hem)\b/.test(a.id) || Math.abs(a.allowance - b.allowance) <= EQUAL) return []
  return [
    {
      code: 'hem-uneven',
      severity: 'warning',
      where: { join: join.id, seam: a.id },
      actual: `the ${a.id} turns up ${sayLength(a.allowance, units)} on one side of the ${join.id} and ${sayLength(b.allowance, units)} on the other`,
      expected: 'one depth on both sides',
      hint: `give the ${a.id} one allowance under mock-up`,
    },
  ]
}
