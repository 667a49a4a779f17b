import type { Path } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'
import type { Landmark, Piece } from '../pattern/piece.ts'
import { landmarkPoint, notchPoints } from '../pattern/seam.ts'
import { farthestMove } from './farthest-move.ts'

/** What a piece consists of, by name. */
export interface PieceParts {
  /** Ids of seams. */
  readonly seams: readonly string[]
  /** Ids of darts. */
  readonly darts: readonly string[]
  /** Ids of notches. */
  readonly notches: readonly string[]
  /** Ids of grain and balance lines. */
  readonly lines: readonly string[]
  /** Ids of landmarks. */
  readonly landmarks: readonly string[]
}

/** What became of one piece. */
export interface PieceComparison {
  /** Id of the piece. */
  readonly piece: string
  /** The piece that it was part of, where its left and right were taken apart meanwhile. */
  readonly was?: string
  /** What is in both and the same. */
  readonly unchanged: PieceParts
  /** What is in both and differs. */
  readonly changed: PieceParts
  /** What only the later version has. */
  readonly added: PieceParts
  /** What only the earlier version has. */
  readonly removed: PieceParts
}

/** Places nearer than this are the same, mm: far below a pencil line. */
const SAME_PLACE = 0.005

interface Part {
  readonly name: string
  /** Same key, same part: names occur twice on a piece, such as the underarm on both halves of a cap. */
  readonly key: string
}

/** What did not change on a piece and what did, in one frame: seams and lines by their course, marks by their points. */
export function comparePiece(before: Piece, after: Piece, was?: string, tolerance = SAME_PLACE): PieceComparison {
  const samePoints = (a: readonly Point[], b: readonly Point[]) =>
    a.length === b.length && a.every((p, i) => distance(p, b[i] as Point) < tolerance)
  const sameLine = (a: readonly Path[], b: readonly Path[]) => a === b || farthestMove(a, b).distance < tolerance
  const kinds = {
    seams: sort(before.seams.map(named), after.seams.map(named), (i, j) =>
      sameLine(before.seams[i]?.parts ?? [], after.seams[j]?.parts ?? []),
    ),
    darts: sort(before.darts.map(named), after.darts.map(named), (i, j) => {
      const [a, b] = [before.darts[i], after.darts[j]]
      return !!a && !!b && a.seam === b.seam && samePoints([...a.mouth, a.point], [...b.mouth, b.point])
    }),
    notches: sort(before.notches.map(named), after.notches.map(named), (i, j) => {
      const [a, b] = [before.notches[i], after.notches[j]]
      return !!a && !!b && a.seam === b.seam && samePoints(notchPoints(before, a), notchPoints(after, b))
    }),
    lines: sort(before.lines.map(named), after.lines.map(named), (i, j) =>
      sameLine([before.lines[i]?.path ?? []], [after.lines[j]?.path ?? []]),
    ),
    landmarks: sort(before.landmarks.map(placed), after.landmarks.map(placed), (i, j) => {
      const [a, b] = [before.landmarks[i], after.landmarks[j]]
      return !!a && !!b && samePoints([landmarkPoint(before, a)], [landmarkPoint(after, b)])
    }),
  }
  const of = (which: keyof Sorted): PieceParts => ({
    seams: kinds.seams[which],
    darts: kinds.darts[which],
    notches: kinds.notches[which],
    lines: kinds.lines[which],
    landmarks: kinds.landmarks[which],
  })
  return {
    piece: after.id,
    ...(was === undefined ? {} : { was }),
    unchanged: of('unchanged'),
    changed: of('changed'),
    added: of('added'),
    removed: of('removed'),
  }
}

function named({ id }: { readonly id: string }): Part {
  return { name: id, key: id }
}

function placed(landmark: Landmark): Part {
  return { name: landmark.id, key: 'seam' in landmark ? `${landmark.id} on ${landmark.seam}` : landmark.id }
}

interface Sorted {
  readonly unchanged: readonly string[]
  readonly changed: readonly string[]
  readonly added: readonly string[]
  readonly removed: readonly string[]
}

function sort(before: readonly Part[], after: readonly Part[], same: (i: number, j: number) => boolean): Sorted {
  const found = after.map((part, j) => ({ part, j, i: before.findIndex((old) => old.key === part.key) }))
  const names = (parts: readonly Part[]) => [...new Set(parts.map((part) => part.name))]
  const both = found.filter(({ i }) => i >= 0)
  return {
    unchanged: names(both.filter(({ i, j }) => same(i, j)).map(({ part }) => part)),
    changed: names(both.filter(({ i, j }) => !same(i, j)).map(({ part }) => part)),
    added: names(found.filter(({ i }) => i < 0).map(({ part }) => part)),
    removed: names(before.filter((old) => !after.some((part) => part.key === old.key))),
  }
}
