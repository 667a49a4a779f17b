import { describe, expect, test } from 'vitest'
import { runChecks } from '../../src/checks/checks.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import type { Path } from '../../src/geometry/path.ts'
import { movePath, polyline } from '../../src/geometry/path.ts'
import { point, rotateAbout } from '../../src/geometry/point.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { seamLength, seamOf } from '../../src/pattern/seam.ts'
import { SIZES } from '../drafting/bodies.ts'
import { codesOn, contextOf, DRAFT, pieceNamed, SPLIT, withJoin, withPiece, withSeam } from './fixture.ts'

const { pattern } = DRAFT

describe('a draft', () => {
  test.each(SIZES.map((body, i) => [6 + 2 * i, body] as const))('of size %i has no finding', (_size, body) => {
    const draft = draftPattern(body)
    if (!draft.ok) throw new Error('no draft')
    const { measures } = draft.value
    expect(runChecks({ pattern: draft.value.pattern, measures, units: 'in' })).toEqual([])
  })

  test('has none with left and right apart', () => {
    expect(codesOn(SPLIT)).toEqual([])
  })
})

/** The last cubic of a path ends elsewhere. */
function endingAt(path: Path, dx: number, dy: number): Path {
  return path.map((c, i) => (i === path.length - 1 ? { ...c, p3: point(c.p3.x + dx, c.p3.y + dy) } : c))
}

const sleeve = (change: (piece: Piece) => Piece) => withPiece(pattern, 'sleeve', change)
const firstDart = (change: (dart: Piece['darts'][number]) => Piece['darts'][number]) =>
  sleeve((piece) => ({ ...piece, darts: piece.darts.map((dart, i) => (i === 0 ? change(dart) : dart)) }))
const notch = (id: string, change: (n: Piece['notches'][number]) => Piece['notches'][number]) =>
  sleeve((piece) => ({ ...piece, notches: piece.notches.map((n) => (n.id === id ? change(n) : n)) }))
const frontArmscye = seamLength(seamOf(pieceNamed(pattern, 'bodice front'), 'armscye'))

/** Every way to spoil a pattern, and the finding that must say so. */
const SPOILT: readonly (readonly [code: string, how: string, spoil: () => Pattern])[] = [
  [
    'outline-open',
    'a seam that ends 0.5 mm short',
    () =>
      withSeam(pattern, 'bodice back', 'shoulder', (seam) => ({
        ...seam,
        parts: seam.parts.map((p) => endingAt(p, 0.5, 0)),
      })),
  ],
  [
    'outline-turned',
    'a piece turned inside out',
    () =>
      withPiece(pattern, 'bodice back', (piece) => ({
        ...piece,
        seams: piece.seams.map((seam) => ({
          ...seam,
          parts: seam.parts.map((p) => movePath(p, ({ x, y }) => point(-x, y))),
        })),
      })),
  ],
  [
    'outline-crosses-itself',
    'a neckline that loops below the waist',
    () =>
      withSeam(pattern, 'bodice front', 'neckline', (seam) => ({
        ...seam,
        parts: seam.parts.map((p) => p.map((c) => ({ ...c, p1: point(c.p1.x, -900), p2: point(c.p2.x + 900, -900) }))),
      })),
  ],
  [
    'no-grain',
    'a piece without a grain',
    () => sleeve((piece) => ({ ...piece, lines: piece.lines.filter((l) => l.id !== 'grain') })),
  ],
  [
    'no-grain',
    'a grain beside the piece',
    () =>
      sleeve((piece) => ({
        ...piece,
        lines: piece.lines.map((l) =>
          l.id === 'grain' ? { ...l, path: polyline([point(900, 0), point(900, 200)]) } : l,
        ),
      })),
  ],
  [
    'dart-legs-unequal',
    'a dart whose point was moved',
    () => firstDart((dart) => ({ ...dart, point: point(dart.point.x, dart.point.y + 3) })),
  ],
  ['dart-off-seam', 'a dart on another seam', () => firstDart((dart) => ({ ...dart, seam: 'front underarm seam' }))],
  [
    'corner-across-dart',
    'a seam that kinks where the dart is folded',
    () =>
      withSeam(pattern, 'sleeve', 'back underarm seam', (seam) => ({
        ...seam,
        parts: seam.parts.map((path, i) =>
          i === 0 ? path.map((c, k) => (k === path.length - 1 ? { ...c, p2: rotateAbout(c.p2, c.p3, 0.2) } : c)) : path,
        ),
      })),
  ],
  [
    'join-without-seam',
    'a join of a seam that is gone',
    () => withJoin(pattern, 'shoulder', (join) => ({ ...join, a: join.a.map((part) => ({ ...part, seam: 'yoke' })) })),
  ],
  [
    'join-without-seam',
    'a join beyond the end of its seam',
    () =>
      withJoin(pattern, 'shoulder', (join) => ({ ...join, a: join.a.map((part) => ({ ...part, from: 0, to: 900 })) })),
  ],
  [
    'cap-too-short',
    'a cap 19 mm shorter than its armscye',
    () =>
      withJoin(pattern, 'front cap', (join) => ({
        ...join,
        a: join.a.map((part) => ({ ...part, from: 0, to: frontArmscye - 19 })),
      })),
  ],
  [
    'cap-too-full',
    'more ease than leather takes',
    () => withJoin(pattern, 'front cap', (join) => ({ ...join, ease: { min: 0, target: 2, max: 4 } })),
  ],
  [
    'join-too-short',
    'a back shoulder shorter than asked',
    () => withJoin(pattern, 'shoulder', (join) => ({ ...join, ease: { min: 9, target: 10, max: 11 } })),
  ],
  [
    'join-too-long',
    'a back shoulder longer than asked',
    () => withJoin(pattern, 'shoulder', (join) => ({ ...join, ease: { min: -0.5, target: 0, max: 0.5 } })),
  ],
  [
    'notches-do-not-meet',
    'a front notch 5 mm too high',
    () => notch('front notch', (n) => ({ ...n, along: n.along + 5 })),
  ],
  ['notch-off-seam', 'a notch beyond its seam', () => notch('back notch', (n) => ({ ...n, along: 900 }))],
  ['notch-off-seam', 'a second mark beyond its seam', () => notch('back notch', (n) => ({ ...n, step: -900 }))],
  ['notch-count', 'two marks in front', () => notch('front notch', (n) => ({ ...n, marks: 2, step: 12 }))],
  [
    'notch-without-partner',
    'a cap without its front notch',
    () => sleeve((piece) => ({ ...piece, notches: piece.notches.filter((n) => n.id !== 'front notch') })),
  ],
  [
    'shoulder-notch-off',
    'a shoulder notch 6 mm from the shoulder',
    () => notch('shoulder notch', (n) => ({ ...n, along: n.along > 6 ? n.along - 6 : n.along + 6 })),
  ],
  [
    'underarm-seam-not-sewn',
    'an underarm seam that nobody sews',
    () => ({ ...pattern, joins: pattern.joins.filter((j) => j.id !== 'underarm seam') }),
  ],
  [
    'underarm-seams-unequal',
    'a difference that was not declared',
    () => {
      const stretched = withJoin(pattern, 'underarm seam', (join) => ({
        ...join,
        ease: { min: -20, target: 0, max: 20 },
      }))
      return withSeam(stretched, 'sleeve', 'front underarm seam', (seam) => ({
        ...seam,
        parts: seam.parts.map((p) => endingAt(p, 0, 4)),
      }))
    },
  ],
  [
    'corner-across-join',
    'a neckline that peaks at the shoulder',
    () =>
      withSeam(pattern, 'bodice back', 'neckline', (seam) => ({
        ...seam,
        parts: seam.parts.map((p) => p.map((c, i) => (i === 0 ? { ...c, p1: point(c.p1.x + 8, c.p1.y) } : c))),
      })),
  ],
  [
    'center-not-square',
    'a waist that dips at the center',
    () =>
      withSeam(pattern, 'bodice front', 'waist', (seam) => ({
        ...seam,
        parts: seam.parts.map((p) =>
          p.map((c) => ({ ...c, p1: point(c.p1.x, c.p1.y - 6), p2: point(c.p2.x, c.p2.y - 6) })),
        ),
      })),
  ],
  [
    'cap-not-fair',
    'a cap with a wave',
    () =>
      withSeam(pattern, 'sleeve', 'front cap', (seam) => ({
        ...seam,
        parts: seam.parts.map((p) =>
          p.map((c, i) =>
            i === p.length - 1 ? { ...c, p1: point(c.p1.x, c.p1.y + 60), p2: point(c.p2.x, c.p2.y - 60) } : c,
          ),
        ),
      })),
  ],
  [
    'cap-flat',
    'a sleeve for a far larger armscye',
    () => {
      const flat = ({ x, y }: { x: number; y: number }) => point(x, y * 0.5)
      return sleeve((piece) => ({
        ...piece,
        seams: piece.seams.map((seam) => ({ ...seam, parts: seam.parts.map((p) => movePath(p, flat)) })),
      }))
    },
  ],
]

