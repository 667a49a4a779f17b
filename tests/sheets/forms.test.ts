import { describe, expect, test } from 'vitest'
import { BEFORE_MEASURING, BODY_POINTS } from '../../src/body/before-measuring.ts'
import { MEASURE_NAMES, MEASURES } from '../../src/body/measure.ts'
import type { Point } from '../../src/geometry/point.ts'
import { fittingSheet } from '../../src/sheets/fitting-sheet.ts'
import type { Form } from '../../src/sheets/form-pages.ts'
import { MEASURE_FIGURES } from '../../src/sheets/measure-figures.ts'
import { measuringSheet } from '../../src/sheets/measuring-sheet.ts'
import { PAPER_NAMES, type Paper, parsePaper } from '../../src/sheets/papers.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { SIZES } from '../drafting/bodies.ts'
import { drafted, INFO, samplesOf } from './fixture.ts'
import { formFaults, textOf } from './form-faults.ts'

const PAPERS = [
  ...PAPER_NAMES.filter((name) => !name.includes('<')),
  '148x148mm',
  '148x210mm',
  '210x148mm',
  '420x297mm',
  '150x2000mm',
  'roll-150mm',
]

const MEASURES_ON_SHEET = MEASURE_NAMES.map((name) => ({
  name,
  ...MEASURES[name],
  unit: MEASURES[name].kind === 'angle' ? '°' : 'in',
}))

const CONTENT = {
  info: INFO,
  units: 'inches',
  measures: MEASURES_ON_SHEET,
  before: BEFORE_MEASURING,
  points: BODY_POINTS,
}
const PATTERN = drafted()
const FITTING = { info: INFO, pattern: PATTERN, outlines: 'Small outlines, to write on.', version: 'first fitting' }

function paper(name: string): Paper {
  const read = parsePaper(name)
  if (!read.ok) throw new Error(name)
  return read.value
}

/** Smallest and largest em, mm. */
function sizes({ pages }: Form): [number, number] {
  const all = pages.flatMap((marks) => marks.flatMap((mark) => (mark.type === 'text' ? [mark.size] : [])))
  return [Math.min(...all), Math.max(...all)]
}

describe.each(PAPERS)('on %s', (name) => {
  const measuring = measuringSheet(CONTENT, paper(name))
  const fitting = fittingSheet(FITTING, paper(name))

  test('nothing is cut off, no text lies on another or on a line, letters can be read', () => {
    for (const form of [measuring, fitting]) {
      expect(formFaults(form)).toEqual([])
      expect(sizes(form)[0]).toBeGreaterThan(2.4)
      const { width, height } = paper(name) as { width: number; height?: number }
      expect(form.width).toBeCloseTo(width, 6)
      if (height !== undefined) expect(form.height).toBeCloseTo(height, 6)
    }
  })

  test('has every measure once, with boxes for its sides', () => {
    const marks = measuring.pages.flat()
    for (const measure of MEASURE_NAMES) {
      const boxes = marks.filter(
        (mark) => mark.kind === 'blank' && mark.id.startsWith(`${measure} `) && mark.id.endsWith(' box'),
      )
      const own = boxes.filter((mark) => !/flexed/.test(mark.id) || measure.endsWith('flexed'))
      const sides = own.map((mark) => mark.id.slice(measure.length + 1).replace(' box', ''))
      expect(sides, measure).toEqual(MEASURES[measure].sided ? ['left', 'right'] : ['value'])
      expect(marks.filter((mark) => mark.type === 'text' && mark.text === measure)).toHaveLength(1)
      expect(marks.filter((mark) => mark.kind === 'tape' && mark.id === measure)).toHaveLength(1)
    }
    const words = textOf(measuring).replace(/\s+/g, ' ')
    for (const { how } of Object.values(MEASURES)) expect(words).toContain(how)
  })

  test('has every piece left and right, whole on its page', () => {
    const outlines = fitting.pages.map((marks) => marks.filter((mark) => mark.kind === 'piece outline'))
    const pieces = ['bodice back left', 'bodice back right', 'bodice front', 'sleeve left', 'sleeve right']
    for (const piece of pieces) {
      const on = outlines.filter((marks) => marks.some((mark) => mark.id.startsWith(`${piece} `)))
      expect(on, piece).toHaveLength(1)
    }
    const marks = fitting.pages.flat()
    const notches = marks.filter((mark) => mark.kind === 'notch')
    // Two on each half of the bodice, four on each sleeve.
    expect(notches).toHaveLength(4 * 2 + 2 * 4)
    for (const { id } of notches) {
      const [, piece = '', notch = ''] =
        /^(bodice front|bodice back \S+|sleeve \S+) (.+?)(?: left| right)?$/.exec(id) ?? []
      const named = marks.filter((mark) => mark.type === 'text' && mark.text === notch && mark.id.startsWith(piece))
      const there = notches.filter((mark) => mark.id.startsWith(`${piece} ${notch}`))
      expect(named, id).toHaveLength(there.length)
    }
  })
})

