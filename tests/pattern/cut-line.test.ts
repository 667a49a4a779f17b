import { EndType, inflatePathsD, JoinType, type PathD } from 'clipper2-ts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { area } from '../../src/geometry/area.ts'
import { contains } from '../../src/geometry/contains.ts'
import { crossings, selfCrossings } from '../../src/geometry/crossings.ts'
import { line, pointAt } from '../../src/geometry/cubic.ts'
import { flatten } from '../../src/geometry/flatten.ts'
import { nearestParameter } from '../../src/geometry/nearest.ts'
import { endOf, movePath, type Path, startOf } from '../../src/geometry/path.ts'
import { directionAlong, pathLength, pointAlong } from '../../src/geometry/path-length.ts'
import { add, along, cross, distance, type Point, point, rightOf, subtract, unit } from '../../src/geometry/point.ts'
import { mirrorAcross, mirrorX } from '../../src/geometry/transform.ts'
import { cutLine } from '../../src/pattern/cut-line.ts'
import { outlineOf } from '../../src/pattern/outline.ts'
import type { Dart, Piece } from '../../src/pattern/piece.ts'
import { mirrorPiece } from './mirror.ts'
import { front, sleeve } from './pieces.ts'

const withAllowances = (piece: Piece, by: (id: string) => number): Piece => ({
  ...piece,
  seams: piece.seams.map((s) => ({ ...s, allowance: s.allowance === 0 ? 0 : by(s.id) })),
})

function expectSound(piece: Piece, cut: Path): void {
  expect(startOf(cut)).toEqual(endOf(cut))
  for (let k = 1; k < cut.length; k++) expect(cut[k]?.p0).toEqual(cut[k - 1]?.p3)
  const outline = outlineOf(piece)
  expect(selfCrossings(cut).crossings.filter((c) => c.kind === 'cross')).toEqual([])
  expect(crossings(cut, outline).crossings.filter((c) => c.kind === 'cross')).toEqual([])
  expect(area(cut)).toBeGreaterThan(area(outline))
  for (const c of outline) {
    const p = pointAt(c, 0.5)
    if (nearestParameter(cut, p).distance > 1e-6) expect(contains(cut, p)).toBe(true)
  }
}

const pieces = { front, sleeve }

