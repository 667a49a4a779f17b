import type { Finding } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { BodySide } from '../base/side.ts'
import { type Body, type BodyHalf, valueOf } from '../body/body.ts'
import { MEASURE_NAMES } from '../body/measure.ts'
import { MOCK_UP_ALLOWANCES, type SeamAllowances } from './allowances.ts'
import { type Bodice, bodice } from './bodice.ts'
import { bothSides } from './both-sides.ts'
import { bodiceBack, bodiceFront } from './bodice-pieces.ts'
import { type Choices, STANDARD_CHOICES } from './choices.ts'
import { BUST_DART } from './defaults.ts'
import type { Draft } from './draft.ts'
import { easeFor } from './ease.ts'
import { shoulderSlopes } from './frame.ts'
import { draftJoins } from './joins.ts'
import { bothTables, measureTable } from './measure-table.ts'
import { neckWidth } from './neckline.ts'
import type { DraftedPieces } from './remeasure.ts'
import { withRemedies } from './remedies.ts'
import { impossibleChoices } from './impossible-choices.ts'
import { sleeve } from './sleeve.ts'
import { sleevePiece } from './sleeve-piece.ts'

/**
 * Drafts bodice front, bodice back and sleeve for a body. The cap meets its armscye, with the asked ease, to
 * 1e-6 mm; every asked measure is on the flat pattern within 0.1 mm (see `measures`). Problems say which measures
 * cannot be true together, with remedies found by drafting; nothing is clamped.
 */
export function draftPattern(
  body: Body,
  choices: Choices = STANDARD_CHOICES,
  allowances: SeamAllowances = MOCK_UP_ALLOWANCES,
): Result<Draft> {
  const result = draftOnce(body, choices, allowances)
  if (result.ok) return result
  const drafts = (other: Body, others: Choices) => draftOnce(other, others, allowances).ok
  return failure(...result.problems.map((problem) => withRemedies(problem, body, choices, drafts)))
}

function draftOnce(body: Body, choices: Choices, allowances: SeamAllowances): Result<Draft> {
  const impossible = [body.right, body.left].map((half) => impossibleChoices(half, choices)).find((found) => found.length > 0)
  if (impossible) return failure(...impossible)
  const girth = valueOf(body.right, 'neck base girth') + easeFor(choices, 'neckline')
  const width = neckWidth(girth, shoulderSlopes(body.left), shoulderSlopes(body.right))
  const right = draftHalf(body.right, choices, allowances, width)
  if (!right.ok || isSymmetrical(body)) return right
  const left = draftHalf(body.left, choices, allowances, width)
  if (!left.ok) return left
  return success({
    pattern: bothSides(left.value.pattern, right.value.pattern),
    measures: bothTables(left.value.measures, right.value.measures),
    findings: bothFindings(left.value.findings, right.value.findings),
  })
}

/** The draft of one half of the body, as if the other half were its mirror image. */
function draftHalf(half: BodyHalf, choices: Choices, allowances: SeamAllowances, width: number): Result<Draft> {
  const drawn = bodice(half, choices, width)
  if (!drawn.ok) return drawn
  const arm = sleeve(half, choices, drawn.value)
  if (!arm.ok) return arm
  const pieces: DraftedPieces = {
    back: bodiceBack(drawn.value, choices, allowances),
    front: bodiceFront(drawn.value, choices, allowances),
    sleeve: sleevePiece(arm.value, allowances),
  }
  return success({
    pattern: { pieces: [pieces.back, pieces.front, pieces.sleeve], joins: draftJoins(drawn.value, arm.value) },
    measures: measureTable(half, choices, pieces, arm.value.upperArm),
    findings: [...drawn.value.findings, ...bustFindings(drawn.value, choices), ...arm.value.findings],
  })
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

/** What the draft did about the bust where nobody measured it, or where the difference is too small for a dart. */
function bustFindings({ frame, front }: Bodice, choices: Choices): Finding[] {
  const { bust } = frame
  const findings: Finding[] = []
  if (bust.from === 'estimated') {
    findings.push({
      code: 'bust-intake-estimated',
      severity: 'note',
      where: { piece: 'bodice front', seam: 'side seam' },
      actual: `a bust intake of ${bust.intake.toFixed(0)} mm, estimated (common practice)`,
      expected: 'a measured front waist length',
      hint: 'measure from the side of the neck over the bust point straight down to the waist',
    })
  }
  const given = choices.bustDart
  if (bust.from === 'measured' && given !== undefined && given !== 'eased') {
    findings.push({
      code: 'bust-dart-not-used',
      severity: 'warning',
      where: { field: 'draft.bust dart' },
      actual: `bust dart ${given === 'flat' ? 'flat' : `${given.toFixed(0)} mm`}; the front waist length asks for ${bust.intake.toFixed(0)} mm`,
      expected: 'a front waist length or a bust dart, not both',
      hint: 'the measure decides; leave the front waist length blank to draft the given bust dart',
    })
  }
  if (!front.side.dart && bust.intake > 0) {
    findings.push({
      code: 'bust-intake-eased',
      severity: 'note',
      where: { piece: 'bodice front', seam: 'side seam' },
      actual: `the front side seam is ${bust.intake.toFixed(1)} mm longer than the back one`,
      expected: `a bust dart from ${BUST_DART.least} mm of intake on`,
      hint: 'ease the front side seam to the back one over the bust',
    })
  }
  return findings
}
