import type { Problem } from '../base/problem.ts'
import type { BodyHalf } from '../body/body.ts'
import type { MeasureName } from '../body/measure.ts'
import { type Choices, type EaseName, ELBOW_DARTS } from './choices.ts'
import { easeFor } from './ease.ts'

/** Ease may be taken away, for cloth that gives; less than this share of the body is a slip of the pen. Our own. */
const LEAST_SHARE = 0.6

/** And more than this share is another unit. Our own. */
const MOST_SHARE = 2

/** Intakes beyond these are no darts any more, mm; common practice has 25–38 for the elbow, 10–13 for the shoulder. */
const MOST_INTAKE = { elbowIntake: 76, shoulderDart: 30, bustDart: 130 } as const

const INTAKE_FIELDS = {
  elbowIntake: 'elbow intake',
  shoulderDart: 'shoulder dart',
  bustDart: 'bust dart',
} as const

const EASED: readonly (readonly [MeasureName, EaseName])[] = [
  ['neck base girth', 'neckline'],
  ['bust girth', 'bust'],
  ['waist girth', 'waist'],
  ['scye depth', 'armscye depth'],
  ['back width', 'back width'],
  ['front width', 'front width'],
  ['upper arm girth', 'upper arm'],
  ['upper arm girth flexed', 'upper arm flexed'],
  ['elbow girth', 'elbow'],
  ['wrist girth', 'wrist'],
]

/**
 * Choices with which no garment can be drafted: ease that leaves less than 60 % or more than 200 % of the body, intakes
 * out of all proportion, elbow darts that take nothing or an intake without elbow darts.
 */
export function impossibleChoices(half: BodyHalf, choices: Choices): Problem[] {
  return [...outOfProportion(half, choices), ...tooMuchIntake(choices), ...elbowDisagrees(choices)]
}

function elbowDisagrees({ elbowDarts, elbowIntake }: Choices): Problem[] {
  if (elbowDarts === undefined || elbowIntake === undefined || elbowDarts > 0 === elbowIntake > 0) return []
  return [
    {
      code: 'choices-disagree',
      where: { field: 'draft.elbow intake' },
      actual: `elbow darts: ${ELBOW_DARTS[elbowDarts]} and an elbow intake of ${elbowIntake.toFixed(0)} mm`,
      expected: 'an intake above zero with elbow darts, none without',
      hint: 'take out one of the two',
    },
  ]
}

function outOfProportion(half: BodyHalf, choices: Choices): Problem[] {
  return EASED.flatMap(([measure, name]) => {
    const body = half[measure]?.value
    if (body === undefined) return []
    const ease = easeFor(choices, name)
    const share = (body + ease) / body
    if (share >= LEAST_SHARE && share <= MOST_SHARE) return []
    return [
      {
        code: 'ease-out-of-range',
        where: { field: `draft.ease.${name}` },
        actual: `${ease.toFixed(0)} mm of ease on a ${measure} of ${body.toFixed(0)} mm`,
        expected: `a garment of ${LEAST_SHARE * 100} to ${MOST_SHARE * 100} % of the body`,
        hint: `give the ${name} ease as what is added to the body; leave it out for the fit's own`,
      },
    ]
  })
}

function tooMuchIntake(choices: Choices): Problem[] {
  return (Object.keys(MOST_INTAKE) as (keyof typeof MOST_INTAKE)[]).flatMap((key) => {
    const intake = choices[key]
    const most = MOST_INTAKE[key]
    if (typeof intake !== 'number' || intake <= most) return []
    return [
      {
        code: 'intake-out-of-range',
        where: { field: `draft.${INTAKE_FIELDS[key]}` },
        actual: `${intake.toFixed(0)} mm`,
        expected: `at most ${most} mm`,
        hint: 'check the unit it was written in (a plain number takes the file’s units)',
      },
    ]
  })
}
