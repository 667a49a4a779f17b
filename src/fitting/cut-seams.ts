import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { endOf, movePath, type Path, startOf } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'
import type { Move } from '../geometry/transform.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { type CutLine, closeCut } from './close-cut.ts'
import { cutPath } from './cut-path.ts'
import type { PartLengths, PartPlace, SeamPoint } from './outline-places.ts'
import { tableMap } from './position-map.ts'
import type { ReplacedSeam } from './replace-seams.ts'
import { withStart } from './weld-seams.ts'

/**
 * What becomes of the stitching line where it was cut: drawn again over `blend` mm on both sides, or a dart opens. A line
 * whose sides only turned against each other keeps its length and the corner there, unless it is to be `smooth`.
 */
export type CutEnd = { readonly blend: number; readonly smooth?: boolean } | 'dart'

/** A part of a piece, cut out along straight lines, that moves rigidly while the rest stays. */
export interface Region {
  /** It lies along the outline, anticlockwise, from one place to another. */
  readonly from: SeamPoint
  readonly to: SeamPoint
  /** Corners of the cut inside the piece, from `to` back to `from`. */
  readonly inside: readonly Point[]
  /** Share 0 leaves everything where it is, 1 is the whole move; between, as the seam is to be eased in. */
  readonly move: (share: number) => Move
  readonly fromEnd: CutEnd
  readonly toEnd: CutEnd
}

/** A stretch of one part of a seam that moves as one. */
export interface Fragment {
  readonly from: number
  readonly to: number
  /** Index of its region; −1 stays. */
  readonly region: number
}

export function pieceOfPart(part: Path, { from, to }: Fragment, length: number): Path {
  return from <= 0 && to >= length ? part : cutPath(part, from, to)
}

/** Where the arc of a region begins and ends. */
export interface Ends {
  readonly from: PartPlace
  readonly to: PartPlace
}

/** For each part of each seam, its stretches between cuts and the region each belongs to. */
export function fragmentsOf(piece: Piece, lengths: PartLengths, ends: readonly Ends[]): Fragment[][][] {
  const places = ends.flatMap(({ from, to }) => [from, to])
  const fragments = piece.seams.map((seam, s) =>
    seam.parts.map((_, p): Fragment[] => {
      const length = lengths[s]?.[p] as number
      const cuts = places.filter((c) => c.seam === s && c.part === p).map((c) => c.within)
      const at = [...new Set([0, ...cuts, length])].sort((a, b) => a - b)
      return at.slice(1).map((to, i) => ({ from: at[i] as number, to, region: -1 }))
    }),
  )
  const flat = fragments.flatMap((parts, s) => parts.flatMap((list, p) => list.map((f, k) => ({ s, p, k, f }))))
  ends.forEach(({ from, to }, region) => {
    const first = flat.findIndex(({ s, p, f }) => s === from.seam && p === from.part && f.from === from.within)
    if (first < 0) throw new RangeError('a region begins nowhere on the outline')
    for (let i = 0; i < flat.length; i++) {
      const { s, p, k, f } = flat[(first + i) % flat.length] as (typeof flat)[number]
      const list = fragments[s]?.[p] as Fragment[]
      if ((list[k] as Fragment).region >= 0) throw new RangeError('two regions of a piece overlap')
      list[k] = { ...f, region }
      if (s === to.seam && p === to.part && f.to === to.within) return
    }
    throw new RangeError('a region ends nowhere on the outline')
  })
  return fragments
}

