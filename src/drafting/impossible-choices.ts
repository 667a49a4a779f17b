import type { Problem } from '../base/problem.ts'
import { type BodyHalf, valueOf } from '../body/body.ts'
import type { MeasureName } from '../body/measure.ts'
import type { Choices, EaseName } from './choices.ts'
import { easeFor } from './ease.ts'

/** Ease may be taken away, for cloth that gives; less than this share of the body is a slip of the pen. Our own. */
const LEAST_SHARE = 0.6

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
  ['elbow girth', 'elbow'],
  ['wrist girth', 'wrist'],
]

/** Choices with which no garment can be drafted: ease that leaves less than 60 % of the body, intakes out of all proportion. */
export function impossibleChoices(half: BodyHalf, choices: Choices): Problem[] {
  return [...tooTight(half, choices), ...tooMuchIntake(choices)]
}

function tooTight(half: BodyHalf, choices: Choices): Problem[] {
  return EASED.flatMap(([measure, name]) => {
    const body = valueOf(half, measure)
    const ease = easeFor(choices, name)
    if (body + ease >= LEAST_SHARE * body) return []
    return [
      {
        code: 'ease-out-of-range',
        where: { field: `draft.ease.${name}` },
        actual: `${ease.toFixed(0)} mm of ease on a ${measure} of ${body.toFixed(0)} mm`,
        expected: `a garment of at least ${LEAST_SHARE * 100} % of the body`,
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
