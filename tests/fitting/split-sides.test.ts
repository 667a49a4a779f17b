import { describe, expect, it } from 'vitest'
import { isGone } from '../../src/fitting/position-map.ts'
import { splitSides } from '../../src/fitting/split-sides.ts'
import { mirrorPiece } from '../../src/pattern/mirror-piece.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { landmarkPoint, notchPoints, pieceOf, pointOnSeam, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { joinLengths } from '../../src/pattern/sewn-line.ts'
import { drafted } from './bodies.ts'
import { fixturePattern } from './fixture.ts'
import { outlineOf } from './measure.ts'

const patterns: [string, Pattern][] = [
  ['the fixture', fixturePattern()],
  ['a draft', drafted()],
]

describe.each(patterns)('splitSides on %s', (_, pattern) => {
  const sleeve = pieceOf(pattern, 'sleeve')
  const split = splitSides(pattern, 'sleeve')
  const left = pieceOf(split.pattern, 'sleeve left')
  const right = pieceOf(split.pattern, 'sleeve right')

  it('makes the drawn sleeve, front towards +x, the right one', () => {
    expect(right.seams).toBe(sleeve.seams)
    expect([left.side, right.side, left.cut, right.cut, left.name]).toEqual(['left', 'right', 1, 1, 'sleeve left'])
    expect(split.pattern.pieces.some((p) => p.id === 'sleeve')).toBe(false)
    expect(split.pattern.pieces.find((p) => p.id === 'bodice front')).toBe(pieceOf(pattern, 'bodice front'))
  })

  it('mirrors exactly: every coordinate, anticlockwise again, closed', () => {
    const twice = mirrorPiece(mirrorPiece(sleeve))
    expect(twice.seams).toEqual(sleeve.seams)
    expect(twice.darts).toEqual(sleeve.darts)
    expect(twice.lines).toEqual(sleeve.lines)
    expect(left.seams.map((s) => s.id)).toEqual([
      'wrist',
      'back underarm seam',
      'back cap',
      'front cap',
      'front underarm seam',
    ])
    for (const seam of sleeve.seams) {
      const flat = seamOf(left, seam.id).parts.flat()
      const old = seam.parts.flat()
      flat.forEach((c, i) => {
        const d = old[old.length - 1 - i]
        expect([c.p0.x, c.p0.y, c.p1.x, c.p3.x]).toEqual([
          0 - (d?.p3.x ?? NaN),
          d?.p3.y,
          0 - (d?.p2.x ?? NaN),
          0 - (d?.p0.x ?? NaN),
        ])
      })
    }
    const [a, b] = [outlineOf(left), outlineOf(right)]
    expect(a.gaps).toBe(0)
    expect(a.area).toBeCloseTo(b.area, 6)
  })

  it('keeps notches, landmarks and dart mouths in their mirrored places', () => {
    sleeve.notches.forEach((notch) => {
      const twin = left.notches.find((n) => n.id === notch.id)
      if (!twin) throw new Error('a notch is missing')
      const here = notchPoints(left, twin)
      notchPoints(sleeve, notch).forEach((p, i) => {
        expect(here[i]?.x).toBeCloseTo(-p.x, 5)
        expect(here[i]?.y).toBeCloseTo(p.y, 5)
      })
    })
    sleeve.landmarks.forEach((landmark, i) => {
      const p = landmarkPoint(sleeve, landmark)
      const q = landmarkPoint(left, left.landmarks[i] as never)
      expect(Math.hypot(p.x + q.x, p.y - q.y)).toBeLessThan(1e-5)
    })
    left.darts.forEach((dart) => {
      const parts = seamOf(left, dart.seam).parts
      expect(parts.some((part) => part.at(-1)?.p3.x === dart.mouth[0].x && part.at(-1)?.p3.y === dart.mouth[0].y)).toBe(
        true,
      )
    })
  })

  it('sews each side as before', () => {
    const ids = ['front cap', 'back cap', 'underarm seam'].flatMap((id) => [`${id} left`, `${id} right`])
    for (const id of ids) {
      const join = split.pattern.joins.find((j) => j.id === id)
      const old = pattern.joins.find((j) => j.id === id.replace(/ (left|right)$/, ''))
      if (!join || !old) throw new Error(`no ${id}`)
      expect(joinLengths(split.pattern, join).ease).toBeCloseTo(joinLengths(pattern, old).ease, 6)
      const mirrored = id.endsWith('left')
      for (const [i, part] of join.a.entries()) {
        expect(part.reversed).toBe(mirrored ? !old.a[i]?.reversed : old.a[i]?.reversed)
      }
    }
    // The joins that sew no sleeve are the same objects.
    expect(split.pattern.joins.filter((j) => pattern.joins.includes(j)).map((j) => j.id)).toEqual([
      'shoulder',
      'side seam',
    ])
  })

  it('maps every place to both sides', () => {
    const along = 50
    const places = split.map.seam({ piece: 'sleeve', seam: 'front cap', along })
    expect(places.map((p) => (isGone(p) ? '' : p.piece))).toEqual(['sleeve left', 'sleeve right'])
    const point = pointOnSeam(seamOf(sleeve, 'front cap'), along)
    for (const place of places) {
      if (isGone(place)) throw new Error('gone')
      const there = pointOnSeam(seamOf(pieceOf(split.pattern, place.piece), place.seam), place.along)
      expect(Math.abs(there.x)).toBeCloseTo(Math.abs(point.x), 5)
      expect(there.y).toBeCloseTo(point.y, 5)
    }
    expect(split.map.seam({ piece: 'bodice front', seam: 'armscye', along })).toEqual([
      { piece: 'bodice front', seam: 'armscye', along },
    ])
  })

  it('does nothing twice', () => {
    expect(splitSides(split.pattern, 'sleeve left').pattern).toBe(split.pattern)
  })

  it('makes a back with its side towards +x the right back', () => {
    const backs = splitSides(pattern, 'bodice back').pattern
    expect(pieceOf(backs, 'bodice back right').seams).toBe(pieceOf(pattern, 'bodice back').seams)
    const both = splitSides(backs, 'bodice front').pattern
    const join = both.joins.find((j) => j.id === 'side seam left')
    expect(join?.a[0]).toMatchObject({ piece: 'bodice back left', seam: 'side seam' })
    expect(join?.b[0]).toMatchObject({ piece: 'bodice front', seam: 'side seam left' })
    for (const j of both.joins) {
      const old = pattern.joins.find((o) => o.id === j.id.replace(/ (left|right)$/, ''))
      if (old) expect(joinLengths(both, j).ease).toBeCloseTo(joinLengths(pattern, old).ease, 6)
    }
  })

  it('opens a piece on the fold into a whole one with both halves named', () => {
    const before = pieceOf(pattern, 'bodice front')
    const { pattern: opened, map } = splitSides(pattern, 'bodice front')
    const whole = pieceOf(opened, 'bodice front')
    expect(whole.side).toBe('whole')
    expect(whole.seams.map((s) => s.id)).toEqual([
      'waist left',
      'side seam left',
      'armscye left',
      'shoulder left',
      'neckline left',
      'neckline right',
      'shoulder right',
      'armscye right',
      'side seam right',
      'waist right',
    ])
    const outline = outlineOf(whole)
    expect(outline.gaps).toBeLessThan(1e-9)
    expect(outline.area).toBeCloseTo(2 * outlineOf(before).area, 5)
    expect(whole.lines.some((l) => l.id === 'center front')).toBe(true)
    // The front drawn with its side towards +x is the wearer's left.
    const x = pointOnSeam(seamOf(whole, 'side seam left'), 10).x
    expect(x).toBeGreaterThan(0)
    expect(whole.darts).toHaveLength(2 * before.darts.length)
    expect(seamLength(seamOf(whole, 'armscye right'))).toBeCloseTo(seamLength(seamOf(before, 'armscye')), 9)
    const [a, b] = map.seam({ piece: 'bodice front', seam: 'armscye', along: 30 })
    expect(a).toMatchObject({ seam: 'armscye left', along: 30 })
    expect((b as { along: number }).along).toBeCloseTo(seamLength(seamOf(before, 'armscye')) - 30, 9)
    expect(map.seam({ piece: 'bodice front', seam: 'center front', along: 3 })[0]).toHaveProperty('gone')
  })
})
