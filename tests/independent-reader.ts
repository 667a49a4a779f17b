// Reads pattern.json as any other program would: from its text and the contract alone. It shares no line with
// src/, neither types nor arithmetic, so that a mistake there cannot hide here.

import { type Chain, chainOf, crossings, isWithin, signedArea } from './reader-chains.ts'
import {
  type Curve,
  curvesOf,
  flattened,
  gap,
  lengthOf,
  type Pt,
  placeOn,
  pointAt,
  sampled,
  smallestRadius,
} from './reader-curves.ts'
import { CHORDS, checkCutLine } from './reader-cut-line.ts'

export type { Pt } from './reader-curves.ts'

interface RawPart {
  piece: string
  seam: string
  reversed: boolean
  from?: number
  to?: number
}
export interface RawSeam {
  id: string
  parts: string[]
  allowance: number
}
export interface RawPiece {
  id: string
  name: string
  side: string
  cut: number
  seams: RawSeam[]
  cutLine: string
  darts: { id: string; seam: string; mouth: [Pt, Pt]; point: Pt }[]
  notches: { id: string; seam: string; at: Pt; marks: number; points?: Pt[] }[]
  lines: { id: string; path: string }[]
}
export interface RawPattern {
  scyewright: string
  performer: string
  production: string
  version: string
  unit: string
  up: string
  pieces: RawPiece[]
  joins: { id: string; a: RawPart[]; b: RawPart[]; ease: { min: number; target: number; max: number } }[]
}

function pieceNamed(pattern: RawPattern, id: string): RawPiece {
  const piece = pattern.pieces.find((p) => p.id === id)
  if (!piece) throw new Error(`no piece ${id}`)
  return piece
}

function seamCurves(piece: RawPiece, id: string): Curve[] {
  const seam = piece.seams.find((s) => s.id === id)
  if (!seam) throw new Error(`no seam ${id} on ${piece.id}`)
  return seam.parts.flatMap(curvesOf)
}

/** The point `along` mm of sewn length from the start of one side of a join. */
export function pointOnSide(pattern: RawPattern, parts: readonly RawPart[], along: number): Pt {
  let rest = along
  for (const [i, part] of parts.entries()) {
    const curves = seamCurves(pieceNamed(pattern, part.piece), part.seam)
    const from = part.from ?? 0
    const to = part.to ?? lengthOf(curves)
    if (rest > to - from && i < parts.length - 1) rest -= to - from
    else return pointAt(curves, part.reversed ? to - rest : from + rest)
  }
  throw new Error('a side of a join is empty')
}

export function sideLength(pattern: RawPattern, parts: readonly RawPart[]): number {
  return parts.reduce((sum, part) => {
    const whole = lengthOf(seamCurves(pieceNamed(pattern, part.piece), part.seam))
    return sum + (part.to ?? whole) - (part.from ?? 0)
  }, 0)
}

/** Turns between changes of direction along curves, degrees; what turns less than half a degree is not seen. */
function bendsOf(curves: readonly Curve[]): number[] {
  const points = sampled(curves, 200).filter((p, i, all) => i === 0 || gap(p, all[i - 1] as Pt) > 1e-6)
  const runs: number[] = []
  const add = (turn: number) => {
    const last = runs[runs.length - 1]
    if (last !== undefined && last > 0 === turn > 0) runs[runs.length - 1] = last + turn
    else if (turn !== 0) runs.push(turn)
  }
  for (let i = 2; i < points.length; i++) {
    const [a, b, c] = [points[i - 2], points[i - 1], points[i]] as [Pt, Pt, Pt]
    const turn = Math.atan2(c[1] - b[1], c[0] - b[0]) - Math.atan2(b[1] - a[1], b[0] - a[0])
    add((((turn + 3 * Math.PI) % (2 * Math.PI)) - Math.PI) * (180 / Math.PI))
  }
  const seen = runs.filter((turn) => Math.abs(turn) > 0.5)
  runs.length = 0
  seen.forEach(add)
  return runs
}

