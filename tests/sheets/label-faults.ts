import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Mark, PieceDrawing, TextMark } from '../../src/sheets/scene.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { type Chain, chainOf, isWithin } from '../reader-chains.ts'
import type { Pt } from '../reader-curves.ts'
import { samplesOf } from './fixture.ts'

/** A text's box, from descenders to accented capitals, as center, axes and half sides. */
interface Box {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly cos: number
  readonly sin: number
  readonly halfWidth: number
  readonly halfHeight: number
}

function boxOf(mark: TextMark): Box {
  const [low, high] = [-0.22 * mark.size, 0.92 * mark.size]
  const [cos, sin] = [Math.cos(mark.angle), Math.sin(mark.angle)]
  const middle = (low + high) / 2
  return {
    text: mark.text,
    x: mark.at.x - middle * sin,
    y: mark.at.y + middle * cos,
    cos,
    sin,
    halfWidth: textWidth(mark.text, mark.size) / 2,
    halfHeight: (high - low) / 2,
  }
}

function cornersOf({ x, y, cos, sin, halfWidth: w, halfHeight: h }: Box): Pt[] {
  return [
    [-w, -h],
    [w, -h],
    [w, h],
    [-w, h],
  ].map(([a = 0, b = 0]): Pt => [x + a * cos - b * sin, y + a * sin + b * cos])
}

/** Whether two boxes overlap: no side of either has all of the other beyond it. */
function overlap(one: Box, other: Box): boolean {
  return [
    [one, other],
    [other, one],
  ].every(([a, b]) => {
    const at = cornersOf(b as Box).map(([px, py]) => inFrame(a as Box, px, py))
    const { halfWidth: w, halfHeight: h } = a as Box
    const apart = [
      at.every(([u]) => u > w),
      at.every(([u]) => u < -w),
      at.every(([, v]) => v > h),
      at.every(([, v]) => v < -h),
    ]
    return !apart.includes(true)
  })
}

function inFrame({ x, y, cos, sin }: Box, px: number, py: number): Pt {
  return [(px - x) * cos + (py - y) * sin, (py - y) * cos - (px - x) * sin]
}

/** Short chords of a mark's curves, each path by itself. */
function chordsOf(mark: Exclude<Mark, TextMark>): [Pt, Pt][] {
  const paths = mark.type === 'fill' ? [mark.outline] : mark.paths
  return paths.flatMap((path) => {
    const points = samplesOf({ type: 'fill', kind: mark.kind, id: mark.id, outline: path }).map(
      ({ x, y }): Pt => [x, y],
    )
    return points.slice(1).map((p, k): [Pt, Pt] => [points[k] as Pt, p])
  })
}

/** Whether a chord has a point inside a box: what is left of it after cutting at the four sides. */
function crosses(box: Box, a: Pt, b: Pt): boolean {
  const reach = box.halfWidth + box.halfHeight
  for (const [k, center] of [box.x, box.y].entries()) {
    if (Math.min(a[k] as number, b[k] as number) > center + reach) return false
    if (Math.max(a[k] as number, b[k] as number) < center - reach) return false
  }
  const [from, to] = [inFrame(box, ...a), inFrame(box, ...b)]
  let [low, high] = [0, 1]
  for (const [k, half] of [box.halfWidth, box.halfHeight].entries()) {
    const [start, step] = [from[k] as number, (to[k] as number) - (from[k] as number)]
    if (step === 0 && Math.abs(start) >= half) return false
    if (step === 0) continue
    const cuts = [(-half - start) / step, (half - start) / step]
    low = Math.max(low, Math.min(...cuts))
    high = Math.min(high, Math.max(...cuts))
  }
  return low < high
}

/** The stitching line as a polygon, dart mouths bridged: from its curves' own samples. */
function outlineOf(drawing: PieceDrawing, pattern: Pattern): Chain {
  const piece = pattern.pieces.find((p) => p.id === drawing.id)
  const points = (piece?.seams ?? []).flatMap((seam) =>
    samplesOf({ type: 'stroke', kind: 'stitching line', id: seam.id, paths: seam.parts }, 60),
  )
  return chainOf(
    points.map(({ x, y }): Pt => [x, y]),
    true,
  )
}

/** Every way in which the text of a piece is not where it should be. */
export function faults(drawing: PieceDrawing, pattern: Pattern): string[] {
  const outline = outlineOf(drawing, pattern)
  const boxes = drawing.marks.flatMap((m) => (m.type === 'text' ? [boxOf(m)] : []))
  const ink = drawing.marks.flatMap((m) => (m.type === 'text' ? [] : chordsOf(m)))
  return boxes.flatMap((box, k) => {
    const found: string[] = []
    if (!cornersOf(box).every((corner) => isWithin(outline, corner))) found.push(`${box.text} is not inside`)
    if (ink.some(([a, b]) => crosses(box, a, b))) found.push(`${box.text} is on a mark`)
    for (const other of boxes.slice(k + 1)) if (overlap(box, other)) found.push(`${box.text} on ${other.text}`)
    return found.map((fault) => `${drawing.id}: ${fault}`)
  })
}
