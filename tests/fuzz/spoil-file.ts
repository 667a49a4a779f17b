import fc from 'fast-check'
import { LETTERS, QUOTED } from './letters.ts'
import { KEYS, PLACES, WORDS } from './trade-words.ts'
import { NUMBERS, SHAPES, UNITS } from './values.ts'

/** One change of a text: which kind, and three numbers that choose where and what. */
export interface Change {
  readonly kind: (typeof KINDS)[number]
  readonly where: number
  readonly what: number
  readonly size: number
}

/** A sound file, by its number, and the changes made to it in order; fewer and smaller ones are simpler. */
export interface Spoilt {
  readonly file: number
  readonly changes: readonly Change[]
}

type Spoil = (text: string, change: Change) => string

const SPOILS = {
  byte: (text, { where, what, size }) => {
    const bytes = Buffer.from(text)
    const at = where % (bytes.length + 1)
    const put = size % 3 === 0 ? [] : [what % 256]
    return Buffer.concat([bytes.subarray(0, at), Buffer.from(put), bytes.subarray(at + (size % 2))]).toString('utf8')
  },
  letter: (text, { where, what }) => insert(text, where % (text.length + 1), chosen(LETTERS, what)),
  'cut off': (text, { where }) => text.slice(0, where % (text.length + 1)),
  'line left out': (text, { where, size }) =>
    inLines(text, where, (lines, at) => lines.splice(at, 1 + (size % 4)), isSaid),
  'line doubled': (text, { where }) => inLines(text, where, (lines, at) => lines.splice(at, 0, lines[at] as string)),
  'lines swapped': (text, { where, what }) =>
    inLines(text, where, (lines, at) => {
      const other = what % lines.length
      ;[lines[at], lines[other]] = [lines[other] as string, lines[at] as string]
    }),
  'block doubled': (text, { where, what, size }) =>
    inLines(text, where, (lines, at) => lines.splice(what % lines.length, 0, ...lines.slice(at, at + 2 + (size % 12)))),
  'line indented': (text, { where, size }) =>
    inLines(text, where, (lines, at) => {
      const line = lines[at] as string
      lines[at] = size % 3 === 0 ? line.trimStart() : size % 3 === 1 ? ` ${line}` : `\t${line}`
    }),
  'other shape': (text, { where, what }) => inValue(text, where, () => chosen(SHAPES, what)),
  'no value': (text, { where }) => inValue(text, where, () => ''),
  'other number': (text, { where, what }) => inNumber(text, where, () => chosen(NUMBERS, what)),
  'other amount': (text, { where, what }) =>
    inNumber(text, where, (written) => `${Number((asNumber(written) * (0.2 + (what % 400) / 100)).toFixed(2))}`),
  'near amount': (text, { where, what }) =>
    inNumber(text, where, (written) => `${Number((asNumber(written) * (0.9 + (what % 200) / 1000)).toFixed(3))}`),
  'large amount': (text, { where, what }) =>
    inSetting(text, where, /\b(?:by|along cap|over|distance|to): /, () => `${(what % 3000) - 500}`),
  'other unit': (text, { where, what }) => inNumber(text, where, (written) => `${written}${chosen(UNITS, what)}`),
  'other words': (text, { where, what }) => inValue(text, where, () => chosen(WORDS, what)),
  'odd letters': (text, { where, what }) => inValue(text, where, () => chosen(QUOTED, what)),
  'odd place': (text, { where, what }) =>
    inSetting(text, where, /(?:\bat|taper to|seam|from|to|piece|dart|keep|line): /, () => chosen(PLACES, what)),
  'other side': (text, { where, what }) =>
    inSetting(text, where, /side: /, () => ['left', 'right', 'both'][what % 3] as string),
  'other correction': (text, { where, what }) =>
    inSetting(text, where, /do: /, () => {
      const names = [...text.matchAll(/do: (.+)/g)].map(([, name]) => name as string)
      return chosen([...names, ...WORDS.slice(-14)], what)
    }),
  'settings swapped': (text, { where, what }) => {
    const lines = text.split('\n')
    const settings = lines.flatMap((line, at) => (/^ {6,}[a-z].*: /.test(line) ? [at] : []))
    if (settings.length < 2) return text
    const [a, b] = [chosen(settings, where), chosen(settings, what)]
    ;[lines[a], lines[b]] = [lines[b] as string, lines[a] as string]
    return lines.join('\n')
  },
  'other key': (text, { where, what }) => inKey(text, where, () => chosen(KEYS, what)),
  'key misspelt': (text, { where, what, size }) =>
    inKey(text, where, (key) => {
      const at = what % (key.length + 1)
      const turns = [
        key.slice(0, at) + key.slice(at + 1),
        key.slice(0, at) + (key[at] ?? 's') + key.slice(at),
        key.slice(0, at) + (key[at + 1] ?? '') + (key[at] ?? '') + key.slice(at + 2),
        key.toUpperCase(),
        key.replaceAll(' ', '_'),
      ]
      return chosen(turns, size)
    }),
  'deep brackets': (text, { where, what, size }) => {
    const deep = [3, 15, 19, 21, 100, 5000][size % 6] as number
    const pairs = [
      ['[', ']'],
      ['{a: ', '}'],
      ['- ', ''],
      ['[', ''],
      ['? ', ''],
    ] as const
    const [open, close] = chosen(pairs, what)
    return inValue(text, where, () => `${open.repeat(deep)}x${close.repeat(deep)}`)
  },
  'deep indent': (text, { where, size }) =>
    insert(text, lineStart(text, where), Array.from({ length: size % 60 }, (_, k) => `${' '.repeat(k)}a:\n`).join('')),
  aliases: (text, { what, size }) => {
    const bomb = Array.from({ length: 2 + (size % 9) }, (_, k) => `b${k + 1}: &b${k + 1} [${Array(9).fill(`*b${k}`)}]`)
    return what % 2 === 0
      ? `b0: &b0 x\n${bomb.join('\n')}\n${text}`
      : text.replace(/body:\n/, 'body: &body\n  <<: *body\n')
  },
  'long line': (text, { where, what, size }) => {
    const long = chosen(['x', '1', 'a b ', '漢', '5/', '[', 'k: ', '\t', '-', '\u0301'], what).repeat(
      200 * (1 + (size % 400)),
    )
    return size % 2 === 0 ? inValue(text, where, () => long) : inKey(text, where, (key) => `${key} ${long}`)
  },
  'long comment': (text, { where, size }) =>
    insert(text, lineStart(text, where), `#${' a note'.repeat(size % 7 === 0 ? 150_000 : size % 3000)}\n`),
  'many fittings': (text, { size }) => {
    const at = text.search(/^ {2}- label:/m)
    if (at < 0) return text
    const one = text.slice(at)
    const again = (k: number) => one.replace(/label: .*/g, (label) => `${label} ${k}`)
    return (
      text + (text.endsWith('\n') ? '' : '\n') + Array.from({ length: 1 + (size % 6) }, (_, k) => again(k)).join('')
    )
  },
  'other line ends': (text, { what }) => text.replaceAll('\n', chosen(['\r\n', '\r', '\n\n', '\u2028'], what)),
  'byte order mark': (text) => `\ufeff${text}`,
  directive: (text, { what }) =>
    chosen(['%YAML 1.1\n---\n', '---\n', '--- !!map\n', '%TAG ! x\n---\n', '...\n', '---\n---\n', '# yaml\n'], what) +
    text,
  'another document': (text, { where }) => insert(text, lineStart(text, where), '---\n'),
  quotes: (text, { where, what }) =>
    inValue(text, where, (value) => `${what % 2 ? '"' : "'"}${value}${what % 3 ? '"' : ''}`),
} as const satisfies Readonly<Record<string, Spoil>>