/** Largest distance left between two rows of points after the best rigid motion of the second, reflection allowed. */
export function incongruence(one: readonly Pt[], other: readonly Pt[]): number {
  const middle = (points: readonly Pt[]): Pt => [
    points.reduce((s, p) => s + p[0], 0) / points.length,
    points.reduce((s, p) => s + p[1], 0) / points.length,
  ]
  const [m, n] = [middle(one), middle(other)]
  const worst = [1, -1].map((mirror) => {
    let c = 0
    let s = 0
    one.forEach((p, i) => {
      const q = other[i] as Pt
      const [px, py, qx, qy] = [p[0] - m[0], p[1] - m[1], (q[0] - n[0]) * mirror, q[1] - n[1]]
      c += qx * px + qy * py
      s += qx * py - qy * px
    })
    const size = Math.sqrt(c * c + s * s)
    return Math.max(
      ...one.map((p, i) => {
        const q = other[i] as Pt
        const [qx, qy] = [(q[0] - n[0]) * mirror, q[1] - n[1]]
        return gap([p[0] - m[0], p[1] - m[1]], [(c * qx - s * qy) / size, (s * qx + c * qy) / size])
      }),
    )
  })
  return Math.min(...worst)
}

/** A piece read once: what several checks need. */
export interface Reading {
  readonly piece: RawPiece
  /** The curves of each part of each seam. */
  readonly seams: readonly { readonly seam: RawSeam; readonly parts: readonly (readonly Curve[])[] }[]
  /** The stitching line with straight chords over dart mouths. */
  readonly outline: Chain
}

function readPiece(piece: RawPiece): Reading {
  const seams = piece.seams.map((seam) => ({ seam, parts: seam.parts.map(curvesOf) }))
  return {
    piece,
    seams,
    outline: chainOf(
      flattened(
        seams.flatMap(({ parts }) => parts.flat()),
        CHORDS,
      ),
      true,
    ),
  }
}

/** Bends of the armscyes and caps of a fresh draft that are more like corners, in words; `least` is a radius in mm. */
export function spikes(pattern: RawPattern, least = 12): string[] {
  return pattern.pieces.flatMap((piece) =>
    piece.seams
      .filter(({ id }) => /armscye|cap/.test(id))
      .flatMap(({ id }) => {
        const radius = Math.min(...seamCurves(piece, id).map(smallestRadius))
        return radius < least ? [`${piece.id} ${id} bends with a radius of ${radius.toFixed(1)} mm`] : []
      }),
  )
}

export type Say = (...words: (string | number)[]) => void

/** Everything in a pattern that breaks the contract or cannot be cut and sewn, in words; empty when all is well. */
export function complaints(pattern: RawPattern): string[] {
  const found: string[] = []
  const say = (...words: (string | number)[]) => found.push(words.join(' '))
  if (pattern.scyewright !== 'pattern/1' || pattern.unit !== 'mm' || pattern.up !== 'y')
    say('not a pattern/1 in mm, y up')
  for (const piece of pattern.pieces) {
    const reading = readPiece(piece)
    checkOutline(reading, say)
    checkDarts(reading, say)
    checkNotches(reading, say)
    checkCutLine(reading, say)
    if (!piece.lines.some((line) => line.id === 'grain')) say(piece.id, 'has no grain')
    if (piece.id.startsWith('sleeve')) checkSleeve(reading, say)
  }
  for (const join of pattern.joins) {
    const ease = sideLength(pattern, join.a) - sideLength(pattern, join.b)
    const { min, target, max } = join.ease
    // A cap may be asked to have more than its cloth takes.
    const most = / cap|^cap/.test(join.id) ? Number.POSITIVE_INFINITY : max
    if (!(min <= max && min <= target && target <= most)) say(join.id, 'declares', min, target, max)
    if (!(ease >= min - 0.01 && ease <= max + 0.01))
      say(join.id, 'has ease', ease.toFixed(3), 'declared', min, 'to', max)
  }
  return found
}

