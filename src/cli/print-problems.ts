import { type Place, type Problem, printable } from '../index.ts'
import { excerptOf } from './excerpt.ts'
import { wrapped } from './table.ts'
import type { Style } from './terminal.ts'

/** Every terminal has as many; longer lines of a file are cut to it around the place. */
const COLUMNS = 80

/**
 * Problems as a person reads them: place, the line of the file with a mark under the spot, what is there, what was
 * expected and what to do. `textOf` gives the text of a file by the name in the place.
 */
export function printProblems(
  problems: readonly Problem[],
  textOf: (file: string) => string | undefined,
  style: Style,
): string {
  return problems.map((problem) => `${printed(problem, textOf, style).join('\n')}\n`).join('\n')
}

function printed(
  { where, actual, expected, hint, remedies }: Problem,
  textOf: (file: string) => string | undefined,
  style: Style,
): string[] {
  const place = printable(placeText(where))
  return [
    ...(place === '' ? [] : [style.strong(place)]),
    ...excerpt(where, textOf, style),
    ...labelled('found', actual, style.bad),
    ...labelled('expected', expected, (text) => text),
    ...labelled('do this', hint, (text) => text),
    ...(remedies ?? []).flatMap(({ say }) => labelled('or', say, (text) => text)),
  ]
}

/** Where something is, as editors and people read it: `file:line:column · field · fitting`. */
export function placeText(where: Place): string {
  const spot = [where.file, where.line, where.column].filter((part) => part !== undefined).join(':')
  const correction = where.correction === undefined ? '' : `, correction ${where.correction}`
  const fitting = where.fitting === undefined ? '' : `fitting "${where.fitting}"${correction}`
  const piece = [where.piece, where.seam].filter((part) => part !== undefined).join(' ')
  const join = where.join === undefined ? '' : `join ${where.join}`
  return [spot, fitting === '' ? (where.field ?? '') : '', fitting, piece, join]
    .filter((part) => part !== '')
    .join(' · ')
}

function excerpt(where: Place, textOf: (file: string) => string | undefined, style: Style): string[] {
  const { file, line, column } = where
  const text = file === undefined || line === undefined ? undefined : lineOf(textOf(file), line)
  if (text === undefined || line === undefined || text.trim() === '') return []
  const { shown, indent } = excerptOf(text, (column ?? 1) - 1, COLUMNS - 8)
  const number = String(line).padStart(5)
  return [style.quiet(`${number} | `) + shown, style.quiet(`${' '.repeat(5)} | `) + ' '.repeat(indent) + style.bad('^')]
}

/** A line by its number, as places count them: a byte order mark is no part of the first. */
function lineOf(text: string | undefined, line: number): string | undefined {
  return text?.replace(/^\ufeff/, '').split(/\r\n|\r|\n/)[line - 1]
}

function labelled(label: string, text: string, paint: (text: string) => string): string[] {
  const indent = ' '.repeat(12)
  const words = printable(text)
  return wrapped(`${`  ${label}`.padEnd(12)}${words}`.trimStart(), COLUMNS - 2, indent.slice(2)).map(
    (line) => `  ${paint(line)}`,
  )
}
