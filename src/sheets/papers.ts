import { parseLength } from '../base/lengths.ts'
import { failure, type Result, success } from '../base/result.ts'
import { type LengthUnit, MM_PER_INCH } from '../base/units.ts'

/** A sheet of paper, or a roll, which is cut to the length that is needed; mm. */
export type Paper =
  | {
      /** As it was asked for: `a4`, `roll-36in`. */
      readonly name: string
      /** A sheet of fixed size, or a roll. */
      readonly form: 'sheet'
      /** Across, mm. */
      readonly width: number
      /** Up, mm. */
      readonly height: number
    }
  | {
      /** As it was asked for: `a4`, `roll-36in`. */
      readonly name: string
      /** A sheet of fixed size, or a roll. */
      readonly form: 'roll'
      /** Across, mm. */
      readonly width: number
    }

/** The longest side of a page that common readers take: 14,400 units of 1/72 in. */
export const LONGEST_SIDE = (14400 / 72) * MM_PER_INCH

/** A page must hold the 4 in square with its borders, mm. */
const SHORTEST_SIDE = 148

/** ISO 216 and ANSI/architectural sizes (REFERENCES.md section 5), mm, upright. */
const SHEETS: Readonly<Record<string, readonly [number, number]>> = {
  a4: [210, 297],
  a3: [297, 420],
  a2: [420, 594],
  a1: [594, 841],
  a0: [841, 1189],
  letter: [8.5 * MM_PER_INCH, 11 * MM_PER_INCH],
  legal: [8.5 * MM_PER_INCH, 14 * MM_PER_INCH],
  tabloid: [11 * MM_PER_INCH, 17 * MM_PER_INCH],
  'arch-e': [36 * MM_PER_INCH, 48 * MM_PER_INCH],
}

/** Names that `parsePaper` knows, for help texts. */
export const PAPER_NAMES: readonly string[] = [...Object.keys(SHEETS), 'roll-36in', 'roll-<width>', '<width>x<height>']

/**
 * Reads the name of a paper: `a4`, `letter`, `arch-e`, `roll-36in`, `roll-91.4cm`, `610x914mm`, `30x40in`. Case
 * and spaces do not matter. Problems: `unknown-paper`, `paper-without-unit`, `paper-too-small`.
 */
export function parsePaper(text: string): Result<Paper> {
  const name = text.trim().toLowerCase().replace(/\s+/g, '').replace(/×/g, 'x')
  const sheet = Object.hasOwn(SHEETS, name) ? SHEETS[name] : undefined
  if (sheet) return success({ name, form: 'sheet', width: sheet[0], height: sheet[1] })
  const roll = /^roll-?(.+)$/.exec(name)
  if (roll) {
    const width = side(roll[1] ?? '', text)
    return width.ok ? success({ name, form: 'roll', width: width.value }) : width
  }
  const own = /^([\d.,/½¼¾⅛⅜⅝⅞-]+)([a-z"″]*)x([\d.,/½¼¾⅛⅜⅝⅞-]+)([a-z"″]*)$/.exec(name)
  if (!own) return unknown(text)
  const [, w = '', unitOfWidth = '', h = '', unitOfHeight = ''] = own
  const width = side(w + (unitOfWidth || unitOfHeight), text)
  if (!width.ok) return width
  const height = side(h + (unitOfHeight || unitOfWidth), text)
  return height.ok ? success({ name, form: 'sheet', width: width.value, height: height.value }) : height
}

/** The paper that is in the printer where these units are used. */
export function usualPaper(units: LengthUnit): Paper {
  const paper = parsePaper(units === 'in' ? 'letter' : 'a4')
  if (!paper.ok) throw new Error('the usual paper is not known')
  return paper.value
}

function side(length: string, text: string): Result<number> {
  if (!/[a-z"″]$/.test(length)) {
    return failure({
      code: 'paper-without-unit',
      where: {},
      actual: `"${text.trim()}" without a unit`,
      expected: 'a size with its unit, such as 610x914mm, 30x40in or roll-36in',
      hint: 'write mm, cm or in after the numbers',
    })
  }
  const mm = parseLength(length, 'mm')
  if (!mm.ok) return unknown(text)
  if (mm.value < SHORTEST_SIDE) {
    return failure({
      code: 'paper-too-small',
      where: {},
      actual: `"${text.trim()}" has a side of ${Math.round(mm.value)} mm`,
      expected: `sides of at least ${SHORTEST_SIDE} mm, so that a page holds its borders and the 4 in square`,
      hint: 'take a larger paper, such as a4 or letter',
    })
  }
  return success(mm.value)
}

function unknown(text: string): Result<never> {
  return failure({
    code: 'unknown-paper',
    where: {},
    actual: `"${text.trim()}"`,
    expected: `one of ${PAPER_NAMES.join(', ')}`,
    hint: 'name a paper from the list, or give its size with a unit, such as 610x914mm',
  })
}
