import { movePath, polyline, startOf } from '../../src/geometry/path.ts'
import { point } from '../../src/geometry/point.ts'
import { mirrorPiece } from '../../src/pattern/mirror-piece.ts'
import { reverseSeam } from '../../src/pattern/seam.ts'
import { pieceNamed, SPLIT, withSeam } from './fixture.ts'

import { back, cornerMoved, type Mutation, measured, paths, pattern, sleeve, way, withHand } from './spoil.ts'
/** Pieces that cannot be cut, sides that are mistaken, a cap or a garment that does not fit. */
export const PIECE_MUTATIONS: readonly Mutation[] = [
  // Outlines
  way('a gap of half a millimeter in the outline', ['outline-open'], () =>
    withSeam(pattern, 'bodice back', 'shoulder', (seam) =>
      paths(seam, (path) => path.map((c) => ({ ...c, p3: point(c.p3.x + 0.5, c.p3.y) }))),
    ),
  ),
  way('a sleeve drawn face down', ['not-as-asked', 'notches-do-not-meet', 'shoulder-notch-off', 'wrong-hand'], () =>
    sleeve(mirrorPiece),
  ),
  way(
    'a back whose seams run clockwise',
    [
      'center-not-square',
      'corner-across-join',
      'dart-off-seam',
      'little-ease',
      'not-as-asked',
      'outline-open',
      'outline-turned',
      'smaller-than-body',
      'wrong-hand',
    ],
    () => back((p) => ({ ...p, seams: p.seams.map(reverseSeam).reverse() })),
  ),
  way(
    'a neckline that loops below the waist',
    ['center-not-square', 'no-grain', 'not-as-asked', 'outline-crosses-itself'],
    () =>
      withSeam(pattern, 'bodice front', 'neckline', (seam) =>
        paths(seam, (path) => path.map((c) => ({ ...c, p1: point(c.p1.x, -900), p2: point(c.p2.x + 900, -900) }))),
      ),
  ),
  way('a negative allowance', ['allowance-missing', 'cut-line-crosses'], () =>
    withSeam(pattern, 'bodice back', 'side seam', (seam) => ({ ...seam, allowance: -10 })),
  ),
  way(
    'an allowance that lies inside the stitching line all round',
    ['allowance-missing', 'cut-line-crosses', 'hem-uneven'],
    () => back((p) => ({ ...p, seams: p.seams.map((seam) => ({ ...seam, allowance: -5 })) })),
  ),
  way('no allowance on the armscye', ['allowance-missing'], () =>
    withSeam(pattern, 'bodice front', 'armscye', (seam) => ({ ...seam, allowance: 0 })),
  ),
  way('an allowance on the fold', ['allowance-on-fold'], () =>
    withSeam(pattern, 'bodice front', 'center front', (seam) => ({ ...seam, allowance: 10 })),
  ),
  way('a hem that turns up 10 mm deeper in front', ['hem-uneven'], () =>
    withSeam(pattern, 'bodice front', 'waist', (seam) => ({ ...seam, allowance: seam.allowance + 10 })),
  ),

  // Left and right
  way('two right sleeves', ['not-as-asked', 'notches-do-not-meet', 'shoulder-notch-off', 'wrong-hand'], () => ({
    ...SPLIT,
    pieces: SPLIT.pieces.map((p) =>
      p.id === 'sleeve left' ? { ...pieceNamed(SPLIT, 'sleeve right'), id: p.id, name: p.name, side: p.side } : p,
    ),
  })),
  way('a left sleeve that is not the mirror of the right', ['join-too-short', 'sides-differ'], () =>
    cornerMoved('sleeve left', 'front underarm seam', 'wrist', 0, -6, SPLIT),
  ),
  way('a closing of which the left side is 5 mm longer', ['closing-uneven'], () =>
    cornerMoved('bodice back left', 'waist', 'center back', 0, -5, SPLIT),
  ),

  // Grain
  way('a piece without a grain', ['no-grain'], () =>
    sleeve((p) => ({ ...p, lines: p.lines.filter((l) => l.id !== 'grain') })),
  ),
  way('a grain beside the piece', ['no-grain'], () =>
    sleeve((p) => ({
      ...p,
      lines: p.lines.map((l) => (l.id === 'grain' ? { ...l, path: polyline([point(900, 0), point(900, 200)]) } : l)),
    })),
  ),
  way('a grain too short to be laid true', ['no-grain'], () =>
    sleeve((p) => ({
      ...p,
      lines: p.lines.map((l) => {
        if (l.id !== 'grain') return l
        const { x, y } = startOf(l.path)
        return { ...l, path: polyline([point(x, y), point(x, y + 20)]) }
      }),
    })),
  ),

  // The cap
  way('a cap with a wave', ['cap-not-fair', 'notch-off-seam'], () =>
    withSeam(pattern, 'sleeve', 'front cap', (seam) =>
      paths(seam, (path) =>
        path.map((c, i) =>
          i === path.length - 1 ? { ...c, p1: point(c.p1.x, c.p1.y + 60), p2: point(c.p2.x, c.p2.y - 60) } : c,
        ),
      ),
    ),
  ),
  way(
    'a cap half as high as it was',
    [
      'cap-flat',
      'cap-too-short',
      'corner-across-join',
      'no-grain',
      'not-as-asked',
      'notch-off-seam',
      'notches-do-not-meet',
    ],
    () =>
      sleeve((p) => ({
        ...p,
        seams: p.seams.map((s) =>
          /cap$/.test(s.id) ? paths(s, (path) => movePath(path, ({ x, y }) => point(x, y / 2))) : s,
        ),
      })),
  ),

  // Fit
  way('a bust smaller than the body', ['smaller-than-body'], () => measured('bust girth', (row) => row.body - 1)),
  way('a third of the ease over the back', ['little-ease'], () =>
    measured('back width', (row) => row.body + row.ease / 3),
  ),
  way('a waist 10 mm wider than asked', ['not-as-asked'], () => measured('waist girth', (row) => row.asked + 10)),
  way('a hand that does not pass the wrist', ['hand-does-not-pass'], () => withHand(300)),
]
