import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { versionUnder } from '../../src/fitting/version-under.ts'
import { splitPattern } from '../../src/pattern/split-pattern.ts'
import { makePattern } from '../../src/pipeline.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import type { Mark, PieceDrawing, Scene } from '../../src/sheets/scene.ts'
import { writeSvg } from '../../src/writers/svg.ts'
import { lamplighter } from '../scye.ts'
import { drafted, INFO, samplesOf } from './fixture.ts'
import { faults } from './label-faults.ts'

function made(change: (text: string) => string = (text) => text) {
  const result = makePattern(change(readFileSync(lamplighter, 'utf8')), 'lamplighter.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

const { pattern, versions } = made()
const draft = versions[0]?.pattern ?? pattern
const under = layOut(pattern, { ...INFO, under: 'draft', previous: draft })

function drawing(scene: Scene, id: string): PieceDrawing {
  const found = scene.pieces.find((p) => p.drawing.id === id)?.drawing
  if (!found) throw new Error(`no ${id}`)
  return found
}

const old = (d: PieceDrawing) => d.marks.filter((m) => m.version !== undefined)
const own = (d: PieceDrawing) => d.marks.filter((m) => m.version === undefined && m.type !== 'text')
const named = (marks: readonly Mark[], kind: string, id: string) => marks.find((m) => m.kind === kind && m.id === id)

describe('an earlier version under the new one', () => {
  test('is the earlier one, line by line, thin and dashed, where something moved', () => {
    const marks = old(drawing(under, 'sleeve'))
    expect(marks.map((m) => m.id)).toEqual(
      expect.arrayContaining(['front cap', 'back cap', 'front underarm seam', 'back underarm seam']),
    )
    const before = drawing(layOut(draft, INFO), 'sleeve').marks
    for (const mark of marks) {
      if (mark.type !== 'stroke') throw new Error('only lines')
      expect(mark.version).toBe('draft')
      expect(mark.weight).toBeLessThan(0.2)
      expect(mark.dash?.every((mm) => mm > 0)).toBe(true)
      const then = named(before, mark.kind, mark.id)
      if (!then) throw new Error(`no ${mark.id} before`)
      const all = samplesOf(then)
      for (const [k, p] of samplesOf(mark).entries()) {
        expect(Math.hypot(p.x - (all[k]?.x ?? 9), p.y - (all[k]?.y ?? 9))).toBeLessThan(1e-9)
      }
    }
  })

  test('is not drawn twice where nothing moved', () => {
    const marks = old(drawing(under, 'sleeve'))
    expect(marks.map((m) => m.id)).not.toContain('wrist')
    expect(old(drawing(under, 'bodice back'))).toEqual([])
    expect(old(drawing(under, 'bodice front'))).toEqual([])
  })

  test('changes nothing of the drawing itself', () => {
    const plain = layOut(pattern, INFO)
    for (const { drawing: d } of plain.pieces) expect(own(drawing(under, d.id))).toEqual(own(d))
  })

  test('says which it is, on the piece and at the foot, and text keeps off its lines', () => {
    const sleeve = drawing(under, 'sleeve')
    expect(sleeve.marks.flatMap((m) => (m.type === 'text' ? [m.text] : []))).toContain('thin dashes: draft')
    expect(under.sheet.flatMap((m) => (m.type === 'text' ? [m.text] : []))).toContain('as it was: draft')
    expect(faults(sleeve, pattern)).toEqual([])
  })

  test('is taken apart where the sides have come apart since', () => {
    const apart = made((text) => text.replaceAll('side: both', 'side: left'))
    const scene = layOut(apart.pattern, { ...INFO, under: 'draft', previous: apart.versions[0]?.pattern ?? draft })
    expect(old(drawing(scene, 'sleeve right'))).toEqual([])
    const cap = named(old(drawing(scene, 'sleeve left')), 'stitching line', 'front cap')
    const before = named(drawing(layOut(draft, INFO), 'sleeve').marks, 'stitching line', 'front cap')
    if (!cap || !before) throw new Error('no cap')
    // The left sleeve is the mirror image of the one that was drawn.
    const mirrored = samplesOf(before).reverse()
    samplesOf(cap).forEach((p, k) => {
      expect(p.x).toBeCloseTo(-(mirrored[k]?.x ?? 0), 9)
      expect(p.y).toBeCloseTo(mirrored[k]?.y ?? 0, 9)
    })
  })

  test('is opened where a front on the fold has become whole', () => {
    const whole = splitPattern(draft, 'bodice front')
    const moved = {
      ...whole,
      pieces: whole.pieces.map((piece) => ({
        ...piece,
        darts: piece.darts.map((d) => ({ ...d, point: { ...d.point, y: d.point.y + 1 } })),
      })),
    }
    const front = drawing(layOut(moved, { ...INFO, under: 'draft', previous: draft }), 'bodice front')
    expect(
      old(front)
        .map((m) => m.id)
        .sort(),
    ).toEqual(
      whole.pieces
        .find((p) => p.id === 'bodice front')
        ?.darts.map((d) => d.id)
        .sort(),
    )
  })

  test('has a group of its own in the SVG, and leaves all other ids as they are', async () => {
    const idsOf = (svg: string) => Array.from(svg.matchAll(/ id="([^"]*)"/g), (m) => m[1] ?? '')
    const words = { title: 'Sleeve', description: 'Before and after' }
    const [before, after] = [await writeSvg(layOut(pattern, INFO), words), await writeSvg(under, words)]
    const ids = idsOf(after)
    for (const id of idsOf(before)) expect(ids).toContain(id)
    expect(new Set(ids).size).toBe(ids.length)
    const group = /<g id="sleeve-previous-version"[^>]*>(.*?)<\/g><\/g>/s.exec(after)?.[1] ?? ''
    expect(after).toContain('inkscape:label="as it was: draft"')
    expect(group).toContain('id="sleeve-previous-stitching-line-front-cap"')
    const groups = Array.from(after.matchAll(/<g id="([^"]*-previous-version)"/g), (m) => m[1])
    expect(groups).toEqual(['sleeve-previous-version', 'foot-previous-version'])
  })

  test.each([
    ['previous', 'draft'],
    ['draft', 'draft'],
  ])('%s is found', (name, label) => {
    const found = versionUnder(versions, name)
    expect(found.ok && found.value.label).toBe(label)
  })

  test.each(['second fitting', 'first fitting', ''])('"%s" is not before the first fitting', (name) => {
    const found = versionUnder(versions, name)
    expect(found.ok ? [] : found.problems.map((p) => p.code)).toEqual(['no-earlier-version'])
  })

  test('nothing is before the draft', () => {
    const found = versionUnder(versions.slice(0, 1), 'previous')
    expect(found.ok ? '' : found.problems[0]?.hint).toContain('leave --under out')
  })
})

describe('a pair drawn as both pieces', () => {
  const scene = layOut(drafted(), { ...INFO, mirrorPairs: true })

  test('has left and right under their own names, each said to be cut once', () => {
    expect(scene.pieces.map((p) => p.drawing.id)).toEqual([
      'bodice back left',
      'bodice back right',
      'bodice front',
      'sleeve left',
      'sleeve right',
    ])
    const said = drawing(scene, 'sleeve left').marks.flatMap((m) => (m.type === 'text' ? [m.text] : []))
    expect(said).toEqual(expect.arrayContaining(['SLEEVE LEFT', 'LEFT · cut 1', 'this side up']))
    expect(said.join(' ')).not.toContain('PAIR')
  })

  test('the left is the mirror image of the right, which is as drafted', () => {
    const pair = drawing(layOut(drafted(), INFO), 'sleeve')
    const [left, right] = [drawing(scene, 'sleeve left'), drawing(scene, 'sleeve right')]
    for (const kind of ['stitching line', 'dart', 'grain line', 'balance line']) {
      const of = (d: PieceDrawing) => d.marks.filter((m) => m.kind === kind && m.type === 'stroke')
      expect(of(right)).toEqual(of(pair))
      for (const mark of of(left)) {
        const other = named(right.marks, kind, mark.id)
        if (!other) throw new Error(`no ${mark.id}`)
        const points = samplesOf(other)
        for (const p of samplesOf(mark)) {
          expect(Math.min(...points.map((q) => Math.hypot(p.x + q.x, p.y - q.y)))).toBeLessThan(1e-6)
        }
      }
    }
  })

  test('takes one of them alone', () => {
    const one = layOut(drafted(), { ...INFO, mirrorPairs: true, pieces: ['sleeve left'] })
    expect(one.pieces.map((p) => p.drawing.id)).toEqual(['sleeve left'])
  })
})
