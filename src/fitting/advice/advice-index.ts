import type { AdviceEntry } from './advice.ts'
import { ADVICE } from './entries.ts'
import { sayingWords, stem } from './words.ts'

/** Where the words of the advice stand, and how common they are. */
export interface AdviceIndex {
  /** What each stem counts in each entry. */
  readonly weights: ReadonlyMap<AdviceEntry, ReadonlyMap<string, number>>
  /** How many entries have a stem. */
  readonly frequency: ReadonlyMap<string, number>
  /** Every word as it is written. */
  readonly vocabulary: readonly string[]
}

/** How much a word counts by where an entry has it: what is seen, the place, why it is so. */
const WEIGHTS = { seen: 3, place: 2, cause: 1 } as const

let made: AdviceIndex | undefined

/** The index of all advice, made when it is first asked for: most programs never do. */
export function adviceIndex(): AdviceIndex {
  made ??= makeIndex()
  return made
}

function makeIndex(): AdviceIndex {
  const weights = new Map(ADVICE.map((entry) => [entry, weightsOf(entry)] as const))
  const frequency = new Map<string, number>()
  for (const words of weights.values()) {
    for (const word of words.keys()) frequency.set(word, (frequency.get(word) ?? 0) + 1)
  }
  const texts = ADVICE.flatMap(textsOf)
  return { weights, frequency, vocabulary: [...new Set(texts.flatMap(([text]) => sayingWords(text)))] }
}

function weightsOf(entry: AdviceEntry): ReadonlyMap<string, number> {
  const weights = new Map<string, number>()
  for (const [text, weight] of textsOf(entry)) {
    for (const word of sayingWords(text).map(stem)) weights.set(word, Math.max(weight, weights.get(word) ?? 0))
  }
  return weights
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
