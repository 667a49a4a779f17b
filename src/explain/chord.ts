import type { LengthUnit } from '../base/units.ts'
import { lineCrossings } from '../geometry/line-crossings.ts'
import { nearest } from '../geometry/nearest.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { subPath } from '../geometry/path-length.ts'
import { add, between, distance, dot, leftOf, type Point, subtract, unit } from '../geometry/point.ts'
import { onRuler } from './said.ts'
import type { Chord } from './step.ts'

/** Chords shorter than these are divided in two, in four; longer ones in eight, mm. */
const PARTS = [
  { below: 45, parts: 2 },
  { below: 125, parts: 4 },
] as const

/** A curve that lies nearer to its chord than this needs no more parts, mm. */
const SHALLOW = [
  { below: 2, parts: 2 },
  { below: 6, parts: 4 },
] as const

/** A point of a curve, where the reader has it and where the draft has it. */
export interface ChordEnd {
  readonly name: string
  readonly ruled: Point
  readonly drafted: Point
}

/** The chord between the reader's points, in as many parts as its length and depth ask for, and the drafted curve from it. */
export function chordOf(path: Path, from: ChordEnd, to: ChordEnd, units: LengthUnit): Chord {
  const [a, b] = [from.ruled, to.ruled]
  const length = distance(a, b)
  const part = subPath(path, nearest(path, from.drafted).along, nearest(path, to.drafted).along)
  const left = leftOf(unit(subtract(b, a)))
  const offsetsIn = (count: number) =>
    Array.from({ length: count - 1 }, (_, k) => offsetAt(part, between(a, b, (k + 1) / count), left))
  const byLength = PARTS.find(({ below }) => length < below)?.parts ?? 8
  const deepest = Math.max(...offsetsIn(byLength).map(Math.abs))
  const parts = Math.min(byLength, SHALLOW.find(({ below }) => deepest < below)?.parts ?? 8)
  return { from: from.name, to: to.name, parts, offsets: offsetsIn(parts).map((offset) => onRuler(offset, units)) }
}

/** Nowhere farther from its chord than half a step of the ruler. */
export function isStraight({ offsets }: Chord): boolean {
  return offsets.every((offset) => offset === 0)
}

/** How far from the mark, to the left, the curve lies; the crossing nearest to the mark. */
function offsetAt(path: Path, mark: Point, left: Point): number {
  const found = lineCrossings(path, mark, add(mark, left)).map(({ at }) => dot(subtract(at, mark), left))
  const [first] = found.sort((a, b) => Math.abs(a) - Math.abs(b))
  if (first !== undefined) return first
  // Past the end of the part by a rounding: its end is next.
  const ends = [startOf(path), endOf(path)].map((p) => dot(subtract(p, mark), left))
  return ends.sort((a, b) => Math.abs(a) - Math.abs(b))[0] as number
}
