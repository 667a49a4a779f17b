import type { SampleRun } from './fit-cubic.ts'
import { type Point, unit } from './point.ts'

// Samples on each side in the wider window.
const WIDE = 8

/**
 * The unit direction of travel at sample `at`, from polynomials of the polyline length fitted to samples on
 * both sides (one side at an end). Five samples are followed exactly; the window is wider where a
 * polynomial stays within `noise` mm of the samples, so that uneven samples give a steady direction.
 */
export function sampleDirection(run: SampleRun, at: number, noise: number): Point {
  const last = run.xs.length - 1
  let best = localDirection(run, Math.max(0, at - 2), Math.min(last, at + 2), at, 5)
  const wider = localDirection(run, Math.max(0, at - WIDE), Math.min(last, at + WIDE), at, 5)
  if (wider.miss <= noise && wider.speed > 0.5) best = wider
  if (best.speed < 1e-6) {
    const from = Math.max(0, at - 1)
    const to = Math.min(last, from + 1)
    return unit({
      x: (run.xs[to] as number) - (run.xs[from] as number),
      y: (run.ys[to] as number) - (run.ys[from] as number),
    })
  }
  return unit(best.direction)
}

/** Least squares with the powers of s below `most` (fewer where there are few samples), s scaled to about ±1. */
function localDirection(run: SampleRun, from: number, to: number, at: number, most: number) {
  const { xs, ys, lengths } = run
  const count = to - from + 1
  const terms = Math.min(most, count)
  const origin = lengths[at] as number
  const reach = Math.max(origin - (lengths[from] as number), (lengths[to] as number) - origin)
  // The sample itself is kept: the polynomial has no constant term.
  const size = terms - 1
  const width = size + 2
  const matrix = new Array<number>(size * width).fill(0)
  const powers = new Array<number>(size).fill(0)
  for (let i = from; i <= to; i++) {
    const s = ((lengths[i] as number) - origin) / reach
    let power = 1
    for (let k = 0; k < size; k++) {
      power *= s
      powers[k] = power
    }
    const dx = (xs[i] as number) - (xs[at] as number)
    const dy = (ys[i] as number) - (ys[at] as number)
    for (let r = 0; r < size; r++) {
      const w = powers[r] as number
      for (let c = 0; c < size; c++)
        matrix[r * width + c] = (matrix[r * width + c] as number) + w * (powers[c] as number)
      matrix[r * width + size] = (matrix[r * width + size] as number) + w * dx
      matrix[r * width + size + 1] = (matrix[r * width + size + 1] as number) + w * dy
    }
  }
  const solution = eliminate(matrix, size, width)
  let miss = 0
  for (let i = from; i <= to; i++) {
    const s = ((lengths[i] as number) - origin) / reach
    let x = 0
    let y = 0
    for (let k = size - 1; k >= 0; k--) {
      x = (x + (solution[2 * k] as number)) * s
      y = (y + (solution[2 * k + 1] as number)) * s
    }
    const dx = (xs[i] as number) - (xs[at] as number) - x
    const dy = (ys[i] as number) - (ys[at] as number) - y
    miss = Math.max(miss, dx * dx + dy * dy)
  }
  const direction = { x: (solution[0] as number) / reach, y: (solution[1] as number) / reach }
  return { direction, miss: Math.sqrt(miss), speed: Math.hypot(direction.x, direction.y) }
}

/** Gaussian elimination with partial pivoting on rows of `size` coefficients and two right sides; x and y interleaved. */
function eliminate(m: number[], size: number, width: number): number[] {
  const at = (r: number, c: number) => m[r * width + c] as number
  for (let k = 0; k < size; k++) {
    let pivot = k
    for (let r = k + 1; r < size; r++) if (Math.abs(at(r, k)) > Math.abs(at(pivot, k))) pivot = r
    for (let c = 0; c < width; c++) {
      const swap = at(k, c)
      m[k * width + c] = at(pivot, c)
      m[pivot * width + c] = swap
    }
    for (let r = k + 1; r < size; r++) {
      const factor = at(r, k) / at(k, k)
      for (let c = k; c < width; c++) m[r * width + c] = at(r, c) - factor * at(k, c)
    }
  }
  const solution = new Array<number>(2 * size).fill(0)
  for (let k = size - 1; k >= 0; k--) {
    for (let side = 0; side < 2; side++) {
      let sum = at(k, size + side)
      for (let c = k + 1; c < size; c++) sum -= at(k, c) * (solution[2 * c + side] as number)
      solution[2 * k + side] = sum / at(k, k)
    }
  }
  return solution
}
