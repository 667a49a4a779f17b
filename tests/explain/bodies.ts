import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { averageBody } from '../survey/extreme-bodies.ts'
import { performerFile } from '../survey/try-body.ts'

/** Name and text of a performer file. */
export type NamedFile = readonly [name: string, text: string]

const example = (name: string) =>
  readFileSync(join(fileURLToPath(new URL('../../examples', import.meta.url)), name), 'utf8')

export const LAMPLIGHTER = example('lamplighter.yaml')

export const EXAMPLES: readonly NamedFile[] = [
  ['the Lamplighter', LAMPLIGHTER],
  ['the Ferry Pilot', example('ferry-pilot.yaml')],
  ['the test sleeve', example('test-sleeve.yaml')],
]

type Change = readonly [
  name: string,
  measures: Parameters<typeof averageBody>[1],
  draft?: Readonly<Record<string, unknown>>,
]

const CHANGES: readonly Change[] = [
  ['average', {}],
  ['standing', {}, { fit: 'standing', opening: 'center front' }],
  ['easy', {}, { fit: 'easy', opening: 'none' }],
  ['large bust', { 'bust girth': 1.5, 'waist girth': 0.5 }],
  ['small waist', { 'waist girth': -1.5 }],
  ['large waist', { 'waist girth': 2 }],
  ['no bust dart', {}, { 'bust dart': 'flat' }],
  ['deep bust dart', {}, { 'bust dart': '40 mm' }],
  ['thick arm', { 'upper arm girth': 1.2 }],
  ['thin arm', { 'upper arm girth': -1.2 }],
  ['shoulder dart', {}, { 'shoulder dart': '12 mm' }],
  ['straight sleeve', {}, { 'elbow darts': 'none' }],
  ['one elbow dart', {}, { 'elbow darts': 'one' }],
]

/** Arm and shoulder differ, so that every piece differs left and right. */
export const UNEVEN: NamedFile = [
  'a right arm and shoulder of its own',
  performerFile(averageBody('women'), {
    body: {
      'upper arm girth': { left: '290 mm', right: '310 mm' },
      'shoulder length': { left: '125 mm', right: '131 mm' },
    },
    draft: { opening: 'none' },
  }),
]

/** In millimetres, centimetres and inches by turns. */
export const BODIES: readonly NamedFile[] = [
  ...(['women', 'men'] as const).flatMap((sex, s) =>
    CHANGES.map(([name, measures, draft = {}], k): NamedFile => {
      const units = ['mm', 'in', 'cm'][(k + s) % 3] as string
      const text = performerFile(averageBody(sex, measures), { draft }).replace('units: mm', `units: ${units}`)
      return [`${sex}, ${name}, ${units}`, text]
    }),
  ),
  UNEVEN,
]
