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
 * Deep enough for the arm: a drafted armscye is about 60 + 1.21 · scye depth + 0.51 · (bust − both widths) mm round
 * (close fit; fitted to drafts of all bodies of the survey, 2.6 mm off), and it takes 1.066 of the sleeve's width, the
 * arm and 50 mm, to set in a cap of a fifth of its length.
 */
function scyeDepth(known: Known): Range {
  const waist = known('back waist length') as number
  const arm = Math.max(known('upper arm girth') as number, (known('upper arm girth flexed') ?? 0) - 25)
  const width = (known('bust girth') as number) - (known('back width') as number) - (known('front width') as number)
  const most = 0.62 * waist
  return { least: Math.max(0.38 * waist, (1.066 * (arm + 50) - 60 - 0.51 * width) / 1.21), most }
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
