import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { isGone } from '../../src/fitting/position-map.ts'
import { type ShiftSeamOptions, shiftSeam } from '../../src/fitting/shift-seam.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import { polyline } from '../../src/geometry/path.ts'
import { point } from '../../src/geometry/point.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pieceOf, pointOnSeam, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { fixturePattern } from './fixture.ts'
import { cubics, farthest, frameAt, largestCorner, lengthOf, outlineOf, seam, shiftAt } from './measure.ts'

const CAP = ['front cap', 'back cap']

function shifted(pattern: Pattern, options: ShiftSeamOptions) {
  const result = shiftSeam(pattern, options)
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}

function sleeveOf(pattern: Pattern): Piece {
  return pieceOf(pattern, 'sleeve')
}

/** The let-out of the demo: both halves of the cap, tapering to the notches. */
function letOut(pattern: Pattern, amount: number): ShiftSeamOptions {
  const sleeve = sleeveOf(pattern)
  const front = seamLength(seamOf(sleeve, 'front cap'))
  const back = seamLength(seamOf(sleeve, 'back cap'))
  return {
    piece: 'sleeve',
    seams: CAP,
    stations: [
      { seam: 'front cap', along: 0.6 * front, amount },
      { seam: 'back cap', along: 0.38 * back, amount },
    ],
    anchors: [
      { seam: 'front cap', along: 70 },
      { seam: 'front cap', along: front },
      { seam: 'back cap', along: back - 70 },
    ],
  }
}