describe('every check', () => {
  test.each(SPOILT)('%s: %s', (code, _how, spoil) => {
    const found = runChecks(contextOf(spoil())).filter((finding) => finding.code === code)
    expect(found.length).toBeGreaterThan(0)
    for (const { actual, expected, hint, where } of found) {
      expect([actual, expected, hint].every((words) => words.length > 3)).toBe(true)
      expect(Object.keys(where).length).toBeGreaterThan(0)
    }
  })

  test('leaves the other joins alone', () => {
    expect(codesOn(notchMoved())).toEqual(['notches-do-not-meet'])
  })

  test('puts errors first', () => {
    const spoilt = withJoin(notchMoved(), 'back cap', (join) => ({ ...join, ease: { min: 30, target: 30, max: 40 } }))
    const severities = runChecks(contextOf(spoilt)).map((finding) => finding.severity)
    expect(severities[0]).toBe('error')
    expect(severities).toEqual([...severities].sort((a, b) => (a === 'error' ? 0 : 1) - (b === 'error' ? 0 : 1)))
  })

  test('speaks inches where the file does', () => {
    const found = runChecks({ ...contextOf(notchMoved()), units: 'in' })
    expect(found[0]?.expected).toContain('1/16 in (1.6 mm)')
  })

  function notchMoved(): Pattern {
    return notch('front notch', (n) => ({ ...n, along: n.along + 5 }))
  }
})

describe('wearing ease', () => {
  const rows = (name: string, drafted: number) =>
    DRAFT.measures.map((row) => (row.name === name ? { ...row, drafted } : row))

  test('a girth below the body is an error, half the ease gone a warning', () => {
    const bust = DRAFT.measures.find((row) => row.name === 'bust girth')
    if (!bust) throw new Error('no bust')
    const found = (drafted: number) =>
      runChecks({ pattern, measures: rows('bust girth', drafted), units: 'mm' }).map((f) => [f.code, f.severity])
    expect(found(bust.body - 1)).toEqual([['smaller-than-body', 'error']])
    expect(found(bust.body + bust.ease * 0.49)).toEqual([['little-ease', 'warning']])
    expect(found(bust.body + bust.ease * 0.51)).toEqual([])
  })
})
