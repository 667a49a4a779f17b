import { nearestName } from '../../base/names.ts'
import type { AdviceEntry, AdvicePlace } from './advice.ts'
import { type AdviceIndex, adviceIndex } from './advice-index.ts'
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
  const index = adviceIndex()
  const asked = [...new Set(sayingWords(words))]
  const unknown = asked
    .filter((word) => !index.frequency.has(stem(word)))
    .map((word) => {
      const nearest = nearestName(word, index.vocabulary)
      return nearest === undefined ? { word } : { word, nearest }
    })
  if (words.trim() === '') return { entries: there, unknown }
  const stems = [...new Set(asked.map(stem))].filter((word) => index.frequency.has(word))
  const scored = there.map((entry) => ({ entry, score: scoreOf(entry, stems, index) }))
  const best = Math.max(0, ...scored.map(({ score }) => score))
  const entries = scored
    .filter(({ score }) => score > 0 && score >= GOOD * best)
    .sort((a, b) => b.score - a.score)
    .map(({ entry }) => entry)
  return { entries, unknown }
}

function scoreOf(entry: AdviceEntry, stems: readonly string[], index: AdviceIndex): number {
  const weights = index.weights.get(entry)
  const score = stems.reduce((sum, word) => sum + (weights?.get(word) ?? 0) * rarity(word, index), 0)
  const together = [entry.seen, ...entry.words].some((saying) => {
    const said = new Set(sayingWords(saying).map(stem))
    return stems.every((word) => said.has(word))
  })
  return together ? TOGETHER * score : score
}

/** More for a word that few entries have. */
function rarity(word: string, index: AdviceIndex): number {
  return Math.log(1 + ADVICE.length / (index.frequency.get(word) as number))
}
