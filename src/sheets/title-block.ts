import type { Piece, Seam } from '../pattern/piece.ts'
import { drawnSide } from '../pattern/side-names.ts'
import type { CapEase } from './cap-ease.ts'
import { isFold } from './draw-piece.ts'
import { TEXT } from './house-style.ts'
import { lengthLabel } from './length-label.ts'
import type { SheetInfo } from './scene.ts'

/** One line of a block of text and its size (em), mm. */
export interface BlockLine {
  readonly text: string
  readonly size: number
}

/** What is written on a piece, most important first. */
export function titleBlock(piece: Piece, ease: readonly CapEase[], info: SheetInfo): BlockLine[] {
  const body = [
    info.production ? `${info.production} · ${info.performer}` : info.performer,
    versionLine(info),
    ...(info.remarks ?? []),
    ...allowanceLines(piece, info),
    ...easeLines(ease, info),
  ]
  return [
    { text: piece.name.toUpperCase(), size: TEXT.title },
    ...cutLines(piece).map((text) => ({ text, size: TEXT.body * 1.25 })),
    ...body.map((text) => ({ text, size: TEXT.body })),
  ]
}

/** How the piece is cut, and which way up it lies: two right sleeves have been cut before. */
function cutLines(piece: Piece): string[] {
  const number = `cut ${piece.cut}`
  switch (piece.side) {
    case 'pair':
      return [`PAIR · ${number}, mirrored`, `this side up: the ${drawnSide(piece).toUpperCase()} one`]
    case 'left':
    case 'right':
      return [`${piece.side.toUpperCase()} · ${number}`, `this side up`]
    case 'fold':
      return [`ON THE FOLD · ${number}`, 'this side up']
    case 'whole':
      return [`WHOLE · ${number}`, 'this side up']
  }
}

function versionLine(info: SheetInfo): string {
  const fittings = info.fittings ?? []
  const version = fittings.length === 0 ? info.version : `fitted: ${fittings.join(', ')}`
  return info.date ? `${version} · ${info.date}` : version
}

/** The commonest allowance, then the seams that have another one; allowances that read alike are alike here. */
function allowanceLines(piece: Piece, info: SheetInfo): string[] {
  const say = (seam: Seam) => (seam.allowance === 0 ? 'none' : lengthLabel(seam.allowance, info.units))
  const seams = piece.seams.filter((seam) => !isFold(piece, seam))
  const count = new Map<string, number>()
  for (const seam of seams) count.set(say(seam), (count.get(say(seam)) ?? 0) + 1)
  const common = Array.from(count).sort((a, b) => b[1] - a[1])[0]?.[0]
  if (common === undefined) return []
  const others = seams.filter((seam) => say(seam) !== common).map((seam) => `${seam.id} ${say(seam)}`)
  return [`allowance included: ${common}`, ...(others.length === 0 ? [] : [others.join(', ')])]
}

function easeLines(ease: readonly CapEase[], info: SheetInfo): string[] {
  if (ease.length === 0) return []
  const values = ease.map((e) => {
    const mm = e.aboveNotch ?? e.total
    const exact = info.units === 'in' ? ` (${lengthLabel(mm, 'mm')})` : ''
    return `${e.join.startsWith('front') ? 'front' : 'back'} ${lengthLabel(mm, info.units)}${exact}`
  })
  const where = ease.every((e) => e.aboveNotch !== undefined) ? 'cap ease, notch to shoulder:' : 'cap ease:'
  return [where, values.join(', ')]
}
