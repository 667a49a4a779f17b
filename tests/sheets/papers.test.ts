import { describe, expect, test } from 'vitest'
import { parsePaper } from '../../src/sheets/papers.ts'

describe('papers', () => {
  test.each([
    ['a4', 210, 297],
    ['A0', 841, 1189],
    ['letter', 215.9, 279.4],
    ['Legal', 215.9, 355.6],
    ['tabloid', 279.4, 431.8],
    ['arch-e', 914.4, 1219.2],
    ['610x914mm', 610, 914],
    ['30x40in', 762, 1016],
    ['24in x 36in', 609.6, 914.4],
    ['61 × 91.4 cm', 610, 914],
    ['8½x11in', 215.9, 279.4],
  ])('%s', (text, width, height) => {
    const paper = parsePaper(text)
    expect(paper).toMatchObject({ ok: true, value: { form: 'sheet' } })
    if (!paper.ok || paper.value.form !== 'sheet') throw new Error('no sheet')
    expect(paper.value.width).toBeCloseTo(width, 6)
    expect(paper.value.height).toBeCloseTo(height, 6)
  })

  test.each([
    ['roll-36in', 914.4],
    ['roll-91.4cm', 914],
    ['ROLL-600mm', 600],
  ])('%s', (text, width) => {
    const paper = parsePaper(text)
    expect(paper.ok && paper.value.form === 'roll' && paper.value.width).toBeCloseTo(width, 6)
  })

  test.each([
    ['', 'unknown-paper'],
    ['a7', 'unknown-paper'],
    ['constructor', 'unknown-paper'],
    ['610x914', 'paper-without-unit'],
    ['roll-36', 'paper-without-unit'],
    ['100x200mm', 'paper-too-small'],
    ['-300x400mm', 'paper-too-small'],
    ['30x40furlongs', 'unknown-paper'],
    ['roll-wide', 'unknown-paper'],
  ])('%j is a problem: %s', (text, code) => {
    expect(parsePaper(text)).toMatchObject({ ok: false, problems: [{ code }] })
  })
})
