import type { Finding, Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { BodySide } from '../base/side.ts'
import type { LengthUnit } from '../base/units.ts'
import type { Body, BodyHalf } from '../body/body.ts'
import { MEASURE_NAMES } from '../body/measure.ts'
import { MOCK_UP_ALLOWANCES, type SeamAllowances } from './allowances.ts'
import { bodiceBack, bodiceFront } from './bodice-pieces.ts'
import { bothSides } from './both-sides.ts'
import { bustFindings } from './bust-findings.ts'
import type { Asked } from './change.ts'
import { choiceFindings } from './choice-findings.ts'
import { type Choices, STANDARD_CHOICES } from './choices.ts'
import type { Draft } from './draft.ts'
import { type DrawnHalf, drawHalf, neckWidthFor } from './draw-half.ts'
import { impossibleChoices } from './impossible-choices.ts'
import { draftJoins } from './joins.ts'
import { bothTables, measureTable } from './measure-table.ts'
import type { DraftedPieces } from './remeasure.ts'
import { withRemedies } from './remedies.ts'
import { bothProblems, type SidedProblem } from './sided-problem.ts'
import { sleevePiece } from './sleeve-piece.ts'
import { unlikelyDraft } from './unlikely-draft.ts'

/**
 * Drafts bodice front, bodice back and sleeve for a body. The cap meets its armscye, with the asked ease, to
 * 1e-6 mm; every asked measure is on the flat pattern within 0.1 mm (see `measures`). Problems say which measures
 * cannot be true together, with remedies found by drafting; nothing is clamped. With a
 * `unit` the remedies are written in it, rounded to the marks of its tape where they still work; else in mm.
 */
export function draftPattern(
  body: Body,
  choices: Choices = STANDARD_CHOICES,
  allowances: SeamAllowances = MOCK_UP_ALLOWANCES,
  unit?: LengthUnit,
): Result<Draft> {
  const asked: Asked = { body, choices }
  const drawn = drawOnce(asked)
  if ('left' in drawn) return success(drafted(asked, drawn, allowances))
  return failure(...withRemedies(drawn, asked, problemsOf, unit))
}

/** What is wrong shows when the lines are drawn: a remedy is tried without making pieces of them. */
function problemsOf(asked: Asked): readonly SidedProblem[] {
  const drawn = drawOnce(asked)
  return 'left' in drawn ? [] : drawn
}

/** The lines of both halves of the body, the same object where they are alike. */
interface BothDrawn {
  readonly left: DrawnHalf
  readonly right: DrawnHalf
}

/** The lines of both halves, or their problems. */
function drawOnce({ body, choices }: Asked): BothDrawn | readonly SidedProblem[] {
  const impossible = bothProblems(impossibleChoices(body.left, choices), impossibleChoices(body.right, choices), body)
  if (impossible.length > 0) return impossible
  const width = neckWidthFor(body, choices)
  const right = drawHalf(body.right, choices, width)
  const left = isSymmetrical(body) ? right : drawHalf(body.left, choices, width)
  if (!right.ok || !left.ok) return bothProblems(problemsIn(left), problemsIn(right), body)
  return { left: left.value, right: right.value }
}

function problemsIn(result: Result<DrawnHalf>): readonly Problem[] {
  return result.ok ? [] : result.problems
}

function drafted({ body, choices }: Asked, drawn: BothDrawn, allowances: SeamAllowances): Draft {
  const right = draftOfHalf(body.right, choices, allowances, drawn.right)
  if (drawn.left === drawn.right) return right
  const left = draftOfHalf(body.left, choices, allowances, drawn.left)
  return {
    pattern: bothSides(left.pattern, right.pattern),
    measures: bothTables(left.measures, right.measures),
    findings: bothFindings(left.findings, right.findings),
  }
}

/** The draft of one half of the body, as if the other half were its mirror image. */
function draftOfHalf(
  half: BodyHalf,
  choices: Choices,
  allowances: SeamAllowances,
  { bodice, sleeve }: DrawnHalf,
): Draft {
  const pieces: DraftedPieces = {
    back: bodiceBack(bodice, choices, allowances),
    front: bodiceFront(bodice, choices, allowances),
    sleeve: sleevePiece(sleeve, allowances),
  }
  return {
    pattern: { pieces: [pieces.back, pieces.front, pieces.sleeve], joins: draftJoins(bodice, sleeve) },
    measures: measureTable(half, choices, pieces, sleeve.upperArm),
    findings: [
      ...choiceFindings(half, choices, sleeve.upperArm),
      ...bodice.findings,
      ...bustFindings(bodice, choices),
      ...unlikelyDraft(half, pieces),
      ...sleeve.findings,
    ],
  }
}

function isSymmetrical({ left, right }: Body): boolean {
  return MEASURE_NAMES.every((name) => left[name]?.value === right[name]?.value)
}

/** Findings of both halves once, those of one half with its side. */
function bothFindings(left: readonly Finding[], right: readonly Finding[]): Finding[] {
  const same = (a: Finding) => (b: Finding) => a.code === b.code && a.actual === b.actual
  const of = (finding: Finding, side: BodySide): Finding => ({ ...finding, actual: `${side}: ${finding.actual}` })
  return [
    ...right.map((finding) => (left.some(same(finding)) ? finding : of(finding, 'right'))),
    ...left.filter((finding) => !right.some(same(finding))).map((finding) => of(finding, 'left')),
  ]
}
