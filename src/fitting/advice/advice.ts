/** Where on the body something is seen. */
export const ADVICE_PLACES = ['cap', 'underarm', 'elbow', 'shoulder', 'neck', 'front', 'back', 'waist'] as const

/** Where on the body or the garment something is seen: one of `ADVICE_PLACES`. */
export type AdvicePlace = (typeof ADVICE_PLACES)[number]

/** One likely cause of what is seen, and what to try for it. */
export interface AdviceCause {
  /** The cause, in a few words. */
  readonly cause: string
  /** What to open, pin or hold on the body, and how the answer shows. */
  readonly pin: string
  /**
   * Corrections as they stand under `corrections:` in a performer file, with a first amount that says its unit. Absent
   * where nothing on the pattern is to be changed.
   */
  readonly snippet?: string
  /** What the correction does elsewhere, and what is to be looked at afterwards. */
  readonly costs: string
}

/** What is seen on the body, and what to try in this order. Common practice; the body in front of you decides. */
export interface AdviceEntry {
  /** Kebab-case and stable; `adviceFor` finds an entry by it alone. */
  readonly id: string
  /** The first is where it is listed. */
  readonly places: readonly [AdvicePlace, ...AdvicePlace[]]
  /** What is seen, in a few words. */
  readonly seen: string
  /** Other words for what is seen. */
  readonly words: readonly string[]
  /** What may be behind it, the likeliest first. */
  readonly causes: readonly [AdviceCause, ...AdviceCause[]]
  /** Where a body could be hurt: what to mind. */
  readonly caution: string
}
