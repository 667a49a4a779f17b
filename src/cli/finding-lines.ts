import type { Finding } from '../index.ts'
import { placeText } from './print-problems.ts'
import { WIDTH, wrapped } from './table.ts'
import type { Style } from './terminal.ts'

/** Where the words of a finding begin: behind its severity. */
const INDENT = 11

/**
 * Findings as a draper reads them: what is the matter and on what, what was expected, what to do, and last where it
 * stands in the file. A note expects nothing. A line that says so where there are none.
 */
export function findingLines(findings: readonly Finding[], style: Style): string[] {
  if (findings.length === 0) return [style.good('No findings.')]
  const counted = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const count = findings.filter((f) => f.severity === severity).length
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`]
  })
  return [style.strong(`Findings: ${counted.join(', ')}`), ...findings.flatMap((finding) => oneFinding(finding, style))]
}

function oneFinding({ severity, where, actual, expected, hint, mend }: Finding, style: Style): string[] {
  const paint = severity === 'error' ? style.bad : severity === 'warning' ? style.doubtful : style.quiet
  const { piece, seam, join, ...inFile } = where
  const on = placeText({
    ...(piece === undefined ? {} : { piece }),
    ...(seam === undefined ? {} : { seam }),
    ...(join === undefined ? {} : { join }),
  })
  const { field: _, ...spot } = inFile
  const stands = placeText(spot.line === undefined && spot.fitting === undefined ? inFile : spot)
  const [first = '', ...rest] = wrapped(`${on === '' ? '' : `${on}: `}${actual}`, WIDTH - INDENT)
  const lines = [
    ...rest,
    ...(severity === 'note' ? [] : wrapped(`expected: ${expected}`, WIDTH - INDENT)),
    ...wrapped(`→ ${hint}`, WIDTH - INDENT, '  '),
    ...(mend === undefined ? [] : mend.split('\n').map((line, i) => `${i === 0 ? '  write: ' : '         '}${line}`)),
    ...(stands === '' ? [] : wrapped(`in ${stands}`, WIDTH - INDENT).map(style.quiet)),
  ]
  return [`  ${paint(severity.padEnd(INDENT - 2))}${first}`, ...lines.map((line) => `${' '.repeat(INDENT)}${line}`)]
}
