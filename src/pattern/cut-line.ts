import { keptWith } from '../base/kept-with.ts'
import { line } from '../geometry/cubic.ts'
import { type Corner, type OutlineEdge, offsetOutline } from '../geometry/offset-outline.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { Dart, Piece, Seam } from './piece.ts'

/**
 * The cutting line of a piece: a closed anticlockwise path at every seam's own allowance outside the stitching line
 * (within 0.01 mm), on it where the allowance is 0 (a fold). Corners are mirrored at wrist and waist,
 * squared at the ends of shoulders, mitred elsewhere (at most twice the allowance long); over a dart's mouth
 * the line mirrors what the folded dart lies on. It crosses neither itself nor the stitching line.
 */
export function cutLine(piece: Piece): Path {
  return outside(piece)
}

/** Checks, sheets and files ask for the same lines. */
const outside = keptWith((piece: Piece): Path => offsetOutline(edgesOf(piece)))

/** The parts of the seams as the edges of an outline, each with the corner at its end. */
function edgesOf(piece: Piece): OutlineEdge[] {
  const edges: OutlineEdge[] = []
  piece.seams.forEach((seam, k) => {
    const next = piece.seams[(k + 1) % piece.seams.length] as Seam
    seam.parts.forEach((path, index) => {
      const following = seam.parts[index + 1]
      const distance = seam.allowance
      if (!following) {
        edges.push({ path, distance, cornerAfter: cornerBetween(seam, next) })
        return
      }
      const cornerAfter = dartBetween(piece, seam, path, following)
      edges.push({ path, distance, cornerAfter: cornerAfter ?? 'mitre' })
      // A gap that is no dart is cut straight across.
      const from = endOf(path)
      const to = startOf(following)
      if (!cornerAfter && !near(from, to)) edges.push({ path: [line(from, to)], distance })
    })
  })
  return edges
}

/** Hems are folded over and shoulder ends are squared, whichever seam meets them. */
function cornerBetween(seam: Seam, next: Seam): Corner {
  if (isHem(seam)) return isHem(next) ? 'mitre' : 'mirror'
  if (isHem(next)) return 'mirror at next'
  if (isShoulder(seam)) return 'square'
  if (isShoulder(next)) return 'square to next'
  return 'mitre'
}

function isHem(seam: Seam): boolean {
  return /^(wrist|waist|hem)\b/.test(seam.id)
}

function isShoulder(seam: Seam): boolean {
  return /^shoulder\b/.test(seam.id)
}

/** The dart whose mouth lies between two parts of a seam, folded down or, where it stands upright, toward the center (x = 0). */
function dartBetween(piece: Piece, seam: Seam, before: Path, after: Path): Corner | undefined {
  const from = endOf(before)
  const to = startOf(after)
  const dart = piece.darts.find((d) => d.seam === seam.id && near(d.mouth[0], from) && near(d.mouth[1], to))
  if (!dart) return undefined
  return { dart: dart.point, onto: liesOnFirst(dart) ? 'this' : 'next' }
}

function liesOnFirst({ mouth: [a, b], point }: Dart): boolean {
  const across = Math.abs(point.x - (a.x + b.x) / 2)
  const upright = Math.abs(point.y - (a.y + b.y) / 2)
  return across > upright ? a.y < b.y : Math.abs(a.x) < Math.abs(b.x)
}

function near(a: Point, b: Point): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) < 1e-3
}