test.each(['letter', 'a4', '148x210mm'])('on %s a name stands beside its mark or is joined to it', (name) => {
  const near = ({ x, y }: Point, box: readonly Point[]) => {
    const [xs, ys] = [box.map((p) => p.x), box.map((p) => p.y)]
    const beyond = (value: number, all: readonly number[]) =>
      Math.max(Math.min(...all) - value, value - Math.max(...all), 0)
    return Math.hypot(beyond(x, xs), beyond(y, ys))
  }
  for (const marks of fittingSheet(FITTING, paper(name)).pages) {
    const points = marks.filter((mark) => mark.kind === 'notch' || mark.kind === 'landmark')
    for (const mark of points) {
      const text = marks.find((one) => one.type === 'text' && one.id === `${mark.id} name`)
      if (text?.type !== 'text') throw new Error(`${mark.id} has no name`)
      const half = textWidth(text.text, text.size) / 2
      const box = [
        { x: text.at.x - half, y: text.at.y - 0.22 * text.size },
        { x: text.at.x + half, y: text.at.y + 0.75 * text.size },
      ]
      const ink = samplesOf(mark)
      const leader = marks.find((one) => one.id === `${mark.id} leader`)
      const ends = leader ? samplesOf(leader) : []
      if (leader) expect(Math.min(...ends.map((end) => near(end, box))), mark.id).toBeLessThan(0.6)
      const away = leader
        ? Math.min(...ends.flatMap((p) => ink.map((q) => Math.hypot(p.x - q.x, p.y - q.y))))
        : Math.min(...ink.map((q) => near(q, box)))
      expect(away, mark.id).toBeLessThan(2.6)
    }
  }
  const all = fittingSheet(FITTING, paper(name)).pages.flat()
  expect(all.filter((mark) => mark.type === 'text' && mark.text === 'bust point')).toHaveLength(2)
})

test('a text moved onto another, onto a line or into the margin is noticed', () => {
  const form = fittingSheet(FITTING, paper('a4'))
  const moved = (id: string, x: number, y: number): Form => ({
    ...form,
    pages: form.pages.map((marks) =>
      marks.map((mark) => (mark.type === 'text' && mark.id === id ? { ...mark, at: { x, y } } : mark)),
    ),
  })
  const text = form.pages[0]?.find((mark) => mark.type === 'text' && mark.id === 'outlines')
  const at = text?.type === 'text' ? text.at : { x: 0, y: 0 }
  expect(formFaults(moved('sheet title', at.x, at.y + 1)).join()).toContain('"FITTING SHEET" on "Small outlines')
  expect(formFaults(moved('sheet title', 100, 284)).join()).toContain('sheet title is')
  const outline = samplesOf(form.pages[0]?.find((mark) => mark.id === 'sleeve right wrist') as never)[30]
  expect(formFaults(moved('page number', outline?.x ?? 0, outline?.y ?? 0)).join()).toContain(
    '"page 1 of 2" on sleeve right ',
  )
})

test('a name of any length stays on the sheet', () => {
  const info = { ...INFO, performer: 'Lamplighter'.repeat(12), production: 'The Tin Orchard '.repeat(20).trim() }
  for (const name of ['letter', '148x148mm']) {
    expect(formFaults(measuringSheet({ ...CONTENT, info }, paper(name)))).toEqual([])
    expect(formFaults(fittingSheet({ ...FITTING, info, version: 'fitting '.repeat(30) }, paper(name)))).toEqual([])
  }
})

