import type { Piece, Seam, Side } from '../pattern/piece.ts'
import { baseName, drawnSide } from '../pattern/side-names.ts'
import type { CapEase } from './cap-ease.ts'
import { isFold } from './draw-piece.ts'
import { estimateWords } from './estimate-words.ts'
import type { TextSizes } from './house-style.ts'
import { lengthLabel } from './length-label.ts'
import type { SheetInfo } from './scene.ts'
import { wrapWords } from './wrap-words.ts'

/** One line of a block of text: its name, which stays the same whatever it says, and its size (em), mm. */
export interface BlockLine {
  readonly id: string
  readonly text: string
  readonly size: number
}

/** No line of a label is wider than so many em where it can be broken: on paper 90 mm, a small sleeve's forearm. */
const WIDEST = 21.5

/** Estimates are written smaller than what a cutter needs at the table, as a share. */
const ESTIMATES = 0.8

/** What is written on a piece, most important first. */
export function titleBlock(piece: Piece, ease: readonly CapEase[], info: SheetInfo, sizes: TextSizes): BlockLine[] {
  const size = sizes.body
  const estimated = estimateWords(piece, info.estimates ?? [])
  const body = [
    ...wrapped('wearer', info.production ? `${info.production} · ${info.performer}` : info.performer, size),
    ...wrapped(
      'version',
      ['version:', info.version, ...(info.date === undefined ? [] : ['·', info.date])].join(' '),
      size,
    ),
    ...(info.fittings?.length ? wrapped('fittings', `fittings applied: ${info.fittings.join(', ')}`, size) : []),
    ...(info.remarks ?? []).flatMap((remark, k) => wrapped(`remark ${k + 1}`, remark, size)),
    ...(info.under === undefined ? [] : wrapped('under', `thin dashes: ${info.under}`, size)),
    ...allowanceLines(piece, info, size),
    ...easeLines(ease, info, size),
    ...(estimated === undefined ? [] : wrapped('estimates', estimated, size * ESTIMATES)),
  ]
  return [{ id: 'piece', text: piece.name.toUpperCase(), size: sizes.title }, ...cutLines(piece, size * 1.25), ...body]
}

/** The walk of a cap for the piece: what each stretch of it measures, and the stretch of the armscye it is sewn to. */
export function capWalkBlock(ease: readonly CapEase[], info: SheetInfo, sizes: TextSizes): BlockLine[] {
  if (ease.length === 0) return []
  const say = (mm: number) => lengthLabel(mm, info.units)
  const rows = ease.flatMap(({ join, spans }) =>
    spans.map(({ from, to, cap, armscye }) => {
      const words = `${halfOf(join)}, ${from} to ${to}`
      return line(words, `${words}: ${say(cap)} on ${say(armscye)}`, sizes.body)
    }),
  )
  return [line('heading', 'WALK · cap on armscye', sizes.body), ...rows]
}

function line(id: string, text: string, size: number): BlockLine {
  return { id, text, size }
}

/** The text in lines broken between words. */
function wrapped(id: string, text: string, size: number): BlockLine[] {
  const lines = wrapWords(text, size, WIDEST * size)
  return lines.map((words, k) => line(k === 0 ? id : `${id} ${k + 1}`, words, size))
}

/** How the piece is cut, and which way up it lies: two right sleeves have been cut before. */
function cutLines(piece: Piece, size: number): BlockLine[] {
  const up = piece.side === 'pair' ? `this side up: the ${drawnSide(piece).toUpperCase()} one` : 'this side up'
  return [
    {
      id: 'cut',
      text: `${SIDE_WORDS[piece.side]} · cut ${piece.cut}${piece.side === 'pair' ? ', mirrored' : ''}`,
      size,
    },
    { id: 'side up', text: up, size },
  ]
}

const SIDE_WORDS: Readonly<Record<Side, string>> = {
  pair: 'PAIR',
  left: 'LEFT',
  right: 'RIGHT',
  fold: 'ON THE FOLD',
  whole: 'WHOLE',
}

/** The commonest allowance, then the seams that have another one; allowances that read alike are alike here. */
function allowanceLines(piece: Piece, info: SheetInfo, size: number): BlockLine[] {
  const say = (seam: Seam) => lengthLabel(seam.allowance, info.units)
  const seams = piece.seams.filter((seam) => !isFold(piece, seam))
  const count = new Map<string, number>()
  for (const seam of seams) count.set(say(seam), (count.get(say(seam)) ?? 0) + 1)
  const common = Array.from(count).sort((a, b) => b[1] - a[1])[0]?.[0]
  if (common === undefined) return []
  const others = seams.filter((seam) => say(seam) !== common)
  // Of a seam that is there on both sides, the side is said only where the sides differ.
  const words = others.map((seam) => {
    const alike = others.filter((other) => baseName(other.id) === baseName(seam.id) && say(other) === say(seam))
    return `${alike.length > 1 ? baseName(seam.id) : seam.id} ${say(seam)}`
  })
  return [
    line('allowance', `allowance included: ${common}`, size),
    ...(words.length === 0 ? [] : wrapped('other allowances', Array.from(new Set(words)).join(', '), size)),
  ]
}

function easeLines(ease: readonly CapEase[], info: SheetInfo, size: number): BlockLine[] {
  if (ease.length === 0) return []
  const values = ease.map((e) => {
    const mm = e.aboveNotch ?? e.total
    const exact = info.units === 'in' ? ` (${lengthLabel(mm, 'mm')})` : ''
    return `${halfOf(e.join)} ${lengthLabel(mm, info.units)}${exact}`
  })
  const where = ease.every((e) => e.aboveNotch !== undefined) ? 'cap ease, notch to shoulder:' : 'cap ease:'
  return [line('ease heading', where, size), line('ease', values.join(', '), size)]
}

function halfOf(join: string): string {
  return join.startsWith('front') ? 'front' : 'back'
}
