import { formatLength } from './format-length.ts'
import type { Finding, Problem } from './problem.ts'
import type { LengthUnit } from './units.ts'

/** Below this an inch tape has no mark to say it with, mm: such a length stays in mm. */
const SMALLEST_ON_A_TAPE = 1.5

/** A length in mm, or a range of them with its unit said once, unless it stands in brackets behind the same in inches. */
const LENGTH = /(?<!in \(|[\d.])(?:(\d+(?:\.\d+)?)( to |–))?(-?\d+(?:\.\d+)?) mm\b/g

/** The words of a problem or finding, and of its remedies, with their lengths in the reader's unit; what was written in mm inside is mm there. */
export function inUnit<T extends Finding | Problem>(item: T, unit: LengthUnit): T {
  if (unit === 'mm') return item
  const words = (text: string) =>
    text.replace(LENGTH, (_, first: string | undefined, between: string, n: string) => {
      const said = length(Number(n), `${n} mm`, unit)
      return first === undefined
        ? said
        : `${Number(first) === 0 ? '0' : length(Number(first), `${first} mm`, unit)}${between}${said}`
    })
  const remedies =
    'remedies' in item && item.remedies
      ? { remedies: item.remedies.map((remedy) => ({ ...remedy, say: words(remedy.say) })) }
      : {}
  return { ...item, ...remedies, actual: words(item.actual), expected: words(item.expected), hint: words(item.hint) }
}

function length(mm: number, as: string, unit: LengthUnit): string {
  return Math.abs(mm) < SMALLEST_ON_A_TAPE ? as : formatLength(mm, unit)
}
