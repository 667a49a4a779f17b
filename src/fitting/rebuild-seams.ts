import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { Cubic } from '../geometry/cubic.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import type { Path } from '../geometry/path.ts'
import type { Seam } from '../pattern/piece.ts'
import { seamLength } from '../pattern/seam.ts'
import { cutPath } from './cut-path.ts'
import { type DisplaceRequest, displace } from './displace.ts'
import { type AlongMap, tableMap } from './position-map.ts'
import type { Folds } from './sample-moved.ts'
import type { SeamRun, Stretch } from './seam-run.ts'
import type { Joints } from './shift-joints.ts'
import type { ShiftProfile } from './shift-profile.ts'

/** Where a line ends at a corner or a mouth that goes its own way, it comes round to that within this length, mm. */
const FADE = 40
const SHORTEST_FADE = 10

/** The seams of a run after a shift, only those that changed, and where their places went. */
export interface RebuiltSeams {
  readonly seams: ReadonlyMap<string, Seam>
  readonly maps: ReadonlyMap<string, AlongMap>
}

/** Draws the seams of the run again: the moved spans refitted, everything else the same objects. */
export function rebuildSeams(
  run: SeamRun,
  shift: ShiftProfile,
  joints: Joints,
  tolerance: number,
): Result<RebuiltSeams> {
  const seams = new Map<string, Seam>()
  const maps = new Map<string, AlongMap>()
  for (const seam of run.seams) {
    const table = new Table()
    const parts: Path[] = []
    let changed = false
    for (let part = 0; part < seam.parts.length; part++) {
      const path: Cubic[] = []
      let partChanged = false
      for (let i = 0; i < run.stretches.length; i++) {
        const stretch = run.stretches[i] as Stretch
        if (stretch.seam !== seam.id || stretch.part !== part) continue
        const redrawn = redraw(stretch, shift, joints.extras[i] ?? {}, tolerance)
        if (!redrawn.ok) return failure(foldsOver(run, stretch, redrawn.folds))
        if (redrawn.changed) partChanged = true
        append(path, redrawn.pieces)
        table.add(redrawn.old, redrawn.now, run.seamStarts.get(seam.id) as number)
      }
      parts.push(partChanged ? path : (seam.parts[part] as Path))
      changed ||= partChanged
    }
    if (!changed) continue
    const next = { ...seam, parts }
    seams.set(seam.id, next)
    maps.set(seam.id, table.map(run.seamLengths.get(seam.id) as number, seamLength(next)))
  }
  return success({ seams, maps })
}

/** A part of a redrawn stretch: untouched cubics, or moved ones whose ends give way to untouched neighbours. */
interface Drawn {
  readonly path: Path
  readonly moved: boolean
}

interface Redrawn {
  readonly ok: true
  readonly pieces: readonly Drawn[]
  readonly changed: boolean
  /** Run positions, and mm from the stretch's start now. */
  readonly old: readonly number[]
  readonly now: readonly number[]
}

function redraw(
  stretch: Stretch,
  shift: ShiftProfile,
  extra: { readonly start?: { x: number; y: number }; readonly end?: { x: number; y: number } },
  tolerance: number,
): Redrawn | { readonly ok: false; readonly folds: Folds['folds'] } {
  const end = stretch.start + stretch.length
  const pieces: Drawn[] = []
  const old: number[] = [stretch.start]
  const now: number[] = [0]
  let at = stretch.start
  let length = 0
  const keepTo = (to: number) => {
    if (to - at <= SAME_POINT) return
    const whole = at === stretch.start && to === end
    const path = whole ? stretch.path : cutPath(stretch.path, at - stretch.start, to - stretch.start)
    pieces.push({ path, moved: false })
    length += to - at
    old.push(to)
    now.push(length)
    at = to
  }
  let changed = false
  for (const interval of shift.active) {
    const from = Math.max(interval.from, stretch.start)
    const to = Math.min(interval.to, end)
    if (to - from <= SAME_POINT) continue
    changed = true
    keepTo(from)
    const atStart = from - stretch.start <= SAME_POINT
    const atEnd = end - to <= SAME_POINT
    const path = atStart && atEnd ? stretch.path : cutPath(stretch.path, from - stretch.start, to - stretch.start)
    const request: DisplaceRequest = {
      path,
      start: from,
      length: to - from,
      ...(atStart && extra.start ? { startExtra: extra.start } : {}),
      ...(atEnd && extra.end ? { endExtra: extra.end } : {}),
      fade: fadeLength(shift, from, to),
    }
    const moved = displace(request, shift.profile, tolerance)
    if ('folds' in moved) return { ok: false, folds: moved.folds }
    pieces.push({ path: moved.path, moved: true })
    for (let i = 1; i < moved.old.length; i++) {
      old.push(moved.old[i] as number)
      now.push(length + (moved.now[i] as number))
    }
    length += moved.now[moved.now.length - 1] as number
    at = to
  }
  keepTo(end)
  return { ok: true, pieces, changed, old, now }
}

/** As long as may be without reaching another node, where the amount is promised. */
function fadeLength({ profile }: ShiftProfile, from: number, to: number): number {
  const nearest = profile.nodes.reduce((least, { at }) => {
    const away = Math.min(Math.abs(at - from), Math.abs(at - to))
    return away > SAME_POINT && at > from && at < to ? Math.min(least, away) : least
  }, FADE)
  return Math.min(to - from, Math.max(nearest, SHORTEST_FADE))
}

/** Puts cubics end to end; where a moved cubic meets an untouched one, the moved one takes over its very point. */
function append(path: Cubic[], pieces: readonly Drawn[]): void {
  pieces.forEach(({ path: cubics, moved }, index) => {
    const after = pieces[index + 1]
    cubics.forEach((c, k) => {
      const before = path[path.length - 1]
      const p0 = moved && before ? before.p3 : c.p0
      const p3 = moved && k === cubics.length - 1 && after && !after.moved ? (after.path[0] as Cubic).p0 : c.p3
      path.push(p0 === c.p0 && p3 === c.p3 ? c : { ...c, p0, p3 })
    })
  })
}

/** Old and new positions along one seam, gathered stretch by stretch. */
class Table {
  private readonly old: number[] = []
  private readonly now: number[] = []
  private length = 0

  add(old: readonly number[], now: readonly number[], seamStart: number): void {
    const base = this.length
    for (let i = 0; i < old.length; i++) {
      const from = (old[i] as number) - seamStart
      const last = this.old[this.old.length - 1]
      if (last !== undefined && from <= last + 1e-9) continue
      this.old.push(Math.max(0, from))
      this.now.push(base + (now[i] as number))
    }
    this.length = base + (now[now.length - 1] as number)
  }

  map(oldLength: number, newLength: number): AlongMap {
    // Sums of short arcs miss the whole by rounding only; ends must be ends exactly.
    this.old[this.old.length - 1] = oldLength
    this.now[this.now.length - 1] = newLength
    return tableMap(this.old, this.now)
  }
}

function foldsOver(run: SeamRun, stretch: Stretch, folds: Folds['folds']): Problem {
  return {
    code: 'shift-folds-over',
    where: { piece: run.piece.id, seam: stretch.seam },
    actual: `${Math.abs(folds.amount).toFixed(1)} mm where the ${stretch.seam} has a radius of ${folds.radius.toFixed(1)} mm`,
    expected: `less than ${(0.9 * folds.radius).toFixed(1)} mm there, so that the line does not fold over itself`,
    hint: 'take a smaller amount, or taper to nothing before the tight curve',
  }
}
