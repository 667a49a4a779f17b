/**
 * The kernel's named defaults. `accuracy` is the largest absolute error of a number; `tolerance` is the
 * largest distance in mm from the true curve.
 */

/** Arc length, mm: a thousandth of the promise made for paper (0.1 mm) would do; the cap solver asks for more. */
export const LENGTH_ACCURACY = 1e-7

/** Refit and offset of stitching and cutting lines, mm: a fifth of the thinnest printed line. */
export const CURVE_TOLERANCE = 0.01

/** Points nearer than this are the same point, mm: far below paper, far above rounding. */
export const SAME_POINT = 1e-6
