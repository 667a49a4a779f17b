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
  label: { weight: 0.2 },
  'measured square': { weight: 0.25 },
  'page frame': { weight: 0.25 },
}

/** The second square is told from the first by its dashes. */
export const SECOND_SQUARE_DASH: readonly number[] = [2, 1]

/** Text sizes (em), mm: readable at arm's length; the smallest is eight points. */
export const TEXT = {
  title: 8,
  body: 4.2,
  name: 3.6,
  small: 3.2,
  smallest: 2.8,
} as const

/** Clear space kept round text, mm. */
export const TEXT_CLEARANCE = 1.2
