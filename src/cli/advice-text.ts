import { ADVICE_PLACES, type Advice, type AdviceCause, type AdviceEntry, type AdvicePlace } from '../index.ts'
import { WIDTH, wrapped } from './table.ts'
import type { Style } from './terminal.ts'

/** Prose is broken here: short enough to read beside a pattern. */
const PROSE = Math.min(92, WIDTH)

/** So many entries are told in full; further ones by their names. */
const IN_FULL = 4

const FOOT = 'Common practice: the body in front of you decides. Amounts are a first try; write what was pinned.'

/** What was found, the best first, each with its causes in the order to try them; at most 100 columns. */
export function adviceText({ entries, unknown }: Advice, style: Style): string {
  const further = entries.slice(IN_FULL).map((entry) => entry.id)
  const blocks = [
    ...(unknown.length === 0 ? [] : [unknownLines(unknown).map(style.doubtful)]),
    ...entries.slice(0, IN_FULL).map((entry) => entryLines(entry, style)),
    ...(further.length === 0 ? [] : [wrapped(`See also: ${further.join(', ')}`, PROSE, '  ')]),
    wrapped(FOOT, WIDTH).map(style.quiet),
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

/** Every entry under the places where it is seen, each with the name that finds it. */
export function adviceList(entries: readonly AdviceEntry[], place: AdvicePlace | undefined, style: Style): string {
  const places = place === undefined ? ADVICE_PLACES : [place]
  const width = Math.max(...entries.map(({ id }) => id.length)) + 4
  const blocks = places.map((name) => [
    style.strong(name),
    ...entries
      .filter((entry) => entry.places.includes(name))
      .flatMap(({ id, seen }) => {
        const [first = '', ...rest] = wrapped(seen, PROSE - width)
        return [`  ${id.padEnd(width - 2)}${first}`, ...rest.map((line) => ' '.repeat(width) + line)]
      }),
  ])
  const foot = 'scye advise NAME, or words for what is seen, as in: scye advise tight upper arm'
  return `${[...blocks, wrapped(foot, WIDTH).map(style.quiet)].map((lines) => lines.join('\n')).join('\n\n')}\n`
}

function entryLines({ id, places, seen, causes, caution }: AdviceEntry, style: Style): string[] {
  return [
    ...wrapped(capital(seen), PROSE).map(style.strong),
    style.quiet(`${places.join(', ')} · ${id}`),
    ...causes.flatMap((cause, i) => ['', ...causeLines(cause, i + 1, style)]),
    '',
    ...labelled('mind', caution).map(style.doubtful),
  ]
}

function causeLines({ cause, pin, snippet, costs }: AdviceCause, number: number, style: Style): string[] {
  const [first = '', ...rest] = wrapped(capital(cause), PROSE - 5)
  return [
    `  ${String(number).padEnd(3)}${style.strong(first)}`,
    ...rest.map((line) => `     ${style.strong(line)}`),
    ...labelled('pin', pin),
    ...(snippet === undefined ? [] : labelledLines('write', snippet.split('\n'))),
    ...labelled('costs', costs),
  ]
}

function labelled(label: string, text: string): string[] {
  return labelledLines(label, wrapped(text, PROSE - 13))
}

function labelledLines(label: string, lines: readonly string[]): string[] {
  return lines.map((line, i) => `     ${(i === 0 ? label : '').padEnd(8)}${line}`)
}

function unknownLines(unknown: Advice['unknown']): string[] {
  return unknown.map(
    ({ word, nearest }) => `no entry speaks of "${word}"${nearest === undefined ? '' : `; did you mean ${nearest}?`}`,
  )
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
