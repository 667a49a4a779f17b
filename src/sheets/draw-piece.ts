import { endOf, type Path, polyline, startOf } from '../geometry/path.ts'
import { directionAlong, pathLength } from '../geometry/path-length.ts'
import { along, distance, heading, leftOf, type Point, rightOf } from '../geometry/point.ts'
import { easeStitching } from '../pattern/ease-stitching.ts'
import type { Line, Notch, Piece, Seam } from '../pattern/piece.ts'
import { directionOnSeam, landmarkPoint, notchPoints, seamEnd, seamOf, seamStart } from '../pattern/seam.ts'
import { firstHit, inkOf, type Segment } from './ink.ts'
import type { FillMark, Mark, MarkKind, StrokeMark } from './scene.ts'

/** mm of a notch on each side of the stitching line, and inward from the cut edge. */
const NOTCH_HALF = 4
const SNIP = 6

const ARROW_LENGTH = 7
const ARROW_HALF = 1.8
const CROSS_HALF = 3

/** A landmark this near a notch or an end of a seam is drawn already, mm. */
const SAME_MARK = 0.5

/** Nearer than this to the fold's straight line, an edge of the cutting line is the fold, mm. */
const ON_FOLD = 0.05

/** All lines of a piece, without text: as drafted, mm, y up. `cut` is its closed cutting line. */
export function drawPiece(piece: Piece, cut: Path): Mark[] {
  const edges = cutEdges(piece, cut)
  const edgeInk = inkOf(edges)
  return [
    ...edges,
    ...piece.seams.filter((seam) => !isFold(piece, seam)).map((seam) => stroke('stitching line', seam.id, seam.parts)),
    ...piece.darts.map((d) => stroke('dart', d.id, [polyline([d.mouth[0], d.point, d.mouth[1]])])),
    ...[...piece.lines, ...easeStitching(piece)].flatMap(drawLine),
    ...piece.notches.flatMap((notch) => drawNotch(piece, notch, edgeInk)),
    ...drawLandmarks(piece),
  ]
}

/** Whether the seam is the fold that the piece is cut on. */
export function isFold(piece: Piece, seam: Seam): boolean {
  return piece.side === 'fold' && seam.allowance === 0
}

function stroke(kind: MarkKind, id: string, paths: readonly Path[]): StrokeMark {
  return { type: 'stroke', kind, id, paths }
}

/** The cutting line, with the part along a fold drawn as the fold instead: nobody may cut there. */
function cutEdges(piece: Piece, cut: Path): StrokeMark[] {
  const folds = piece.seams.filter((seam) => isFold(piece, seam))
  const foldOf = (p: Point, q: Point) =>
    folds.find(
      (fold) =>
        fromLine(p, seamStart(fold), seamEnd(fold)) < ON_FOLD && fromLine(q, seamStart(fold), seamEnd(fold)) < ON_FOLD,
    )
  if (folds.length === 0) return [{ ...stroke('cutting line', 'cutting line', [cut]), closed: true }]
  const cutRuns: Path[] = []
  const foldRuns = new Map<string, Path[]>()
  let last: string | undefined
  // Start just after a fold, so that no run is broken where the path happens to begin.
  const lastFold = cut.findLastIndex((c) => foldOf(c.p0, c.p3))
  const turned = [...cut.slice(lastFold + 1), ...cut.slice(0, lastFold + 1)]
  for (const c of turned) {
    const fold = foldOf(c.p0, c.p3)?.id
    const runs = fold === undefined ? cutRuns : (foldRuns.get(fold) ?? foldRuns.set(fold, []).get(fold) ?? [])
    const open = runs.at(-1)
    if (open && last === (fold ?? '')) runs[runs.length - 1] = [...open, c]
    else runs.push([c])
    last = fold ?? ''
  }
  return [
    stroke('cutting line', 'cutting line', cutRuns),
    ...Array.from(foldRuns, ([id, runs]) => stroke('fold line', id, runs)),
  ]
}

