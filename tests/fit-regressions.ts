/**
 * Fits the estimates of missing measures to the survey and writes src/body/regressions.ts:
 *
 *     npx tsx tests/fit-regressions.ts
 *
 * Reads ../shared/data/ansur2.csv (ANSUR II). Both sexes weigh the same in every fit, so that an estimate leans to
 * neither and nobody has to be asked.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { MeasureName } from '../src/body/measure.ts'

export const SURVEY_FILE = fileURLToPath(new URL('../../shared/data/ansur2.csv', import.meta.url))
const OUTPUT = fileURLToPath(new URL('../src/body/regressions.ts', import.meta.url))

/** A relaxed upper arm is about 0.95 of the flexed one (common practice); the survey has the flexed one. */
const RELAXED = 0.95
/** The survey's scye depth is a height difference to the front fold of the armpit; on the tape it is this much more, mm. */
const SCYE_ON_TAPE = 40
/** The survey takes the hand at the knuckles without the thumb; with the thumb tucked in it is about 1 in more (common practice). */
const THUMB = 25.4
/** Slopes outside are a slip of a landmark, not a shoulder. */
const SLOPE = { least: (12 * Math.PI) / 180, most: (32 * Math.PI) / 180 }

type Row = Readonly<Record<string, number>> & { readonly woman: number }

/** How each measure is found in the survey: mm, radians. */
const COLUMNS: Readonly<Partial<Record<MeasureName, (row: Row) => number>>> = {
  'neck base girth': (row) => get(row, 'neckcircumferencebase'),
  'shoulder length': (row) => get(row, 'shoulderlength'),
  'shoulder slope': (row) => {
    const fall = get(row, 'cervicaleheight') - get(row, 'acromialheight')
    // The nape is not the neck's side: fall over shoulder length as a tangent gives 26° at the median, the sine 30°;
    // ASTM D5585-95 has 23° (from memory).
    const slope = Math.atan2(fall, get(row, 'shoulderlength'))
    return Math.min(SLOPE.most, Math.max(SLOPE.least, slope))
  },
  'bust girth': (row) => get(row, 'chestcircumference'),
  'waist girth': (row) => get(row, 'waistcircumference'),
  'back waist length': (row) => get(row, 'waistbacklength'),
  'scye depth': (row) => get(row, 'cervicaleheight') - get(row, 'axillaheight') + SCYE_ON_TAPE,
  'back width': (row) => get(row, 'interscyei'),
  'upper arm girth': (row) => RELAXED * get(row, 'bicepscircumferenceflexed'),
  'upper arm girth flexed': (row) => get(row, 'bicepscircumferenceflexed'),
  'wrist girth': (row) => get(row, 'wristcircumference'),
  'hand girth': (row) => get(row, 'handcircumference') + THUMB,
  'outer arm length': (row) => get(row, 'sleeveoutseam'),
  'shoulder to elbow': (row) => get(row, 'acromionradialelength'),
}

const REQUIRED: readonly MeasureName[] = ['bust girth', 'back waist length', 'upper arm girth', 'outer arm length']

/**
 * What is fitted on what. The waist is left out: the survey takes it at the navel, a costume at the natural waist.
 * The last four say whether a required measure goes with the others; they estimate nothing.
 */
const FITS: readonly { readonly target: MeasureName; readonly on: readonly MeasureName[] }[] = [
  { target: 'neck base girth', on: REQUIRED },
  { target: 'shoulder length', on: REQUIRED },
  { target: 'shoulder slope', on: REQUIRED },
  { target: 'scye depth', on: REQUIRED },
  { target: 'back width', on: REQUIRED },
  { target: 'wrist girth', on: REQUIRED },
  { target: 'hand girth', on: ['wrist girth'] },
  { target: 'shoulder to elbow', on: REQUIRED },
  ...REQUIRED.map((target) => ({ target, on: REQUIRED.filter((name) => name !== target) })),
]

/**
 * Measures that the survey has not: the spread of a like column about its own line stands in for theirs, as a share of
 * the measure. The bust point's height, the breadth of the chest and the forearm beside the elbow.
 */
const LIKES: readonly {
  readonly target: MeasureName
  readonly like: (row: Row) => number
  readonly on: MeasureName
}[] = [
  { target: 'front width', like: (row) => get(row, 'chestbreadth'), on: 'back width' },
  { target: 'elbow girth', like: (row) => get(row, 'forearmcircumferenceflexed'), on: 'upper arm girth' },
  {
    target: 'neck to bust point',
    like: (row) => get(row, 'cervicaleheight') - get(row, 'chestheight'),
    on: 'bust girth',
  },
  { target: 'bust point width', like: (row) => get(row, 'chestbreadth'), on: 'bust girth' },
]

