/** What to do and to mind before a tape is laid on a body, in order: common practice. */
export const BEFORE_MEASURING: readonly string[] = [
  'Say what you will touch, ask first, and measure in private; the performer may stop at any time.',
  'Measure over what is worn under the costume, shoes off, standing easily, looking ahead, arms hanging.',
  'Tie a narrow tape round the waist and let it settle; it marks the waist for every length.',
  'Tape level and flat, neither loose nor pulled in: a finger lies under it. Breathe normally.',
  'Take both arms. Read every measure aloud and write it down as it is read; take twice what surprises you.',
]

/** A point of the body that measures run to. */
export interface BodyPoint {
  /** Its name, as the measures call it. */
  readonly point: string
  /** How it is found. */
  readonly found: string
}

/** The points of the body that the measures run between, and how each is found: common practice. */
export const BODY_POINTS: readonly BodyPoint[] = [
  { point: 'nape bone', found: 'the bone at the base of the neck that stands out when the head is bent forward' },
  { point: 'pit of the throat', found: 'the hollow between the collarbones' },
  { point: 'side of the neck base', found: 'where a fine chain round the neck crosses the top of the shoulder' },
  { point: 'shoulder point', found: 'the outer end of the shoulder bone, where a dent shows when the arm is raised' },
  { point: 'bust point', found: 'the fullest point of the bust' },
  { point: 'elbow', found: 'the tip of the bent elbow' },
  { point: 'wrist bone', found: 'the bone that stands out on the outer side of the wrist' },
]