test('a larger paper has everything larger, and never more pages', () => {
  const at = (name: string) => measuringSheet(CONTENT, paper(name))
  const series = ['148x210mm', 'a4', 'a3', 'a2', 'a1', 'a0'].map(at)
  const pages = series.map((form) => form.pages.length)
  expect(pages).toEqual([...pages].sort((a, b) => b - a))
  expect(pages.at(-1)).toBe(1)
  expect(sizes(series[5] as Form)[1]).toBeGreaterThan(2.5 * sizes(series[1] as Form)[1])
})

test('required boxes are heavier than the others', () => {
  const marks = measuringSheet(CONTENT, paper('a4')).pages.flat()
  const weight = (id: string) => {
    const mark = marks.find((one) => one.id === id)
    return mark?.type === 'stroke' ? (mark.weight ?? 0) : 0
  }
  expect(weight('bust girth value box')).toBeGreaterThan(2 * weight('scye depth value box'))
})

describe('figures', () => {
  test('there is one for every measure and no other', () => {
    expect(Object.keys(MEASURE_FIGURES).sort()).toEqual([...MEASURE_NAMES].sort())
  })

  test('girths run behind the body, lengths do not', () => {
    for (const name of MEASURE_NAMES) {
      expect((MEASURE_FIGURES[name]?.behind.length ?? 0) > 0, name).toBe(/girth/.test(name))
    }
  })

  test('body and tape lie in what is shown, the tape on the body', () => {
    for (const [name, { body, tape, behind, aids, box }] of Object.entries(MEASURE_FIGURES)) {
      const points = samplesOf({
        type: 'stroke',
        kind: 'tape',
        id: name,
        paths: [...body.outline, ...tape, ...behind, ...aids],
      })
      for (const { x, y } of points) {
        expect(Math.min(x - box.left, box.right - x, y - box.bottom, box.top - y), name).toBeGreaterThan(-0.5)
      }
      const outline = samplesOf({ type: 'stroke', kind: 'tape', id: name, paths: body.outline })
      const reach = (all: readonly { x: number }[]) => [
        Math.min(...all.map((p) => p.x)),
        Math.max(...all.map((p) => p.x)),
      ]
      const [left = 0, right = 0] = reach(outline)
      const [from = 0, to = 0] = reach(samplesOf({ type: 'stroke', kind: 'tape', id: name, paths: tape }))
      expect(from, name).toBeGreaterThan(left - 3)
      expect(to, name).toBeLessThan(right + 3)
    }
  })
})

test.each(SIZES.map((body, k) => [k, body] as const))('outlines of size %i are as clear', (_k, body) => {
  for (const name of ['letter', '148x148mm']) {
    expect(formFaults(fittingSheet({ ...FITTING, pattern: drafted(body) }, paper(name)))).toEqual([])
  }
})

test('the wearer’s left is right in a front and left in a back', () => {
  const marks = fittingSheet(FITTING, paper('a4')).pages.flat()
  const middle = (piece: string) => {
    const points = marks
      .filter((m) => m.kind === 'piece outline' && m.id.startsWith(`${piece} `))
      .flatMap((m) => samplesOf(m))
    const xs = points.map((p) => p.x)
    return (Math.min(...xs) + Math.max(...xs)) / 2
  }
  const side = (piece: string, word: string) => {
    const mark = marks.find((m) => m.type === 'text' && m.id.startsWith(`${piece} `) && m.text === word)
    return mark?.type === 'text' ? mark.at.x : Number.NaN
  }
  expect(side('bodice front', 'LEFT')).toBeGreaterThan(middle('bodice front'))
  expect(side('bodice front', 'RIGHT')).toBeLessThan(middle('bodice front'))
  expect(middle('bodice back left')).toBeLessThan(middle('bodice back right'))
  // A sleeve lies face up: the front notch of the right one is toward the right.
  const front = (piece: string) => marks.find((m) => m.kind === 'notch' && m.id === `${piece} front notch`)
  const at = (piece: string) => samplesOf(front(piece) as never)[0]?.x ?? Number.NaN
  expect(at('sleeve right')).toBeGreaterThan(middle('sleeve right'))
  expect(at('sleeve left')).toBeLessThan(middle('sleeve left'))
})
