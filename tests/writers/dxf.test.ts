import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { makePattern } from '../../src/pipeline.ts'
import { writeDxf } from '../../src/writers/dxf.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { SIZES } from '../drafting/bodies.ts'
import { chainOf, distanceWithin, signedArea } from '../reader-chains.ts'
import { curvesOf, flattened, gap, lengthOf, type Pt } from '../reader-curves.ts'
import { lamplighter, temporaryFolder } from '../scye.ts'
import { drafted, INFO } from '../sheets/fixture.ts'
import { type DxfFile, type Entity, pointOf, readDxf, textsOf } from './dxf-reader.ts'

const made = makePattern(readFileSync(lamplighter, 'utf8'), 'lamplighter.yaml')
if (!made.ok) throw new Error('the example cannot be made')
const fitted = made.value.pattern
const text = writeDxf(fitted, INFO)
const dxf = readDxf(text)

/** The pattern with the sleeve's sides apart, the left one let out: pieces that are no mirror images. */
function apart(): Pattern {
  const file = readFileSync(lamplighter, 'utf8').replaceAll('side: both', 'side: left')
  const result = makePattern(file, 'lamplighter.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value.pattern
}

function only(entities: readonly Entity[] | undefined, type: string, layer: string): Entity[] {
  return (entities ?? []).filter((e) => e.type === type && e.layer === layer)
}

function boundary(file: DxfFile, block: string): readonly Pt[] {
  const found = only(file.blocks.get(block), 'POLYLINE', '1')
  expect(found.map((e) => e.values.get(70))).toEqual(['1'])
  return found[0]?.points ?? []
}

/** The cutting lines that a file must have: pairs twice, one mirrored; what is on the fold opened; by block. */
function wanted(pattern: Pattern): Map<string, Pt[]> {
  const cuts = new Map<string, Pt[]>()
  for (const piece of patternJson(pattern, { performer: '', version: '' }).pieces) {
    const points = flattened(curvesOf(piece.cutLine), 0.001)
    const mirrored = points.map(([x, y]): Pt => [-x, y]).reverse()
    const name = piece.id.toUpperCase().replaceAll(' ', '-')
    const [drawn, other] = piece.id === 'bodice front' ? ['LEFT', 'RIGHT'] : ['RIGHT', 'LEFT']
    if (piece.side === 'pair') {
      cuts.set(`${name}-${drawn}`, points)
      cuts.set(`${name}-${other}`, mirrored)
    } else if (piece.side === 'fold')
      cuts.set(
        name,
        [...points, ...mirrored].filter(([x]) => Math.abs(x) > 1e-6),
      )
    else cuts.set(name, points)
  }
  return cuts
}

function areaOf(points: readonly Pt[]): number {
  return signedArea(chainOf(points, true))
}

describe('the file', () => {
  test('is in millimetres, says so, and has a line to measure', () => {
    expect(dxf.header.get('$ACADVER')).toBe('AC1009')
    expect(dxf.header.get('$INSUNITS')).toBe('4')
    const lines = dxf.entities.filter((e) => e.type === 'LINE')
    expect(lines.map((e) => gap(pointOf(e), pointOf(e, 1)))).toEqual([100])
    expect(textsOf(dxf.entities)).toEqual(expect.arrayContaining(['Reference line: 100 mm', 'UNITS: METRIC']))
  })

  test('has a block and an insert for each piece of cloth, side by side', () => {
    const names = ['BODICE-BACK-LEFT', 'BODICE-BACK-RIGHT', 'BODICE-FRONT', 'SLEEVE-LEFT', 'SLEEVE-RIGHT']
    expect(Array.from(dxf.blocks.keys())).toEqual(names)
    const inserts = dxf.entities.filter((e) => e.type === 'INSERT')
    expect(inserts.map((e) => e.values.get(2))).toEqual(names)
    let right = 0
    for (const insert of inserts) {
      const xs = boundary(dxf, insert.values.get(2) ?? '').map(([x]) => x + pointOf(insert)[0])
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(right)
      right = Math.max(...xs) + 10
    }
  })

  test('has the layers of ASTM D6673 and no other', () => {
    expect(dxf.layers).toEqual(expect.arrayContaining(['1', '2', '3', '4', '6', '7', '8', '14', '15']))
    for (const [name, entities] of dxf.blocks) {
      const used = new Set(entities.map((e) => e.layer))
      for (const layer of ['1', '2', '3', '4', '7', '8', '14', '15']) expect(used, name).toContain(layer)
      for (const layer of used) expect(dxf.layers).toContain(layer)
      expect(used.has('6'), name).toBe(name === 'BODICE-FRONT')
    }
  })

  test('is ASCII in pairs of lines, without exponents, the same twice', () => {
    expect(writeDxf(fitted, INFO)).toBe(text)
    expect(text).toMatch(/^[\r\n -~]*$/)
    expect(text).not.toMatch(/^-?[\d.]+e[+-]?\d+/im)
    expect(text).not.toMatch(/NaN|Infinity|^-0\.0$/m)
  })

  test('keeps letters that are not ASCII, and no name can break it', () => {
    const odd = writeDxf(fitted, { ...INFO, performer: 'É ½″ ^ a\r\n  0\r\nEOF', pieces: ['sleeve'] })
    const said = textsOf(Array.from(readDxf(odd).blocks.values()).flat())
    expect(said).toContain('Size: \\U+00C9 1/2 in ^  a 0 EOF')
    expect(Array.from(readDxf(odd).blocks.keys())).toEqual(['SLEEVE-LEFT', 'SLEEVE-RIGHT'])
  })

  test('refuses a piece that is not there', () => {
    expect(() => writeDxf(fitted, { ...INFO, pieces: ['gusset'] })).toThrow(/gusset/)
  })
})

const patterns: [string, Pattern][] = [
  ['the fitted example', fitted],
  ['the example with its left sleeve fitted alone', apart()],
  ...SIZES.map((body, k): [string, Pattern] => [`size ${k}`, drafted(body)]),
]

describe.each(patterns)('%s', (_name, pattern) => {
  const file = readDxf(writeDxf(pattern, INFO))
  const cuts = Array.from(wanted(pattern))

  test('has every piece, left and right', () => {
    expect(Array.from(file.blocks.keys()).sort()).toEqual(cuts.map(([name]) => name).sort())
  })

  test.each(cuts)('%s is the cutting line: area, and within 0.05 mm', (name, cut) => {
    const points = boundary(file, name)
    expect(Math.abs(areaOf(points) / areaOf(cut) - 1)).toBeLessThan(2e-4)
    const [written, asked] = [chainOf(points, true), chainOf(cut, true)]
    // What is opened has a cutting line of its own, made within CURVE_TOLERANCE: 0.02 mm between two such lines.
    const own = name === 'BODICE-FRONT' ? 0.02 : 0
    for (const [x, y] of points) expect(distanceWithin(asked, x, y, 1)).toBeLessThan(own + 0.002)
    for (const [x, y] of cut) expect(distanceWithin(written, x, y, 1)).toBeLessThan(own + 0.051)
    for (const [k, p] of points.entries()) {
      expect(gap(p, points[(k + 1) % points.length] as Pt)).toBeGreaterThan(0.005)
    }
  })
})

describe.each(Array.from(dxf.blocks))('block %s', (name, entities) => {
  const points = boundary(dxf, name)
  const chain = chainOf(points, true)
  const json = patternJson(fitted, { performer: '', version: '' }).pieces.find((p) => p.id === pieceOf(name))
  const twice = json?.side === 'fold' ? 2 : 1

  test('has each vertex marked once, as a corner or on a curve', () => {
    const key = (p: Pt) => p.join(' ')
    const turns = only(entities, 'POINT', '2').map((e) => key(pointOf(e)))
    const curves = only(entities, 'POINT', '3').map((e) => key(pointOf(e)))
    expect([...turns, ...curves].sort()).toEqual(points.map(key).sort())
    const sharp = points.filter((p, k) => {
      const [a, b] = [points.at(k - 1) as Pt, points[(k + 1) % points.length] as Pt]
      const turn = Math.atan2(b[1] - p[1], b[0] - p[0]) - Math.atan2(p[1] - a[1], p[0] - a[0])
      return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > Math.PI / 6
    })
    for (const p of sharp) expect(turns).toContain(key(p))
    expect(turns.length).toBeLessThan(points.length / 2)
  })

  test('has its notches on the boundary, cut inward', () => {
    const notches = only(entities, 'POINT', '4')
    const marks = json?.notches.filter((n) => n.seam !== 'center front').reduce((sum, n) => sum + n.marks, 0) ?? 0
    expect(notches).toHaveLength(marks * twice)
    for (const notch of notches) {
      const [x, y] = pointOf(notch)
      expect(distanceWithin(chain, x, y, 1)).toBeLessThan(1e-3)
      const angle = (Number(notch.values.get(50)) * Math.PI) / 180
      const inside = chainOf([...points], true)
      expect(distanceWithin(inside, x + 5 * Math.cos(angle), y + 5 * Math.sin(angle), 9)).toBeGreaterThan(3)
    }
  })

  test('has its sew line as long as the seams, and a grain line', () => {
    const length = (list: readonly Pt[]) => list.slice(1).reduce((sum, p, k) => sum + gap(p, list[k] as Pt), 0)
    const sewn = only(entities, 'POLYLINE', '14').reduce((sum, e) => sum + length(e.points), 0)
    const seams = json?.seams.filter((s) => !(json.side === 'fold' && s.allowance === 0)) ?? []
    const asked = seams.flatMap((s) => s.parts).reduce((sum, part) => sum + lengthOf(curvesOf(part)), 0)
    expect(sewn / (asked * twice)).toBeCloseTo(1, 4)
    expect(only(entities, 'LINE', '7')).toHaveLength(1)
  })

  test('says what it is', () => {
    const said = textsOf(entities)
    expect(said).toContain(`Piece Name: ${name.toLowerCase().replaceAll('-', ' ')}`)
    expect(said).toContain('Size: Lamplighter')
    expect(said).toContain('Quantity: 1')
    expect(said).toContain('Annotation: fitted: first fitting')
    expect(said).toContain('The Tin Orchard - Lamplighter')
  })
})

function pieceOf(block: string): string {
  return block
    .replace(/-(LEFT|RIGHT)$/, '')
    .replaceAll('-', ' ')
    .toLowerCase()
}

test('the front is opened along its center, which is the mirror line', () => {
  const mirror = only(dxf.blocks.get('BODICE-FRONT'), 'LINE', '6')
  expect(mirror).toHaveLength(1)
  const ends = mirror.flatMap((e) => [pointOf(e), pointOf(e, 1)])
  for (const [x] of ends) expect(x).toBe(0)
  const chain = chainOf(boundary(dxf, 'BODICE-FRONT'), true)
  for (const [x, y] of boundary(dxf, 'BODICE-FRONT')) expect(distanceWithin(chain, -x, y, 1)).toBeLessThan(0.05)
})

const PYTHON = '/usr/bin/python3'
const ezdxfIsHere = spawnSync(PYTHON, ['-c', 'import ezdxf']).status === 0

const READ = `
import json, sys, ezdxf
from ezdxf.math import area
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
blocks = {b.name: [area(p.points()) for p in b.query('POLYLINE[layer=="1"]')] for b in doc.blocks if not b.name.startswith('*')}
inserted = {i.dxf.name: max(p.dxf.location.x for p in i.virtual_entities() if p.dxftype() == 'POINT') for i in doc.modelspace().query('INSERT')}
texts = [ezdxf.decode_dxf_unicode(t.plain_text()) for b in doc.blocks for t in b.query('TEXT')]
print(json.dumps({'units': doc.units, 'errors': [e.message for e in audit.errors], 'fixes': [e.message for e in audit.fixes],
  'blocks': blocks, 'inserted': inserted, 'layers': [l.dxf.name for l in doc.layers], 'texts': texts}))
`

describe.skipIf(!ezdxfIsHere)('ezdxf (skipped where /usr/bin/python3 has none)', () => {
  test('reads it without a complaint: units, layers, blocks, areas, words', () => {
    const path = join(temporaryFolder(), 'pattern.dxf')
    writeFileSync(path, writeDxf(fitted, { ...INFO, performer: 'É' }))
    const { stdout, stderr } = spawnSync(PYTHON, ['-c', READ, path], { encoding: 'utf8' })
    expect(stderr).toBe('')
    const read = JSON.parse(stdout)
    expect(read.units).toBe(4)
    expect(read.errors).toEqual([])
    // ezdxf 0.18 says so of every polyline in a block of a release 12 file, its own included.
    expect(
      read.fixes.filter((fix: string) => !/^Deleted SEQEND\(#\w+\) entity with invalid owner handle/.test(fix)),
    ).toEqual([])
    for (const [name, cut] of wanted(fitted))
      expect(read.blocks[name][0] / Math.abs(areaOf(cut)), name).toBeCloseTo(1, 3)
    expect(Object.keys(read.inserted)).toHaveLength(5)
    expect(read.layers).toEqual(expect.arrayContaining(['1', '2', '3', '4', '6', '7', '8', '14', '15']))
    expect(read.texts).toContain('Size: É')
  })
})