export interface FittedRegression {
  readonly target: MeasureName
  readonly intercept: number
  readonly slopes: Readonly<Partial<Record<MeasureName, number>>>
  readonly n: number
  readonly r: number
  readonly standardError: number
}

export interface Spread {
  readonly mean: number
  readonly deviation: number
}

export interface SurveyFit {
  readonly regressions: readonly FittedRegression[]
  /** Standard errors of the ratios, as shares of the estimate. */
  readonly ratioErrors: Readonly<Partial<Record<MeasureName, number>>>
  readonly survey: Readonly<Partial<Record<MeasureName, { readonly women: Spread; readonly men: Spread }>>>
}

/** Every regression and every mean, from the survey's file. */
export function fitSurvey(file: string = SURVEY_FILE): SurveyFit {
  const rows = readRows(file)
  const readers = (names: readonly MeasureName[]) => names.map((name) => (row: Row) => measure(row, name))
  const regressions = FITS.map(({ target, on }): FittedRegression => {
    const { intercept, slopes, r, standardError } = fitLine(rows, (row) => measure(row, target), readers(on))
    const bySlope = Object.fromEntries(on.map((name, p) => [name, slopes[p] as number]))
    return { target, intercept, slopes: bySlope, n: rows.length, r, standardError }
  })
  const ratioErrors = Object.fromEntries(
    LIKES.map(({ target, like, on }) => {
      const { standardError, mean } = fitLine(rows, like, readers([on]))
      return [target, standardError / mean]
    }),
  )
  const survey = Object.fromEntries(
    Object.keys(COLUMNS).map((name) => {
      const values = (woman: number) =>
        rows.filter((row) => row.woman === woman).map((row) => measure(row, name as MeasureName))
      return [name, { women: spread(values(1)), men: spread(values(0)) }]
    }),
  )
  return { regressions, ratioErrors, survey }
}

function readRows(file: string): Row[] {
  const [header = '', ...lines] = readFileSync(file, 'utf8').trim().split(/\r?\n/)
  const names = header.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    const numbers = names.map((name, index): [string, number] => [name, Number(cells[index])])
    return { ...Object.fromEntries(numbers), woman: cells[names.indexOf('sex')] === 'F' ? 1 : 0 }
  })
}

function get(row: Row, column: string): number {
  const value = row[column]
  if (value === undefined || !Number.isFinite(value)) throw new RangeError(`the survey has no ${column}`)
  return value
}

function measure(row: Row, name: MeasureName): number {
  const read = COLUMNS[name]
  if (!read) throw new RangeError(`the survey has no ${name}`)
  return read(row)
}

function spread(values: readonly number[]): Spread {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean, deviation: Math.sqrt(squares / (values.length - 1)) }
}

interface FittedLine {
  readonly intercept: number
  readonly slopes: readonly number[]
  readonly r: number
  readonly standardError: number
  /** Weighted mean of what was fitted. */
  readonly mean: number
}

type Reader = (row: Row) => number