function checkOutline({ piece, seams, outline }: Reading, say: Say): void {
  seams.forEach(({ seam, parts }, i) => {
    const next = seams[(i + 1) % seams.length] as Reading['seams'][number]
    const end = parts.at(-1)?.at(-1)?.[3] as Pt
    const start = next.parts[0]?.[0]?.[0] as Pt
    if (!(gap(end, start) <= 0.001)) say(piece.id, seam.id, 'ends', gap(end, start).toFixed(4), 'mm from', next.seam.id)
    const darts = piece.darts.filter((d) => d.seam === seam.id)
    if (darts.length !== parts.length - 1)
      say(piece.id, seam.id, 'has', parts.length, 'parts and', darts.length, 'darts')
    for (let k = 1; k < parts.length; k++) {
      const from = parts[k - 1]?.at(-1)?.[3] as Pt
      const to = parts[k]?.[0]?.[0] as Pt
      if (!darts.some((d) => gap(d.mouth[0], from) < 0.001 && gap(d.mouth[1], to) < 0.001))
        say(piece.id, seam.id, 'gap without dart')
    }
  })
  if (!(signedArea(outline) > 1000)) say(piece.id, 'does not run anticlockwise')
  if (crossings(outline) > 0) say(piece.id, 'crosses itself')
}

function checkDarts({ piece, outline }: Reading, say: Say): void {
  for (const dart of piece.darts) {
    const [one, other] = dart.mouth.map((p) => gap(p, dart.point)) as [number, number]
    if (!(Math.abs(one - other) <= 0.05)) say(piece.id, dart.id, 'has legs', one.toFixed(3), other.toFixed(3))
    if (!isWithin(outline, dart.point)) say(piece.id, dart.id, 'ends outside the piece')
  }
}

function checkNotches({ piece }: Reading, say: Say): void {
  for (const notch of piece.notches) {
    const curves = seamCurves(piece, notch.seam)
    for (const mark of [notch.at, ...(notch.points ?? []).slice(1)]) {
      const { off } = placeOn(curves, mark)
      if (!(off <= 0.01)) say(piece.id, notch.id, 'lies', off.toFixed(4), 'mm off', notch.seam)
    }
    const marks = notch.id.startsWith('back notch') ? 2 : 1
    if (/^(front|back) notch/.test(notch.id) && notch.marks !== marks)
      say(piece.id, notch.id, 'has', notch.marks, 'marks')
    if (notch.points && (notch.points.length !== notch.marks || gap(notch.points[0] as Pt, notch.at) > 1e-6))
      say(piece.id, notch.id, 'has', notch.points.length, 'places for', notch.marks, 'marks, or begins elsewhere')
  }
}

function checkSleeve({ piece }: Reading, say: Say): void {
  const side = piece.id.replace('sleeve', '')
  const front = seamCurves(piece, 'front underarm seam')
  const back = seamCurves(piece, 'back underarm seam')
  const difference = lengthOf(back) - lengthOf(front)
  if (!(Math.abs(difference) <= 0.5)) say(piece.id, 'underarm seams differ by', difference.toFixed(3), side)
  for (const id of ['front cap', 'back cap']) {
    const bends = bendsOf(seamCurves(piece, id))
    if (bends.length !== 2)
      say(piece.id, id, 'has', bends.length - 1, 'inflections:', bends.map((b) => b.toFixed(1)).join(', '))
  }
  // From underarm to underarm: on a left sleeve the back cap comes first.
  const [one, other] = [seamCurves(piece, 'front cap'), seamCurves(piece, 'back cap')]
  const meet = gap(one.at(-1)?.[3] as Pt, other[0]?.[0] as Pt) < 0.001
  const crown = bendsOf(meet ? [...one, ...other] : [...other, ...one])
  if (crown.length !== 3) say(piece.id, 'cap has', crown.length - 1, 'inflections over the crown')
}
