import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { parseLength } from '../../src/base/lengths.ts'
import { makePattern } from '../../src/pipeline.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles } from '../../src/sheets/lay-out-tiles.ts'
import { parsePaper } from '../../src/sheets/papers.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { type RawPattern, sideLength } from '../independent-reader.ts'

// A class drafts it, tapes it up and walks it against an armscye.
const file = readFileSync(fileURLToPath(new URL('../../examples/test-sleeve.yaml', import.meta.url)), 'utf8')
const made = makePattern(file, 'test-sleeve.yaml')
if (!made.ok) throw new Error(JSON.stringify(made.problems))
const { pattern } = made.value
const scene = layOut(pattern, { performer: 'Test Sleeve', version: 'draft', units: 'in', pieces: ['sleeve'] })
const said = scene.pieces.flatMap((p) => p.drawing.marks.flatMap((m) => (m.type === 'text' ? [m.text] : [])))

test('the file holds the five required measures and the allowance, nothing else', () => {
  const { performer, production, units, body, 'mock-up': mockUp, ...others } = parse(file)
  expect([performer, production, units]).toEqual(['Test Sleeve', 'The Tin Orchard', 'in'])
  expect(Object.keys(body)).toEqual([
    'bust girth',
    'waist girth',
    'back waist length',
    'upper arm girth',
    'outer arm length',
  ])
  expect(body['upper arm girth']).toBe(11)
  expect(mockUp).toEqual({ allowance: '1/2' })
  expect(others).toEqual({})
})

test('the sleeve alone, with 1/2 in on every seam', () => {
  expect(scene.pieces.map((p) => p.drawing.id)).toEqual(['sleeve'])
  expect(made.value.report.findings.filter((f) => f.severity !== 'note')).toEqual([])
  const sleeve = pattern.pieces.find((p) => p.id === 'sleeve')
  for (const seam of sleeve?.seams ?? []) expect(seam.allowance).toBeCloseTo(12.7, 9)
  expect(said).toContain('allowance included: ½″')
})

test.each(['letter', 'a4'])('takes at most six sheets of %s', (name) => {
  const paper = parsePaper(name)
  if (!paper.ok) throw new Error(name)
  expect(layOutTiles(scene, paper.value).pages.length).toBeLessThanOrEqual(6)
})

/** A length as it stands on the sheet, read by the reader of performer files. */
function read(text: string | undefined): number {
  const length = parseLength(text ?? '', 'in')
  if (!length.ok) throw new Error(`no length: ${text}`)
  return length.value
}

describe('the walk on the piece', () => {
  const json = patternJson(pattern, { performer: '', version: '' }) as unknown as RawPattern
  const along = (piece: string, seam: string, notch: string) => {
    const found = json.pieces.find((p) => p.id === piece)?.notches.find((n) => n.id === notch && n.seam === seam)
    return (found as { along?: number } | undefined)?.along ?? Number.NaN
  }

  test.each(['front', 'back'])('%s: each stretch of cap and armscye to 1/32 in, and the ease', (half) => {
    const join = json.joins.find((j) => j.id === `${half} cap`)
    if (!join) throw new Error('no join')
    // From the underarm: both seams run towards it or away from it.
    const underarmTo = (part: (typeof join.a)[number] | undefined, length: number) => {
      const place = along(part?.piece ?? '', part?.seam ?? '', `${half} notch`)
      return part?.reversed ? length - place : place
    }
    const [cap, armscye] = [sideLength(json, join.a), sideLength(json, join.b)]
    const [a, b] = [underarmTo(join.a[0], cap), underarmTo(join.b[0], armscye)]
    const row = (span: string) => new RegExp(`^${half}, ${span}: (.+) on (.+)$`)
    const found = (span: string) => said.flatMap((text) => row(span).exec(text)?.slice(1) ?? []).map(read)
    const asked: [string, number, number][] = [
      ['underarm to notch', a, b],
      ['notch to shoulder', cap - a, armscye - b],
    ]
    for (const [span, onCap, onArmscye] of asked) {
      const [first = Number.NaN, second = Number.NaN] = found(span)
      expect(Math.abs(first - onCap)).toBeLessThanOrEqual(25.4 / 32 + 1e-6)
      expect(Math.abs(second - onArmscye)).toBeLessThanOrEqual(25.4 / 32 + 1e-6)
    }
    const ease = said.find((text) => text.startsWith('front ') && text.includes('(')) ?? ''
    const mm = Number(new RegExp(`${half} [^(]*\\(([\\d.]+) mm\\)`).exec(ease)?.[1])
    expect(Math.abs(mm - (cap - a - armscye + b))).toBeLessThanOrEqual(0.0501)
    expect(mm).toBeGreaterThan(5)
  })
})
