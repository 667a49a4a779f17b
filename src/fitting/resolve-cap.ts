import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { CAP } from '../drafting/defaults.ts'
import type { Join, Pattern } from '../pattern/pattern.ts'
import { pieceOf } from '../pattern/seam.ts'
import { lineOf } from '../pattern/sewn-line.ts'
import { bendSeams } from './bend-seams.ts'
import { bentBack } from './cap-fairness.ts'
import { capJoin, easeOf } from './cap-joins.ts'
import { type CapLine, capLine } from './cap-line.ts'
import { holdMatchPoints } from './hold-match-points.ts'
import { crownBends } from './move-crown.ts'
import { type OperationResult, unchanged } from './operation.ts'
import { sleeveFigures } from './sleeve-figures.ts'
import { solveCrown } from './solve-crown.ts'
import { walkCapNotches } from './walk-cap-notches.ts'

/** The ease that a cap is to have. */
export interface ResolveCapOptions {
  /** The sleeve. */
  readonly piece: string
  /** Wanted ease of the front and of the back cap over its armscye, mm. */
  readonly front: number
  /** Wanted ease of the back cap over its armscye, mm. */
  readonly back: number
}

/** A half that needs to change by less than this is right already, mm: the draft's own residual is below it. */
const RIGHT = 1e-5

/**
 * Draws a cap again so that front and back have the wanted ease over the armscyes as they now are. The underarm parts
 * (38 mm a side), the underarm points and with them the biceps width stay as they are; the unknowns are where the crown
 * goes, up or down and to front or back; the present cap is bent after it by the smoothest displacement there is
 * (`crownBends`), so that let-outs and hollows of earlier fittings stay in it. The shoulder notch moves with the crown,
 * a turn of the sleeve keeps its distance from the crown, and the other notches are walked again from the underarm.
 * Both eases are met to 1e-6 mm. A cap that matches already is left alone: the same pattern.
 *
 * Problems: a sleeve that is not sewn in, no such cap, one lower than is accepted, one that would bend back.
 */
export function resolveCap(pattern: Pattern, { piece: id, front, back }: ResolveCapOptions): Result<OperationResult> {
  const cap = capLine(pieceOf(pattern, id))
  const wanted = { front, back }
  const joins = cap.halves.map((half) => capJoin(pattern, cap, half))
  if (!joins.every((join) => join !== undefined)) return failure(notSewnIn(cap))
  const changes = cap.halves.map((half, i) => wanted[half.name] - easeOf(pattern, joins[i] as Join)) as [number, number]
  if (changes.every((change) => Math.abs(change) < RIGHT))
    return success({ ...unchanged(pattern), pattern: walkCapNotches(pattern, id) })
  const move = solveCrown(cap, { changes })
  if (!move) return failure(noSuchCap(pattern, cap, joins, wanted))
  const bent = bendSeams(pattern, id, crownBends(cap, move))
  if (!bent.ok) return bent
  const held = { ...bent.value, pattern: holdMatchPoints(pattern, bent.value.pattern, cap) }
  const low = tooLow(held.pattern, id, joins)
  if (low) return failure(low)
  const now = capLine(pieceOf(held.pattern, id))
  const bends = bentBack(cap, now)
  if (bends) return failure(bendsBack(pattern, cap, joins, wanted, bends.name))
  return success({ ...held, pattern: walkCapNotches(held.pattern, id) })
}

function tooLow(pattern: Pattern, id: string, joins: readonly (Join | undefined)[]): Problem | undefined {
  const height = sleeveFigures(pieceOf(pattern, id))?.capHeight ?? 0
  const armscye = armscyeOf(pattern, joins)
  if (height >= CAP.leastRatio * armscye) return undefined
  return {
    code: 'cap-too-low',
    where: { piece: id, seam: 'cap' },
    actual: `a cap ${height.toFixed(0)} mm high on an armscye of ${armscye.toFixed(0)} mm`,
    expected: `at least ${(CAP.leastRatio * armscye).toFixed(0)} mm, ${CAP.leastRatio * 100} % of the armscye`,
    hint: 'narrow the upper arm first, or lower the underarm of the bodice: both let the cap stay higher',
  }
}

function armscyeOf(pattern: Pattern, joins: readonly (Join | undefined)[]): number {
  return joins.reduce((sum, join) => sum + (join ? lineOf(pattern, join.b).length : 0), 0)
}

type Wanted = Readonly<Record<'front' | 'back', number>>

/** What a half is now and what it was to become, in words. */
function wantedWords(pattern: Pattern, cap: CapLine, joins: readonly (Join | undefined)[], wanted: Wanted): string {
  return cap.halves
    .map((half, i) => {
      const change = wanted[half.name] - easeOf(pattern, joins[i] as Join)
      const order = change < 0 ? 'shortened' : 'lengthened'
      return `the ${half.name} cap of ${half.length.toFixed(1)} mm ${order} by ${Math.abs(change).toFixed(1)} mm`
    })
    .join(' and ')
}

function noSuchCap(pattern: Pattern, cap: CapLine, joins: readonly (Join | undefined)[], wanted: Wanted): Problem {
  return {
    code: 'cap-cannot-match',
    where: { piece: cap.piece.id, seam: 'cap' },
    actual: wantedWords(pattern, cap, joins, wanted),
    expected: `a change that a cap can take which keeps ${CAP.copied} mm at each underarm and its biceps width`,
    hint: 'ask for another ease, widen or narrow the upper arm first, or change the armscye by less',
  }
}

function bendsBack(
  pattern: Pattern,
  cap: CapLine,
  joins: readonly (Join | undefined)[],
  wanted: Wanted,
  name: string,
): Problem {
  return {
    code: 'cap-bends-back',
    where: { piece: cap.piece.id, seam: `${name} cap` },
    actual: `${wantedWords(pattern, cap, joins, wanted)}, after which the ${name} cap would change between hollow and round more than once`,
    expected: 'one change from hollow to round on each half',
    hint: 'ask for another ease, or widen or narrow the upper arm first: the cap then changes its height by less',
  }
}

function notSewnIn(cap: CapLine): Problem {
  return {
    code: 'cap-without-armscye',
    where: { piece: cap.piece.id, seam: 'cap' },
    actual: 'a cap that no join sews to an armscye',
    expected: 'a sleeve that is sewn into a bodice',
    hint: 'record this on a pattern with its bodice',
  }
}
