import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { complaints, incongruence, pointOnSide, type RawPattern, sideLength } from './independent-reader.ts'
import { lamplighter, scye } from './scye.ts'

/** How far from the underarm the cap is a copy of the armscye, mm. */
const COPIED = 38

let folder: string
let drafted: RawPattern
let fitted: RawPattern

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'scye-contract-'))
  drafted = written('drafted', '--until', 'none')
  fitted = written('fitted')
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

function written(name: string, ...args: string[]): RawPattern {
  const { status, stderr } = scye(['draft', lamplighter, '--as', 'json', '-o', join(folder, name), ...args])
  if (status !== 0) throw new Error(stderr)
  return JSON.parse(readFileSync(join(folder, name, 'pattern.json'), 'utf8')) as RawPattern
}

function joinNamed(pattern: RawPattern, id: string) {
  const found = pattern.joins.find((j) => j.id === id)
  if (!found) throw new Error(`no join ${id}`)
  return found
}

function easeOf(pattern: RawPattern, id: string): number {
  const { a, b } = joinNamed(pattern, id)
  return sideLength(pattern, a) - sideLength(pattern, b)
}

function pieceOf(pattern: RawPattern, id: string) {
  const piece = pattern.pieces.find((p) => p.id === id)
  if (!piece) throw new Error(`no piece ${id}`)
  return piece
}

describe('the written pattern', () => {
  test('before any fitting can be cut and sewn', () => {
    expect(complaints(drafted)).toEqual([])
  })

  test('after the fitting can be cut and sewn', () => {
    expect(complaints(fitted)).toEqual([])
  })

  test('holds front, back and sleeve with every join', () => {
    expect(drafted.pieces.map((p) => p.id).sort()).toEqual(['bodice back', 'bodice front', 'sleeve'])
    expect(drafted.joins.map((j) => j.id).sort()).toEqual([
      'back cap',
      'front cap',
      'shoulder',
      'side seam',
      'underarm seam',
    ])
  })

  test.each(['front cap', 'back cap'])('%s is its armscye and the asked ease, to 0.01 mm', (id) => {
    const asked = joinNamed(drafted, id).ease.target
    expect(asked).toBeGreaterThan(5)
    expect(Math.abs(easeOf(drafted, id) - asked)).toBeLessThan(0.01)
  })

  test.each(['front cap', 'back cap'])('the first 38 mm of the %s are congruent with the armscye', (id) => {
    const { a, b } = joinNamed(drafted, id)
    const steps = Array.from({ length: 77 }, (_, i) => (i * COPIED) / 76)
    const cap = steps.map((s) => pointOnSide(drafted, a, s))
    const armscye = steps.map((s) => pointOnSide(drafted, b, s))
    expect(incongruence(cap, armscye)).toBeLessThan(0.01)
    // The copy ends there: a little further on the two curves part.
    const further = [...steps, ...[60, 80, 100]]
    const beyond = (side: typeof a) => further.map((s) => pointOnSide(drafted, side, s))
    expect(incongruence(beyond(a), beyond(b))).toBeGreaterThan(1)
  })

  test('the fitting has changed the sleeve and nothing else', () => {
    expect(pieceOf(fitted, 'sleeve')).not.toEqual(pieceOf(drafted, 'sleeve'))
    expect(pieceOf(fitted, 'bodice front')).toEqual(pieceOf(drafted, 'bodice front'))
    expect(pieceOf(fitted, 'bodice back')).toEqual(pieceOf(drafted, 'bodice back'))
  })
})

describe('the independent reader', () => {
  const broken = (change: (pattern: RawPattern) => void) => {
    const copy = structuredClone(drafted)
    change(copy)
    return complaints(copy).join('\n')
  }

  test('sees a cap that is shorter than its armscye', () => {
    expect(broken((p) => (joinNamed(p, 'front cap').ease.min = 25))).toMatch(/front cap has ease|front cap declares/)
  })

  test('sees a notch beside its seam', () => {
    expect(
      broken((p) => {
        for (const notch of pieceOf(p, 'sleeve').notches) notch.at = [notch.at[0] + 0.1, notch.at[1] + 0.1]
      }),
    ).toContain('mm off front cap')
  })

  test('sees a dart with unequal legs', () => {
    expect(
      broken((p) => {
        const dart = pieceOf(p, 'sleeve').darts[0]
        if (dart) dart.point = [dart.point[0], dart.point[1] + 2]
      }),
    ).toContain('has legs')
  })

  test('sees an open, a turned and a crossing outline', () => {
    expect(broken((p) => pieceOf(p, 'sleeve').seams.splice(0, 1))).toMatch(/ends .* mm from/)
    expect(
      broken((p) => {
        for (const seam of pieceOf(p, 'bodice back').seams) {
          seam.parts = seam.parts.map((path) =>
            path.replace(/(-?[\d.]+) (-?[\d.]+)/g, (_, x, y) => `${-Number(x)} ${y}`),
          )
        }
      }),
    ).toContain('does not run anticlockwise')
    expect(
      broken((p) => {
        const neckline = pieceOf(p, 'bodice front').seams.find((s) => s.id === 'neckline')
        if (neckline) neckline.parts = neckline.parts.map((path) => path.replace(/ C (\S+) (\S+)/, ' C $1 -2000'))
      }),
    ).toContain('crosses itself')
  })

  test('sees a cutting line inside the stitching line', () => {
    expect(
      broken((p) => {
        const front = pieceOf(p, 'bodice front')
        front.cutLine = pieceOf(p, 'sleeve').cutLine
      }),
    ).toContain('cut line')
  })

  test('sees a cap that changes direction twice', () => {
    expect(
      broken((p) => {
        const cap = pieceOf(p, 'sleeve').seams.find((s) => s.id === 'front cap')
        if (!cap) return
        // The armscye's curve in place of the cap's bends once; hollow, round, hollow bends three times.
        cap.parts = ['M 0 0 C 10 0 20 10 30 10 C 40 10 50 0 60 0 C 70 0 80 10 90 10']
      }),
    ).toMatch(/front cap has \d inflections/)
  })
})