describe('shiftSeam', () => {
  const patterns: [string, Pattern][] = [['the fixture', fixturePattern()]]
  beforeAll(() => {
    patterns.push(['a draft', drafted()])
  })

  it('returns the very same pattern for a zero amount', () => {
    for (const [, pattern] of patterns) {
      const { pattern: now, map, effects } = shifted(pattern, letOut(pattern, 0))
      expect(now).toBe(pattern)
      expect(effects).toEqual([])
      expect(map.seam({ piece: 'sleeve', seam: 'front cap', along: 33 })).toEqual([
        { piece: 'sleeve', seam: 'front cap', along: 33 },
      ])
    }
  })

  it('puts the line outside by the amount at its stations, within 0.05 mm', () => {
    for (const [name, pattern] of patterns) {
      for (const amount of [9.525, -6, 3, 18]) {
        const options = letOut(pattern, amount)
        const now = sleeveOf(shifted(pattern, options).pattern)
        for (const station of options.stations) {
          const measured = shiftAt(cubics(sleeveOf(pattern), station.seam), station.along, cubics(now, station.seam))
          expect(Math.abs(measured - amount), `${name}, ${station.seam}, ${amount}`).toBeLessThan(0.01)
        }
      }
    }
  })

  it('is zero at its anchors, and nowhere beyond its stations', () => {
    const pattern = fixturePattern()
    const now = sleeveOf(shifted(pattern, letOut(pattern, 9.525)).pattern)
    const old = cubics(sleeveOf(pattern), 'front cap')
    for (const along of [10, 40, 69, 70, 71, 80, 100, 120, 137, 160, 180, 200, 220]) {
      const measured = shiftAt(old, along, cubics(now, 'front cap'))
      expect(measured).toBeLessThan(9.525 + 0.01)
      expect(measured).toBeGreaterThan(-0.01)
      if (along <= 70) expect(Math.abs(measured)).toBeLessThan(1e-5)
    }
  })

  it('leaves everything outside its anchors bit for bit, and shares what it did not touch', () => {
    for (const [, pattern] of patterns) {
      const before = sleeveOf(pattern)
      const { pattern: after } = shifted(pattern, letOut(pattern, 9.525))
      const now = sleeveOf(after)
      for (const piece of pattern.pieces) if (piece !== before) expect(after.pieces).toContain(piece)
      expect(after.joins).toBe(pattern.joins)
      for (const id of ['wrist', 'front underarm seam', 'back underarm seam'])
        expect(seam(now, id)).toBe(seam(before, id))
      const old = cubics(before, 'front cap')
      const cut = cubics(now, 'front cap')
      // Whole cubics before the anchor are the same objects; the one cut there starts with the same numbers.
      let along = 0
      let whole = 0
      for (const c of old) {
        along += lengthOf({ id: '', allowance: 0, parts: [[c]] })
        if (along > 70) break
        expect(cut[whole]).toBe(c)
        whole++
      }
      expect(cut[whole]?.p0).toEqual(old[whole]?.p0)
      const lastOld = cubics(before, 'back cap').at(-1)
      expect(cubics(now, 'back cap').at(-1)?.p3).toEqual(lastOld?.p3)
      expect(now.darts).toBe(before.darts)
    }
  })

  it('moves on smoothly: no corner between cubics, no gap round the piece', () => {
    for (const [, pattern] of patterns) {
      const now = sleeveOf(shifted(pattern, letOut(pattern, 12)).pattern)
      expect(largestCorner([...cubics(now, 'front cap'), ...cubics(now, 'back cap')])).toBeLessThan(1e-3)
      const { gaps, area } = outlineOf(now)
      expect(gaps).toBe(0)
      expect(area).toBeGreaterThan(outlineOf(sleeveOf(pattern)).area)
    }
  })

  it('maps places: the point moved along its normal is the point at the mapped place', () => {
    const pattern = fixturePattern()
    const { pattern: after, map } = shifted(pattern, letOut(pattern, 9.525))
    const old = cubics(sleeveOf(pattern), 'front cap')
    const length = lengthOf(seam(sleeveOf(pattern), 'front cap'))
    let before = -1
    for (let i = 0; i <= 60; i++) {
      const along = (length * i) / 60
      const [moved] = map.seam({ piece: 'sleeve', seam: 'front cap', along })
      if (!moved || isGone(moved)) throw new Error('gone')
      expect(moved.along).toBeGreaterThan(before)
      before = moved.along
      const amount = shiftAt(old, along, cubics(sleeveOf(after), 'front cap'))
      const { point: from, normal } = frameAt(old, along)
      const there = pointOnSeam(
        seamOf(sleeveOf(after), 'front cap'),
        Math.min(moved.along, seamLength(seamOf(sleeveOf(after), 'front cap'))),
      )
      expect(Math.hypot(from.x + amount * normal.x - there.x, from.y + amount * normal.y - there.y)).toBeLessThan(0.02)
    }
  })

  it('carries notches and landmarks on', () => {
    const pattern = fixturePattern()
    const { pattern: after, map } = shifted(pattern, letOut(pattern, 9.525))
    const now = sleeveOf(after)
    const shoulder = now.notches.find((n) => n.id === 'shoulder notch')
    expect(shoulder?.along).toBeCloseTo(seamLength(seamOf(now, 'front cap')), 9)
    const underarm = now.landmarks.filter((l) => l.id === 'underarm')
    const [start, end] = underarm.map((l) => ('along' in l ? l.along : Number.NaN))
    expect(start).toBe(0)
    expect(end).toBeCloseTo(seamLength(seamOf(now, 'back cap')), 9)
    const [back] = map.seam({ piece: 'sleeve', seam: 'back cap', along: sleeveOf(pattern).notches[2]?.along as number })
    expect(back).toEqual({ piece: 'sleeve', seam: 'back cap', along: now.notches[2]?.along })
  })

  it('takes balance lines on to the moved seam in their own direction', () => {
    const pattern = fixturePattern()
    const capLine = (p: Pattern) => sleeveOf(p).lines.find((l) => l.id === 'cap line')?.path[0]
    const old = capLine(pattern)
    const now = capLine(shifted(pattern, letOut(pattern, 9.525)).pattern)
    expect(now?.p3.y).toBeCloseTo(old?.p3.y as number, 9)
    expect(now?.p3.x as number).toBeGreaterThan((old?.p3.x as number) + 5)
    expect(now?.p0.x as number).toBeLessThan((old?.p0.x as number) - 5)
  })

  it('moves an end with its neighbour along the neighbour, and keeps the rest of it', () => {
    const pattern = fixturePattern()
    const back = seamLength(seamOf(sleeveOf(pattern), 'back cap'))
    for (const amount of [12.7, -8]) {
      const { pattern: after, map } = shifted(pattern, {
        piece: 'sleeve',
        seams: CAP,
        stations: [
          { seam: 'front cap', along: 0, amount },
          { seam: 'back cap', along: back, amount },
        ],
        anchors: [
          { seam: 'front cap', along: 50 },
          { seam: 'back cap', along: back - 50 },
        ],
      })
      const now = sleeveOf(after)
      expect(outlineOf(now).gaps).toBe(0)
      for (const id of ['front underarm seam', 'back underarm seam']) {
        const change = lengthOf(seam(now, id)) - lengthOf(seam(sleeveOf(pattern), id))
        expect(Math.abs(change - amount)).toBeLessThan(0.05)
      }
      // The seam that starts at the underarm has its places pushed along; the wrist end stays the wrist end.
      const whole = seamLength(seamOf(sleeveOf(pattern), 'back underarm seam'))
      const place = (along: number) => map.seam({ piece: 'sleeve', seam: 'back underarm seam', along })[0]
      expect(place(0)).toMatchObject({ along: 0 })
      expect((place(whole) as { along: number }).along).toBeCloseTo(seamLength(seamOf(now, 'back underarm seam')), 9)
      if (amount < 0) expect(place(2)).toHaveProperty('gone')
      else expect((place(2) as { along: number }).along).toBeCloseTo(2 + amount, 3)
      const biceps = now.lines.find((l) => l.id === 'biceps line')?.path[0]
      expect(biceps?.p3).toEqual(cubics(now, 'front cap')[0]?.p0)
    }
  })

  it('brings both legs of a dart to the moved line: point and angle stay', () => {
    const pattern = fixturePattern()
    const whole = seamLength(seamOf(sleeveOf(pattern), 'back underarm seam'))
    const { pattern: after } = shifted(pattern, {
      piece: 'sleeve',
      seams: ['back underarm seam'],
      stations: [
        { seam: 'back underarm seam', along: 140, amount: 8 },
        { seam: 'back underarm seam', along: 240, amount: 8 },
      ],
      anchors: [
        { seam: 'back underarm seam', along: 40 },
        { seam: 'back underarm seam', along: whole },
      ],
    })
    const before = sleeveOf(pattern)
    const now = sleeveOf(after)
    now.darts.forEach((dart, i) => {
      const old = before.darts[i]
      if (!old) throw new Error('a dart is missing')
      expect(dart.point).toEqual(old.point)
      const leg = (d: typeof dart, k: 0 | 1) => ({ x: d.mouth[k].x - d.point.x, y: d.mouth[k].y - d.point.y })
      const angle = (d: typeof dart) => Math.atan2(leg(d, 1).y, leg(d, 1).x) - Math.atan2(leg(d, 0).y, leg(d, 0).x)
      expect(angle(dart)).toBeCloseTo(angle(old), 9)
      const longer = ([0, 1] as const).map(
        (k) => Math.hypot(leg(dart, k).x, leg(dart, k).y) - Math.hypot(leg(old, k).x, leg(old, k).y),
      )
      expect(longer[0]).toBeCloseTo(longer[1] as number, 9)
      expect(Math.abs((longer[0] as number) - 8)).toBeLessThan(0.2)
      const parts = seam(now, 'back underarm seam').parts
      expect(parts[i]?.at(-1)?.p3.x).toBeCloseTo(dart.mouth[0].x, 9)
      expect(parts[i]?.at(-1)?.p3.y).toBeCloseTo(dart.mouth[0].y, 9)
      expect(parts[i + 1]?.[0]?.p0.x).toBeCloseTo(dart.mouth[1].x, 9)
      expect(parts[i + 1]?.[0]?.p0.y).toBeCloseTo(dart.mouth[1].y, 9)
    })
    const measured = shiftAt(
      seam(before, 'back underarm seam').parts[0] as never,
      140,
      seam(now, 'back underarm seam').parts[0] as never,
    )
    expect(Math.abs(measured - 8)).toBeLessThan(0.05)
  })

  it('commutes with a shift that does not overlap, within 0.01 mm', () => {
    for (const [, pattern] of patterns) {
      const back = seamLength(seamOf(sleeveOf(pattern), 'back cap'))
      const one = letOut(pattern, 9.525)
      const low = (p: Pattern): ShiftSeamOptions => ({
        piece: 'sleeve',
        seams: ['front cap'],
        stations: [{ seam: 'front cap', along: 30, amount: 4 }],
        anchors: [
          { seam: 'front cap', along: 4 },
          { seam: 'front cap', along: Math.min(60, seamLength(seamOf(sleeveOf(p), 'front cap'))) },
        ],
      })
      expect(back).toBeGreaterThan(100)
      const first = shifted(pattern, one)
      const carried = (o: ShiftSeamOptions, map: typeof first.map): ShiftSeamOptions => ({
        ...o,
        stations: o.stations.map((s) => ({
          ...s,
          along: (map.seam({ piece: 'sleeve', ...s })[0] as { along: number }).along,
        })),
        anchors: o.anchors.map((s) => ({
          ...s,
          along: (map.seam({ piece: 'sleeve', ...s })[0] as { along: number }).along,
        })),
      })
      const oneThenLow = shifted(first.pattern, carried(low(pattern), first.map)).pattern
      const second = shifted(pattern, low(pattern))
      const lowThenOne = shifted(second.pattern, carried(one, second.map)).pattern
      for (const id of CAP) {
        const [a, b] = [cubics(sleeveOf(oneThenLow), id), cubics(sleeveOf(lowThenOne), id)]
        expect(farthest(a, b)).toBeLessThan(0.01)
        expect(farthest(b, a)).toBeLessThan(0.01)
      }
    }
  })

  it('holds its promises at random places and amounts', () => {
    const pattern = fixturePattern()
    const sleeve = sleeveOf(pattern)
    const front = cubics(sleeve, 'front cap')
    const length = seamLength(seamOf(sleeve, 'front cap'))
    const arbitrary = fc.record({
      low: fc.double({ min: 5, max: 60, noNaN: true }),
      first: fc.double({ min: 25, max: 60, noNaN: true }),
      second: fc.double({ min: 25, max: 60, noNaN: true }),
      amount: fc.double({ min: -12, max: 12, noNaN: true }),
    })
    fc.assert(
      fc.property(arbitrary, ({ low, first, second, amount }) => {
        const at = low + first
        const result = shiftSeam(pattern, {
          piece: 'sleeve',
          seams: ['front cap'],
          stations: [{ seam: 'front cap', along: at, amount }],
          anchors: [
            { seam: 'front cap', along: low },
            { seam: 'front cap', along: Math.min(at + second, length) },
          ],
        })
        if (!result.ok) throw new Error(result.problems[0]?.code)
        const now = cubics(sleeveOf(result.value.pattern), 'front cap')
        if (Math.abs(amount) > 1e-6) expect(Math.abs(shiftAt(front, at, now) - amount)).toBeLessThan(0.02)
        expect(largestCorner(now)).toBeLessThan(2e-3)
        expect(outlineOf(sleeveOf(result.value.pattern)).gaps).toBe(0)
      }),
      { numRuns: 25 },
    )
  })

  it('says which amount would fold a tight curve over itself', () => {
    const curve = hobbySpline([
      { at: point(100, 0), direction: point(0, 1) },
      { at: point(88, 12) },
      { at: point(100, 24), direction: point(0, 1) },
      { at: point(100, 100) },
    ])
    const piece: Piece = {
      id: 'bodice front',
      name: 'test',
      side: 'pair',
      cut: 2,
      darts: [],
      notches: [],
      lines: [],
      landmarks: [],
      seams: [
        { id: 'waist', parts: [polyline([point(0, 0), point(100, 0)])], allowance: 25.4 },
        { id: 'armscye', parts: [curve], allowance: 25.4 },
        { id: 'shoulder', parts: [polyline([point(100, 100), point(0, 100)])], allowance: 25.4 },
        { id: 'center front', parts: [polyline([point(0, 100), point(0, 0)])], allowance: 0 },
      ],
    }
    const result = shiftSeam(
      { pieces: [piece], joins: [] },
      {
        piece: 'bodice front',
        seams: ['armscye'],
        stations: [
          { seam: 'armscye', along: 0, amount: 20 },
          { seam: 'armscye', along: 60, amount: 20 },
        ],
        anchors: [],
      },
    )
    expect(result.ok).toBe(false)
    expect(result.ok ? '' : result.problems[0]?.code).toBe('shift-folds-over')
    expect(result.ok ? '' : result.problems[0]?.hint).toMatch(/smaller amount/)
  })

  it('refuses a taper that would be a corner, and two amounts at one place', () => {
    const pattern = fixturePattern()
    const short = shiftSeam(pattern, {
      piece: 'sleeve',
      seams: ['front cap'],
      stations: [{ seam: 'front cap', along: 80, amount: 12 }],
      anchors: [{ seam: 'front cap', along: 70 }],
    })
    expect(short.ok ? '' : short.problems[0]?.code).toBe('taper-too-short')
    const twice = shiftSeam(pattern, {
      piece: 'sleeve',
      seams: ['front cap'],
      stations: [{ seam: 'front cap', along: 80, amount: 2 }],
      anchors: [{ seam: 'front cap', along: 80 }],
    })
    expect(twice.ok ? '' : twice.problems[0]?.code).toBe('two-amounts-at-one-place')
    expect(() =>
      shiftSeam(pattern, { piece: 'sleeve', seams: ['wrist', 'back cap'], stations: [], anchors: [] }),
    ).toThrow(RangeError)
  })
})
