import { formatLength } from '../base/format-length.ts'
import type { LengthUnit } from '../base/units.ts'
import { namedSide } from '../pattern/side-names.ts'
import type { FigureChange, JoinChange } from './changes.ts'
import type { SeamPlace } from './position.ts'
import { named, sayPlaces } from './say-places.ts'
import type { SlipEntry, SlipMove } from './slip.ts'

/** What a slip says above its entries. */
export interface SlipHead {
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string
  /** The unit that it speaks in. */
  readonly units: LengthUnit
  /** Measures that nobody took, each with its estimate and standard error in words. */
  readonly estimates?: readonly string[]
}

/** Lines are broken between words, not within `1 1/4 in`. */
const BREAKS = /(?<=[^\d\s]) (?=\S)|(?<=\S) (?!(?:\d+\/\d+|in|mm|cm|deg)(?![\w/]))(?=\S)/

/** Lines are broken here so that they fit a printed sheet. */
const WIDTH = 78

/** A line that moved by less is within the pencil line, mm. */
const LEAST_MOVE = 0.25

/** Lengths that differ by less are the same on a tape, mm. */
const SAME = 0.05

/**
 * The alteration slip as plain text, in the words and the unit a stitcher reads: for each fitting what was seen, what
 * to do, where and on which side, what else changed, and what is left of the allowance; before them what was drafted from estimates. Ends with a line break.
 */
export function slipText(entries: readonly SlipEntry[], head: SlipHead): string {
  const title = [head.production, head.performer].filter((part) => part !== undefined).join(', ')
  const lines = ['ALTERATION SLIP', title, '']
  if (head.estimates?.length)
    lines.push(...wrap(`Estimated, not measured: ${head.estimates.join(', ')}.`, '', '  '), '')
  if (entries.length === 0) lines.push('No corrections.', '')
  let fitting: string | undefined
  for (const entry of entries) {
    if (entry.fitting !== fitting) {
      fitting = entry.fitting
      lines.push(...fittingLines(entry), '')
    }
    lines.push(...entryLines(entry, head.units), '')
  }
  return `${lines.join('\n').trimEnd()}\n`
}

function fittingLines(entry: SlipEntry): string[] {
  const words = [entry.fitting, entry.date, `mock-up ${entry.mockUp}`].filter((part) => part !== undefined).join(', ')
  const lines = [words, '-'.repeat(words.length)]
  if (entry.provisional !== undefined) lines.push(`Provisional: fitted on ${entry.provisional}.`)
  return lines
}

function entryLines(entry: SlipEntry, units: LengthUnit): string[] {
  const say = (mm: number) => formatLength(mm, units)
  const order = `${entry.correction}. ${sideWords(entry)}: ${entry.what}`
  if (entry.voided !== undefined) return [...wrap(`${order} (voided: ${entry.voided})`, '', '   ')]
  const lines = wrap(order, '', '   ')
  const add = (label: string, text: string) => lines.push(...wrap(`${label.padEnd(8)}${text}`, '   ', ' '.repeat(11)))
  if (entry.seen !== undefined) add('Seen', entry.seen)
  add('Where', entry.where)
  for (const move of entry.moves) if (Math.abs(move.amount) >= LEAST_MOVE) add('Line', moveWords(move, say))
  for (const seam of entry.seams) {
    if (Math.abs(seam.after - seam.before) < SAME) continue
    add('Seam', `${seam.piece}, ${seam.seam}: now ${say(seam.after)} (${difference(seam.after - seam.before, say)})`)
  }
  for (const join of entry.joins) add('Join', joinWords(join, say))
  for (const figure of entry.figures) add('Sleeve', `${sideOf(figure.piece)}${figureWords(figure, say)}`)
  for (const row of entry.allowances)
    add('Left', `${row.piece}, ${row.seam}: ${say(row.left)} of ${say(row.cut)} allowance`)
  return lines
}

