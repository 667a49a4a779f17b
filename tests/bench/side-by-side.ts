import type { Work } from './bench-case.ts'

export interface TimingOptions {
  /** Each is run this long before anything is counted, ms. */
  readonly warmUp?: number
  readonly rounds?: number
  /** The work is repeated until one timing takes about this long, ms; 0: every call is timed by itself. */
  readonly sample?: number
}

/**
 * The processor time of one call of each work in ms, round by round. In every round each is timed once, the first of
 * them a different one each time: whatever else the machine does slows all of them alike, and a ratio taken within a
 * round, or a median over the rounds, hardly notices. Processor time, not the clock's: waiting for others is no cost.
 */
export function timeSideBySide(works: readonly Work[], options: TimingOptions = {}): number[][] {
  const { warmUp = 300, rounds = 61, sample = 2 } = options
  const repeats = works.map((work) => {
    const calls = callsWithin(work, warmUp)
    return sample === 0 ? 1 : Math.max(1, Math.round((calls * sample) / warmUp))
  })
  const times = works.map((): number[] => [])
  for (let round = 0; round < rounds; round++) {
    for (let k = 0; k < works.length; k++) {
      const which = (k + round) % works.length
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

function callsWithin(work: Work, duration: number): number {
  let calls = 0
  for (let used = 0; used < duration; calls += 1) used += Math.max(0.001, timeOf(work, 1))
  return calls
}

function timeOf(work: Work, count: number): number {
  const start = process.cpuUsage()
  let sum = 0
  for (let k = 0; k < count; k++) sum += work()
  const { user, system } = process.cpuUsage(start)
  if (!Number.isFinite(sum)) throw new Error('a work of the bench made something that is no number')
  return (user + system) / 1000
}
