import type { BodyHalf } from '../body/body.ts'
import { MEASURES, type MeasureName } from '../body/measure.ts'
import type { Choices, EaseName } from './choices.ts'
import type { MeasureRow } from './draft.ts'
import { easeFor, type UpperArm } from './ease.ts'
import { type DraftedPieces, remeasure } from './remeasure.ts'

/** Which ease is added to which measure; measures not named here are drafted as they are. */
const EASE_OF: Readonly<Partial<Record<MeasureName, EaseName>>> = {
  'neck base girth': 'neckline',
  'bust girth': 'bust',
  'waist girth': 'waist',
  'scye depth': 'armscye depth',
  'back width': 'back width',
  'front width': 'front width',
  'elbow girth': 'elbow',
  'wrist girth': 'wrist',
}

/** Every asked measure beside what the flat pattern measures, in the order in which a body is measured. */
export function measureTable(half: BodyHalf, choices: Choices, pieces: DraftedPieces, arm: UpperArm): MeasureRow[] {
  const drafted = remeasure(pieces)
  const names = Object.keys(half) as MeasureName[]
  return names.flatMap((name) => {
    const measure = half[name]
    const found = drafted[name]
    // Checks and readings that were not drafted (a girth flexed, a hand) have nothing on the flat pattern to compare.
    if (!measure || found === undefined || NOT_ASKED.has(name)) return []
    const asked = name === 'upper arm girth' ? arm : { body: measure.value, ease: easeIn(choices, name) }
    return [
      {
        name,
        side: 'both' as const,
        body: asked.body,
        ease: asked.ease,
        asked: asked.body + asked.ease,
        drafted: found,
        estimated: measure.estimated,
        ...(measure.standardError === undefined ? {} : { standardError: measure.standardError }),
        ...('from' in asked && half['upper arm girth flexed'] ? { from: asked.from } : {}),
      },
    ]
  })
}

/** Body measures that serve as checks only. */
const NOT_ASKED: ReadonlySet<MeasureName> = new Set<MeasureName>(['front neck to waist', 'armscye girth'])

function easeIn(choices: Choices, name: MeasureName): number {
  const ease = EASE_OF[name]
  return ease ? easeFor(choices, ease) : 0
}

/** Drafted half on each side: what the two halves measure together is what counts. */
const OF_TWO_HALVES: ReadonlySet<MeasureName> = new Set<MeasureName>([
  'neck base girth',
  'bust girth',
  'waist girth',
  'back width',
  'front width',
  'bust point width',
])

/**
 * One table from those of the left and the right half. What goes across the body is the sum of its two halves, each
 * told as twice itself; any other measure without sides must come out on both, so the one farther off is told; a measure
 * with sides gets a row for each where they differ.
 */
export function bothTables(left: readonly MeasureRow[], right: readonly MeasureRow[]): MeasureRow[] {
  return right.flatMap((row): MeasureRow[] => {
    const other = left.find(({ name }) => name === row.name)
    if (!other) return [{ ...row, side: 'right' }]
    if (OF_TWO_HALVES.has(row.name)) return [{ ...row, drafted: (row.drafted + other.drafted) / 2 }]
    if (!MEASURES[row.name].sided) return [missedBy(other) > missedBy(row) ? other : row]
    if (other.asked === row.asked && other.body === row.body) return [row]
    return [
      { ...other, side: 'left' },
      { ...row, side: 'right' },
    ]
  })
}

function missedBy({ asked, drafted }: MeasureRow): number {
  return Math.abs(drafted - asked)
}