/** Weighted least squares about the weighted means; r and standard error weighted the same. */
function fitLine(rows: readonly Row[], target: Reader, on: readonly Reader[]): FittedLine {
  const women = rows.filter((row) => row.woman === 1).length
  const weights = rows.map((row) => rows.length / 2 / (row.woman === 1 ? women : rows.length - women))
  const columns = [...on, target].map((read) => rows.map(read))
  const means = columns.map((column) => sum(column.map((value, i) => value * (weights[i] as number))) / rows.length)
  const centered = columns.map((column, c) => column.map((value) => value - (means[c] as number)))
  const dot = (a: readonly number[], b: readonly number[]) =>
    sum(a.map((value, i) => value * (b[i] as number) * (weights[i] as number)))
  const predictors = centered.slice(0, on.length)
  const goal = centered[on.length] as number[]
  const slopes = solve(
    predictors.map((a) => predictors.map((b) => dot(a, b))),
    predictors.map((a) => dot(a, goal)),
  )
  const predicted = rows.map((_, i) => sum(slopes.map((slope, p) => slope * (predictors[p]?.[i] as number))))
  const residuals = goal.map((value, i) => value - (predicted[i] as number))
  const mean = means[on.length] as number
  return {
    intercept: mean - sum(slopes.map((slope, p) => slope * (means[p] as number))),
    slopes,
    r: dot(predicted, goal) / Math.sqrt(dot(predicted, predicted) * dot(goal, goal)),
    standardError: Math.sqrt(dot(residuals, residuals) / (rows.length - on.length - 1)),
    mean,
  }
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

/** Gauss with pivoting; a few unknowns. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] as number])
  const size = rows.length
  for (let column = 0; column < size; column++) {
    const below = rows.slice(column).map((row) => Math.abs(row[column] as number))
    const pivot = column + below.indexOf(Math.max(...below))
    ;[rows[column], rows[pivot]] = [rows[pivot] as number[], rows[column] as number[]]
    const lead = rows[column] as number[]
    for (const [index, row] of rows.entries()) {
      if (index === column) continue
      const factor = (row[column] as number) / (lead[column] as number)
      for (let k = column; k <= size; k++) row[k] = (row[k] as number) - factor * (lead[k] as number)
    }
  }
  return rows.map((row, i) => (row[size] as number) / (row[i] as number))
}

/** The source of src/body/regressions.ts. */
export function regressionsSource({ regressions, ratioErrors, survey }: SurveyFit): string {
  const lines = [
    '// Written by tests/fit-regressions.ts; do not edit by hand.',
    "import type { MeasureName } from './measure.ts'",
    '',
    '/**',
    ' * A straight-line estimate of one measure from others: intercept + sum of slope · measure; mm, radians. n bodies, r the',
    ' * correlation of estimate and measure, standardError the spread of the measures about the estimate.',
    ' */',
    'export interface Regression {',
    '  readonly target: MeasureName',
    '  readonly intercept: number',
    '  readonly slopes: Readonly<Partial<Record<MeasureName, number>>>',
    '  readonly n: number',
    '  readonly r: number',
    '  readonly standardError: number',
    '}',
    '',
    '/** Mean and standard deviation; mm, radians. */',
    'export interface Spread {',
    '  readonly mean: number',
    '  readonly deviation: number',
    '}',
    '',
    '/**',
    ' * Where the figures of this file come from: computed from 4,046 of the 6,068 subjects of the public release, women and',
    ' * men weighing the same. Upper arm = 0.95 of the flexed one; scye depth = cervicale − axilla height + 40 mm; hand =',
    ' * hand circumference + 25.4 mm for the thumb; shoulder slope from cervicale and acromion heights over the shoulder',
    ' * length, held to 12–32°; waist and back waist length are to the navel.',
    ' */',
    "export const SURVEY_SOURCE = 'ANSUR II (2012), NATICK/TR-15/007'",
    '',
    '/** The last four say whether a required measure goes with the others. */',
    'export const REGRESSIONS: readonly Regression[] = [',
    ...regressions.flatMap((fitted) => [
      '  {',
      `    target: '${fitted.target}',`,
      `    intercept: ${digits(fitted.intercept)},`,
      '    slopes: {',
      ...Object.entries(fitted.slopes).map(([name, slope]) => `      '${name}': ${digits(slope)},`),
      '    },',
      `    n: ${fitted.n},`,
      `    r: ${Number(fitted.r.toFixed(3))},`,
      `    standardError: ${digits(fitted.standardError, 3)},`,
      '  },',
    ]),
    ']',
    '',
    '/**',
    ' * Standard errors of the ratios, as shares of the estimate, by measures that the survey has not: the spread of a like',
    ' * column about its line. Front width: chest breadth on back width; elbow: flexed forearm on upper arm; neck to bust',
    ' * point: cervicale − chest height on bust; bust point width: chest breadth on bust.',
    ' */',
    'export const RATIO_ERRORS: Readonly<Partial<Record<MeasureName, number>>> = {',
    ...Object.entries(ratioErrors).map(([name, share]) => `  '${name}': ${digits(share, 3)},`),
    '}',
    '',
    '/** Means and standard deviations of the survey, women and men apart. */',
    'export const SURVEY: Readonly<Partial<Record<MeasureName, { readonly women: Spread; readonly men: Spread }>>> = {',
    ...Object.entries(survey).flatMap(([name, { women, men }]) => [
      `  '${name}': {`,
      `    women: ${spreadSource(women)},`,
      `    men: ${spreadSource(men)},`,
      '  },',
    ]),
    '}',
    '',
  ]
  return lines.join('\n')
}

function spreadSource({ mean, deviation }: Spread): string {
  return `{ mean: ${digits(mean, 4)}, deviation: ${digits(deviation, 3)} }`
}

function digits(value: number, count = 5): string {
  return String(Number(value.toPrecision(count)))
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (!existsSync(SURVEY_FILE)) throw new Error(`no survey at ${SURVEY_FILE}`)
  writeFileSync(OUTPUT, regressionsSource(fitSurvey()))
}