const KINDS = Object.keys(SPOILS) as (keyof typeof SPOILS)[]

/** Kinds that leave a file which can be read: half of all changes, so that much of it comes as far as the draft. */
const MEANT: readonly (keyof typeof SPOILS)[] = [
  'near amount',
  'near amount',
  'other amount',
  'large amount',
  'other number',
  'odd place',
  'other side',
  'other correction',
  'settings swapped',
  'other words',
]

/** The text with every change made, in order. */
export function spoiltText(texts: readonly string[], { file, changes }: Spoilt): string {
  const text = texts[file] as string
  return changes.reduce((before, change) => (SPOILS[change.kind] as Spoil)(before, change), text)
}

/** Any of so many files with up to four changes, mostly one or two. */
export function spoiltFiles(count: number): fc.Arbitrary<Spoilt> {
  const change: fc.Arbitrary<Change> = fc.record({
    kind: fc.oneof(fc.constantFrom(...KINDS), fc.constantFrom(...MEANT)),
    where: fc.nat(1_000_000),
    what: fc.nat(1_000_000),
    size: fc.nat(5000),
  })
  return fc.record({
    file: fc.nat(count - 1),
    changes: fc.oneof(
      fc.array(change, { minLength: 1, maxLength: 1 }),
      fc.array(change, { minLength: 1, maxLength: 2 }),
      fc.array(change, { minLength: 1, maxLength: 4 }),
    ),
  })
}

