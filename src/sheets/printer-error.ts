import { parseLength } from '../base/lengths.ts'
import { failure, type Result, success } from '../base/result.ts'

/** The sides of the printed 100 mm square, across the page and up it, mm. */
export interface SquareMeasured {
  /** Across the page. */
  readonly x: number
  /** Up the page. */
  readonly y: number
}

/** A printer that prints true. */
export const TRUE_SQUARE: SquareMeasured = { x: 100, y: 100 }

/** Beyond these a page was fitted to its paper or the wrong thing was measured, mm. */
const LEAST = 90
const MOST = 110

/** A printer stretches paper unevenly by a few thousandths; more than this is a mistake in measuring. */
const UNEVEN = 0.05

const WHERE = { field: '--square-measured' }

/**
 * Reads what was measured on the printed 100 mm square, across × up: `97.2x98.0`, in mm or with units (`9.72x9.8cm`). Problems:
 * `square-unreadable`, `square-absurd` (a side not within 90 to 110 mm), `square-uneven` (sides over 5 % apart).
 */
export function parseSquareMeasured(text: string): Result<SquareMeasured> {
  const sides = text.trim().split(/[x×]/i)
  const unit = /[a-z"″.]*$/i.exec(sides[1]?.trim() ?? '')?.[0] ?? ''
  const [x, y] = sides.map((side, k) => parseLength(k === 0 && /\d\s*$/.test(side) ? side + unit : side, 'mm'))
  if (sides.length !== 2 || !x?.ok || !y?.ok) {
    return failure({
      code: 'square-unreadable',
      where: WHERE,
      actual: `"${text.trim()}"`,
      expected: 'both sides of the printed 100 mm square, across and up, such as 97.2x98.0',
      hint: 'measure the solid square on a printed page and write both sides in mm, with an x between',
    })
  }
  return checkSquare({ x: x.value, y: y.value })
}

/** The measured square, if a printer can have made it. Problems: `square-absurd`, `square-uneven`. */
export function checkSquare(square: SquareMeasured): Result<SquareMeasured> {
  const { x, y } = square
  if (!(Math.min(x, y) >= LEAST && Math.max(x, y) <= MOST)) {
    return failure({
      code: 'square-absurd',
      where: WHERE,
      actual: `a square of ${squareWords(square)}`,
      expected: `sides of ${LEAST} to ${MOST} mm where 100 mm was drawn`,
      hint: 'print at 100 %, actual size, not fitted to the page; then measure the solid square, not the dashed one',
    })
  }
  if (Math.abs(x - y) > UNEVEN * Math.min(x, y)) {
    return failure({
      code: 'square-uneven',
      where: WHERE,
      actual: `a square of ${squareWords(square)}`,
      expected: 'sides within 5 % of each other: no printer stretches one way so much more than the other',
      hint: 'measure the solid square again, both ways',
    })
  }
  return success(square)
}

/** `97.2 × 98 mm` */
export function squareWords({ x, y }: SquareMeasured): string {
  const side = (mm: number) => `${Math.round(mm * 100) / 100}`
  return `${side(x)} × ${side(y)} mm`
}
