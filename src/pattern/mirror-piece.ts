import { movePath } from '../geometry/path.ts'
import { mirrorPathX, mirrorX } from '../geometry/transform.ts'
import type { Dart, Landmark, Notch, Piece, Seam } from './piece.ts'
import { seamLength } from './seam.ts'

const MIRROR = mirrorX()

/**
 * The piece mirrored across x = 0, its outline anticlockwise again: every seam runs the other way, so positions
 * are counted from its other end. The first seam stays the first. Coordinates are exact, positions to 1e-7 mm.
 */
export function mirrorPiece(piece: Piece): Piece {
  const [first, ...rest] = piece.seams.map(mirrorSeam)
  const lengths = new Map(piece.seams.map((seam) => [seam.id, seamLength(seam)]))
  const turned = (seam: string, along: number) => fromOtherEnd(lengths.get(seam) as number, along)
  return {
    ...piece,
    seams: first ? [first, ...rest.reverse()] : [],
    darts: piece.darts.map(mirrorDart),
    notches: piece.notches.map((notch) => mirrorNotch(notch, turned)),
    lines: piece.lines.map((line) => ({ ...line, path: movePath(line.path, MIRROR) })),
    landmarks: piece.landmarks.map((landmark) => mirrorLandmark(landmark, turned)),
  }
}

/** The same place counted from the other end; the ends are ends exactly. */
export function fromOtherEnd(length: number, along: number): number {
  return Math.max(0, length - along)
}

export function mirrorSeam(seam: Seam): Seam {
  return { ...seam, parts: seam.parts.map((part) => mirrorPathX(part)).reverse() }
}

export function mirrorDart(dart: Dart): Dart {
  return { ...dart, mouth: [MIRROR(dart.mouth[1]), MIRROR(dart.mouth[0])], point: MIRROR(dart.point) }
}

export function mirrorNotch(notch: Notch, turned: (seam: string, along: number) => number): Notch {
  const along = turned(notch.seam, notch.along)
  return { ...notch, along, ...(notch.step === undefined ? {} : { step: -notch.step }) }
}

export function mirrorLandmark(landmark: Landmark, turned: (seam: string, along: number) => number): Landmark {
  if ('at' in landmark) return { ...landmark, at: MIRROR(landmark.at) }
  return { ...landmark, along: turned(landmark.seam, landmark.along) }
}
