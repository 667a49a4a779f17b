import { cubic, line } from '../../src/geometry/cubic.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import type { Path } from '../../src/geometry/path.ts'
import { type Point, point } from '../../src/geometry/point.ts'
import type { Piece, Seam } from '../../src/pattern/piece.ts'

const seam = (id: string, allowance: number, ...parts: Path[]): Seam => ({ id, allowance, parts })
const straight = (a: Point, b: Point): Path => [line(a, b)]

/** A bodice front on the fold, made by hand for these tests: a side dart and a waist dart, legs equal. */
export function front(): Piece {
  const sideDart = { point: point(120, 150), mouth: [point(220, 130), point(219.3754878, 161.1529107)] as const }
  const waistDart = { point: point(100, 110), mouth: [point(85, 2), point(115, 2)] as const }
  return {
    id: 'bodice front',
    name: 'Bodice front',
    side: 'fold',
    cut: 1,
    seams: [
      seam(
        'waist',
        25.4,
        hobbySpline([{ at: point(0, 4), direction: point(1, 0) }, { at: point(85, 2) }]),
        hobbySpline([{ at: point(115, 2) }, { at: point(205, 8) }]),
      ),
      seam('side seam', 25.4, straight(point(205, 8), sideDart.mouth[0]), straight(sideDart.mouth[1], point(218, 190))),
      seam(
        'armscye',
        25.4,
        hobbySpline([
          { at: point(218, 190), direction: point(-1, -0.05) },
          { at: point(180, 215) },
          { at: point(172, 270) },
          { at: point(178, 340), direction: point(0.35, 0.94) },
        ]),
      ),
      seam('shoulder', 25.4, straight(point(178, 340), point(62, 383))),
      seam(
        'neckline',
        12.7,
        hobbySpline([
          { at: point(62, 383), direction: point(-0.3, -0.95) },
          { at: point(0, 310), direction: point(-1, 0) },
        ]),
      ),
      seam('center front', 0, straight(point(0, 310), point(0, 4))),
    ],
    darts: [
      { id: 'bust dart', seam: 'side seam', ...sideDart },
      { id: 'waist dart', seam: 'waist', ...waistDart },
    ],
    notches: [],
    lines: [],
    landmarks: [],
  }
}

/** A sleeve with two elbow darts close together on its back seam and a curved wrist. */
export function sleeve(): Piece {
  const cap = (x: number, side: number) => [
    { at: point(x, 0), direction: point(-side, side > 0 ? 0.1 : -0.1) },
    { at: point(x - side * 55, 60) },
    { at: point(0, 135), direction: point(-side, 0) },
  ]
  const upper = { point: point(-80, -165), mouth: [point(-150, -150), point(-149.7366, -166.0641)] as const }
  const lower = { point: point(-79, -190), mouth: [point(-148.6, -178), point(-148.2206, -204.0617)] as const }
  const frontCap = hobbySpline(cap(165, 1))
  const backCap = hobbySpline(cap(-165, -1))
    .map((c) => cubic(c.p3, c.p2, c.p1, c.p0))
    .reverse()
  return {
    id: 'sleeve',
    name: 'Sleeve',
    side: 'pair',
    cut: 2,
    seams: [
      seam('front cap', 25.4, frontCap),
      seam('back cap', 25.4, backCap),
      seam(
        'back underarm seam',
        25.4,
        hobbySpline([{ at: point(-165, 0) }, { at: upper.mouth[0], direction: point(0.05, -1) }]),
        straight(upper.mouth[1], lower.mouth[0]),
        hobbySpline([
          { at: lower.mouth[1], direction: point(0.1, -1) },
          { at: point(-90, -430), direction: point(0.3, -1) },
        ]),
      ),
      seam(
        'wrist',
        25.4,
        hobbySpline([
          { at: point(-90, -430), direction: point(1, 0.3) },
          { at: point(120, -410), direction: point(1, -0.1) },
        ]),
      ),
      seam(
        'front underarm seam',
        25.4,
        hobbySpline([
          { at: point(120, -410), direction: point(0.1, 1) },
          { at: point(165, 0), direction: point(0.1, 1) },
        ]),
      ),
    ],
    darts: [
      { id: 'upper elbow dart', seam: 'back underarm seam', ...upper },
      { id: 'lower elbow dart', seam: 'back underarm seam', ...lower },
    ],
    notches: [],
    lines: [],
    landmarks: [],
  }
}
