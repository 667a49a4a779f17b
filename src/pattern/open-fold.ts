import type { BodySide } from '../base/side.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import { endOf, movePath, type Path, reversePath, startOf } from '../geometry/path.ts'
import { mirrorX } from '../geometry/transform.ts'
import { fromOtherEnd, mirrorDart, mirrorLandmark, mirrorNotch, mirrorSeam } from './mirror-piece.ts'
import type { Landmark, Line, Piece, Seam } from './piece.ts'
import { seamLength } from './seam.ts'
import { otherSide } from './side-names.ts'

const MIRROR = mirrorX()

/**
 * A piece on the fold opened into one whole piece: the half as drawn, and its mirror image, joined along the fold,
 * which becomes a marked center line. Seams, darts, notches and landmarks of the two halves carry ` left` and
 * ` right`; lines that reach the center run across it. `drawn` is the side of the wearer that the half shows.
 * Throws when the piece has no fold: a seam without allowance on x = 0.
 */
export function openFold(piece: Piece, drawn: BodySide): Piece {
  const fold = piece.seams.findIndex(isFold)
  if (fold < 0) throw new RangeError(`${piece.id} has no fold on x = 0`)
  const foldSeam = piece.seams[fold] as Seam
  // Round the drawn half from one end of the fold to the other, then back over the mirrored half.
  const half = [...piece.seams.slice(fold + 1), ...piece.seams.slice(0, fold)]
  const other = otherSide(drawn)
  const lengths = new Map(piece.seams.map((seam) => [seam.id, seamLength(seam)]))
  const turned = (seam: string, along: number) => fromOtherEnd(lengths.get(seam) as number, along)
  const named = <T extends { readonly id: string }>(item: T, side: BodySide): T => ({
    ...item,
    id: `${item.id} ${side}`,
  })
  const onSeam = <T extends { readonly id: string; readonly seam: string }>(item: T, side: BodySide): T => ({
    ...named(item, side),
    seam: `${item.seam} ${side}`,
  })
  const landmark = (item: Landmark, side: BodySide): Landmark => ('at' in item ? named(item, side) : onSeam(item, side))
  const notches = piece.notches.filter((notch) => notch.seam !== foldSeam.id)
  const onFold = piece.landmarks.filter((item) => isOnCenter(item, foldSeam.id))
  const besides = piece.landmarks.filter((item) => !isOnCenter(item, foldSeam.id))
  return {
    ...piece,
    side: 'whole',
    seams: [...half.map((seam) => named(seam, drawn)), ...half.map((seam) => named(mirrorSeam(seam), other)).reverse()],
    darts: [
      ...piece.darts.map((dart) => onSeam(dart, drawn)),
      ...piece.darts.map((dart) => onSeam(mirrorDart(dart), other)),
    ],
    notches: [
      ...notches.map((notch) => onSeam(notch, drawn)),
      ...notches.map((notch) => onSeam(mirrorNotch(notch, turned), other)),
    ],
    lines: [
      ...piece.lines.flatMap((line) => openLine(line, drawn)),
      ...(piece.lines.some((line) => line.id === foldSeam.id)
        ? []
        : [{ id: foldSeam.id, path: foldSeam.parts.flat() }]),
    ],
    landmarks: [
      ...onFold.flatMap((item) => ('at' in item ? [item] : [])),
      ...besides.map((item) => landmark(item, drawn)),
      ...besides.map((item) => landmark(mirrorLandmark(item, turned), other)),
    ],
  }
}

function isFold(seam: Seam): boolean {
  return (
    seam.allowance === 0 &&
    seam.parts.flat().every((c) => [c.p0, c.p1, c.p2, c.p3].every(({ x }) => Math.abs(x) <= SAME_POINT))
  )
}

function isOnCenter(item: Landmark, fold: string): boolean {
  return 'at' in item ? Math.abs(item.at.x) <= SAME_POINT : item.seam === fold
}

/** A line on the center stays; one that reaches it runs on over the other half; the grain is marked once. */
function openLine(line: Line, drawn: BodySide): Line[] {
  if (line.path.every((c) => Math.abs(c.p0.x) <= SAME_POINT && Math.abs(c.p3.x) <= SAME_POINT)) return [line]
  if (line.id === 'grain') return [line]
  const mirrored = movePath(line.path, MIRROR)
  if (Math.abs(startOf(line.path).x) <= SAME_POINT) return [{ ...line, path: joined(reversePath(mirrored), line.path) }]
  if (Math.abs(endOf(line.path).x) <= SAME_POINT) return [{ ...line, path: joined(line.path, reversePath(mirrored)) }]
  return [
    { ...line, id: `${line.id} ${drawn}` },
    { ...line, id: `${line.id} ${otherSide(drawn)}`, path: mirrored },
  ]
}

function joined(before: Path, after: Path): Path {
  return [...before, ...after]
}
