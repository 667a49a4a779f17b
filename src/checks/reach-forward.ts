import type { MeasureRow } from '../drafting/draft.ts'

/** What a back grows by when both arms reach forward, as shares of the back width. */
const GROWTH = {
  /** 13–16 %: Kirk and Ibrahim, 1966 (from memory). */
  least: 0.13,
  /** 26 %, 11 cm on chests of 112–120 cm: Anthropometry, Apparel Sizing and Design, p. 186 (read). */
  most: 0.26,
} as const

/** Estimates are told to this, mm. */
const STEP = 5

/** Both arms reaching forward; mm. The growth is an estimate from published figures, to 5 mm. */
export interface ReachForward {
  /** Back width of the body. */
  readonly body: number
  /** What the pattern has over that. */
  readonly ease: number
  /** By how much the back grows. */
  readonly growth: {
    /** The least of the published figures. */
    readonly least: number
    /** The most of them. */
    readonly most: number
  }
  /** Where the figures come from. */
  readonly source: string
}

const SOURCE =
  'an estimate: 13–16 % (Kirk and Ibrahim 1966, from memory) to 26 % (Anthropometry, Apparel Sizing and Design, p. 186, ' +
  'chests of 112–120 cm) of the back width'

/** What a reach forward asks of the back, from the rows of its back width; undefined where there is none. */
export function reachForward(backWidth: readonly MeasureRow[]): ReachForward | undefined {
  const [row] = backWidth
  if (!row) return undefined
  const rounded = (share: number) => STEP * Math.round((share * row.body) / STEP)
  return {
    body: row.body,
    ease: row.drafted - row.body,
    growth: { least: rounded(GROWTH.least), most: rounded(GROWTH.most) },
    source: SOURCE,
  }
}
