import type { CheckContext } from '../../src/checks/check.ts'
import type { Path } from '../../src/geometry/path.ts'
import { point, rotateAbout } from '../../src/geometry/point.ts'
import type { JoinPart, Pattern } from '../../src/pattern/pattern.ts'
import type { Dart, Notch, Piece, Seam } from '../../src/pattern/piece.ts'
import { seamLength, seamOf } from '../../src/pattern/seam.ts'
import { contextOf, DRAFT, pieceNamed, withPiece, withSeam } from './fixture.ts'

/** One way to break a good pattern, and every code that must be found on it: no more, no less. */
export interface Mutation {
  readonly how: string
  readonly codes: readonly string[]
  readonly broken: () => CheckContext
}

export function way(how: string, codes: readonly string[], broken: () => Pattern | CheckContext): Mutation {
  return {
    how,
    codes,
    broken: () => {
      const made = broken()
      return 'units' in made ? made : contextOf(made)
    },
  }
}

export const { pattern } = DRAFT

export const front = (change: (piece: Piece) => Piece) => withPiece(pattern, 'bodice front', change)
export const back = (change: (piece: Piece) => Piece) => withPiece(pattern, 'bodice back', change)
export const sleeve = (change: (piece: Piece) => Piece) => withPiece(pattern, 'sleeve', change)
export const notch = (id: string, change: (n: Notch) => Notch, of: Pattern = pattern) =>
  withPiece(of, 'sleeve', (p) => ({ ...p, notches: p.notches.map((n) => (n.id === id ? change(n) : n)) }))
export const dart = (id: string, change: (d: Dart) => Dart) => ({
  ...pattern,
  pieces: pattern.pieces.map((p) => ({ ...p, darts: p.darts.map((d) => (d.id === id ? change(d) : d)) })),
})
export const paths = (seam: Seam, change: (path: Path, index: number) => Path): Seam => ({
  ...seam,
  parts: seam.parts.map(change),
})
/** The direction of a path at an end turned by an angle, its end where it was. */
export const endTurned = (path: Path, angle: number): Path =>
  path.map((c, i) => (i === path.length - 1 ? { ...c, p2: rotateAbout(c.p2, c.p3, angle) } : c))
export const startTurned = (path: Path, angle: number): Path =>
  path.map((c, i) => (i === 0 ? { ...c, p1: rotateAbout(c.p1, c.p0, angle) } : c))
export const lengthOf = (piece: string, seam: string) => seamLength(seamOf(pieceNamed(pattern, piece), seam))
export const part = (change: (p: JoinPart) => JoinPart) => (join: Pattern['joins'][number]) => ({
  ...join,
  a: join.a.map(change),
})
/** A corner of a piece moved: what ends there and what begins there. */
export const cornerMoved = (
  piece: string,
  before: string,
  after: string,
  dx: number,
  dy: number,
  of = pattern,
): Pattern =>
  withSeam(
    withSeam(of, piece, before, (seam) =>
      paths(seam, (path, i) =>
        i < seam.parts.length - 1
          ? path
          : path.map((c, k) =>
              k < path.length - 1
                ? c
                : { ...c, p2: point(c.p2.x + dx, c.p2.y + dy), p3: point(c.p3.x + dx, c.p3.y + dy) },
            ),
      ),
    ),
    piece,
    after,
    (seam) =>
      paths(seam, (path, i) =>
        i > 0
          ? path
          : path.map((c, k) =>
              k > 0 ? c : { ...c, p0: point(c.p0.x + dx, c.p0.y + dy), p1: point(c.p1.x + dx, c.p1.y + dy) },
            ),
      ),
  )

/** The good pattern with another measure than the one drafted. */
export const measured = (name: string, value: (row: (typeof DRAFT.measures)[number]) => number): CheckContext => ({
  ...contextOf(pattern),
  measures: DRAFT.measures.map((row) => (row.name === name ? { ...row, drafted: value(row) } : row)),
})

/** And with a hand of this girth. */
export const withHand = (value: number): CheckContext => {
  const half = { 'hand girth': { value, estimated: false } }
  return { ...contextOf(pattern), body: { left: half, right: half } }
}
