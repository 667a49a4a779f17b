import { printable } from './printable.ts'
import type { Place, Problem } from './problem.ts'

/** A longer quotation from a file only says that it is long. */
const LONGEST_QUOTE = 120
const LONGEST_TEXT = 900

/**
 * The problem with words that can be printed and read: what it quotes of a file is cut short in its middle, and letters
 * that act on a terminal are named instead.
 */
export function sayable(problem: Problem): Problem {
  const { where, actual, expected, hint } = problem
  return { ...problem, where: placed(where), actual: words(actual), expected: words(expected), hint: words(hint) }
}

function placed({ field, fitting, ...rest }: Place): Place {
  return {
    ...rest,
    ...(field === undefined ? {} : { field: shortened(printable(field), LONGEST_QUOTE) }),
    ...(fitting === undefined ? {} : { fitting: shortened(printable(fitting), LONGEST_QUOTE) }),
  }
}

function words(text: string): string {
  const quoted = printable(text).replace(/"([^"]+)"/g, (_, quote: string) => `"${shortened(quote, LONGEST_QUOTE)}"`)
  return shortened(quoted, LONGEST_TEXT)
}

/** By whole letters: half of one cannot be printed. */
function shortened(text: string, most: number): string {
  if (text.length <= most) return text
  const letters = [...text]
  const half = Math.floor(most / 2)
  return letters.length <= most ? text : `${letters.slice(0, half).join('')} … ${letters.slice(-half).join('')}`
}
