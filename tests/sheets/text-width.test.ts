import { readFileSync } from 'node:fs'
import PDFDocument from 'pdfkit'
import { describe, expect, test } from 'vitest'
import { textWidth } from '../../src/sheets/text-width.ts'

const file = new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)

describe('text width', () => {
  test('is the font’s own, letter for letter', () => {
    const doc = new PDFDocument({ font: readFileSync(file) as unknown as string, autoFirstPage: false })
    doc.fontSize(1000)
    const features = { kern: false, liga: false } as never
    const letters = Array.from({ length: 0x17f - 0x20 }, (_, k) => String.fromCodePoint(0x20 + k)).filter(
      (c) => !/\p{C}/u.test(c),
    )
    letters.push(...'–—‘’“”…′″⁄½⅓⅔¼¾⅛⅜⅝⅞←↑→↓−×°•')
    expect(letters.length).toBeGreaterThan(300)
    for (const letter of letters) {
      expect(textWidth(letter, 1000), letter).toBeCloseTo(doc.widthOfString(letter, { features }), 3)
    }
  })

  test('counts unknown letters wide', () => {
    expect(textWidth('Щ', 10)).toBeGreaterThanOrEqual(11)
  })
})
