import { cos, sin } from '../base/trig.ts'
import type { MeasureName } from './measure.ts'

/** The narrowest armscye between the width lines, mm: common practice. */
export const NARROWEST_ARMSCYE = 70

/** Looks up a measure of the half that is being completed: given, or estimated before; mm or radians. */
export type Known = (name: MeasureName) => number | undefined

interface Range {
  readonly least: number
  readonly most: number
}

/**
 * The range in which an estimate goes with the other measures, so that estimates never make a body that cannot be
 * drafted: mm or radians; undefined where anything goes. Shares without a source are our own, wide of every body of
 * the survey and of ASTM D5585-95 (from memory).
 */
export function rangeTogether(name: MeasureName, known: Known): Range | undefined {
  const share = (of: MeasureName, least: number, most: number): Range => {
    const value = known(of) as number
    return { least: least * value, most: most * value }
  }
  switch (name) {
    case 'shoulder slope':
      return { least: (12 * Math.PI) / 180, most: (32 * Math.PI) / 180 }
    case 'neck base girth':
      return share('bust girth', 0.28, 0.52)
    case 'shoulder length':
      return share('bust girth', 0.09, 0.2)
    case 'scye depth':
      return scyeDepth(known)
    case 'back width':
      return backWidth(known)
    case 'front width':
      return frontWidth(known)
    case 'neck to bust point':
      return toBustPoint(known)
    case 'bust point width':
      return share('front width', 0.4, 0.66)
    case 'elbow girth':
      return elbow(known)
    case 'wrist girth':
      return { least: 0.38 * (known('upper arm girth') as number), most: wristMost(known) }
    case 'hand girth':
      return { least: 1.05 * (known('wrist girth') as number), most: Infinity }
    case 'shoulder to elbow':
      return share('outer arm length', 0.5, 0.66)
    default:
      return undefined
  }
}

/**
 * The armscye into which a sleeve just sets with a cap of a fifth of it and 6 % of ease, mm: `perWidth` of the sleeve's
 * width and `room` of what the widths leave of the bust, at least `least` of the width. A narrow, deep armscye has to be
 * longer. A line through caps on 287 bodies of the survey, 0.013 of the width off (tests/body/together.test.ts).
 */
const SETS_IN = { perWidth: 1.182, room: -0.236, least: 1.03 } as const
/** Ease of a close fit over a relaxed arm and over a flexed one, mm. */
const ARM_EASE = { relaxed: 50, flexed: 25 } as const

/** Deep enough for the arm: the armscye that it brings takes the sleeve's width in a cap of a fifth of its length. */
function scyeDepth(known: Known): Range {
  const waist = known('back waist length') as number
  const sleeve = Math.max(
    (known('upper arm girth') as number) + ARM_EASE.relaxed,
    (known('upper arm girth flexed') ?? 0) + ARM_EASE.flexed,
  )
  const needed = Math.max(SETS_IN.perWidth * sleeve + SETS_IN.room * roomOf(known), SETS_IN.least * sleeve)
  const least = (needed - draftedArmscye(known, 0)) / ARMSCYE_LINE.scyeDepth
  return { least: Math.max(0.38 * waist, least), most: 0.62 * waist }
}

/**
 * The drafted armscye, front and back, of a close fit, mm, as a line through drafts of the survey's bodies, each once with
 * all that the survey has and once with what is required only (n = 3,992, 4.5 mm off; tests/body/together.test.ts draws
 * it again). `drop` is how far the shoulder point lies below the side of the neck, `reach` how far outside the back width.
 */
const ARMSCYE_LINE = { plus: 49.7, scyeDepth: 2.046, room: 0.379, drop: -1.958, reach: 0.521 } as const

export function draftedArmscye(known: Known, scyeDepth: number): number {
  const at = (name: MeasureName) => known(name) as number
  const { plus, scyeDepth: perScye, room, drop, reach } = ARMSCYE_LINE
  const shoulder = at('shoulder length')
  const slope = at('shoulder slope')
  return (
    plus +
    perScye * scyeDepth +
    room * roomOf(known) +
    drop * shoulder * sin(slope) +
    reach * (at('neck base girth') / 5.5 + shoulder * cos(slope) - at('back width') / 2)
  )
}

/** What back and front width leave of the bust: both armscyes, mm. */
function roomOf(known: Known): number {
  return (known('bust girth') as number) - (known('back width') as number) - (known('front width') as number)
}

/** What back and front width may have together: the rest of the bust is the two armscyes. */
function widthsMost(known: Known): number {
  return (known('bust girth') as number) - 2 * NARROWEST_ARMSCYE
}

function backWidth(known: Known): Range {
  const front = known('front width')
  const most = front === undefined ? widthsMost(known) / 1.933 : widthsMost(known) - front
  return { least: 0, most }
}

function frontWidth(known: Known): Range {
  return { least: 0, most: widthsMost(known) - (known('back width') as number) }
}

/** Below the underarm level, above the waist. */
function toBustPoint(known: Known): Range {
  const front = known('front waist length')
  const most = front === undefined ? 0.7 * (known('back waist length') as number) : front - 90
  return { least: Math.min((known('scye depth') as number) + 25, most), most }
}

function elbow(known: Known): Range {
  return { least: 1.1 * (known('wrist girth') ?? 0), most: 1.1 * (known('upper arm girth') as number) }
}

function wristMost(known: Known): number {
  return Math.min(0.85 * (known('elbow girth') ?? Infinity), 0.98 * (known('hand girth') ?? Infinity))
}
