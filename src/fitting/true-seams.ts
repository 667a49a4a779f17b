import { tan } from '../base/trig.ts'
import { centerJunctions, dartJunctions, type EdgeEnd, type Junction, joinJunctions } from '../pattern/junctions.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { pieceOf, seamLength, seamOf } from '../pattern/seam.ts'
import { meantPeak } from './meant-peak.ts'
import type { CornerMade } from './operation.ts'
import { composeMaps, IDENTITY, type PositionMap } from './position-map.ts'
import { type EdgeName, roomToTurn, type TurnedEdge, turnEdge } from './turn-edge.ts'

/** Corners that a pencil line hides, and corners that are no slip of the pencil, radians: those stay for the checks to tell. */
const LEAST = (0.5 * Math.PI) / 180
const MOST = (15 * Math.PI) / 180

/** How far from a junction an edge is trued at most, and at least, mm. Common practice: a hand's breadth is too far. */
const REACH = 40
const SHORTEST = 8

/** No seam becomes longer or shorter than this by truing, mm. */
const SAME_LENGTH = 0.5

/** How far truing may go, and what it leaves alone. */
export interface TrueOptions {
  /** How far from its junction an edge may move, mm; 40 when absent. Throws unless it is above 0. */
  readonly reach?: number
  /** Corners that corrections meant to make: they stay. */
  readonly corners?: readonly CornerMade[]
}

/** An edge that truing has moved near a junction; mm, degrees. */
export interface TruedEdge {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam. */
  readonly seam: string
  /** The join, dart or center that the edge runs across or into. */
  readonly across: string
  /** The corner that was there before, of both edges together, degrees; negative where it peaked. */
  readonly corner: number
  /** Within how far of the junction points moved, and how far the farthest did. */
  readonly reach: number
  /** How far the farthest point moved, mm. */
  readonly move: number
  /** By how much its seam is longer now. */
  readonly longer: number
}

/** A pattern with its small corners trued. */
export interface TruedSeams {
  /** The trued pattern. */
  readonly pattern: Pattern
  /** Where the places of the pattern before are now. */
  readonly map: PositionMap
  /** Every edge that moved. */
  readonly trued: readonly TruedEdge[]
}

/**
 * The pattern with what is only the pencil's fault mended: corners of 0.5° to 15° where an edge should run on smoothly
 * across a sewn join or a folded dart, or square into a center. Each edge is turned by its share within `reach` of the
 * junction; the junction itself, notches, marks and everything farther away stay where they are. No seam's length changes by more than
 * 0.5 mm: where it would, the reach is shorter, or the corner stays. A pattern that is true is returned as the same
 * object, so that truing twice is truing once. An edge that is sewn to unlike partners left and right stays; the others
 * are trued to it.
 */
export function trueSeams(pattern: Pattern, options: TrueOptions = {}): TruedSeams {
  const { reach = REACH, corners = [] } = options
  if (!(reach > 0)) throw new RangeError('truing needs a reach above 0 mm')
  const junctions = [...joinJunctions(pattern), ...dartJunctions(pattern), ...centerJunctions(pattern)]
  const shared = sharedEdges(junctions)
  let done: TruedSeams = { pattern, map: IDENTITY, trued: [] }
  for (const junction of junctions) {
    const { corner, edges } = junction
    if (!(Math.abs(corner) >= LEAST && Math.abs(corner) <= MOST) || meantPeak(corners, edges) > 0) continue
    const free = edges.map(nameOf).filter((edge) => !shared.has(keyOf(edge)))
    // Both edges by half; where one has no room, the other alone.
    for (const set of [free, ...(free.length > 1 ? free.map((edge) => [edge]) : [])]) {
      const turned = turnAll(pattern, done, junction, set, reach)
      if (!turned) continue
      done = turned
      break
    }
  }
  return done
}

function turnAll(
  original: Pattern,
  before: TruedSeams,
  { across, corner }: Junction,
  edges: readonly EdgeName[],
  reach: number,
): TruedSeams | undefined {
  if (edges.length === 0) return undefined
  let done = before
  // An edge that dips is turned inwards.
  const slope = -tan(corner / edges.length)
  for (const edge of edges) {
    const turned = turnWithin(original, done.pattern, edge, slope, reach)
    if (!turned) return undefined
    const { result, move, longer } = turned.edge
    const { piece, seam } = edge
    done = {
      pattern: result.pattern,
      map: composeMaps(done.map, result.map),
      trued: [
        ...done.trued,
        { piece, seam, across, corner: (corner * 180) / Math.PI, reach: turned.reach, move, longer },
      ],
    }
  }
  return done
}

/** The edge turned within the largest reach at which its seam keeps its length. */
function turnWithin(
  original: Pattern,
  pattern: Pattern,
  edge: EdgeName,
  slope: number,
  most: number,
): { readonly edge: TurnedEdge; readonly reach: number } | undefined {
  const room = Math.min(most, roomToTurn(pattern, edge))
  const length = seamLength(seamOf(pieceOf(original, edge.piece), edge.seam))
  const keeps = (now: number) => Math.abs(now - length) <= SAME_LENGTH
  for (let reach = room; reach >= Math.min(SHORTEST, most); reach /= 1.5) {
    const turned = turnEdge(pattern, edge, slope, reach, keeps)
    if (turned) return { edge: turned, reach }
  }
  return undefined
}

/** Edges that meet different partners at more than one junction: turned for one they would be wrong for the other. */
function sharedEdges(junctions: readonly Junction[]): ReadonlySet<string> {
  const seen = new Set<string>()
  const twice = new Set<string>()
  for (const key of junctions.flatMap(({ edges }) => edges.map((edge) => keyOf(nameOf(edge))))) {
    if (seen.has(key)) twice.add(key)
    seen.add(key)
  }
  return twice
}

function nameOf({ piece, seam, part, which }: EdgeEnd): EdgeName {
  return { piece: piece.id, seam: seam.id, part, which }
}

function keyOf({ piece, seam, part, which }: EdgeName): string {
  return [piece, seam, part, which].join('|')
}
