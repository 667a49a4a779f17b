import { formatLength, type LengthUnit, makeReaders, readPlaceWords, type SettingKind, type Tree } from '../index.ts'
import type { Choice, Prompts } from './prompts.ts'
import { furtherQuestion, settingQuestion } from './setting-questions.ts'

export interface AskPlaceOptions {
  readonly units: LengthUnit
  /** The names there are, in the words of the slip. */
  readonly offered: readonly string[]
}

type Way = { readonly place: string } | 'distance' | 'share' | 'none'

/** Asks for the place of a setting, or several; undefined where it is left out. */
export async function askPlace(
  prompts: Prompts,
  kind: SettingKind,
  options: AskPlaceOptions,
): Promise<Tree | undefined> {
  // Beside what is said already there may be none.
  if (options.offered.length === 0 && !kind.required) return undefined
  const first = await askOne(prompts, settingQuestion(kind), options, {
    none: kind.required ? undefined : `leave it out: ${kind.usual ?? 'none'}`,
  })
  if (first === undefined || !kind.list) return first
  const places = [first]
  for (;;) {
    const more = await askOne(prompts, furtherQuestion(kind), options, { none: 'no, that is all' })
    if (more === undefined) return places.length === 1 ? first : places
    places.push(more)
  }
}

async function askOne(
  prompts: Prompts,
  message: string,
  { units, offered }: AskPlaceOptions,
  { none }: { readonly none: string | undefined },
): Promise<Tree | undefined> {
  // Distances are measured between marks; a line is a place only where it meets the seam.
  const marks = offered.filter((name) => !/ line(?:,|$)/.test(name))
  const between: Choice<Way>[] =
    marks.length < 2
      ? []
      : [
          { name: 'a distance from one mark toward another', value: 'distance' },
          { name: 'a part of the way from one mark to another', value: 'share' },
        ]
  const way = await prompts.select<Way>({
    message,
    choices: [
      ...(none === undefined ? [] : [{ name: none, value: 'none' as const }]),
      ...offered.map((place) => ({ name: place, value: { place } })),
      ...between,
    ],
  })
  if (way === 'none') return undefined
  if (typeof way === 'object') return placeOf(way.place)
  const from = await askMark(prompts, 'From which mark?', marks)
  const toward = await askMark(
    prompts,
    'Toward which mark?',
    marks.filter((name) => name !== from),
  )
  const read = makeReaders(units)
  if (way === 'distance') {
    const example = formatLength(38.1, units)
    const distance = await prompts.input({
      message: `How far from ${from}, such as ${example}?`,
      validate: (text) => read.positiveLength().safeParse(text.trim()).success || `write a length such as ${example}`,
    })
    return { from, toward, distance: distance.trim() }
  }
  const share = await prompts.input({
    message: `How much of the way from ${from}?`,
    default: '50 %',
    validate: (text) => read.share().safeParse(text.trim()).success || 'write a percentage such as 40 %',
  })
  return { between: [from, toward], share: share.trim() }
}

function askMark(prompts: Prompts, message: string, marks: readonly string[]): Promise<string> {
  return prompts.select({ message, choices: marks.map((name) => ({ name, value: name })) })
}

/** The offered words as they are written; they can always be read. */
function placeOf(words: string): Tree {
  const place = readPlaceWords(words)
  if (!place.ok) throw new Error(`an offered place cannot be read: ${words}`)
  return place.value
}
