import { lengthBounds } from './arc-length.ts'
import { type Cubic, line } from './cubic.ts'
import { CURVE_TOLERANCE } from './defaults.ts'
import { dartCorner, foldCorner, fromOtherSide, mirrorCorner, squareCorner } from './folded-corner.ts'
import { MITRE_LIMIT, type OffsetDistance, offset } from './offset.ts'
import { type JoinedOffset, mitreCorner, type OffsetJoint } from './offset-corner.ts'
import { endOf, firstCubic, lastCubic, type Path, startOf } from './path.ts'
import { tangentAt } from './path-length.ts'
import { dot, type Point, subtract, turnBetween } from './point.ts'
import { trimClosed } from './trim-loops.ts'

/**
 * How the offsets of an edge and the next one are joined.
 * `mitre`: both go straight on until they meet. `square`: the allowance of this edge ends square to it, where this edge
 * drawn on meets the next one's offset; `square to next`: that of the next edge. `mirror`: this edge is folded
 * over, so beyond it runs the mirror image of the next edge's offset; `mirror at next`: the next edge is.
 * A dart: this edge ends and the next begins at its mouth; `onto` says on which of them its depth lies when closed.
 */
export type Corner =
  | 'mitre'
  | 'square'
  | 'square to next'
  | 'mirror'
  | 'mirror at next'
  | { readonly dart: Point; readonly onto: 'this' | 'next' }

/** One edge of a closed anticlockwise outline. */
export interface OutlineEdge {
  readonly path: Path
  /** To the outside, mm; 0 keeps the edge itself. A function of the fraction of the edge's length tapers. */
  readonly distance: OffsetDistance
  /** The corner at the end of this edge; mitred unless given. */
  readonly cornerAfter?: Corner
}

export interface OffsetOutlineOptions {
  readonly tolerance?: number
  /** See `offset`. */
  readonly mitreLimit?: number
}

/**
 * The closed anticlockwise outline at each edge's own distance outside a closed anticlockwise outline, starting at the
 * first edge's. Smooth stretches keep their distance within `tolerance` (default CURVE_TOLERANCE); where the line would
 * cross itself (hollows narrower than the distance, inner corners, bays) it is cut back to its outermost run. Edges at
 * distance 0 are the edge itself, lengthened straight where a neighbour's allowance ends on it. A short edge that is hollow
 * all along more narrowly than its distance keeps its distance from its chord, so that it is nowhere too near. Throws on fewer than
 * two edges. Cost: about 0.15 ms for an outline of seven curved edges.
 */
export function offsetOutline(given: readonly OutlineEdge[], options: OffsetOutlineOptions = {}): Path {
  if (given.length < 2) throw new RangeError('an outline needs at least two edges; use offset for a single closed path')
  const tolerance = options.tolerance ?? CURVE_TOLERANCE
  const limit = options.mitreLimit ?? MITRE_LIMIT
  const offsetOf = ({ path, distance }: OutlineEdge) => offset(path, distance, { tolerance, mitreLimit: limit })
  const first = given.map(offsetOf)
  const edges = given.map((edge, k) => (foldsOver(edge, first[k] as Path) ? chordOf(edge) : edge))
  const chains = edges.map((edge, k): readonly Cubic[] => (edge === given[k] ? (first[k] as Path) : offsetOf(edge)))
  const betweens: (readonly Cubic[])[] = []
  edges.forEach((edge, k) => {
    const n = (k + 1) % edges.length
    const next = edges[n] as OutlineEdge
    const made = joinedCorner(edge.cornerAfter ?? 'mitre', limit, {
      before: chains[k] as readonly Cubic[],
      after: chains[n] as readonly Cubic[],
      corner: endOf(edge.path),
      cornerAfter: startOf(next.path),
      directionBefore: tangentAt(lastCubic(edge.path), 1),
      directionAfter: tangentAt(firstCubic(next.path), 0),
      distanceBefore: distanceAt(edge, 1),
      distanceAfter: distanceAt(next, 0),
    })
    chains[k] = made.before
    chains[n] = made.after
    betweens.push(made.between)
  })
  const raw = chains.flatMap((chain, k) => [...chain, ...(betweens[k] as readonly Cubic[])])
  return trimClosed(connected(raw))
}

/** An edge that turns by more than this is a bay: its loop is cut away with all that lies behind its mouth; 45°. */
const BAY = Math.PI / 4

/** Whether the offset of a short hollow edge, as one between two darts, runs back on itself from end to end. */
function foldsOver({ path, distance }: OutlineEdge, chain: Path): boolean {
  if (typeof distance === 'function' || !(distance > 0)) return false
  const way = subtract(endOf(path), startOf(path))
  const turn = turnBetween(tangentAt(firstCubic(path), 0), tangentAt(lastCubic(path), 1))
  return dot(subtract(endOf(chain), startOf(chain)), way) < 0 && turn < 0 && turn > -BAY
}

function chordOf(edge: OutlineEdge): OutlineEdge {
  return { ...edge, path: [line(startOf(edge.path), endOf(edge.path))] }
}

function joinedCorner(corner: Corner, limit: number, joint: OffsetJoint): JoinedOffset {
  if (typeof corner === 'object') {
    const make = (j: OffsetJoint) => dartCorner(j, corner.onto === 'this' ? corner.dart : mirrored(corner.dart))
    return corner.onto === 'this' ? make(joint) : fromOtherSide(joint, make)
  }
  switch (corner) {
    case 'mitre':
      return foldCorner(joint) ?? mitreCorner(joint, limit)
    case 'square':
      return squareCorner(joint, limit)
    case 'square to next':
      return fromOtherSide(joint, (j) => squareCorner(j, limit))
    case 'mirror':
      return mirrorCorner(joint, limit)
    case 'mirror at next':
      return fromOtherSide(joint, (j) => mirrorCorner(j, limit))
  }
}

/** As `fromOtherSide` mirrors the joint. */
function mirrored(p: Point): Point {
  return { x: -p.x, y: p.y }
}

function distanceAt(edge: OutlineEdge, fraction: number): number {
  return typeof edge.distance === 'function' ? edge.distance(fraction) : edge.distance
}

/** Shorter pieces of an outline are left out, mm: a tenth of the tolerance. */
const SPECK = CURVE_TOLERANCE / 10

/** The same closed path with every cubic starting at the very point where the one before ends. */
function connected(path: readonly Cubic[]): Path {
  const made: Cubic[] = []
  for (const c of path) {
    // A corner without width leaves a cubic that is hardly more than a point: it has no direction worth following, and
    // could cross its neighbours.
    if (lengthBounds(c)[1] < SPECK) continue
    const before = made[made.length - 1]
    made.push(before && before.p3 !== c.p0 ? { ...c, p0: before.p3 } : c)
  }
  const first = made[0] as Cubic
  const last = made.pop() as Cubic
  made.push(last.p3 === first.p0 ? last : { ...last, p3: first.p0 })
  return made
}
