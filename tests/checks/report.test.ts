import { describe, expect, test } from 'vitest'
import { bends } from '../../src/checks/cap-inflections.ts'
import { movement } from '../../src/checks/movement.ts'
import { presentMeasures } from '../../src/checks/present-measures.ts'
import { makeReport } from '../../src/checks/report.ts'
import type { MeasureRow } from '../../src/drafting/draft.ts'
import { IDENTITY } from '../../src/fitting/position-map.ts'
import { polyline } from '../../src/geometry/path.ts'
import { point } from '../../src/geometry/point.ts'
import { insideAngle } from '../../src/pattern/corners.ts'
import { DRAFT, SPLIT } from './fixture.ts'

const { pattern } = DRAFT

describe('the report', () => {
  const report = makeReport({
    performer: 'Ferry Pilot',
    production: 'The Tin Orchard',
    versions: [
      { label: 'draft', pattern, since: IDENTITY },
      { label: 'first fitting', pattern: SPLIT, since: IDENTITY },
    ],
    findings: [
      { code: 'b', severity: 'note', where: {}, actual: '', expected: '', hint: '' },
      { code: 'a', severity: 'error', where: {}, actual: '', expected: '', hint: '' },
    ],
    measures: DRAFT.measures,
    slip: [],
    files: ['pattern.json'],
    allowances: [],
  })

  test('has every field of report/1 and survives JSON', () => {
    const fields = [
      'allowances',
      'files',
      'findings',
      'joins',
      'measures',
      'movement',
      'performer',
      'production',
      'scyewright',
      'slip',
      'trued',
      'version',
    ]
    expect(Object.keys(report).sort()).toEqual(fields)
    expect(JSON.parse(JSON.stringify(report))).toEqual(report)
    expect(report.findings.map((f) => f.code)).toEqual(['a', 'b'])
    expect(report.version).toBe('first fitting')
  })

  test('gives angles in degrees and lengths in mm', () => {
    expect(report.measures.find((row) => row.name === 'shoulder slope')?.body).toBeCloseTo(23, 6)
    expect(report.measures.find((row) => row.name === 'bust girth')?.body).toBeCloseTo(37.5 * 25.4, 6)
  })

  test('tells the movement of each sleeve in each version', () => {
    expect(report.movement.map((row) => [row.version, row.side])).toEqual([
      ['draft', 'both'],
      ['first fitting', 'left'],
      ['first fitting', 'right'],
    ])
  })

  test('throws without a version: that is a mistake in a program', () => {
    expect(() =>
      makeReport({ performer: 'x', versions: [], findings: [], measures: [], slip: [], files: [], allowances: [] }),
    ).toThrow(RangeError)
  })
})

describe('movement', () => {
  // REFERENCES.md section 4, derived: on a girth of 350 mm, 25° is a cap of 52 mm, 45° one of 111 mm, 60° one of 193 mm.
  test.each([
    [52, 25],
    [111, 45],
    [193, 60],
  ])('a cap of %i mm on 350 mm hangs at %i°', (height, degrees) => {
    const [row] = movement([{ label: 'draft', pattern, since: IDENTITY }])
    if (!row) throw new Error('no sleeve')
    const stretched = {
      ...pattern,
      pieces: pattern.pieces.map((piece) =>
        piece.id !== 'sleeve'
          ? piece
          : {
              ...piece,
              seams: piece.seams.map((seam) => ({
                ...seam,
                parts: seam.parts.map((path) =>
                  path.map((c) => {
                    const move = (p: { x: number; y: number }) =>
                      point((p.x * 350) / row.bicepsWidth, (p.y * height) / row.capHeight)
                    return { p0: move(c.p0), p1: move(c.p1), p2: move(c.p2), p3: move(c.p3) }
                  }),
                ),
              })),
            },
      ),
    }
    const [now] = movement([{ label: 'draft', pattern: stretched, since: IDENTITY }])
    expect(now?.capHeight).toBeCloseTo(height, 6)
    expect(now?.bicepsWidth).toBeCloseTo(350, 6)
    expect(Math.abs((now?.neutralLift ?? 0) - degrees)).toBeLessThan(0.3)
    expect(now?.armscye).toBeCloseTo(row.armscye, 6)
  })
})