/** A seam made whole again after its stretches moved; undefined where none did. Problem: too short for what a cut takes out. */
export function rebuildCut(
  piece: Piece,
  seam: Seam,
  index: number,
  lengths: PartLengths,
  fragments: readonly (readonly (readonly Fragment[])[])[],
  ends: readonly Ends[],
  regions: readonly Region[],
): Result<ReplacedSeam | undefined> {
  const all = (fragments[index] ?? []).flat()
  if (all.every((f) => f.region < 0)) return success(undefined)
  const parts: Path[] = []
  const old: number[] = [0]
  const now: number[] = [0]
  let oldStart = 0
  let nowStart = 0
  const add = (path: Path, oldTable: readonly number[], nowTable: readonly number[]) => {
    const before = parts[parts.length - 1]
    if (before !== undefined && distance(endOf(before), startOf(path)) < 1e-6)
      parts[parts.length - 1] = [...before, ...withStart(path, endOf(before))]
    else parts.push(path)
    oldTable.forEach((x, i) => {
      if (i === 0) return
      old.push(oldStart + x)
      now.push(nowStart + (nowTable[i] as number))
    })
    oldStart += oldTable[oldTable.length - 1] as number
    nowStart += nowTable[nowTable.length - 1] as number
  }
  for (const [p, part] of seam.parts.entries()) {
    const list = fragments[index]?.[p] ?? []
    const length = lengths[index]?.[p] as number
    let from = 0
    for (let k = 0; k < list.length; k++) {
      const f = list[k] as Fragment
      const following = list[k + 1]
      const cut = following && cutBetween(f, following, { seam: index, part: p, within: f.to }, regions, ends)
      // A cut that is drawn again takes the stretches on both of its sides together.
      if (cut && cut.end !== 'dart' && (cut.end.smooth || !cut.joined(part))) {
        // Where the stretch after the cut ends in another one, each gets half of it.
        const shared = list[k + 2] !== undefined
        const to = shared ? (following.from + following.to) / 2 : following.to
        const request: CutLine = {
          path: pieceOfPart(part, { from, to, region: -1 }, length),
          at: f.to - from,
          shares: cut.shares,
          move: cut.move,
          blend: cut.end.blend,
        }
        const closed = closeCut(request)
        if ('taken' in closed) return failure(tooShort(piece, seam, closed.taken, closed.room))
        add(closed.path, closed.old, closed.now)
        from = to
        if (!shared) k++
        continue
      }
      const path = moved(pieceOfPart(part, { ...f, from }, length), f, regions)
      add(path, [0, f.to - from], [0, f.to - from])
      from = f.to
    }
  }
  return success({ seam: { ...seam, parts }, map: tableMap(...increasing(old, now)) })
}

function moved(path: Path, { region }: Fragment, regions: readonly Region[]): Path {
  return region < 0 ? path : movePath(path, (regions[region] as Region).move(1))
}

/** What happens where two stretches of a part meet that move differently. */
function cutBetween(a: Fragment, b: Fragment, at: PartPlace, regions: readonly Region[], ends: readonly Ends[]) {
  if (a.region === b.region) return undefined
  const here = (place: PartPlace) =>
    place.seam === at.seam && place.part === at.part && Math.abs(place.within - at.within) < 1e-9
  const starts = b.region >= 0 && here((ends[b.region] as Ends).from) ? regions[b.region] : undefined
  const stops = a.region >= 0 && here((ends[a.region] as Ends).to) ? regions[a.region] : undefined
  const end = starts?.fromEnd ?? stops?.toEnd
  if (end === undefined) throw new RangeError('a region ends where nothing was cut')
  const moving = (starts ?? stops) as Region
  const one = (f: Fragment): Move => (f.region < 0 ? (p) => p : (regions[f.region] as Region).move(1))
  return {
    end,
    move: moving.move,
    shares: (starts ? [0, 1] : [1, 0]) as [number, number],
    joined: (part: Path) => {
      const p = at.within <= 0 ? startOf(part) : endOf(cutPath(part, 0, at.within))
      return distance(one(a)(p), one(b)(p)) < 1e-9
    },
  }
}

function increasing(old: readonly number[], now: readonly number[]): [number[], number[]] {
  const kept = old.map((x, i) => i === 0 || x > (old[i - 1] as number) + 1e-9)
  return [old.filter((_, i) => kept[i]), now.filter((_, i) => kept[i])]
}

function tooShort(piece: Piece, seam: Seam, taken: number, room: number): Problem {
  return {
    code: 'seam-too-short',
    where: { piece: piece.id, seam: seam.id },
    actual: `${taken.toFixed(1)} mm to take out of ${room.toFixed(1)} mm of ${seam.id} between its corners and darts`,
    expected: 'at most a third of the seam there',
    hint: 'take a smaller amount, or cut farther from the next corner or dart',
  }
}