function fromLine(p: Point, a: Point, b: Point): number {
  return Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / distance(a, b)
}

/** A line inside a piece with the pen of what it is; the grain with arrow heads. */
export function drawLine(line: Line): Mark[] {
  const kind = kindOfLine(line.id)
  const drawn = stroke(kind, line.id, [line.path])
  if (kind !== 'grain line') return [drawn]
  const length = pathLength(line.path)
  const back = directionAlong(line.path, 0)
  const ahead = directionAlong(line.path, length)
  return [
    drawn,
    arrowHead(`${line.id} start`, startOf(line.path), { x: -back.x, y: -back.y }),
    arrowHead(`${line.id} end`, endOf(line.path), ahead),
  ]
}

/** What a line of the draft is to a cutter. */
export function kindOfLine(id: string): MarkKind {
  if (/^grain\b/.test(id)) return 'grain line'
  if (/\bease\b/.test(id)) return 'ease stitching'
  return 'balance line'
}

function arrowHead(id: string, tip: Point, direction: Point): FillMark {
  const side = leftOf(direction)
  const base = along(tip, direction, -ARROW_LENGTH)
  const outline = polyline([tip, along(base, side, ARROW_HALF), along(base, side, -ARROW_HALF), tip])
  return { type: 'fill', kind: 'grain line', id, outline }
}

/** Where one mark of a notch is: on the stitching line, the way out of the piece, and how far out it is cut, mm. */
export interface NotchPlace {
  readonly id: string
  readonly at: Point
  readonly out: Point
  /** 0 where no edge that belongs to the seam lies ahead. */
  readonly edge: number
}

/** The places of a notch's marks; `cut` is the ink of the cutting line. */
export function notchPlaces(piece: Piece, notch: Notch, cut: readonly Segment[]): NotchPlace[] {
  const seam = seamOf(piece, notch.seam)
  return notchPoints(piece, notch).map((at, k) => {
    const out = rightOf(directionOnSeam(seam, notch.along + k * (notch.step ?? 0)))
    const edge = firstHit(at, out, cut) ?? 0
    const id = notch.marks > 1 ? `${notch.id} ${k + 1}` : notch.id
    return { id, at, out, edge: edge <= 2.5 * seam.allowance + 1 ? edge : 0 }
  })
}

/**
 * A notch is marked across the stitching line, where it is matched, and from the cut edge inward, where it is
 * snipped; with little allowance one tick does both.
 */
function drawNotch(piece: Piece, notch: Notch, cut: readonly Segment[]): Mark[] {
  return notchPlaces(piece, notch, cut).map(({ id, at, out, edge }) => {
    const tick = (from: number, to: number) => polyline([along(at, out, from), along(at, out, to)])
    const apart = edge > NOTCH_HALF + SNIP
    const paths = apart
      ? [tick(-NOTCH_HALF, NOTCH_HALF), tick(edge - SNIP, edge)]
      : [tick(-NOTCH_HALF, Math.max(edge, NOTCH_HALF))]
    return stroke('notch', id, paths)
  })
}

/** Crosses for the landmarks that no notch, dart point or corner shows already. */
function drawLandmarks(piece: Piece): Mark[] {
  const shown = [
    ...piece.notches.flatMap((notch) => notchPoints(piece, notch)),
    ...piece.seams.map(seamStart),
    ...piece.darts.map((dart) => dart.point),
  ]
  return piece.landmarks.flatMap((landmark) => {
    const at = landmarkPoint(piece, landmark)
    if (shown.some((p) => distance(p, at) < SAME_MARK)) return []
    const arm = (angle: number) =>
      polyline([along(at, heading(angle), -CROSS_HALF), along(at, heading(angle), CROSS_HALF)])
    return [stroke('landmark', landmark.id, [arm(Math.PI / 4), arm((3 * Math.PI) / 4)])]
  })
}
