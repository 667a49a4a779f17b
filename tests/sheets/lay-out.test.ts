import { describe, expect, test } from 'vitest'
import { pathLength } from '../../src/geometry/path-length.ts'
import type { Point } from '../../src/geometry/point.ts'
import { seamLength } from '../../src/pattern/seam.ts'
import { capEase } from '../../src/sheets/cap-ease.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { placedMarks, type Scene, type TextMark } from '../../src/sheets/scene.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { SIZES } from '../drafting/bodies.ts'
import { drafted, INFO, samplesOf, split } from './fixture.ts'

const pattern = drafted()
const scene = layOut(pattern, INFO)

/** Whether a point lies in the box of a text, baseline to capital height. */
function inText(p: Point, mark: TextMark): boolean {
  const c = Math.cos(mark.angle)
  const s = Math.sin(mark.angle)
  const x = (p.x - mark.at.x) * c + (p.y - mark.at.y) * s
  const y = (p.y - mark.at.y) * c - (p.x - mark.at.x) * s
  return Math.abs(x) < textWidth(mark.text, mark.size) / 2 && y > -0.2 * mark.size && y < 0.73 * mark.size
}

function textGrid(mark: TextMark): Point[] {
  const half = textWidth(mark.text, mark.size) / 2
  const c = Math.cos(mark.angle)
  const s = Math.sin(mark.angle)
  const points: Point[] = []
  for (let x = -half; x <= half; x += 0.5) {
    for (let y = -0.2 * mark.size; y <= 0.73 * mark.size; y += 0.5) {
      points.push({ x: mark.at.x + x * c - y * s, y: mark.at.y + x * s + y * c })
    }
  }
  return points
}

function clashes(sheet: Scene): string[] {
  const found: string[] = []
  for (const placed of sheet.pieces) {
    const marks = placedMarks(placed)
    const texts = marks.filter((m) => m.type === 'text')
    const lines = marks.filter((m) => m.type !== 'text').map((m) => ({ id: m.id, points: samplesOf(m, 400) }))
    for (const text of texts) {
      for (const line of lines) if (line.points.some((p) => inText(p, text))) found.push(`${text.text} on ${line.id}`)
      for (const other of texts) {
        if (other !== text && textGrid(other).some((p) => inText(p, text))) found.push(`${text.text} on ${other.text}`)
      }
    }
  }
  return found
}

describe('a sheet', () => {
  test('has the pieces in order, inside its edges, apart from each other', () => {
    expect(scene.pieces.map((p) => p.drawing.id)).toEqual(['bodice back', 'bodice front', 'sleeve'])
    const points = [...scene.pieces.flatMap(placedMarks), ...scene.sheet].flatMap((m) => samplesOf(m))
    for (const p of points) {
      expect(p.x).toBeGreaterThan(10)
      expect(p.x).toBeLessThan(scene.width - 10)
      expect(p.y).toBeGreaterThan(10)
      expect(p.y).toBeLessThan(scene.height - 10)
    }
  })

  test.each(SIZES.map((body, k) => [k, body] as const).filter(([k]) => k % 2 === 0))(
    'body %i: no text on a line or on other text',
    (_, body) => {
      expect(clashes(layOut(drafted(body), INFO))).toEqual([])
    },
  )

  test('says what a cutter must know on every piece', () => {
    const words = (id: string) =>
      scene.pieces
        .find((p) => p.drawing.id === id)
        ?.drawing.marks.filter((m) => m.type === 'text')
        .map((m) => m.text) ?? []
    for (const piece of pattern.pieces) {
      const said = words(piece.id)
      expect(said).toContain(piece.name.toUpperCase())
      expect(said).toContain('The Tin Orchard · Lamplighter')
      expect(said).toContain('version: first fitting · 2026-10-09')
      expect(said).toContain('fittings applied: first fitting')
      expect(said).toContain('allowance included: 1″')
      expect(said).toContain('grain')
      for (const notch of piece.notches) expect(said).toContain(notch.id)
      for (const dart of piece.darts) expect(said).toContain(dart.id)
    }
    expect(words('sleeve')).toContain('PAIR · cut 2, mirrored')
    expect(words('sleeve')).toContain('this side up: the RIGHT one')
    expect(words('sleeve')).toContain('cap line, two thirds up')
    expect(words('bodice front')).toContain('ON THE FOLD · cut 1')
    expect(words('bodice front')).toContain('center front: place on the fold')
  })

  test('has LEFT and RIGHT apart once the sides differ', () => {
    const apart = layOut(split(pattern), { ...INFO, pieces: ['sleeve'] })
    expect(apart.pieces.map((p) => p.drawing.id)).toEqual(['sleeve left', 'sleeve right'])
    const said = apart.pieces.map((p) => p.drawing.marks.flatMap((m) => (m.type === 'text' ? [m.text] : [])))
    expect(said[0]).toContain('LEFT · cut 1')
    expect(said[1]).toContain('RIGHT · cut 1')
  })

  test('marks one notch in front and two behind, across the stitching line and at the cut edge', () => {
    const sleeve = scene.pieces.find((p) => p.drawing.id === 'sleeve')?.drawing.marks ?? []
    const notches = sleeve.filter((m) => m.kind === 'notch').map((m) => m.id)
    expect(notches).toContain('front notch')
    expect(notches).toContain('back notch 1')
    expect(notches).toContain('back notch 2')
    expect(sleeve.filter((m) => m.type === 'stroke' && m.kind === 'notch' && m.paths.length !== 2)).toEqual([])
  })

  test('never draws a cutting line along the fold', () => {
    const front = scene.pieces.find((p) => p.drawing.id === 'bodice front')?.drawing.marks ?? []
    const onCenter = front
      .filter((m) => m.kind === 'cutting line')
      .flatMap((m) => samplesOf(m))
      .filter((p) => Math.abs(p.x) < 0.2)
    // Only where it meets the fold.
    const heights = onCenter.map((p) => p.y)
    expect(heights.filter((y) => y > Math.min(...heights) + 1 && y < Math.max(...heights) - 1)).toEqual([])
    const fold = front.filter((m) => m.kind === 'fold line').flatMap((m) => samplesOf(m))
    expect(Math.max(...fold.map((p) => p.y)) - Math.min(...fold.map((p) => p.y))).toBeGreaterThan(300)
  })

  test('refuses a piece that is not there', () => {
    expect(() => layOut(pattern, { ...INFO, pieces: ['gusset'] })).toThrow(/gusset.*bodice front/)
  })
})

describe('cap ease on the label', () => {
  test('is cap less armscye, all of it above the notches on a new draft', () => {
    for (const ease of capEase(pattern, 'sleeve')) {
      const half = ease.join.startsWith('front') ? 'front' : 'back'
      const length = (piece: string, seam: string) => {
        const found = pattern.pieces.find((p) => p.id === piece)?.seams.find((s) => s.id === seam)
        if (!found) throw new Error(`${piece} ${seam}`)
        expect(seamLength(found)).toBeCloseTo(
          found.parts.reduce((sum, part) => sum + pathLength(part), 0),
          9,
        )
        return seamLength(found)
      }
      expect(ease.total).toBeCloseTo(length('sleeve', `${half} cap`) - length(`bodice ${half}`, 'armscye'), 6)
      expect(ease.aboveNotch).toBeCloseTo(ease.total, 3)
    }
    expect(capEase(pattern, 'sleeve')).toHaveLength(2)
    expect(capEase(pattern, 'bodice back')).toEqual([])
  })
})