function chosen<T>(from: readonly T[], number: number): T {
  return from[number % from.length] as T
}

function insert(text: string, at: number, what: string): string {
  return text.slice(0, at) + what + text.slice(at)
}

function lineStart(text: string, where: number): number {
  const starts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)]
  return chosen(starts, where)
}

/** Lines that say something. */
function isSaid(line: string): boolean {
  return /^\s*[^\s#]/.test(line)
}

function inLines(
  text: string,
  where: number,
  change: (lines: string[], at: number) => unknown,
  counts: (line: string) => boolean = () => true,
): string {
  const lines = text.split('\n')
  const places = lines.flatMap((line, at) => (counts(line) ? [at] : []))
  if (places.length === 0) return text
  change(lines, chosen(places, where))
  return lines.join('\n')
}

/** What stands behind one of the text's names and colons, up to the comment. */
function inValue(text: string, where: number, change: (value: string) => string): string {
  return replaced(text, where, /(?<=^[ -]*[\w" ]+: +)[^\s#][^#\n]*?(?=\s*(?:#.*)?$)/gm, change)
}

function inNumber(text: string, where: number, change: (value: string) => string): string {
  return replaced(text, where, /(?<=[:[,] )\d+(?:[.,]\d+)?(?:[ -]\d+\/\d+|\/\d+)?(?=[\s,}\]])/g, change)
}

function inSetting(text: string, where: number, setting: RegExp, change: (value: string) => string): string {
  return replaced(text, where, new RegExp(`(?<=${setting.source})[^\\s#][^#\\n]*?(?=\\s*(?:#.*)?$)`, 'gm'), change)
}

function inKey(text: string, where: number, change: (key: string) => string): string {
  return replaced(text, where, /(?<=^[ -]*|[{,] )[a-z][\w -]*(?=: |:$)/gm, change)
}

function replaced(text: string, where: number, what: RegExp, change: (found: string) => string): string {
  const places = [...text.matchAll(what)]
  if (places.length === 0) return text
  const { 0: found, index } = chosen(places, where)
  return text.slice(0, index) + change(found) + text.slice(index + found.length)
}

function asNumber(written: string): number {
  const [whole = '0', over, under] = written.replace(',', '.').split(/[ /-]/)
  if (under === undefined) return over === undefined ? Number(whole) : Number(whole) / Number(over)
  return Number(whole) + Number(over) / Number(under)
}
