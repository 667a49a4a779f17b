import type { Work } from './bench-case.ts'

export interface TimingOptions {
  /** Each is run this long before anything is counted, ms. */
  readonly warmUp?: number
  /** Then the rounds take about this long, ms; there are 9 to 61 of them. */
  readonly budget?: number
  /** The work does another thing in each of so many calls: every call is timed by itself, each of them as often. */
  readonly oneByOne?: number
}

// One timing takes at least about this long, ms, for the clock has microseconds.
const SAMPLE = 2

/**
 * The processor time of one call of each work in ms, round by round. In every round each is timed once, the first of
 * them a different one each time: whatever else the machine does slows all of them alike, and a ratio taken within a
 * round, or a median over the rounds, hardly notices. Processor time, not the clock's: waiting for others is no cost.
 */
export function timeSideBySide(works: readonly Work[], options: TimingOptions = {}): number[][] {
  const { warmUp = 500, budget = 1500, oneByOne } = options
  const once = works.map((work) => warmedUp(work, warmUp))
  const repeats = once.map((time) => (oneByOne === undefined ? Math.max(1, Math.round(SAMPLE / time)) : 1))
  const round = once.reduce((sum, time, k) => sum + time * (repeats[k] as number), 0)
  const fitting = Math.min(61, Math.max(9, Math.floor(budget / round)))
  const rounds = oneByOne === undefined ? fitting : oneByOne * Math.max(3, Math.floor(budget / round / oneByOne))
  const times = works.map((): number[] => [])
  for (let n = 0; n < rounds; n++) {
    for (let k = 0; k < works.length; k++) {
      const which = (k + n) % works.length
      const count = repeats[which] as number
      times[which]?.push(timeOf(works[which] as Work, count) / count)
    }
  }
  return times
}

/** The middle one, or the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  const upper = sorted[middle] as number
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2
}

/** Runs the work for that long; the time of a call in the second half of it. */
function warmedUp(work: Work, duration: number): number {
  let used = 0
  let late = 0
  let calls = 0
  do {
    const time = Math.max(1e-4, timeOf(work, 1))
    used += time
    if (used < duration / 2) continue
    late += time
    calls++
  } while (used < duration)
  return late / calls
}

/** The processor time of so many calls, ms. */
function timeOf(work: Work, count: number): number {
  const start = process.cpuUsage()
  let sum = 0
  for (let k = 0; k < count; k++) sum += work()
  const { user, system } = process.cpuUsage(start)
  if (!Number.isFinite(sum)) throw new Error('a work of the bench made something that is no number')
  return (user + system) / 1000
}
