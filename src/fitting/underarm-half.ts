import type { Piece, Seam } from '../pattern/piece.ts'
import { seamLength } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { nextSeam } from './seam-run.ts'

/** One underarm seam of a sleeve, counted from the underarm down. */
export interface UnderarmHalf {
  readonly name: 'front' | 'back'
  readonly seam: Seam
  readonly length: number
  /** Whether the seam runs from the underarm down to the wrist. */
  readonly runsDown: boolean
}

/** Front and back underarm seam of a sleeve piece; throws when one is missing. */
export function underarmHalves(piece: Piece): readonly [front: UnderarmHalf, back: UnderarmHalf] {
  return [half(piece, 'front'), half(piece, 'back')]
}

function half(piece: Piece, name: 'front' | 'back'): UnderarmHalf {
  const seam = piece.seams.find((s) => baseName(s.id) === `${name} underarm seam`)
  if (!seam) throw new RangeError(`${piece.id} has no ${name} underarm seam`)
  return { name, seam, length: seamLength(seam), runsDown: !/ cap$/.test(baseName(nextSeam(piece, seam.id).id)) }
}

/** A place as mm from the underarm along the seam, and back again: its own inverse. */
export function downFromUnderarm(half: UnderarmHalf, along: number): number {
  return half.runsDown ? along : half.length - along
}

/** How far below the underarm the elbow is, mm along both seams: at the elbow notch of the front one. */
export function elbowBelowUnderarm(piece: Piece): number | undefined {
  const [front] = underarmHalves(piece)
  const notch = piece.notches.find((n) => baseName(n.id) === 'elbow notch' && n.seam === front.seam.id)
  return notch && downFromUnderarm(front, notch.along)
}

/** How far below the underarm the first dart of a seam opens, mm; its whole length without darts. */
export function plainBelowUnderarm(half: UnderarmHalf): number {
  const parts = half.seam.parts
  const part = half.runsDown ? parts[0] : parts[parts.length - 1]
  return part && parts.length > 1 ? seamLength({ ...half.seam, parts: [part] }) : half.length
}
