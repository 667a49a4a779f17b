import { READ_ONCE } from '../base/read-once.ts'
import { makeReaders } from '../base/readers.ts'
import { type CapEase, type Choices, ELBOW_DARTS } from './choices.ts'
import { choicesSchema, readChoices, type WrittenChoices } from './read-choices.ts'

/** The `draft` section as a tree of texts; null leaves a choice out. */
export type ChoicesTree = { readonly [key: string]: string | null | ChoicesTree }

/** The choices as a performer file would say them, lengths with a unit. */
function writeChoices(choices: Choices): ChoicesTree {
  const { bustDart, elbowIntake, elbowDarts, shoulderDart, bicepsWidth, capHeight, leastCapRatio, capEase } = choices
  const lengths = {
    'elbow intake': elbowIntake,
    'shoulder dart': shoulderDart,
    'biceps width': bicepsWidth,
    'cap height': capHeight,
  }
  return {
    fit: choices.fit,
    cloth: choices.cloth,
    opening: choices.opening,
    ease: {
      ...Object.fromEntries(Object.entries(choices.ease).map(([name, mm]) => [name, lengthText(mm)])),
      ...(capEase === undefined ? {} : { cap: capEaseText(capEase) }),
    },
    ...Object.fromEntries(
      Object.entries(lengths).flatMap(([name, mm]) => (mm === undefined ? [] : [[name, lengthText(mm)]])),
    ),
    ...(bustDart === undefined ? {} : { 'bust dart': typeof bustDart === 'number' ? lengthText(bustDart) : bustDart }),
    ...(elbowDarts === undefined ? {} : { 'elbow darts': ELBOW_DARTS[elbowDarts] as string }),
    ...(leastCapRatio === undefined ? {} : { 'least cap height': shareText(leastCapRatio) }),
  }
}

/** The choices with a change of the `draft` section merged deeply into it; undefined where it then cannot be read. */
export function changeChoices(choices: Choices, change: ChoicesTree): Choices | undefined {
  const tree = withoutNulls(mergedTrees(writeChoices(choices), change))
  const read = choicesSchema(makeReaders('mm')).safeParse(tree, READ_ONCE)
  return read.success ? readChoices(read.data as WrittenChoices) : undefined
}

/** A length as a performer file reads it in any unit, to a micrometre. */
export function lengthText(mm: number): string {
  return `${Math.round(mm * 1000) / 1000} mm`
}

function shareText(share: number): string {
  return `${Math.round(share * 1e7) / 1e5} %`
}

function capEaseText(ease: CapEase): string {
  return 'mm' in ease ? lengthText(ease.mm) : shareText(ease.share)
}

/** One tree merged deeply into another; null stays null. */
export function mergedTrees(into: ChoicesTree, change: ChoicesTree): ChoicesTree {
  const result: Record<string, string | null | ChoicesTree> = { ...into }
  for (const [key, value] of Object.entries(change)) {
    const before = result[key]
    result[key] = isSection(value) && isSection(before) ? mergedTrees(before, value) : value
  }
  return result
}

/** What is null in a performer file is blank: left out. */
function withoutNulls(tree: ChoicesTree): ChoicesTree {
  const kept = Object.entries(tree).flatMap(([key, value]) =>
    value === null ? [] : [[key, isSection(value) ? withoutNulls(value) : value] as const],
  )
  return Object.fromEntries(kept)
}

function isSection(value: ChoicesTree[string] | undefined): value is ChoicesTree {
  return typeof value === 'object' && value !== null
}
