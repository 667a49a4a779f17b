import type { MarkKind } from './scene.ts'

/** A pen: weight in mm, dash pattern in mm (on, off, …), solid when absent. All ink is black: gray prints ragged. */
export interface Pen {
  readonly weight: number
  readonly dash?: readonly number[]
}

/**
 * One look for every kind of line, told apart by dash and weight alone, so that a gray printer or a photocopy
 * loses nothing (drafting handbooks' conventions: cutting line solid and heaviest, stitching line dashed,
 * fold long and short, balance lines thin).
 */
export const PENS: Readonly<Record<MarkKind, Pen>> = {
  'calibration grid': { weight: 0.4 },
  'cutting line': { weight: 0.7 },
  'stitching line': { weight: 0.45, dash: [6, 2] },
  'fold line': { weight: 0.6, dash: [14, 2.5, 3, 2.5] },
  dart: { weight: 0.35, dash: [4, 2] },
  notch: { weight: 0.6 },
  'grain line': { weight: 0.35 },
  'balance line': { weight: 0.2 },
  'ease stitching': { weight: 0.25, dash: [1.2, 1.6] },
  landmark: { weight: 0.3 },
  'line before': { weight: 0.25, dash: [3, 2] },
  'line after': { weight: 0.5 },
  move: { weight: 0.3 },
  'body outline': { weight: 0.25 },
  tape: { weight: 0.6 },
  'piece outline': { weight: 0.5 },
  blank: { weight: 0.25 },
  'help line': { weight: 0.15, dash: [1, 0.8] },
  'earlier line': { weight: 0.2 },
  'new line': { weight: 0.6 },
  label: { weight: 0.2 },
  'measured square': { weight: 0.25 },
  'page frame': { weight: 0.25 },
}

/** The second square is told from the first by its dashes. */
export const SECOND_SQUARE_DASH: readonly number[] = [2, 1]

/** The lines of a version that lies under the sheet's own: finer than any other dashed line. */
export const PREVIOUS_PEN: Pen & { readonly dash: readonly number[] } = { weight: 0.18, dash: [2.5, 2.5] }

/** Em of each size of text, mm. */
export interface TextSizes {
  readonly title: number
  readonly body: number
  readonly name: number
  readonly small: number
  readonly smallest: number
}

/** Text on paper: readable at arm's length; the smallest is eight points. */
export const TEXT: TextSizes = {
  title: 8,
  body: 4.2,
  name: 3.6,
  small: 3.2,
  smallest: 2.8,
}

/**
 * What a projector above a cutting table shows of a millimetre is about one pixel: lines four times and text twice as
 * large as on paper, dashes twice as long.
 */
export const PROJECTED = {
  weight: 4,
  dash: 2,
  text: { title: 16, body: 8.5, name: 7, small: 6.5, smallest: 5 } satisfies TextSizes,
} as const

/** Clear space kept round text, mm. */
export const TEXT_CLEARANCE = 1.2
