import { columnsOf } from './columns.ts'

export interface Excerpt {
  readonly shown: string
  /** Columns before the mark. */
  readonly indent: number
}

/** A letter may carry many others that take no column: so many letters to a column are looked at. */
const LETTERS_PER_COLUMN = 4

/**
 * As much of a line as fits into so many columns, around the letter at `at` (UTF-16 units from 0), and where the mark
 * under that letter stands. Tabs and what a terminal would act on become spaces.
 */
export function excerptOf(line: string, at: number, columns: number): Excerpt {
  const near = LETTERS_PER_COLUMN * columns
  const before = lettersOf(line.slice(Math.max(0, at - near), at))
  const after = lettersOf(line.slice(at, at + near))
  const half = fitting([...before].reverse(), columns / 2)
  const right = fitting(after, columns - widthOf(before.slice(before.length - half)))
  const left = fitting([...before].reverse(), columns - widthOf(after.slice(0, right)))
  const shown = before.slice(before.length - left)
  // What combines with a letter that is not shown would stand on the space before the line.
  while (shown.length > 0 && widthOf(shown.slice(0, 1)) === 0) shown.shift()
  return { shown: [...shown, ...after.slice(0, right)].join(''), indent: widthOf(shown) }
}

function lettersOf(text: string): string[] {
  return [...text].map((letter) => letter.replace(/[\p{Cc}\p{Cs}\p{Cf}\p{Cn}\p{Zl}\p{Zp}]/u, ' '))
}

/** How many of the letters fit, from the first. */
function fitting(letters: readonly string[], columns: number): number {
  let width = 0
  const over = letters.findIndex((letter) => {
    width += columnsOf(letter)
    return width > columns
  })
  return over < 0 ? letters.length : over
}

function widthOf(letters: readonly string[]): number {
  return columnsOf(letters.join(''))
}
