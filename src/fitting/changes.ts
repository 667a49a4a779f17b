import type { Cubic } from '../geometry/cubic.ts'
import type { Point } from '../geometry/point.ts'
import type { EaseRange, Join, Pattern } from '../pattern/pattern.ts'
import type { Seam } from '../pattern/piece.ts'
import { seamLength } from '../pattern/seam.ts'
import { isCapJoin, type JoinLengths, joinLengths } from '../pattern/sewn-line.ts'
import { baseName } from '../pattern/side-names.ts'
import { isGone, type PositionMap } from './position-map.ts'
import { capsOf, sleeveFigures } from './sleeve-figures.ts'

/** A seam whose stitching line changed; lengths with darts closed, mm. */
export interface SeamChange {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam. */
  readonly seam: string
  /** Length before. */
  readonly before: number
  /** Length after. */
  readonly after: number
}

/** A join one of whose sides changed: what the correction did to the partner seams. */
export interface JoinChange {
  /** Id of the join. */
  readonly join: string
  /** Both sides before. */
  readonly before: JoinLengths
  /** Both sides after. */
  readonly after: JoinLengths
  /** The ease that it may have. */
  readonly declared: EaseRange
  /** The correction that would restore it, where the ease left its range. */
  readonly restores?: string
}

/** A figure of a sleeve that changed: `cap height` and `biceps width` in mm, `neutral lift` in degrees. */
export interface FigureChange {
  /** Id of the sleeve. */
  readonly piece: string
  /** Which figure. */
  readonly figure: 'cap height' | 'biceps width' | 'neutral lift'
  /** Of both numbers. */
  readonly unit: 'mm' | 'deg'
  /** The figure before. */
  readonly before: number
  /** The figure after. */
  readonly after: number
}

/** What one correction did. */
export interface Changes {
  readonly seams: readonly SeamChange[]
  readonly joins: readonly JoinChange[]
  readonly figures: readonly FigureChange[]
}

/** Changes smaller than this are none, mm or degrees: far below a pencil line. */
const NOTHING = 0.005

/**
 * What changed from one pattern to the next: every seam whose line is another object now, the joins that sew one,
 * front and back apart, and the figures of the sleeve. `map` tells where pieces went that were split.
 */
export function changesBetween(before: Pattern, after: Pattern, map: PositionMap): Changes {
  const seams: SeamChange[] = []
  const touched = new Set<string>()
  for (const { piece, length, seam, now } of seamPairs(before, after, map)) {
    const change = { piece, seam: now.id, before: length, after: seamLength(now) }
    touched.add(key(piece, seam))
    seams.push(change)
  }
  const joins = after.joins.flatMap((join) => joinChange(before, after, join, touched))
  return { seams, joins, figures: figureChanges(before, after) }
}

/** Seams that were drawn anew, beside what they were; a split alone draws nothing anew. */
function seamPairs(before: Pattern, after: Pattern, map: PositionMap) {
  return before.pieces.flatMap((piece) => {
    const same = after.pieces.find((p) => p.id === piece.id)
    if (same === piece) return []
    const kept = new Set(same?.seams)
    return piece.seams.flatMap((old) => {
      if (kept.has(old)) return []
      const length = seamLength(old)
      return map.seam({ piece: piece.id, seam: old.id, along: length / 2 }).flatMap((moved) => {
        if (isGone(moved)) return []
        const now = after.pieces.find((p) => p.id === moved.piece)?.seams.find((s) => s.id === moved.seam)
        if (!now || sameLine(old.parts, now.parts)) return []
        return [{ piece: moved.piece, old, length, seam: moved.seam, now }]
      })
    })
  })
}

/** Whether a line is the same, or its mirror image: coordinates are mirrored exactly. */
function sameLine(old: Seam['parts'], now: Seam['parts']): boolean {
  if (old === now) return true
  if (cubicsIn(old) !== cubicsIn(now)) return false
  const a = old.flat()
  const b = now.flat()
  return a.every((c, i) => c === b[i]) || a.every((c, i) => mirrored(c, b[b.length - 1 - i]))
}

function cubicsIn(parts: Seam['parts']): number {
  return parts.reduce((sum, part) => sum + part.length, 0)
}

function mirrored(c: Cubic, d: Cubic | undefined): boolean {
  return (
    d !== undefined &&
    mirroredPoint(c.p0, d.p3) &&
    mirroredPoint(c.p1, d.p2) &&
    mirroredPoint(c.p2, d.p1) &&
    mirroredPoint(c.p3, d.p0)
  )
}

function mirroredPoint(p: Point, q: Point): boolean {
  return p.x === 0 - q.x && p.y === q.y
}

function joinChange(before: Pattern, after: Pattern, join: Join, touched: ReadonlySet<string>): JoinChange[] {
  if (![...join.a, ...join.b].some((part) => touched.has(key(part.piece, part.seam)))) return []
  const was = before.joins.find((old) => old.id === join.id) ?? before.joins.find((old) => old.id === baseName(join.id))
  if (!was) return []
  const now = joinLengths(after, join)
  const restores =
    now.ease < join.ease.min - NOTHING || now.ease > join.ease.max + NOTHING ? restoring(join) : undefined
  return [
    {
      join: join.id,
      before: joinLengths(before, was),
      after: now,
      declared: join.ease,
      ...(restores === undefined ? {} : { restores }),
    },
  ]
}

function restoring(join: Join): string | undefined {
  return isCapJoin(join) ? 'rematch cap' : undefined
}

function figureChanges(before: Pattern, after: Pattern): FigureChange[] {
  return after.pieces.flatMap((piece) => {
    const old = before.pieces.find((p) => p.id === piece.id) ?? before.pieces.find((p) => p.id === baseName(piece.id))
    if (!old || old === piece || capsOf(old).every((cap, i) => cap === capsOf(piece)[i])) return []
    const was = sleeveFigures(old)
    const now = sleeveFigures(piece)
    if (!was || !now) return []
    const rows: FigureChange[] = [
      { piece: piece.id, figure: 'cap height', unit: 'mm', before: was.capHeight, after: now.capHeight },
      { piece: piece.id, figure: 'biceps width', unit: 'mm', before: was.bicepsWidth, after: now.bicepsWidth },
      { piece: piece.id, figure: 'neutral lift', unit: 'deg', before: was.neutralLift, after: now.neutralLift },
    ]
    return rows.some((row) => Math.abs(row.after - row.before) > NOTHING) ? rows : []
  })
}

function key(piece: string, seam: string): string {
  return `${piece}/${seam}`
}
