/** Bodies of REFERENCES.md section 2, as a performer file has them: every value with the unit it was published in. */
export type PublishedBody = Readonly<Record<string, string>>

const inches = (value: number) => `${value} in`
const cm = (value: number) => `${Math.round(value * 100) / 100} cm`

/** ASTM D5585-95, missy figure, sizes 6–14, inches (from memory: plausible bodies and ranges only). */
const D5585_95_TABLE = {
  'bust girth': [34, 35, 36, 37.5, 39],
  'waist girth': [26, 27, 28, 29.5, 31],
  'armscye girth': [15, 15.375, 15.75, 16.375, 17],
  'upper arm girth': [10.5, 10.75, 11, 11.375, 11.75],
  'elbow girth': [9.625, 9.75, 9.875, 10.125, 10.375],
  'wrist girth': [5.875, 6, 6.125, 6.25, 6.375],
  'back width': [14.375, 14.625, 14.875, 15.25, 15.625],
  'front width': [13.375, 13.625, 13.875, 14.25, 14.625],
  'shoulder length': [5.0625, 5.125, 5.1875, 5.3125, 5.4375],
  'back waist length': [16, 16.25, 16.5, 16.75, 17],
  'front neck to waist': [14, 14.25, 14.5, 14.75, 15],
  'scye depth': [7.375, 7.5, 7.625, 7.75, 7.875],
  'bust point width': [7.5, 7.75, 8, 8.25, 8.5],
  'neck to bust point': [9.75, 10, 10.25, 10.625, 11],
  'shoulder to elbow': [13.5, 13.625, 13.75, 13.875, 14],
} as const

/** Inches, size by size: for comparing what is drafted or estimated. */
export const D5585_95: readonly Readonly<Record<keyof typeof D5585_95_TABLE, number>>[] = [0, 1, 2, 3, 4].map(
  (size) =>
    Object.fromEntries(
      Object.entries(D5585_95_TABLE).map(([name, values]) => [name, values[size] as number]),
    ) as Record<keyof typeof D5585_95_TABLE, number>,
)

export const D5585_95_SIZES = ['6', '8', '10', '12', '14'] as const

/**
 * A size of D5585-95 as a file. The table at hand has no neck, arm length or front waist length: the neck is that of
 * the same bust in D5585-11 (read), the arm 9 1/4 in below the elbow, the front waist length left out.
 */
export function d5585_95(size: number): PublishedBody {
  const table = D5585_95[size] as (typeof D5585_95)[number]
  const body = Object.fromEntries(Object.entries(table).map(([name, value]) => [name, inches(value)]))
  return {
    ...body,
    'neck base girth': inches(neckOfBust(table['bust girth'])),
    'shoulder slope': '23 deg',
    'outer arm length': inches(table['shoulder to elbow'] + 9.25),
  }
}

/** ASTM D5585-11e1, table 1, sizes 0–20, inches (read). */
export const D5585_11 = {
  size: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20],
  'bust girth': [31.75, 33, 34.125, 35.25, 36.25, 37.25, 38.75, 40.375, 42.125, 44, 46],
  'waist girth': [24.625, 25.375, 26.125, 27, 28, 29, 30.75, 32.5, 34.5, 36.75, 39],
  'neck base girth': [13.5, 13.75, 14, 14.25, 14.625, 14.875, 15.125, 15.5, 15.75, 16, 16.375],
  'upper chest girth': [32.25, 33.25, 34.125, 35, 35.875, 36.75, 38, 39.25, 40.625, 42.25, 43.875],
} as const

/**
 * Girths of D5585-11 with the lengths and the arm that it does not give taken from the survey's lines for women
 * (computed: flexed arm = 42.8 + 0.278 · bust, back waist = 283.3 + 0.150 · bust, arm 544 mm), relaxed arm 0.95 of it.
 */
export function d5585_11(k: number): PublishedBody {
  const bust = (D5585_11['bust girth'][k] as number) * 25.4
  return {
    'bust girth': inches(D5585_11['bust girth'][k] as number),
    'waist girth': inches(D5585_11['waist girth'][k] as number),
    'neck base girth': inches(D5585_11['neck base girth'][k] as number),
    'upper chest girth': inches(D5585_11['upper chest girth'][k] as number),
    'back waist length': cm((283.3 + 0.15 * bust) / 10),
    'upper arm girth': cm((0.95 * (42.8 + 0.278 * bust)) / 10),
    'outer arm length': '54.4 cm',
  }
}

function neckOfBust(bust: number): number {
  const busts: readonly number[] = D5585_11['bust girth']
  const k = busts.findIndex((next) => next >= bust)
  const [a, b] = [busts[k - 1] as number, busts[k] as number]
  const [from, to] = [D5585_11['neck base girth'][k - 1] as number, D5585_11['neck base girth'][k] as number]
  return Math.round((from + ((to - from) * (bust - a)) / (b - a)) * 16) / 16
}

/** ANSUR II women by chest girth, bins of ±2 cm: means, cm, computed from the full public file (n = 1,986). */
export const SURVEY_BINS = {
  'bust girth': [80, 84, 88, 92, 96, 100, 104, 108, 112],
  'waist girth': [71.8, 75.3, 79.0, 83.0, 87.2, 91.9, 95.5, 100.1, 101.2],
  'neck base girth': [35.0, 35.5, 35.9, 36.8, 37.3, 37.8, 38.5, 39.1, 39.8],
  'shoulder length': [13.3, 13.4, 13.4, 13.5, 13.6, 13.6, 13.7, 13.8, 13.8],
  'back width': [34.1, 35.0, 35.8, 36.8, 37.6, 38.4, 39.3, 40.2, 41.1],
  'back waist length': [40.8, 41.1, 41.5, 42.2, 42.6, 43.1, 44.0, 44.6, 44.9],
  'upper arm girth flexed': [26.6, 27.6, 28.7, 29.9, 30.9, 32.0, 32.9, 34.5, 35.0],
  'wrist girth': [14.7, 14.9, 15.2, 15.4, 15.6, 15.7, 15.9, 16.1, 16.3],
  'shoulder to elbow': [29.9, 30.3, 30.8, 31.1, 31.2, 31.3, 31.7, 31.8, 32.0],
  /** Cervicale − axilla height; a taped scye depth is about 40 mm more. */
  'scye depth': [15.1, 15.4, 15.4, 15.7, 15.7, 15.7, 16.0, 16.1, 16.4].map((height) => height + 4),
} as const

/** A bin's mean body: its relaxed arm 0.95 of the flexed one, its arm length the mean of all women (54.4 cm). */
export function surveyBin(k: number): PublishedBody {
  const means = Object.fromEntries(Object.entries(SURVEY_BINS).map(([name, values]) => [name, cm(values[k] as number)]))
  return {
    ...means,
    'upper arm girth': cm(0.95 * (SURVEY_BINS['upper arm girth flexed'][k] as number)),
    'outer arm length': '54.4 cm',
  }
}
