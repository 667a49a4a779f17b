import { atan2 } from '../base/trig.ts'
import { arcLength } from '../geometry/arc-length.ts'
import { type Cubic, curvatureAt } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import { tangentAt } from '../geometry/path-length.ts'
import { turnBetween } from '../geometry/point.ts'
import { cutPath } from './cut-path.ts'
import type { Profile } from './profile.ts'
import { shortArc } from './short-arc.ts'

/** Distance of samples, mm. */
const STEP = 0.5

/** A line by samples: where they lie, how it bends there and how far it has turned since its start. */
export interface TurnedLine {
  readonly at: readonly number[]
  readonly curvature: readonly number[]
  /** Direction turned through since the start, radians, anticlockwise positive. */
  readonly turned: readonly number[]
}

/** The first `length` mm of a path by samples: enough to tell what a shift by a profile would make of it. */
export function turnedLine(path: Path, length: number): TurnedLine {
  const at: number[] = []
  const curvature: number[] = []
  const turned: number[] = []
  let sum = 0
  let angle = 0
  let before: { x: number; y: number } | undefined
  for (const c of cutPath(path, 0, length)) {
    const steps = Math.max(4, Math.ceil(arcLength(c) / STEP))
    for (let i = 0; i <= steps; i++) {
      if (i > 0) sum += shortArc(c, (i - 1) / steps, i / steps)
      const t = i / steps
      const tangent = tangentAt(c, t)
      if (before) angle += turnBetween(before, tangent)
      before = tangent
      at.push(sum)
      curvature.push(bendAt(c, t))
      turned.push(angle)
    }
  }
  return { at, curvature, turned }
}

function bendAt(c: Cubic, t: number): number {
  return curvatureAt(c, Math.min(1 - 1e-6, Math.max(1e-6, t)))
}

/** How fast the shifted line runs along and across the old one at a sample, mm per mm. */
export function velocity(profile: Profile, at: number, curvature: number): { along: number; across: number } {
  return { along: 1 + curvature * profile.amount(at), across: profile.slope(at) }
}

/** The direction of the line after a shift by the profile at a sample, radians since the old line's start. */
export function shiftedTurn(line: TurnedLine, profile: Profile, i: number): number {
  const { along, across } = velocity(profile, line.at[i] as number, line.curvature[i] as number)
  // The outward normal lies clockwise of the line: a rising profile turns the line clockwise.
  return (line.turned[i] as number) - atan2(across, along)
}

/** The same at all its samples. */
export function shiftedTurns(line: TurnedLine, profile: Profile): number[] {
  return line.at.map((_, i) => shiftedTurn(line, profile, i))
}

/** How often the directions change between turning one way and the other, turns below `unseen` radians left out. */
export function turnChanges(directions: readonly number[], unseen: number): number {
  let extreme = directions[0] ?? 0
  let way = 0
  let changes = 0
  for (const direction of directions) {
    const turn = direction - extreme
    if (way === 0) {
      if (Math.abs(turn) <= unseen) continue
      way = Math.sign(turn)
      extreme = direction
    } else if (turn * way > 0) extreme = direction
    else if (Math.abs(turn) > unseen) {
      changes++
      way = -way
      extreme = direction
    }
  }
  return changes
}
