import type { Body, BodyHalf } from '../../src/body/body.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'

/** A complete body of the tests by bust and upper arm, mm; the rest in common proportions. */
export function body(bust: number, arm: number, changes: Readonly<Record<string, number>>): Body {
  const half = Object.fromEntries(
    Object.entries({
      'neck base girth': bust * 0.15 + 226,
      'shoulder length': 128,
      'shoulder slope': (22 * Math.PI) / 180,
      'upper chest girth': bust - 30,
      'bust girth': bust,
      'waist girth': bust * 0.8,
      'back waist length': 416,
      'scye depth': bust * 0.2 + 10,
      'back width': bust * 0.37,
      'front width': bust * 0.345,
      'front waist length': 440,
      'neck to bust point': 270,
      'bust point width': 190,
      'upper arm girth': arm,
      'elbow girth': arm * 0.87,
      'wrist girth': 165,
      'hand girth': 210,
      'outer arm length': 580,
      'shoulder to elbow': 340,
      ...changes,
    }).map(([name, value]) => [name, { value, estimated: false }]),
  ) as BodyHalf
  return { left: half, right: half }
}

export const BODIES: readonly (readonly [bust: number, arm: number])[] = [
  [860, 270],
  [959, 299],
  [1040, 330],
]

/** `changes` are measures that differ from the common proportions: a `front waist length` of 465 gives a bust dart. */
export function drafted(bust = 959, arm = 299, changes: Readonly<Record<string, number>> = {}): Pattern {
  const draft = draftPattern(body(bust, arm, changes))
  if (!draft.ok) throw new Error(draft.problems.map((p) => p.actual).join('; '))
  return draft.value.pattern
}
