import { describe, expect, test } from 'vitest'
import { completeBody } from '../../src/body/complete-body.ts'
import { bookletOf } from '../../src/explain/booklet-of.ts'
import { explainDraft } from '../../src/explain/explain-draft.ts'
import { sectionJson } from '../../src/explain/explanation-json.ts'
import { makePattern } from '../../src/pipeline.ts'
import type { Booklet } from '../../src/sheets/booklet.ts'
import { boxOfInk, inkOf } from '../../src/sheets/ink.ts'
import { layOutBooklet, type SheetPaper } from '../../src/sheets/lay-out-booklet.ts'
import type { Mark, TextMark } from '../../src/sheets/scene.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { writeHtml } from '../../src/writers/html.ts'
import { BODIES, EXAMPLES, LAMPLIGHTER, UNEVEN } from './bodies.ts'

const FILES = [...EXAMPLES, ...BODIES]

function explained(text: string) {
  const made = makePattern(text, 'explained.yaml', { until: 'none', checks: [] })
  if (!made.ok) throw new Error(made.problems.map((p) => p.actual).join('; '))
  const { performer, draft } = made.value
  const body = completeBody(performer.body)
  if (!body.ok) throw new Error('no body')
  const { choices, units } = performer
  const sections = explainDraft({ body: body.value.body, choices, pattern: draft.pattern, units })
  if (!sections.ok) throw new Error('not explained')
  const booklet = bookletOf(sections.value, {
    performer: performer.performer,
    version: 'draft',
    date: '2026-10-02',
    units,
  })
  return { sections: sections.value, booklet }
}

