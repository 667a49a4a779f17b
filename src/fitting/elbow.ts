import { endOf, startOf } from '../geometry/path.ts'
import { between, type Point } from '../geometry/point.ts'
import type { Dart, Line, Piece } from '../pattern/piece.ts'
import { pointOnSeam } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { dartPlace } from './dart-place.ts'
import { type UnderarmHalf, underarmHalves } from './underarm-half.ts'

/** The elbow of a sleeve: what the corrections of the elbow darts work on. */
export interface Elbow {
  readonly front: UnderarmHalf
  readonly back: UnderarmHalf
  /** The darts of the back seam in the seam's own order. */
  readonly darts: readonly Dart[]
  /** The elbow notch of the front seam: what the forearm turns about. */
  readonly notch: { readonly id: string; readonly along: number; readonly at: Point }
  /** The elbow line, from wherever it was drawn. */
  readonly line?: Line
}

/** The elbow of a sleeve piece; undefined where it has no dart or no elbow notch. */
export function elbowOf(piece: Piece): Elbow | undefined {
  const [front, back] = underarmHalves(piece)
  const darts = piece.darts.filter((dart) => dart.seam === back.seam.id)
  const notch = piece.notches.find((n) => baseName(n.id) === 'elbow notch' && n.seam === front.seam.id)
  if (darts.length === 0 || !notch) return undefined
  const line = piece.lines.find((l) => l.id === 'elbow line')
  const inOrder = [...darts].sort((a, b) => dartPlace(piece, a).along - dartPlace(piece, b).along)
  const at = pointOnSeam(front.seam, notch.along)
  return { front, back, darts: inOrder, notch: { id: notch.id, along: notch.along, at }, ...(line ? { line } : {}) }
}

/** The middle of a dart's mouth. */
export function mouthMiddle({ mouth }: Dart): Point {
  return between(mouth[0], mouth[1], 0.5)
}

/** Whether the elbow line starts at the front. */
export function startsInFront(line: Line, front: Point): boolean {
  const away = (p: Point) => Math.hypot(p.x - front.x, p.y - front.y)
  return away(startOf(line.path)) < away(endOf(line.path))
}