function sideWords(entry: SlipEntry): string {
  return entry.side === 'both' ? 'Both sides' : entry.side === 'left' ? 'Left side' : 'Right side'
}

function joinWords(join: JoinChange, say: (mm: number) => string): string {
  const { before, after, declared } = join
  const [was, is] = [ease(before.ease, say), ease(after.ease, say)]
  const change = after.ease - before.ease
  const eases =
    Math.abs(change) < SAME
      ? `ease ${is} as before`
      : was === is
        ? `ease ${is}, ${sayFinely(Math.abs(change), say)} ${change > 0 ? 'more' : 'less'} than before`
        : `ease ${was}, now ${is}`
  const range = `may be ${ease(declared.min, say)} to ${ease(declared.max, say)}`
  if (join.restores === undefined) return `${join.join}: ${eases} (${range})`
  return `${join.join} no longer matches: ${eases} (${range}); ${join.restores} would restore it`
}

/** How far a line moved and between which places. */
function moveWords({ piece, seam, amount, from, to }: SlipMove, say: (mm: number) => string): string {
  const span = from && to ? spanWords(from, to, say) : 'along the whole seam'
  return `${piece}, ${seam}: ${amount > 0 ? 'outward' : 'inward'} by up to ${sayFinely(Math.abs(amount), say)}, ${span}`
}

/** The named end first, so that the other is said from it or toward it. */
function spanWords(start: SeamPlace, end: SeamPlace, say: (mm: number) => string): string {
  const [from, to] = [named(start, say), named(end, say)]
  const [a, b] = 'from' in from ? [to, from] : [from, to]
  if (!('from' in b)) return `from ${sayPlaces([a], say)} to ${sayPlaces([b], say)}`
  const known = 'landmark' in a ? a.landmark : undefined
  const name = (place: string) => (place === known ? 'it' : `the ${place}`)
  const point = `a point ${say(b.distance)} from ${name(b.from)} toward ${name(b.toward)}`
  return `between ${'from' in a ? 'a point ' : ''}${sayPlaces([a], say)} and ${point}`
}

/** The side of a piece that is apart left and right, before its figure. */
function sideOf(piece: string): string {
  const side = namedSide(piece)
  return side === undefined ? '' : `${side}, `
}

function figureWords(figure: FigureChange, say: (mm: number) => string): string {
  const value = (x: number) => (figure.unit === 'deg' ? `${x.toFixed(0)} deg` : say(x))
  const lift = figure.figure === 'neutral lift'
  const [was, is] = [value(figure.before), value(figure.after)]
  const change = figure.after - figure.before
  const now =
    was !== is
      ? `now ${is}`
      : figure.unit === 'deg' || Math.abs(change) < SAME
        ? 'unchanged'
        : `${sayFinely(Math.abs(change), say)} ${change > 0 ? 'more' : 'less'} than before`
  return lift ? `hangs at ${was}, ${now} (below level, an estimate)` : `${figure.figure} ${was}, ${now}`
}

function difference(mm: number, say: (mm: number) => string): string {
  return `${sayFinely(Math.abs(mm), say)} ${mm > 0 ? 'longer' : 'shorter'}`
}

/** Too little for the tape's divisions is said in mm rather than as nothing. */
function sayFinely(mm: number, say: (mm: number) => string): string {
  return /^0 /.test(say(mm)) && mm >= SAME ? `${mm.toFixed(1)} mm` : say(mm)
}

function ease(mm: number, say: (mm: number) => string): string {
  return Math.abs(mm) < SAME ? say(0) : `${mm < 0 ? '−' : ''}${sayFinely(Math.abs(mm), say)}`
}

function wrap(text: string, first: string, rest: string): string[] {
  const lines: string[] = []
  let line = first
  let empty = true
  for (const word of text.split(BREAKS)) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line)
      line = rest + word
    } else line = empty ? line + word : `${line} ${word}`
    empty = false
  }
  return [...lines, line]
}