interface Box {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

/** Letters reach from below the baseline to the height of capitals. */
function boxOf({ text, at, size }: TextMark): Box {
  const half = textWidth(text, size) / 2
  return { text, left: at.x - half, right: at.x + half, bottom: at.y - 0.22 * size, top: at.y + 0.76 * size }
}

function overlapping(marks: readonly Mark[]): string[] {
  const boxes = marks.flatMap((mark) => (mark.type === 'text' ? [boxOf(mark)] : []))
  return boxes.flatMap((a, k) =>
    boxes
      .slice(k + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top)
      .map((b) => `"${a.text}" and "${b.text}"`),
  )
}

const PAPERS: readonly SheetPaper[] = [
  { name: 'a4', form: 'sheet', width: 210, height: 297 },
  { name: 'letter', form: 'sheet', width: 215.9, height: 279.4 },
  { name: '148x210mm', form: 'sheet', width: 148, height: 210 },
]

describe('the pictures', () => {
  test('have a letter at every point that a step marks or measures from, and no letter on another or on a line', () => {
    let letters = 0
    for (const [name, text] of FILES) {
      const { sections, booklet } = explained(text)
      sections.forEach((section, s) => {
        section.steps.forEach((step, k) => {
          const where = `${name}: ${section.title}, ${step.title}`
          const picture = booklet.sections[s]?.steps[k]?.picture
          const names = [...step.points.map((p) => p.name), ...step.uses].sort()
          if (names.length === 0) return
          const texts = picture?.marks.flatMap((mark) => (mark.type === 'text' ? [mark] : [])) ?? []
          letters += texts.length
          expect(texts.map((mark) => mark.text).sort(), where).toEqual(names)
          expect(overlapping(texts), where).toEqual([])
          for (const box of texts.map(boxOf)) {
            expect(Math.min(box.left, box.bottom), where).toBeGreaterThan(0)
            expect(box.right, where).toBeLessThan(picture?.width ?? 0)
            expect(box.top, where).toBeLessThan(picture?.height ?? 0)
          }
        })
      })
    }
    expect(letters).toBeGreaterThan(2000)
  })

  test('have every line of the steps before, and what is new heavier', () => {
    const { sections, booklet } = explained(LAMPLIGHTER)
    const sleeve = sections.findIndex((section) => section.piece === 'sleeve')
    const wrist = sections[sleeve]?.steps.findIndex((step) => step.title === 'Wrist') as number
    const marks = booklet.sections[sleeve]?.steps[wrist]?.picture?.marks ?? []
    expect(marks.filter((mark) => mark.kind === 'new line').map((mark) => mark.id)).toEqual(['wrist'])
    expect(
      marks
        .filter((mark) => mark.kind === 'earlier line')
        .map((mark) => mark.id)
        .join(),
    ).toContain('front underarm seam')
  })
})

describe('the pages', () => {
  test.each(PAPERS)('of $name have no text on another and nothing within 10 mm of the edge', (paper) => {
    for (const [name, text] of [...EXAMPLES, UNEVEN]) {
      const { booklet } = explained(text)
      const { pages } = layOutBooklet(booklet, paper)
      expect(pages.length).toBeGreaterThan(4)
      for (const page of pages) {
        expect(overlapping(page.furniture), `${name}, page ${page.name}`).toEqual([])
        const ink = boxOfInk(inkOf(page.furniture))
        expect(Math.min(ink.left, ink.bottom, paper.width - ink.right, paper.height - ink.top)).toBeGreaterThanOrEqual(
          10,
        )
      }
      // Nothing is lost between the steps and the pages.
      const words = (texts: readonly string[]) => texts.join(' ').split(/\s+/).sort()
      const printed = pages.flatMap((page) =>
        page.furniture.filter((mark) => mark.id !== 'foot' && !/letter/.test(mark.id)),
      )
      expect(words(printed.flatMap((mark) => (mark.type === 'text' ? [mark.text] : [])))).toEqual(
        words(textsOf(booklet)),
      )
    }
  })
})

function textsOf(booklet: Booklet): string[] {
  return [
    booklet.title,
    booklet.subtitle,
    ...booklet.introduction,
    ...booklet.sections.flatMap(({ title, steps }) => [
      title,
      ...steps.flatMap(({ heading, lines }) => [heading, ...lines.flatMap(({ text, why }) => [text, why ?? ''])]),
    ]),
  ].filter((text) => text !== '')
}

/** `15 3⁄16″`, `1⅜″`, `39.4 cm`, `416 mm`, `22.0°`, `45 %`, as far left as they reach. */
const NUMBER = /(?:\d+ )?\d+⁄\d+″|\d*[¼½¾⅛⅜⅝⅞]″|\d+″|\d+(?:\.\d+)? mm|\d+(?:\.\d+)? cm|\d+\.\d°|\d+ %/g

describe('the HTML', () => {
  test('has no number in its steps that is not in the data, and none is left', () => {
    let numbers = 0
    for (const [name, text] of FILES) {
      const { sections, booklet } = explained(text)
      const html = writeHtml(booklet)
      const articles = [...html.matchAll(/<article>(.*?)<\/article>/gs)].map((match) => match[1] as string)
      const steps = sections.map(sectionJson).flatMap((section) => section.steps)
      expect(articles.length).toBe(steps.length)
      articles.forEach((article, k) => {
        const words = [...article.matchAll(/<p[^>]*>(.*?)<\/p>/gs)].map((match) => match[1]).join('\n')
        const found = words.match(NUMBER) ?? []
        numbers += found.length
        const said = steps[k]?.numbers.map(({ says }) => says) ?? []
        expect(
          found.filter((number) => !said.includes(number)),
          `${name}: ${steps[k]?.title}`,
        ).toEqual([])
        // Points beyond Z are called A2, B2, …; darts have numbers.
        expect(words.replaceAll(NUMBER, '').replaceAll(/\b[A-Z]2\b|waist dart \d/g, ''), name).not.toMatch(/\d/)
      })
    }
    expect(numbers).toBeGreaterThan(4000)
  })

  test('is one document that asks for nothing else, with a picture for every step that draws', () => {
    const { booklet } = explained(LAMPLIGHTER)
    const html = writeHtml(booklet)
    expect(html).toBe(writeHtml(explained(LAMPLIGHTER).booklet))
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(
      /https?:|url\(|<script|<link|<img|@import|src=/,
    )
    expect(html.match(/<svg /g)?.length).toBe(booklet.sections.flatMap((s) => s.steps.filter((t) => t.picture)).length)
    expect(html).not.toMatch(/(?:fill|stroke)="#(?!000")/)
    expect(html).not.toMatch(/NaN|undefined|Infinity/)
  })

  test('keeps what a performer file says as words', () => {
    const { booklet } = explained(LAMPLIGHTER.replace('performer: Lamplighter', "performer: 'A & <b>B</b>'"))
    expect(writeHtml(booklet)).toContain('A &amp; &lt;b&gt;B&lt;/b&gt;')
  })
})
