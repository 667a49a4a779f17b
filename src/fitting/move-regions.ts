import type { Problem } from '../base/problem.ts'
import { failure, type Result } from '../base/result.ts'
import type { Point } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import { pieceOf } from '../pattern/seam.ts'
import { fragmentsOf, pieceOfPart, type Region, rebuildCut } from './cut-seams.ts'
import { followDart, gapAt } from './gap-at.ts'
import type { OperationResult } from './operation.ts'
import { type PartPlace, partLengths, partPlace, type SeamPoint } from './outline-places.ts'
import { insideRegions, type RegionShape } from './region-shape.ts'
import { type PieceChange, type ReplacedSeam, replaceSeams } from './replace-seams.ts'
import { straightenDart } from './straighten-dart.ts'
import { openCorner } from './weld-seams.ts'

export interface MoveRegionsOptions {
  readonly piece: string
  readonly regions: readonly Region[]
  /** Ids of darts that the move closes. */
  readonly closed?: readonly string[]
  /** Darts that open at a cut: their mouth is the gap there. */
  readonly opened?: readonly { readonly id: string; readonly at: SeamPoint; readonly point: Point }[]
  /** Why a point inside is no longer there, where that is so. */
  readonly gone?: (at: Point) => string | undefined
}

/**
 * Moves parts of a piece rigidly and makes the outline whole again: at a cut the stitching line is drawn again or a
 * dart opens; a dart whose legs meet is closed. Whole seams of the rest are the same objects; darts keep equal legs;
 * notches, landmarks, lines and join parts go with the cloth. Problems: a cut too near to a corner or a dart for what
 * it takes out. Throws when regions overlap or the cut ends do not fit.
 */
export function moveRegions(pattern: Pattern, options: MoveRegionsOptions): Result<OperationResult> {
  const piece = pieceOf(pattern, options.piece)
  const lengths = partLengths(piece)
  const ends = options.regions.map((region) => ({
    from: partPlace(piece, lengths, region.from, 'from'),
    to: partPlace(piece, lengths, region.to, 'to'),
  }))
  const fragments = fragmentsOf(piece, lengths, ends)
  const seams = new Map<string, ReplacedSeam>()
  for (const [index, seam] of piece.seams.entries()) {
    const rebuilt = rebuildCut(piece, seam, index, lengths, fragments, ends, options.regions)
    if (!rebuilt.ok) return rebuilt
    if (rebuilt.value) seams.set(seam.id, rebuilt.value)
  }
  const gap = openCorner(piece, seams)
  if (gap) return failure(cutInCorner(piece, gap[0], gap[1]))
  const regions = options.regions.map((region, i): RegionShape => {
    const arc = piece.seams.flatMap((seam, s) =>
      seam.parts.flatMap((part, p) =>
        (fragments[s]?.[p] ?? [])
          .filter((f) => f.region === i)
          .map((f) => ({
            order: order(s, p, f.from, ends[i]?.from as PartPlace),
            path: pieceOfPart(part, f, lengths[s]?.[p] as number),
          })),
      ),
    )
    return {
      arc: arc.sort((a, b) => a.order - b.order).map(({ path }) => path),
      inside: region.inside,
      move: region.move(1),
    }
  })
  const inside = insideRegions(regions)
  const darts = dartsNow(piece, seams, inside, options)
  const change: PieceChange = {
    seams,
    darts,
    inside,
    ...(options.gone ? { gone: options.gone } : {}),
  }
  return replaceSeams(pattern, piece, change)
}

/** Places in the order of the outline, beginning at a region's start. */
function order(seam: number, part: number, within: number, start: PartPlace): number {
  const value = seam * 1e9 + part * 1e6 + within
  const first = start.seam * 1e9 + start.part * 1e6 + start.within
  return value < first - 1e-3 ? value + 1e12 : value
}

/** The darts after the move: closed ones left out, opened ones added, every mouth where its seam now breaks. */
function dartsNow(
  piece: Piece,
  seams: ReadonlyMap<string, ReplacedSeam>,
  inside: (at: Point) => Point,
  { closed = [], opened = [] }: MoveRegionsOptions,
): Dart[] {
  const kept = piece.darts
    .filter((dart) => !closed.includes(dart.id))
    .map((dart) => followDart(piece, dart, seams, inside))
  const fresh = opened.map(({ id, at, point }): Dart => {
    const replaced = seams.get(at.seam)
    if (!replaced) throw new RangeError(`nothing opened on the ${at.seam}`)
    return straightenDart({ id, seam: at.seam, mouth: gapAt(replaced, at.along), point })
  })
  return [...kept, ...fresh]
}

function cutInCorner(piece: Piece, before: string, after: string): Problem {
  return {
    code: 'cut-in-corner',
    where: { piece: piece.id, seam: before },
    actual: `the cut ends in the corner of ${before} and ${after}`,
    expected: 'a cut that ends on a seam, away from its corners',
    hint: 'name a place on one of the two seams',
  }
}
