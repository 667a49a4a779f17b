import { describe, expect, test } from 'vitest'
import { rounded } from '../../src/base/rounded.ts'
import { mirrorX } from '../../src/geometry/transform.ts'
import { seamLength } from '../../src/pattern/seam.ts'
import { pathText } from '../../src/writers/path-text.ts'
import { type PatternJson, patternJson, patternJsonText } from '../../src/writers/pattern-json.ts'
import { drafted } from '../sheets/fixture.ts'

const pattern = drafted()
const json = patternJson(pattern, { performer: 'Lamplighter', production: 'The Tin Orchard', version: 'draft' })
const text = patternJsonText(json)

type Pair = [number, number]

/** Reads M, L, C, Z as anybody's script would: end points, and the length by fine chords. */
function read(path: string): { start: Pair; end: Pair; length: number; closed: boolean; commands: string } {
  const commands = path.replace(/[^A-Za-z]/g, '')
  const numbers = (path.match(/-?[\d.]+/g) ?? []).map(Number)
  let at: Pair = [0, 0]
  let start: Pair = [0, 0]
  let length = 0
  let k = 0
  const next = (): Pair => [numbers[k++] as number, numbers[k++] as number]
  for (const command of commands) {
    if (command === 'M') start = at = next()
    else if (command === 'L') {
      const to = next()
      length += Math.hypot(to[0] - at[0], to[1] - at[1])
      at = to
    } else if (command === 'C') {
      const [b, c, d] = [next(), next(), next()]
      let last = at
      for (let i = 1; i <= 4000; i++) {
        const t = i / 4000
        const u = 1 - t
        const p = [0, 1].map(
          (axis) =>
            u ** 3 * (at[axis] ?? 0) +
            3 * u * u * t * (b[axis] ?? 0) +
            3 * u * t * t * (c[axis] ?? 0) +
            t ** 3 * (d[axis] ?? 0),
        ) as Pair
        length += Math.hypot(p[0] - last[0], p[1] - last[1])
        last = p
      }
      at = d
    }
  }
  expect(k).toBe(numbers.length)
  return { start, end: at, length, closed: commands.endsWith('Z'), commands }
}

describe('pattern.json', () => {
  test('follows the contract', () => {
    const parsed = JSON.parse(text) as PatternJson
    expect(parsed).toEqual(json)
    expect(parsed).toMatchObject({
      scyewright: 'pattern/1',
      performer: 'Lamplighter',
      production: 'The Tin Orchard',
      version: 'draft',
      unit: 'mm',
      up: 'y',
    })
    expect(Object.keys(parsed.pieces[0] ?? {})).toEqual(
      expect.arrayContaining(['id', 'name', 'side', 'cut', 'seams', 'cutLine', 'darts', 'notches', 'lines']),
    )
    expect(parsed.joins).toHaveLength(pattern.joins.length)
  })

  test('has seams that touch end to end and lengths to 0.01 mm', () => {
    for (const [k, piece] of json.pieces.entries()) {
      const source = pattern.pieces[k]
      piece.seams.forEach((seam, n) => {
        const parts = seam.parts.map(read)
        const following = read(piece.seams[(n + 1) % piece.seams.length]?.parts[0] ?? '')
        const end = parts.at(-1)?.end ?? [0, 0]
        expect(Math.hypot(end[0] - following.start[0], end[1] - following.start[1])).toBeLessThan(2e-6)
        const length = parts.reduce((sum, part) => sum + part.length, 0)
        expect(Math.abs(length - seamLength(source?.seams[n] as never))).toBeLessThan(0.001)
        for (const part of parts) expect(part.commands).toMatch(/^M[LC]+$/)
      })
      const cut = read(piece.cutLine)
      expect(cut.closed).toBe(true)
      expect(cut.commands).toMatch(/^M[LC]+Z$/)
    }
  })

  test('writes straight lines as L, darts and notches as points', () => {
    const back = json.pieces.find((p) => p.id === 'bodice back')
    expect(read(back?.seams.find((s) => s.id === 'shoulder')?.parts[0] ?? '').commands).toBe('ML')
    const notch = json.pieces.find((p) => p.id === 'sleeve')?.notches.find((n) => n.id === 'back notch')
    expect(notch?.marks).toBe(2)
    expect(notch?.points[0]).toEqual(notch?.at)
    const [a, b] = notch?.points ?? []
    const apart = Math.hypot((a?.[0] ?? 0) - (b?.[0] ?? 0), (a?.[1] ?? 0) - (b?.[1] ?? 0))
    expect(apart).toBeGreaterThan(11.8)
    expect(apart).toBeLessThanOrEqual(12)
    const dart = back?.darts[0]
    expect(dart?.mouth).toHaveLength(2)
    expect(dart?.point).toHaveLength(2)
  })

  test('has no exponents, no negative zero, and the same bytes twice', () => {
    expect(text).not.toMatch(/\de[+-]?\d/i)
    expect(text).not.toMatch(/-0[^.\d]/)
    expect(
      patternJsonText(
        patternJson(drafted(), { performer: 'Lamplighter', production: 'The Tin Orchard', version: 'draft' }),
      ),
    ).toBe(text)
  })
})

describe('numbers and paths', () => {
  test('round in one place', () => {
    expect(Object.is(rounded(-1e-9, 6), 0)).toBe(true)
    expect(`${rounded(1e-6, 6)}`).toBe('0.000001')
    expect(() => rounded(Number.NaN, 4)).toThrow(RangeError)
  })

  test('a closing straight line is left to Z, a closing curve is not', () => {
    const square = { p0: { x: 0, y: 0 }, p1: { x: 1, y: 0 }, p2: { x: 2, y: 0 }, p3: { x: 3, y: 0 } }
    const bow = { p0: { x: 3, y: 0 }, p1: { x: 3, y: 3 }, p2: { x: 0, y: 3 }, p3: { x: 0, y: 0 } }
    expect(pathText([bow, square], { decimals: 2, closed: true })).toBe('M 3 0 C 3 3 0 3 0 0 Z')
    expect(pathText([square, bow], { decimals: 2, closed: true, place: mirrorX() })).toBe(
      'M 0 0 L -3 0 C -3 3 0 3 0 0 Z',
    )
  })
})
