// Written by tests/fit-regressions.ts; do not edit by hand.
import type { MeasureName } from './measure.ts'

/**
 * A straight-line estimate of one measure from others: intercept + sum of slope · measure; mm, radians. n bodies, r the
 * correlation of estimate and measure, standardError the spread of the measures about the estimate.
 */
export interface Regression {
  readonly target: MeasureName
  readonly intercept: number
  readonly slopes: Readonly<Partial<Record<MeasureName, number>>>
  readonly n: number
  readonly r: number
  readonly standardError: number
}

/** Mean and standard deviation; mm, radians. */
export interface Spread {
  readonly mean: number
  readonly deviation: number
}

/**
 * Where the figures of this file come from: computed from 4,046 of the 6,068 subjects of the public release, women and
 * men weighing the same. Upper arm = 0.95 of the flexed one; scye depth = cervicale − axilla height + 40 mm; hand =
 * hand circumference + 25.4 mm for the thumb; shoulder slope from cervicale and acromion heights over the shoulder
 * length, held to 12–32°; waist and back waist length are to the navel.
 */
export const SURVEY_SOURCE = 'ANSUR II (2012), NATICK/TR-15/007'

/** The last four say whether a required measure goes with the others. */
export const REGRESSIONS: readonly Regression[] = [
  {
    target: 'neck base girth',
    intercept: -13.116,
    slopes: {
      'bust girth': 0.084911,
      'back waist length': 0.26445,
      'upper arm girth': 0.36149,
      'outer arm length': 0.17154,
    },
    n: 4046,
    r: 0.878,
    standardError: 18.7,
  },
  {
    target: 'shoulder length',
    intercept: 29.803,
    slopes: {
      'bust girth': -0.0050831,
      'back waist length': 0.06516,
      'upper arm girth': 0.037423,
      'outer arm length': 0.13513,
    },
    n: 4046,
    r: 0.613,
    standardError: 9.95,
  },
  {
    target: 'shoulder slope',
    intercept: 0.25351,
    slopes: {
      'bust girth': -0.00036695,
      'back waist length': 0.00095469,
      'upper arm girth': 0.00049679,
      'outer arm length': -0.000054171,
    },
    n: 4046,
    r: 0.41,
    standardError: 0.0658,
  },
  {
    target: 'scye depth',
    intercept: -2.1653,
    slopes: {
      'bust girth': -0.016694,
      'back waist length': 0.29108,
      'upper arm girth': 0.13462,
      'outer arm length': 0.10104,
    },
    n: 4046,
    r: 0.76,
    standardError: 14.1,
  },
  {
    target: 'back width',
    intercept: -9.2975,
    slopes: {
      'bust girth': 0.20976,
      'back waist length': 0.15836,
      'upper arm girth': 0.18664,
      'outer arm length': 0.12424,
    },
    n: 4046,
    r: 0.809,
    standardError: 25.6,
  },
  {
    target: 'wrist girth',
    intercept: 15.863,
    slopes: {
      'bust girth': 0.0069283,
      'back waist length': 0.086957,
      'upper arm girth': 0.14651,
      'outer arm length': 0.10056,
    },
    n: 4046,
    r: 0.87,
    standardError: 6.62,
  },
  {
    target: 'hand girth',
    intercept: 46.609,
    slopes: {
      'wrist girth': 1.0773,
    },
    n: 4046,
    r: 0.908,
    standardError: 6.69,
  },
  {
    target: 'shoulder to elbow',
    intercept: 26.919,
    slopes: {
      'bust girth': 0.018731,
      'back waist length': 0.018735,
      'upper arm girth': -0.034236,
      'outer arm length': 0.49245,
    },
    n: 4046,
    r: 0.947,
    standardError: 6.79,
  },
  {
    target: 'bust girth',
    intercept: 168.97,
    slopes: {
      'back waist length': 0.63149,
      'upper arm girth': 1.8008,
      'outer arm length': -0.032589,
    },
    n: 4046,
    r: 0.861,
    standardError: 51.8,
  },
  {
    target: 'back waist length',
    intercept: 66.119,
    slopes: {
      'bust girth': 0.1411,
      'upper arm girth': 0.11289,
      'outer arm length': 0.36651,
    },
    n: 4046,
    r: 0.758,
    standardError: 24.5,
  },
  {
    target: 'upper arm girth',
    intercept: -67.873,
    slopes: {
      'bust girth': 0.28973,
      'back waist length': 0.081292,
      'outer arm length': 0.098308,
    },
    n: 4046,
    r: 0.852,
    standardError: 20.8,
  },
  {
    target: 'outer arm length',
    intercept: 270.84,
    slopes: {
      'bust girth': -0.010757,
      'back waist length': 0.54147,
      'upper arm girth': 0.20169,
    },
    n: 4046,
    r: 0.648,
    standardError: 29.8,
  },
]

/**
 * Standard errors of the ratios, as shares of the estimate, by measures that the survey has not: the spread of a like
 * column about its line. Front width: chest breadth on back width; elbow: flexed forearm on upper arm; neck to bust
 * point: cervicale − chest height on bust; bust point width: chest breadth on bust.
 */
export const RATIO_ERRORS: Readonly<Partial<Record<MeasureName, number>>> = {
  'front width': 0.0501,
  'elbow girth': 0.0427,
  'neck to bust point': 0.0935,
  'bust point width': 0.0427,
}

/** Means and standard deviations of the survey, women and men apart. */
export const SURVEY: Readonly<Partial<Record<MeasureName, { readonly women: Spread; readonly men: Spread }>>> = {
  'neck base girth': {
    women: { mean: 371.6, deviation: 19.6 },
    men: { mean: 434.7, deviation: 25.7 },
  },
  'shoulder length': {
    women: { mean: 135.6, deviation: 10.3 },
    men: { mean: 149.9, deviation: 10.5 },
  },
  'shoulder slope': {
    women: { mean: 0.4169, deviation: 0.0735 },
    men: { mean: 0.4677, deviation: 0.0608 },
  },
  'bust girth': {
    women: { mean: 948.5, deviation: 83.6 },
    men: { mean: 1059, deviation: 87.2 },
  },
  'waist girth': {
    women: { mean: 862.6, deviation: 102 },
    men: { mean: 941.5, deviation: 112 },
  },
  'back waist length': {
    women: { mean: 425.8, deviation: 26.7 },
    men: { mean: 477.5, deviation: 27.7 },
  },
  'scye depth': {
    women: { mean: 196.5, deviation: 14.7 },
    men: { mean: 228.4, deviation: 14.5 },
  },
  'back width': {
    women: { mean: 373.6, deviation: 30.2 },
    men: { mean: 431.1, deviation: 35 },
  },
  'upper arm girth': {
    women: { mean: 291, deviation: 29.5 },
    men: { mean: 340.2, deviation: 32.7 },
  },
  'upper arm girth flexed': {
    women: { mean: 306.3, deviation: 31 },
    men: { mean: 358.1, deviation: 34.4 },
  },
  'wrist girth': {
    women: { mean: 155, deviation: 7.88 },
    men: { mean: 176, deviation: 8.91 },
  },
  'hand girth': {
    women: { mean: 212.1, deviation: 8.83 },
    men: { mean: 237.7, deviation: 10.2 },
  },
  'outer arm length': {
    women: { mean: 543.4, deviation: 29.4 },
    men: { mean: 593.1, deviation: 30.8 },
  },
  'shoulder to elbow': {
    women: { mean: 311.1, deviation: 17 },
    men: { mean: 335.3, deviation: 17.5 },
  },
}
