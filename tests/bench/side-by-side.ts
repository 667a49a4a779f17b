import type { Work } from './bench-case.ts'

export interface TimingOptions {
  /** Each is run this long before anything is counted, ms. */
  readonly warmUp?: number
  /** Then the rounds take about this long, ms; there are 9 to 61 of them. */
  readonly budget?: number
  /** The work does another thing in each of so many calls: every call is timed by itself, each of them as often. */
  readonly oneByOne?: number
  /** The work waits for processes of its own, whose time is not this one's: the clock's is taken. */
  readonly elsewhere?: boolean
}

// One timing takes at least about this long, ms, for the clock has microseconds.
const SAMPLE = 2

/**
 * The processor time of one call of each work in ms, round by round. In every round each is timed once, the first of
 * them a different one each time: whatever else the machine does slows all of them alike, and a ratio taken within a
 * round, or a median over the rounds, hardly notices. Processor time, not the clock's: waiting for others is no cost.
 */
export function timeSideBySide(works: readonly Work[], options: TimingOptions = {}): number[][] {
  const { warmUp = 500, budget = 1500, oneByOne, elsewhere = false } = options
  const now = elsewhere ? elapsed : used
  const timeOf = (work: Work, count: number) => timed(work, count, now)
  const once = works.map((work) => warmedUp((count) => timeOf(work, count), warmUp))
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
function warmedUp(time: (count: number) => number, duration: number): number {
  let spent = 0
  let late = 0
  let calls = 0
  do {
    const once = Math.max(1e-4, time(1))
    spent += once
    if (spent < duration / 2) continue
    late += once
    calls++
  } while (spent < duration)
  return late / calls
}

/** The time of so many calls, ms. */
function timed(work: Work, count: number, now: () => number): number {
  const start = now()
  let sum = 0
  for (let k = 0; k < count; k++) sum += work()
  const end = now()
  if (!Number.isFinite(sum)) throw new Error('a work of the bench made something that is no number')
  return end - start
}

function used(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

function elapsed(): number {
  return performance.now()
}