describe('measures of the present pattern', () => {
  test('are those of the draft while nothing has changed, also with left and right apart', () => {
    expect(presentMeasures(DRAFT.measures, pattern)).toEqual(DRAFT.measures)
    const apart = presentMeasures(DRAFT.measures, SPLIT)
    expect(apart.map((row) => [row.name, row.side])).toEqual(DRAFT.measures.map((row) => [row.name, 'both']))
    for (const [i, row] of apart.entries()) expect(row.drafted).toBeCloseTo(DRAFT.measures[i]?.drafted ?? Number.NaN, 5)
  })

  test('of uneven halves keep one row where the measure has no sides: a girth is the sum of its halves', () => {
    const uneven = {
      ...SPLIT,
      pieces: SPLIT.pieces.map((piece) =>
        piece.id !== 'bodice front'
          ? piece
          : {
              ...piece,
              landmarks: piece.landmarks.map((l) =>
                l.id === 'bust point left' && 'at' in l ? { ...l, at: point(l.at.x + 8, l.at.y) } : l,
              ),
            },
      ),
    }
    const widthIn = (rows: readonly MeasureRow[]) => rows.filter((row) => row.name === 'bust point width')
    const [before] = widthIn(DRAFT.measures)
    const rows = widthIn(presentMeasures(DRAFT.measures, uneven))
    expect(rows.map((row) => row.side)).toEqual(['both'])
    // One bust point 8 mm farther from the center.
    expect(rows[0]?.drafted).toBeCloseTo((before?.drafted ?? Number.NaN) + 8, 6)
  })

  test('tell the sides apart once they differ', () => {
    const wider = {
      ...SPLIT,
      pieces: SPLIT.pieces.map((piece) =>
        piece.id !== 'sleeve left'
          ? piece
          : {
              ...piece,
              lines: piece.lines.map((l) =>
                l.id === 'biceps line' ? { ...l, path: polyline([point(0, 0), point(400, 0)]) } : l,
              ),
            },
      ),
    }
    const rows = presentMeasures(DRAFT.measures, wider).filter((row) => row.name === 'upper arm girth')
    expect(rows.map((row) => row.side)).toEqual(['left', 'right'])
    expect(rows[0]?.drafted).toBeCloseTo(400, 6)
  })
})

describe('corners and bends', () => {
  test('inside angles of a square, and of a notch into it', () => {
    const at = (...points: [number, number][]) => polyline(points.map(([x, y]) => point(x, y)))
    expect(insideAngle(at([0, 0], [10, 0]), at([10, 0], [10, 10]))).toBeCloseTo(Math.PI / 2, 9)
    expect(insideAngle(at([0, 0], [10, 0]), at([10, 0], [10, -10]))).toBeCloseTo((3 * Math.PI) / 2, 9)
    expect(insideAngle(at([0, 0], [10, 0]), at([10, 0], [20, 0]))).toBeCloseTo(Math.PI, 9)
  })

  test('bends of a straight line, an arc and a wave', () => {
    const wave = { p0: point(0, 0), p1: point(10, 20), p2: point(20, -20), p3: point(30, 0) }
    const arc = { p0: point(0, 0), p1: point(10, 10), p2: point(20, 10), p3: point(30, 0) }
    expect(bends(polyline([point(0, 0), point(30, 0)]))).toEqual([])
    expect(bends([arc]).map(Math.sign)).toEqual([-1])
    expect(bends([wave]).map(Math.sign)).toEqual([-1, 1])
    // Half of a right-angled turn each way: the turns are angles.
    expect(bends(polyline([point(0, 0), point(10, 0), point(10, 10)]))[0]).toBeCloseTo(Math.PI / 2, 9)
  })
})
