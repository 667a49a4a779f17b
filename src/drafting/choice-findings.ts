import type { Finding } from '../base/problem.ts'
import type { BodyHalf } from '../body/body.ts'
import type { Choices } from './choices.ts'
import { ELBOW, SHOULDER, SHOULDER_DART } from './defaults.ts'
import type { UpperArm } from './ease.ts'

/** Choices that the draft did not follow, because others decided, and intakes far from common practice. */
export function choiceFindings(half: BodyHalf, choices: Choices, arm: UpperArm): Finding[] {
  return [...upperArmEase(half, choices, arm), ...shoulderDart(choices), ...elbowIntake(choices)]
}

function upperArmEase(half: BodyHalf, choices: Choices, arm: UpperArm): Finding[] {
  const { bicepsWidth, capHeight, capEase, ease } = choices
  const decided =
    bicepsWidth !== undefined
      ? 'the biceps width'
      : capHeight !== undefined && capEase !== undefined
        ? 'cap height and cap ease'
        : undefined
  return (['upper arm', 'upper arm flexed'] as const).flatMap((name): Finding[] => {
    if (ease[name] === undefined) return []
    const other = arm.from === 'flexed' ? 'upper arm' : 'upper arm flexed'
    const missing = name === 'upper arm flexed' && half['upper arm girth flexed'] === undefined
    // The flexed ease beside a relaxed arm that is wider is used: it was compared.
    const reason =
      decided ??
      (missing ? 'the relaxed arm: nobody measured the flexed one' : name === other ? `the arm ${arm.from}` : undefined)
    if (reason === undefined) return []
    return [
      {
        code: 'ease-not-used',
        severity: 'note',
        where: { field: `draft.ease.${name}` },
        actual: `${name} ease ${ease[name].toFixed(0)} mm; the width of the sleeve, ${arm.width.toFixed(0)} mm, is decided by ${reason}`,
        expected: 'one thing that decides the width of the sleeve',
        hint: `leave the ${name} ease out, or what decided instead of it`,
      },
    ]
  })
}

function shoulderDart({ shoulderDart: intake }: Choices): Finding[] {
  const { least, most } = SHOULDER_DART
  if (intake === undefined || (intake >= least && intake <= most)) return []
  const where = { field: 'draft.shoulder dart' }
  if (intake === 0) {
    return [
      {
        code: 'shoulder-dart-none',
        severity: 'note',
        where,
        actual: `a shoulder dart of 0 mm: the back shoulder is eased by ${SHOULDER.backEase} mm without a dart`,
        expected: `an intake of ${least} mm to ${most} mm for a dart`,
        hint: 'leave the shoulder dart out, or give it an intake',
      },
    ]
  }
  return [
    {
      code: 'shoulder-dart-unusual',
      severity: 'note',
      where,
      actual: `a back shoulder dart of ${intake.toFixed(0)} mm`,
      expected: `${least} mm to ${most} mm (common practice)`,
      hint: 'look at the unit; a round back can take more',
    },
  ]
}

function elbowIntake({ elbowIntake: intake }: Choices): Finding[] {
  const { least, most } = ELBOW.usualIntake
  if (intake === undefined || intake === 0 || (intake >= least && intake <= most)) return []
  return [
    {
      code: 'elbow-intake-unusual',
      severity: 'note',
      where: { field: 'draft.elbow intake' },
      actual: `elbow darts of ${intake.toFixed(0)} mm in all`,
      expected: `${least} mm to ${most} mm (common practice)`,
      hint: 'look at the unit; more than a bent arm needs folds above the elbow',
    },
  ]
}
