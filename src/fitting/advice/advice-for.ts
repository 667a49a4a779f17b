import { nearestName } from '../../base/names.ts'
import type { AdviceEntry, AdvicePlace } from './advice.ts'
import { ADVICE } from './entries.ts'
import { sayingWords, stem } from './words.ts'

/** What was found for some words. */
export interface Advice {
  /** The best first; in the order of the list where no words were given. */
  readonly entries: readonly AdviceEntry[]
  /** Words that no entry has, each with the nearest that one does have, if any is near. */
  readonly unknown: readonly {
    /** The word as it was asked. */
    readonly word: string
    /** A word that is known and spelled nearly alike. */
    readonly nearest?: string
  }[]
}

/** What narrows the advice. */
export interface AdviceOptions {
  /** Only what is seen there. */
  readonly place?: AdvicePlace
}

/** How much a word counts by where an entry has it: what is seen, the place, why it is so. */
const WEIGHTS = { seen: 3, place: 2, cause: 1 } as const

/** An entry that has all the words together, in one saying, counts by so much more. */
const TOGETHER = 1.5

/** Entries that are less than this share as good as the best are left out. */
const GOOD = 0.5

/**
 * What to try for what is seen, in plain words: `tight upper arm`, `cannot reach`. Endings and words of the same meaning
 * count as the same, rare words count more than common ones, and an entry's id finds it alone. Without words: every entry.
 */
export function adviceFor(words: string, { place }: AdviceOptions = {}): Advice {
  const there = ADVICE.filter((entry) => place === undefined || entry.places.includes(place))
  const named = there.find((entry) => entry.id === words.trim().toLowerCase())
  if (named) return { entries: [named], unknown: [] }
  const asked = [...new Set(sayingWords(words))]
  const unknown = asked
    .filter((word) => !FREQUENCY.has(stem(word)))
    .map((word) => {
      const nearest = nearestName(word, VOCABULARY)
      return nearest === undefined ? { word } : { word, nearest }
    })
  if (words.trim() === '') return { entries: there, unknown }
  const stems = [...new Set(asked.map(stem))].filter((word) => FREQUENCY.has(word))
  const scored = there.map((entry) => ({ entry, score: scoreOf(entry, stems) }))
  const best = Math.max(0, ...scored.map(({ score }) => score))
  const entries = scored
    .filter(({ score }) => score > 0 && score >= GOOD * best)
    .sort((a, b) => b.score - a.score)
    .map(({ entry }) => entry)
  return { entries, unknown }
}

/** Texts of an entry that are searched, with what a word in them counts. */
function textsOf({
  id,
  seen,
  words,
  places,
  causes,
}: AdviceEntry): readonly (readonly [text: string, weight: number])[] {
  return [
    [[id.replaceAll('-', ' '), seen, ...words].join(' '), WEIGHTS.seen],
    [places.join(' '), WEIGHTS.place],
    [causes.map(({ cause }) => cause).join(' '), WEIGHTS.cause],
  ]
}

function scoreOf(entry: AdviceEntry, stems: readonly string[]): number {
  const weights = INDEX.get(entry)
  const score = stems.reduce((sum, word) => sum + (weights?.get(word) ?? 0) * rarity(word), 0)
  const together = [entry.seen, ...entry.words].some((saying) => {
    const said = new Set(sayingWords(saying).map(stem))
    return stems.every((word) => said.has(word))
  })
  return together ? TOGETHER * score : score
}

/** More for a word that few entries have. */
function rarity(word: string): number {
  return Math.log(1 + ADVICE.length / (FREQUENCY.get(word) as number))
}

const INDEX: ReadonlyMap<AdviceEntry, ReadonlyMap<string, number>> = new Map(
  ADVICE.map((entry) => {
    const weights = new Map<string, number>()
    for (const [text, weight] of textsOf(entry)) {
      for (const word of sayingWords(text).map(stem)) weights.set(word, Math.max(weight, weights.get(word) ?? 0))
    }
    return [entry, weights]
  }),
)

const FREQUENCY: ReadonlyMap<string, number> = ADVICE.reduce((counts, entry) => {
  for (const word of INDEX.get(entry)?.keys() ?? []) counts.set(word, (counts.get(word) ?? 0) + 1)
  return counts
}, new Map<string, number>())

const VOCABULARY: readonly string[] = [
  ...new Set(ADVICE.flatMap((entry) => textsOf(entry).flatMap(([text]) => sayingWords(text)))),
]
