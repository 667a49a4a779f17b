import type { Piece, Seam, Side } from '../pattern/piece.ts'
import { baseName, drawnSide } from '../pattern/side-names.ts'
import type { CapEase } from './cap-ease.ts'
import { isFold } from './draw-piece.ts'
import { TEXT } from './house-style.ts'
import { lengthLabel } from './length-label.ts'
import type { SheetInfo } from './scene.ts'
import { textWidth } from './text-width.ts'

/** One line of a block of text: its name, which stays the same whatever it says, and its size (em), mm. */
export interface BlockLine {
  readonly id: string
  readonly text: string
  readonly size: number
}

/** No line of a label is wider than this where it can be broken, mm: about the width of a small sleeve's forearm. */
const WIDEST = 90

/** What is written on a piece, most important first. */
export function titleBlock(piece: Piece, ease: readonly CapEase[], info: SheetInfo): BlockLine[] {
  return [
    { id: 'piece', text: piece.name.toUpperCase(), size: TEXT.title },
    ...cutLines(piece),
    ...wrapped('wearer', info.production ? `${info.production} · ${info.performer}` : info.performer),
    ...wrapped('version', ['version:', info.version, ...(info.date === undefined ? [] : ['·', info.date])].join(' ')),
    ...(info.fittings?.length ? wrapped('fittings', `fittings applied: ${info.fittings.join(', ')}`) : []),
    ...allowanceLines(piece, info),
    ...easeLines(ease, info),
  ]
}

/** The walk of a cap for the piece: what each stretch of it measures, and the stretch of the armscye it is sewn to. */
export function capWalkBlock(ease: readonly CapEase[], info: SheetInfo): BlockLine[] {
  if (ease.length === 0) return []
  const say = (mm: number) => lengthLabel(mm, info.units)
  const rows = ease.flatMap(({ join, spans }) =>
    spans.map(({ from, to, cap, armscye }) => {
      const words = `${halfOf(join)}, ${from} to ${to}`
      return line(words, `${words}: ${say(cap)} on ${say(armscye)}`)
    }),
  )
  return [line('heading', 'WALK · cap on armscye'), ...rows]
}

function line(id: string, text: string): BlockLine {
  return { id, text, size: TEXT.body }
}

/** The text in lines broken between words. */
function wrapped(id: string, text: string): BlockLine[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && textWidth(`${last} ${word}`, TEXT.body) <= WIDEST) lines[lines.length - 1] += ` ${word}`
    else lines.push(word)
  }
  return lines.map((words, k) => line(k === 0 ? id : `${id} ${k + 1}`, words))
}

/** How the piece is cut, and which way up it lies: two right sleeves have been cut before. */
function cutLines(piece: Piece): BlockLine[] {
  const size = TEXT.body * 1.25
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
function allowanceLines(piece: Piece, info: SheetInfo): BlockLine[] {
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
    line('allowance', `allowance included: ${common}`),
    ...(words.length === 0 ? [] : wrapped('other allowances', Array.from(new Set(words)).join(', '))),
  ]
}

function easeLines(ease: readonly CapEase[], info: SheetInfo): BlockLine[] {
  if (ease.length === 0) return []
  const values = ease.map((e) => {
    const mm = e.aboveNotch ?? e.total
    const exact = info.units === 'in' ? ` (${lengthLabel(mm, 'mm')})` : ''
    return `${halfOf(e.join)} ${lengthLabel(mm, info.units)}${exact}`
  })
  const where = ease.every((e) => e.aboveNotch !== undefined) ? 'cap ease, notch to shoulder:' : 'cap ease:'
  return [line('ease heading', where), line('ease', values.join(', '))]
}

function halfOf(join: string): string {
  return join.startsWith('front') ? 'front' : 'back'
}