describe('cutLine', () => {
  for (const [name, make] of Object.entries(pieces)) {
    it(`${name}: never crosses itself or the stitching line, whatever the allowances`, () => {
      const allowance = fc.constantFrom(5, 6.35, 12.7, 25.4, 38)
      fc.assert(
        fc.property(fc.array(allowance, { minLength: 6, maxLength: 6 }), (list) => {
          const ids = make().seams.map((s) => s.id)
          const piece = withAllowances(make(), (id) => list[ids.indexOf(id)] as number)
          expectSound(piece, cutLine(piece))
        }),
        { numRuns: 60 },
      )
    })

    it(`${name}: each seam has its allowance along its middle, measured square to it`, () => {
      const piece = withAllowances(make(), () => 10)
      const cut = cutLine(piece)
      const darts = piece.darts.flatMap((d) => d.mouth)
      for (const seam of piece.seams) {
        for (const part of seam.parts) {
          const length = pathLength(part)
          for (let k = 0; k <= 20; k++) {
            const p = pointAlong(part, (length * k) / 20)
            // Near corners and dart mouths the corner decides.
            if (Math.min(k, 20 - k) * (length / 20) < 16 || darts.some((m) => distance(m, p) < 16)) continue
            const q = along(p, rightOf(directionAlong(part, (length * k) / 20)), seam.allowance)
            expect(nearestParameter(cut, q).distance, `${seam.id} at ${k}`).toBeLessThan(0.01)
          }
        }
      }
    })

    it(`${name}: is the mirror image for the mirrored piece`, () => {
      const cut = cutLine(make())
      const flipped = movePath(cutLine(mirrorPiece(make())), mirrorX())
      for (const c of flipped) {
        for (let k = 0; k <= 10; k++) expect(nearestParameter(cut, pointAt(c, k / 10)).distance).toBeLessThan(0.02)
      }
    })

    it(`${name}: agrees with clipper where nothing is folded or squared`, () => {
      // Seams renamed: every corner mitred, darts sewn shut are left out of the mouth by a chord.
      const piece = withAllowances(make(), () => 12.7)
      const plain: Piece = {
        ...piece,
        darts: [],
        seams: piece.seams.map((s, k) => ({ ...s, id: `seam ${k}`, allowance: 12.7 })),
      }
      const cut = cutLine(plain)
      expectSound(plain, cut)
      const polygon: PathD = flatten(outlineOf(plain), { tolerance: 1e-3 }).slice(0, -1)
      const [theirs] = inflatePathsD([polygon], 12.7, JoinType.Miter, EndType.Polygon, 2, 5)
      const areaOf = (p: PathD) => p.reduce((s, a, k) => s + cross(a, p[(k + 1) % p.length] as Point) / 2, 0)
      expect(Math.abs(area(cut) - areaOf(theirs ?? []))).toBeLessThan(0.01 * pathLength(cut))
    })
  }

  it('a fold stays where it is: no cloth beyond the center', () => {
    const cut = cutLine(front())
    const fold = cut.filter((c) => Math.abs(c.p0.x) < 1e-9 && Math.abs(c.p3.x) < 1e-9)
    expect(fold.length).toBeGreaterThan(0)
    expect(Math.min(...cut.flatMap((c) => [c.p0.x, c.p1.x, c.p2.x, c.p3.x]))).toBeGreaterThan(-1e-9)
    // From the waist's allowance to the neckline's.
    expect(Math.min(...fold.map((c) => c.p3.y))).toBeCloseTo(4 - 25.4, 6)
    expect(Math.max(...fold.map((c) => c.p0.y))).toBeCloseTo(310 + 12.7, 6)
  })

  /** What the paper shows when the dart is pinned: every point of the edge over the mouth lies on the edge beside it. */
  function expectFolded(cut: Path, dart: Dart, onto: 0 | 1, far: number): void {
    const leg = dart.mouth[onto]
    const [a, b] = dart.mouth
    const center = add(dart.point, add(unit(subtract(a, dart.point)), unit(subtract(b, dart.point))))
    const side = (p: Point, q: Point) => cross(unit(subtract(q, dart.point)), subtract(p, dart.point))
    let seen = 0
    for (const c of cut) {
      for (let k = 0; k <= 30; k++) {
        const p = pointAt(c, k / 30)
        const within = side(p, a) > 0.01 && side(p, b) < -0.01 && distance(p, dart.point) < far
        if (!within || nearestParameter([...outlineChord(a, b)], p).distance > 40) continue
        seen++
        const atLeg = side(p, center) < 0 === (onto === 0)
        const once = atLeg ? p : mirrorAcross(dart.point, center)(p)
        expect(nearestParameter(cut, mirrorAcross(dart.point, leg)(once)).distance).toBeLessThan(0.01)
      }
    }
    expect(seen).toBeGreaterThan(5)
  }

  const outlineChord = (a: Point, b: Point): Path => [line(a, b)]

  it('over dart mouths the edge is what lies under it when the dart is folded: side darts down, waist darts to the center', () => {
    const piece = front()
    const cut = cutLine(piece)
    const [bust, waist] = piece.darts as [Dart, Dart]
    expect(bust.mouth[0].y).toBeLessThan(bust.mouth[1].y)
    expectFolded(cut, bust, 0, 160)
    expect(Math.abs(waist.mouth[0].x)).toBeLessThan(Math.abs(waist.mouth[1].x))
    expectFolded(cut, waist, 0, 160)
    const arm = sleeve()
    const lower = arm.darts[1] as Dart
    // The back seam runs down: the second mouth point is the lower one.
    expect(lower.mouth[1].y).toBeLessThan(lower.mouth[0].y)
    expectFolded(cutLine(arm), lower, 1, 120)
  })

  it('the wrist is folded up: beyond it the edge is the mirror image of the seam beside it', () => {
    const piece = sleeve()
    const cut = cutLine(piece)
    const wrist = piece.seams[3]?.parts[0] as Path
    for (const end of [0, 1]) {
      const p = end ? endOf(wrist) : startOf(wrist)
      const d = directionAlong(wrist, end ? pathLength(wrist) : 0)
      const fold = mirrorAcross(p, add(p, d))
      let seen = 0
      for (const c of cut) {
        for (let k = 0; k <= 20; k++) {
          const q = pointAt(c, k / 20)
          const off = subtract(q, p)
          const beyond = (off.x * d.x + off.y * d.y) * (end ? 1 : -1)
          const below = -cross(d, off)
          if (beyond < 15 || below < 0.01 || below > 24) continue
          if (distance(q, p) > 60) continue
          seen++
          expect(nearestParameter(cut, fold(q)).distance).toBeLessThan(1e-3)
        }
      }
      expect(seen, `end ${end}`).toBeGreaterThan(3)
    }
  })

  it('shoulder ends are square to the shoulder', () => {
    const cut = cutLine(front())
    const shoulder = [point(178, 340), point(62, 383)] as const
    const d = unit(subtract(shoulder[1], shoulder[0]))
    const ends = cut.filter((c) => {
      const way = subtract(c.p3, c.p0)
      return distance(c.p0, c.p3) > 20 && Math.abs(way.x * d.x + way.y * d.y) < 1e-6 * distance(c.p0, c.p3)
    })
    // One at each end, as long as the allowance, its foot on the stitching line drawn on.
    expect(ends).toHaveLength(2)
    for (const c of ends) {
      expect(distance(c.p0, c.p3)).toBeCloseTo(25.4, 6)
      const feet = [c.p0, c.p3].map((p) => Math.abs(cross(d, subtract(p, shoulder[0]))))
      expect(Math.min(...feet)).toBeLessThan(1e-6)
    }
  })

  it('a gap in a seam that is no dart is cut straight across', () => {
    const piece = { ...front(), darts: [] }
    expectSound(piece, cutLine(piece))
  })
})
