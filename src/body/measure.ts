/** Lengths are mm, angles radians. */
export type MeasureKind = 'length' | 'angle'

/** One body measure that the draft knows: how it is called, taken and read. */
export interface MeasureDefinition {
  /** Length or angle: how it is read. */
  readonly kind: MeasureKind
  /** The draft cannot begin without it; everything else may be estimated. */
  readonly required: boolean
  /** Left and right may be given apart. */
  readonly sided: boolean
  /** How to take it, in one or two sentences: common practice. The one place for these words. */
  readonly how: string
  /** Clause of ISO 8559-1:2017 where one is known (second-hand), else "common practice". */
  readonly source: string
}

const definitions = {
  'neck base girth': length('Round the base of the neck, over the nape bone and the pit of the throat.', '5.3.3'),
  'shoulder length': sided('From the side of the neck base to the shoulder point.', '5.4.1'),
  'shoulder slope': {
    ...sided(
      'The angle at which the shoulder falls from the side of the neck, below horizontal: with a dial level laid on it.',
      '5.6.2',
    ),
    kind: 'angle',
  },
  'upper chest girth': length('Round the chest, high under the arms, above the bust.', '5.3.7'),
  'bust girth': required('Round the fullest part of the bust, level.', '5.3.4'),
  'waist girth': required(
    'Round the natural waist, midway between the lowest rib and the top of the hip bone.',
    '5.3.10',
  ),
  'back waist length': required(
    'From the nape bone down the spine to the waist, midway between the lowest rib and the top of the hip bone.',
    '5.4.5',
  ),
  'scye depth': length(
    'From the nape bone down the spine to the level of the armpit, where a card held level under the arm meets it.',
    '5.4.6',
  ),
  'back width': length(
    'Across the back from armscye to armscye, at the middle of the armscye, arms down.',
    'common practice',
  ),
  'front width': length('Across the front from armscye to armscye, at the middle of the armscye, arms down.', '5.4.7'),
  'front waist length': length(
    'From the side of the neck base over the bust point straight down to the same waist.',
    'common practice',
  ),
  'neck to bust point': length('From the side of the neck base to the bust point.', 'common practice'),
  'bust point width': length('From bust point to bust point.', 'common practice'),
  'front neck to waist': length(
    'From the pit of the throat down the center front to the waist (a check only).',
    '5.4.8',
  ),
  'armscye girth': sided(
    'Round the armhole of the body, over the shoulder point and through the armpit (a check only).',
    '5.3.15',
  ),
  'upper arm girth': {
    ...sided('Round the upper arm, midway from shoulder point to elbow, arm hanging relaxed.', '5.3.16'),
    required: true,
  },
  'upper arm girth flexed': sided('The same place with the arm bent and the muscle tensed.', 'common practice'),
  'elbow girth': sided('Round the elbow with the arm bent.', '5.3.17'),
  'wrist girth': sided('Round the wrist at the outer wrist bone.', '5.3.19'),
  'hand girth': sided('Round the widest part of the hand, thumb tucked in.', 'common practice'),
  'outer arm length': {
    ...sided('From the shoulder point down the outside of the hanging arm to the wrist bone.', '5.7.8'),
    required: true,
  },
  'shoulder to elbow': sided('From the shoulder point to the elbow, arm bent.', '5.4.14'),
} as const satisfies Record<string, MeasureDefinition>

/** The name of a measure as a performer file has it, for example `bust girth`. */
export type MeasureName = keyof typeof definitions

/** Every measure, in the order in which a performer is measured. */
export const MEASURES: Readonly<Record<MeasureName, MeasureDefinition>> = definitions

/** The names of all measures, in the order of `MEASURES`. */
export const MEASURE_NAMES = Object.keys(MEASURES) as readonly MeasureName[]

function length(how: string, source: string): MeasureDefinition {
  return { kind: 'length', required: false, sided: false, how, source }
}

function sided(how: string, source: string): MeasureDefinition {
  return { ...length(how, source), sided: true }
}

function required(how: string, source: string): MeasureDefinition {
  return { ...length(how, source), required: true }
}
