import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { crossings } from '../geometry/crossings.ts'
import { alongOf, nearestParameter } from '../geometry/nearest.ts'
import { endOf, startOf } from '../geometry/path.ts'
import type { Line } from '../pattern/piece.ts'
import { baseName } from '../pattern/side-names.ts'
import { mayReach } from './may-reach.ts'
import { type NamedPlace, namedPlaces } from './named-places.ts'
import type { Half, SeamPlace } from './position.ts'
import type { SeamPosition } from './position-map.ts'
import { type SeamRun, seamPosition } from './seam-run.ts'

/** A balance line whose end is this near to a seam meets it, mm. */
const MEETS = 0.05

/** Two places nearer than this are one, mm. */
const SAME = 0.05

/** Where a place lies on one run: run positions, none where the run has no such place. */
export function placeOnRun(place: SeamPlace, run: SeamRun): number[] {
  return distinct(candidates(place, run)).filter((at) => place.half === undefined || halfAt(run, at, place.half))
}

/**
 * Where a place lies on the runs of one seam name, as positions on the pattern the runs were taken from. Problems:
 * no run has such a place, or one side of the body has it and the other has not (the hint lists what there is); or it
 * lies beyond the end of the seam.
 */
export function resolvePlace(place: SeamPlace, runs: readonly SeamRun[], seam: string): Result<SeamPosition[]> {
  const found = runs.flatMap((run) => placeOnRun(place, run).map((at) => ({ run, at })))
  if (found.length === 0) return failure(unknownPlace(place, runs, seam))
  const names = new Set(found.map(({ run }) => nameOfBoth(run)))
  const without = runs.find((run) => names.has(nameOfBoth(run)) && !found.some((one) => one.run === run))
  if (without) return failure(unknownPlace(place, [without], seam))
  const off = found.find(({ run, at }) => at < -SAME || at > run.length + SAME)
  if (off) return failure(offSeam(place, off.run, seam))
  return success(found.map(({ run, at }) => seamPosition(run, Math.min(Math.max(at, 0), run.length))))
}

/** The same for a line of the left side and its partner on the right. */
function nameOfBoth({ piece, seams }: SeamRun): string {
  return [piece.id, ...seams.map(({ id }) => id).sort()].map(baseName).join()
}

function candidates(place: SeamPlace, run: SeamRun): number[] {
  if ('landmark' in place) return named(run, place.landmark)
  if ('line' in place) return lineMeets(run, place.line)
  if ('between' in place) {
    const [a, b] = place.between
    return pairs(named(run, a), named(run, b)).map(([from, to]) => from + (to - from) * place.share)
  }
  return pairs(named(run, place.from), named(run, place.toward)).map(
    ([from, to]) => from + Math.sign(to - from) * place.distance,
  )
}

function named(run: SeamRun, name: string): number[] {
  return namedPlaces(run)
    .filter((place) => place.name === name)
    .map((place) => place.at)
}

/** From each first place to the second places next to it, without another of either between. */
function pairs(from: readonly number[], to: readonly number[]): [number, number][] {
  const all = [...from, ...to]
  return from.flatMap((a) =>
    to
      .filter((b) => Math.abs(a - b) > SAME)
      .filter((b) => !all.some((c) => c > Math.min(a, b) + SAME && c < Math.max(a, b) - SAME))
      .map((b): [number, number] => [a, b]),
  )
}

/** Where a balance line of the piece meets the run. */
function lineMeets(run: SeamRun, name: string): number[] {
  const lines = run.piece.lines.filter((line) => baseName(line.id) === name)
  return lines.flatMap((line) =>
    run.stretches.flatMap((stretch) => meets(line, stretch.path).map((at) => stretch.start + at)),
  )
}

function meets(line: Line, path: SeamRun['stretches'][number]['path']): number[] {
  const across = crossings(line.path, path).crossings.map((crossing) => alongOf(path, crossing.b))
  const ends = [startOf(line.path), endOf(line.path)].flatMap((end) => {
    if (!mayReach(path, end, MEETS)) return []
    const near = nearestParameter(path, end)
    return near.distance <= MEETS ? [alongOf(path, near)] : []
  })
  return distinct([...across, ...ends])
}

function distinct(places: readonly number[]): number[] {
  const sorted = [...places].sort((a, b) => a - b)
  return sorted.filter((at, i) => i === 0 || at - (sorted[i - 1] as number) > SAME)
}

/** Whether a place of a run lies on the front or the back half: of the cap, or of the bodice. */
function halfAt(run: SeamRun, at: number, half: Half): boolean {
  const ids = run.seams.filter((seam) => {
    const start = run.seamStarts.get(seam.id) as number
    const end = start + (run.seamLengths.get(seam.id) as number)
    return at > start - SAME && at < end + SAME
  })
  return [run.piece.id, ...ids.map((seam) => seam.id)].some((id) => id.split(' ').includes(half))
}

/** A place in the words of the performer file. */
export function sayPlace(place: SeamPlace, sayLength: (mm: number) => string): string {
  const half = place.half === undefined ? '' : `, ${place.half}`
  if ('landmark' in place) return `${place.landmark}${half}`
  if ('line' in place) return `${place.line}${half}`
  if ('between' in place) {
    const [a, b] = place.between
    const share = Math.round(place.share * 100)
    return share === 50 ? `halfway from ${a} to ${b}${half}` : `${share} % of the way from ${a} to ${b}${half}`
  }
  // Nearer than a tape can say it is at the name itself.
  if (/^0 /.test(sayLength(place.distance))) return `${place.from}${half}`
  return `${sayLength(place.distance)} from ${place.from} toward ${place.toward}${half}`
}

function unknownPlace(place: SeamPlace, runs: readonly SeamRun[], seam: string): Problem {
  const names = new Set(runs.flatMap((run) => namedPlaces(run).map(({ name }: NamedPlace) => name)))
  const lines = new Set(
    runs.flatMap((run) => run.piece.lines.map((l) => baseName(l.id)).filter((name) => lineMeets(run, name).length > 0)),
  )
  return {
    code: 'unknown-place',
    where: { ...(runs[0] ? { piece: runs[0].piece.id } : {}), seam },
    actual: `"${sayPlace(place, (mm) => `${mm.toFixed(1)} mm`)}", which is not on the ${seam}`,
    expected: `a place on the ${seam}: ${[...names].join(', ')}`,
    hint:
      lines.size === 0
        ? 'use one of these names, or measure from one toward another'
        : `use one of these names, or a line that meets it: ${[...lines].join(', ')}`,
  }
}

function offSeam(place: SeamPlace, run: SeamRun, seam: string): Problem {
  return {
    code: 'place-off-seam',
    where: { piece: run.piece.id, seam },
    actual: `"${sayPlace(place, (mm) => `${mm.toFixed(1)} mm`)}", beyond the end of the ${seam}`,
    expected: `a place within the ${run.length.toFixed(1)} mm of the seam`,
    hint: 'measure a shorter distance, or from another place',
  }
}
