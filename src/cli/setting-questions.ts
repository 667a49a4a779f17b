import { formatLength, type LengthUnit, type SettingKind } from '../index.ts'

/** An amount as it is let out or taken in, mm: 3/8 in. */
const AMOUNT: Readonly<Record<LengthUnit, number>> = { in: 9.525, cm: 10, mm: 10 }

const QUESTIONS: Readonly<Record<string, string>> = {
  'above waist': 'How far above the waist?',
  'along cap': 'How far along the cap?',
  armscye: 'What does the armscye do?',
  at: 'Where?',
  by: 'By how much?',
  dart: 'Which dart?',
  direction: 'Which way?',
  ease: 'How much ease?',
  from: 'From where?',
  intake: 'How large is the intake?',
  keep: 'What stays as it is?',
  of: 'In front or at the back?',
  part: 'Which part?',
  piece: 'Which piece?',
  seam: 'Which seam?',
  share: 'How much of it?',
  'taper to': 'Where does it taper to nothing?',
  to: 'To where?',
  'to seam': 'To which seam?',
}

/** The question for a setting, as it is asked in a fitting room; of a setting that a correction of one's own has, by its name. */
export function settingQuestion({ name }: SettingKind): string {
  return QUESTIONS[name] ?? `What is the ${name}?`
}

/** The question for one more of a setting that takes several. */
export function furtherQuestion({ place }: SettingKind): string {
  return place ? 'Anywhere else?' : 'Another one?'
}

/** An example of what is written there: a length, a percentage or either; otherwise what may stand there. */
export function exampleOf({ expected }: SettingKind, units: LengthUnit): string {
  const length = formatLength(AMOUNT[units], units)
  if (/^a length or a percentage\b/.test(expected)) return `${length} or 6 %`
  if (/^a length\b/.test(expected)) return length
  return /such as (.*)$/.exec(expected)?.[1] ?? expected
}
