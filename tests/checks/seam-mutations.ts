import { point } from '../../src/geometry/point.ts'
import type { JoinPart } from '../../src/pattern/pattern.ts'
import type { Notch } from '../../src/pattern/piece.ts'
import { SPLIT, withJoin, withSeam } from './fixture.ts'

import {
  back,
  cornerMoved,
  dart,
  endTurned,
  front,
  lengthOf,
  type Mutation,
  notch,
  part,
  paths,
  pattern,
  sleeve,
  startTurned,
  way,
} from './spoil.ts'
/** Seams, notches, corners and darts that cannot be sewn, or not well. */
export const SEAM_MUTATIONS: readonly Mutation[] = [
  // Seams
  way('a back side seam 4 mm shorter at the waist', ['join-too-short', 'notches-do-not-meet'], () =>
    cornerMoved('bodice back', 'waist', 'side seam', 0, 4),
  ),
  way('a back side seam 4 mm longer at the waist', ['join-too-long', 'notches-do-not-meet'], () =>
    cornerMoved('bodice back', 'waist', 'side seam', 0, -4),
  ),
  way('a front shoulder 5 mm longer at the shoulder point', ['join-too-short'], () =>
    cornerMoved('bodice front', 'armscye', 'shoulder', 4.6, -2),
  ),
  way('a back underarm seam 6 mm longer at the wrist', ['join-too-long'], () =>
    cornerMoved('sleeve', 'back underarm seam', 'wrist', 0, -6),
  ),
  way('underarm seams of different lengths, allowed by the join', ['underarm-seams-unequal'], () => {
    const allowed = withJoin(pattern, 'underarm seam', (j) => ({ ...j, ease: { min: -20, target: 0, max: 20 } }))
    const moved = cornerMoved('sleeve', 'back underarm seam', 'wrist', 0, -6)
    return { ...moved, joins: allowed.joins }
  }),
  way('an underarm seam that nobody sews', ['underarm-seam-not-sewn'], () => ({
    ...pattern,
    joins: pattern.joins.filter((join) => join.id !== 'underarm seam'),
  })),
  way(
    'a front cap 19 mm shorter than its armscye',
    ['cap-too-short', 'notches-do-not-meet', 'shoulder-notch-off'],
    () =>
      withJoin(
        pattern,
        'front cap',
        part((p) => ({ ...p, from: 0, to: lengthOf('bodice front', 'armscye') - 19 })),
      ),
  ),
  way('more cap than leather takes', ['cap-too-full'], () =>
    withJoin(pattern, 'front cap', (join) => ({ ...join, ease: { min: 0, target: 2, max: 4 } })),
  ),
  way('nearly as much cap as the cloth takes', ['ease-stitching'], () => ({
    ...pattern,
    joins: pattern.joins.map((join) =>
      / cap$/.test(join.id) ? { ...join, ease: { ...join.ease, max: 1.1 * join.ease.target } } : join,
    ),
  })),
  way('a join of a seam that is gone', ['join-without-seam'], () =>
    withJoin(
      pattern,
      'shoulder',
      part((p) => ({ ...p, seam: 'yoke' })),
    ),
  ),
  way('a join that runs beyond its seam', ['join-without-seam'], () =>
    withJoin(
      pattern,
      'side seam',
      part((p) => ({ ...p, from: 0, to: 900 })),
    ),
  ),
  way(
    'a cap join that stops 30 mm short of the shoulder',
    ['cap-too-short', 'notches-do-not-meet', 'shoulder-notch-off'],
    () =>
      withJoin(
        pattern,
        'front cap',
        part((p) => ({ ...p, from: 0, to: lengthOf('sleeve', 'front cap') - 30 })),
      ),
  ),
  way('front and back of the sleeve swapped', ['notch-without-partner'], () => {
    const [f, b] = ['front cap', 'back cap'].map((id) => pattern.joins.find((j) => j.id === id)?.b)
    return {
      ...pattern,
      joins: pattern.joins.map((j) => {
        if (j.id === 'front cap') return { ...j, b: b as readonly JoinPart[] }
        return j.id === 'back cap' ? { ...j, b: f as readonly JoinPart[] } : j
      }),
    }
  }),

  // Notches
  way('a front notch 5 mm along its seam', ['notches-do-not-meet'], () =>
    notch('front notch', (n) => ({ ...n, along: n.along + 5 })),
  ),
  way('a front notch of the armscye 5 mm along its seam', ['notches-do-not-meet'], () =>
    front((p) => ({
      ...p,
      notches: p.notches.map((n) => (n.id === 'front notch' ? { ...n, along: n.along + 5 } : n)),
    })),
  ),
  way('a notch beyond its seam', ['notch-off-seam', 'notch-without-partner'], () =>
    notch('back notch', (n) => ({ ...n, along: 900 })),
  ),
  way('a notch of a seam that is gone', ['notch-off-seam'], () =>
    notch('elbow notch', (n) => ({ ...n, seam: 'inseam' })),
  ),
  way('a second mark beyond the seam', ['notch-off-seam'], () => notch('back notch', (n) => ({ ...n, step: -900 }))),
  way('a cap without its front notch', ['notch-without-partner'], () =>
    sleeve((p) => ({ ...p, notches: p.notches.filter((n) => n.id !== 'front notch') })),
  ),
  way('an armscye without its back notch', ['notch-without-partner'], () =>
    back((p) => ({ ...p, notches: p.notches.filter((n) => n.id !== 'back notch') })),
  ),
  way('a cap without its shoulder notch', ['shoulder-notch-off'], () =>
    sleeve((p) => ({ ...p, notches: p.notches.filter((n) => n.id !== 'shoulder notch') })),
  ),
  way('a shoulder notch 6 mm from the shoulder', ['notch-without-partner', 'shoulder-notch-off'], () =>
    notch('shoulder notch', (n) => ({ ...n, along: n.along - 6 })),
  ),
  way('front and back marked the other way round', ['notch-count'], () =>
    sleeve((p) => ({
      ...p,
      notches: p.notches.map((n): Notch => {
        if (n.id === 'front notch') return { ...n, marks: 2, step: 12 }
        if (n.id !== 'back notch') return n
        const { step: _step, ...rest } = n
        return { ...rest, marks: 1 }
      }),
    })),
  ),

  // Corners
  way('a neckline that peaks at the shoulder', ['corner-across-join'], () =>
    withSeam(pattern, 'bodice back', 'neckline', (seam) => paths(seam, (path) => startTurned(path, 0.15))),
  ),
  way('an armscye that dips at the shoulder', ['corner-across-join'], () =>
    withSeam(pattern, 'bodice front', 'armscye', (seam) => paths(seam, (path) => endTurned(path, -0.15))),
  ),
  way('an armscye that turns a corner under the arm', ['corner-across-join'], () =>
    withSeam(pattern, 'bodice front', 'armscye', (seam) => paths(seam, (path) => startTurned(path, 0.15))),
  ),
  way('a wrist that is not square to the back underarm seam', ['corner-across-join'], () =>
    withSeam(pattern, 'sleeve', 'wrist', (seam) => paths(seam, (path) => startTurned(path, 0.15))),
  ),
  way('a waist that is not square to the center', ['center-not-square'], () =>
    withSeam(pattern, 'bodice front', 'waist', (seam) =>
      paths(seam, (path, i) => (i === 0 ? startTurned(path, -0.1) : path)),
    ),
  ),
  way('a neckline that is not square to the center of a whole front', ['center-not-square'], () =>
    withSeam(SPLIT, 'bodice front', 'neckline left', (seam) => paths(seam, (path) => endTurned(path, 0.1))),
  ),

  // Darts
  way('unequal dart legs', ['dart-legs-unequal'], () =>
    dart('elbow dart upper', (d) => ({ ...d, point: point(d.point.x, d.point.y + 3) })),
  ),
  way('a dart on another seam', ['dart-off-seam', 'not-as-asked'], () =>
    dart('elbow dart lower', (d) => ({ ...d, seam: 'front underarm seam' })),
  ),
  way('a dart that points off the piece', ['corner-across-dart', 'dart-off-piece'], () =>
    dart('bust dart', (d) => ({ ...d, point: point(d.point.x + 900, d.point.y) })),
  ),
  way('a dart mouth that is not folded true', ['corner-across-dart'], () =>
    withSeam(pattern, 'sleeve', 'back underarm seam', (seam) =>
      paths(seam, (path, i) => (i === 0 ? endTurned(path, 0.2) : path)),
    ),
  ),
  way('a dart whose mouth runs against its seam', ['dart-off-seam', 'outline-open'], () =>
    dart('waist dart', (d) => ({ ...d, mouth: [d.mouth[1], d.mouth[0]] })),
  ),
]
