import { joinBoxes } from '../geometry/bounds.ts'
import type { Point } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { type Arrangement, arrangements } from './arrange.ts'
import { pieceDrawings } from './piece-drawings.ts'
import type { PieceDrawing, PlacedDrawing, SheetInfo } from './scene.ts'

/** A version of a pattern to look at; all versions have the same pieces. */
export interface ViewedVersion {
  readonly pattern: Pattern
  readonly info: SheetInfo
}

/** Versions of a pattern drawn over each other: each piece has its one place, so that what moved is seen moving. */
export interface ViewSheet {
  /** mm, y up, lower left corner at the origin. */
  readonly width: number
  readonly height: number
  readonly versions: readonly (readonly PlacedDrawing[])[]
}

/** White border round everything, mm. */
const BORDER = 5

/** Width by height of the part of a screen that holds a drawing, roughly. */
const SCREEN = 1.3

/** Lays versions of a pattern over each other for a screen. Throws where one has pieces that another has not. */
export function layOutView(versions: readonly ViewedVersion[]): ViewSheet {
  const drawn = versions.map(({ pattern, info }) => pieceDrawings(pattern, info))
  const [first = [], ...others] = drawn
  const slots = first.map((drawing): PieceDrawing => {
    const boxes = others.map((version) => named(version, drawing.id).box)
    return { ...drawing, box: boxes.reduce(joinBoxes, drawing.box) }
  })
  const best = fittest(arrangements(slots))
  const places = new Map(best.placed.map(({ drawing, at }) => [drawing.id, shifted(at)]))
  return {
    width: Math.ceil(best.width + 2 * BORDER),
    height: Math.ceil(best.height + 2 * BORDER),
    versions: drawn.map((version) => version.map((drawing) => ({ drawing, at: places.get(drawing.id) as Point }))),
  }
}

/** The one that can be shown largest on a screen. */
function fittest(all: readonly Arrangement[]): Arrangement {
  const size = ({ width, height }: Arrangement) => Math.max(width / SCREEN, height)
  return all.reduce((best, one) => (size(one) < size(best) ? one : best))
}

function shifted({ x, y }: Point): Point {
  return { x: x + BORDER, y: y + BORDER }
}

function named(drawings: readonly PieceDrawing[], id: string): PieceDrawing {
  const found = drawings.find((drawing) => drawing.id === id)
  if (!found) throw new RangeError(`a version has no ${id}`)
  return found
}
