import * as z from 'zod'
import { keptWith } from '../base/kept-with.ts'
import { parseLength } from '../base/lengths.ts'
import { type Readers, raise } from '../base/readers.ts'
import { failure, type Result, success } from '../base/result.ts'
import {
  type Choices,
  CLOTHS,
  EASE_NAMES,
  type EaseName,
  ELBOW_DARTS,
  FITS,
  OPENINGS,
  STANDARD_CHOICES,
} from './choices.ts'

/** What the `draft` section holds as it is read, before the standard choices fill it up. */
export type WrittenChoices = z.output<ReturnType<typeof choicesSchema>>

/** The schema of the `draft` section; lengths to mm. `bust: flat` is the same as `bust dart: flat`. */
export const choicesSchema = keptWith((read: Readers) => {
  const ease = Object.fromEntries(EASE_NAMES.map((name) => [name, read.length().optional()])) as Record<
    EaseName,
    z.ZodOptional<ReturnType<Readers['length']>>
  >
  const section = z.strictObject({
    fit: read.name('fit', FITS).optional(),
    cloth: read.name('cloth', CLOTHS).optional(),
    opening: read.name('opening', OPENINGS).optional(),
    ease: z.strictObject({ ...ease, cap: read.lengthOrShare().optional() }).optional(),
    'bust dart': bustDart(read).optional(),
    bust: read.name('bust', ['flat']).optional(),
    'elbow intake': read.lengthFromZero().optional(),
    'elbow darts': read.name('number of elbow darts', ELBOW_DARTS).optional(),
    'shoulder dart': read.lengthFromZero().optional(),
    'biceps width': read.positiveLength().optional(),
    'cap height': read.positiveLength().optional(),
    'least cap height': read.share().optional(),
  })
  return section.superRefine((written, context) => {
    const dart = written['bust dart']
    if (written.bust === undefined || dart === undefined || dart === 'flat' || dart === 0) return
    raise(context, {
      code: 'choices-disagree',
      actual: `bust: flat and ${dart === 'eased' ? 'bust dart: eased' : 'a bust dart'}`,
      expected: 'one of the two',
      hint: 'take out bust: flat, or the bust dart',
    })
  })
})

const BUST_WORDS = ['flat', 'eased'] as const

function bustDart(read: Readers) {
  const parse = (text: string): Result<number | 'flat' | 'eased'> => {
    const word = BUST_WORDS.find((known) => known === text.trim().toLowerCase())
    if (word) return success(word)
    const result = parseLength(text, read.unit)
    if (!result.ok || result.value >= 0) return result
    return failure({
      code: 'length-out-of-range',
      where: {},
      actual: `"${text}"`,
      expected: 'an intake of zero or more, flat or eased',
      hint: 'leave the minus out, or write flat for no bust dart',
    })
  }
  return read.parsed('an intake such as 1 in, flat or eased', parse, () => [
    { type: 'number', minimum: 0 },
    { enum: [...BUST_WORDS] },
    { type: 'string' },
  ])
}

/** The choices of a performer file: what it says over the standard ones. */
export function readChoices(written: WrittenChoices = {}): Choices {
  const { cap, ...ease } = written.ease ?? {}
  const dart = written['bust dart'] ?? written.bust
  const elbow = written['elbow intake']
  const count = written['elbow darts']
  const shoulder = written['shoulder dart']
  const width = written['biceps width']
  const height = written['cap height']
  const least = written['least cap height']
  return {
    fit: written.fit ?? STANDARD_CHOICES.fit,
    cloth: written.cloth ?? STANDARD_CHOICES.cloth,
    opening: written.opening ?? STANDARD_CHOICES.opening,
    ease: definedOf(ease),
    ...(cap === undefined ? {} : { capEase: cap }),
    ...(dart === undefined ? {} : { bustDart: dart }),
    ...(elbow === undefined ? {} : { elbowIntake: elbow }),
    ...(count === undefined ? {} : { elbowDarts: ELBOW_DARTS.indexOf(count) as 0 | 1 | 2 }),
    ...(shoulder === undefined ? {} : { shoulderDart: shoulder }),
    ...(width === undefined ? {} : { bicepsWidth: width }),
    ...(height === undefined ? {} : { capHeight: height }),
    ...(least === undefined ? {} : { leastCapRatio: least }),
  }
}

function definedOf(ease: Partial<Record<EaseName, number | undefined>>): Choices['ease'] {
  return Object.fromEntries(Object.entries(ease).filter(([, mm]) => mm !== undefined))
}
