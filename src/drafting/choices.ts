/** How close the garment sits. */
export const FITS = ['close', 'standing', 'easy'] as const
/** How close it is worn: one of `FITS`. */
export type Fit = (typeof FITS)[number]

/** What it is cut from: decides how much can be eased into the armscye. */
export const CLOTHS = ['muslin', 'soft wool', 'firm', 'leather'] as const
/** What is cut: one of `CLOTHS`; how much of a cap can be eased depends on it. */
export type Cloth = (typeof CLOTHS)[number]

/** Numbers of elbow darts as they are written, in order from 0. */
export const ELBOW_DARTS = ['none', 'one', 'two'] as const

/** Where the bodice opens. */
export const OPENINGS = ['center back', 'center front', 'none'] as const
/** Where it opens: one of `OPENINGS`. */
export type Opening = (typeof OPENINGS)[number]

/** Where wearing ease is added; mm round the body or the limb. */
export const EASE_NAMES = [
  'bust',
  'waist',
  'back width',
  'front width',
  'armscye depth',
  'upper arm',
  'upper arm flexed',
  'elbow',
  'wrist',
  'neckline',
] as const
/** What ease can be given for: one of `EASE_NAMES`. */
export type EaseName = (typeof EASE_NAMES)[number]

/** Cap ease: mm, or a share of the armscye (0.06 is 6 %). */
export type CapEase =
  | {
      /** Length in mm. */
      readonly mm: number
    }
  | {
      /** Share of the armscye. */
      readonly share: number
    }

/** The draper's choices, every one with a default (see `readChoices`). */
export interface Choices {
  /** How close it is worn; sets every ease that `ease` does not. */
  readonly fit: Fit
  /** What is cut; sets how much ease a cap takes. */
  readonly cloth: Cloth
  /** Where the bodice opens: the other center is cut on the fold. */
  readonly opening: Opening
  /** Ease that replaces the fit's own, mm. */
  readonly ease: Readonly<Partial<Record<EaseName, number>>>
  /** Ease of the whole cap over the armscye; the cloth's own when absent. */
  readonly capEase?: CapEase
  /**
   * Intake of a bust dart in mm; `flat` for none; `eased`: from the measures or estimated, but eased in without a
   * dart; absent: from the measures or estimated.
   */
  readonly bustDart?: number | 'flat' | 'eased'
  /** Total intake of the elbow darts, mm. */
  readonly elbowIntake?: number
  /** How many elbow darts: two by default; without any the sleeve hangs straight. */
  readonly elbowDarts?: 0 | 1 | 2
  /** Intake of a back shoulder dart in mm, which takes the place of the shoulder's ease. */
  readonly shoulderDart?: number
  /** Width of the sleeve at the biceps line and height of the cap, mm: given in place of upper arm and cap ease. */
  readonly bicepsWidth?: number
  /** Height of the cap above the biceps line, mm. */
  readonly capHeight?: number
  /** The lowest cap that is accepted, as a share of the armscye. */
  readonly leastCapRatio?: number
}

/** The choices of a performer file that makes none. */
export const STANDARD_CHOICES: Choices = { fit: 'close', cloth: 'muslin', opening: 'center back', ease: {} }
