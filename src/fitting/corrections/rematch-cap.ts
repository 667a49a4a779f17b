import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result } from '../../base/result.ts'
import { formatShare } from '../../base/shares.ts'
import { CAP } from '../../drafting/defaults.ts'
import type { Join, Pattern } from '../../pattern/pattern.ts'
import { pieceOf } from '../../pattern/seam.ts'
import { lineOf } from '../../pattern/sewn-line.ts'
import { capJoins, easeOf } from '../cap-joins.ts'
import { type CapLine, capLine, sleevesOf } from '../cap-line.ts'
import { defineCorrection } from '../correction.ts'
import { type OperationResult, type PatternOperation, runOperations, unchanged } from '../operation.ts'
import { resolveCap } from '../resolve-cap.ts'
import { splitsFor } from '../shift-line.ts'
import { splitSides } from '../split-sides.ts'

/** Sides that ask for eases nearer than this are alike, mm: a pair stays a pair. */
const ALIKE = 0.005

function settings(read: Readers) {
  return z.strictObject({ ease: read.lengthOrShare().optional() })
}

type RematchSettings = z.output<ReturnType<typeof settings>>

/**
 * Draws the cap again so that it matches its armscye as that now is, after whatever was done to either: front and back
 * each come to their ease. The crown rises or falls and goes to front or back; the underarm, the biceps width and the
 * grain stay; what fittings shaped in the cap stays in it.
 */
export const rematchCap = defineCorrection({
  name: 'rematch cap',
  does: 'draws the cap again to its ease over the present armscye, keeping the underarm and the biceps width',
  answers: [
    'the cap no longer matches its armscye',
    'the cap is too short for its armscye',
    'too much cap to ease in, the cap puckers',
  ],
  settings,
  defaults: [{ setting: 'ease', value: 'what the join declares, front and back', source: 'the draft' }],
  compile: ({ worn, side }, given) => {
    const pieces = sleevesOf(worn, side)
    if (pieces.length === 0) return failure(noCap())
    return {
      ok: true,
      value: [
        ...splitsFor(side, pieces),
        (pattern, since) =>
          runOperations(
            pattern,
            since,
            sleevesOf(pattern, side).map((id) => splitWhereUnlike(id, given)),
          ),
        (pattern, since) =>
          runOperations(
            pattern,
            since,
            sleevesOf(pattern, side).map((id) => rematch(id, given)),
          ),
      ],
    }
  },
  word: ({ ease }, say) => ({
    what:
      ease === undefined
        ? 'draw the cap again to its declared ease over the present armscye'
        : `draw the cap again with ${'mm' in ease ? say(ease.mm) : formatShare(ease.share)} of ease over the present armscye`,
    where:
      'the crown and the shoulder notch move; the underarm, the biceps width and the grain stay; ' +
      'front and back notch are walked again from the underarm',
  }),
})

interface Target {
  readonly ease: number
  readonly join: Join
}

/** The ease that each half is to have, for every join that sews it in. */
function targets(pattern: Pattern, cap: CapLine, { ease }: RematchSettings): readonly [Target[], Target[]] | undefined {
  const [up, down] = cap.halves.map((half) => capJoins(pattern, cap, half)) as [Join[], Join[]]
  if (up.length === 0 || up.length !== down.length) return undefined
  const pairs = up.map((join, i) => {
    const other = down[i] as Join
    if (ease === undefined) return [target(join, join.ease.target), target(other, other.ease.target)] as const
    const armscye = lineOf(pattern, [...join.b, ...other.b]).length
    const total = 'mm' in ease ? ease.mm : ease.share * armscye
    const share = shareOf(join, other, cap.halves[0].name)
    return [target(join, total * share), target(other, total * (1 - share))] as const
  })
  return [pairs.map(([first]) => first), pairs.map(([, second]) => second)]
}

/** The share of the cap ease that goes to a half: as declared, else as the draft shares it. */
function shareOf(join: Join, other: Join, name: 'front' | 'back'): number {
  const total = join.ease.target + other.ease.target
  if (total > 0 && join.ease.target >= 0 && other.ease.target >= 0) return join.ease.target / total
  return name === 'back' ? CAP.backShare : 1 - CAP.backShare
}

function target(join: Join, ease: number): Target {
  return { join, ease }
}

/** Parts left and right where the armscyes of a pair of sleeves no longer ask for the same cap. */
function splitWhereUnlike(id: string, given: RematchSettings): PatternOperation {
  return (pattern) => {
    const cap = capLine(pieceOf(pattern, id))
    const both = targets(pattern, cap, given)
    const asked = (list: readonly Target[]) => list.map(({ join, ease }) => ease - easeOf(pattern, join))
    const unlike = both?.some((list) => spread(asked(list)) > ALIKE)
    return { ok: true, value: unlike ? splitSides(pattern, id) : unchanged(pattern) }
  }
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values)
}

function rematch(id: string, given: RematchSettings): PatternOperation {
  return (pattern) => {
    const cap = capLine(pieceOf(pattern, id))
    const both = targets(pattern, cap, given)
    if (!both) return failure(notSewnIn(id))
    const ease = (name: 'front' | 'back') => {
      const index = cap.halves[0].name === name ? 0 : 1
      return (both[index][0] as Target).ease
    }
    const solved = resolveCap(pattern, { piece: id, front: ease('front'), back: ease('back') })
    return solved.ok && given.ease !== undefined ? redeclared(solved.value, both.flat()) : solved
  }
}

/** What was asked for is what the joins declare from now on. */
function redeclared(result: OperationResult, asked: readonly Target[]): Result<OperationResult> {
  const joins = result.pattern.joins.map((join) => {
    const ease = asked.find((entry) => entry.join.id === join.id)?.ease
    return ease === undefined || ease === join.ease.target ? join : { ...join, ease: { ...join.ease, target: ease } }
  })
  const same = joins.every((join, i) => join === result.pattern.joins[i])
  return { ok: true, value: same ? result : { ...result, pattern: { ...result.pattern, joins } } }
}

function noCap(): Problem {
  return {
    code: 'no-such-seam',
    where: { seam: 'cap' },
    actual: 'no sleeve cap on this pattern',
    expected: 'a sleeve',
    hint: 'rematch the cap on a pattern with a sleeve',
  }
}

function notSewnIn(id: string): Problem {
  return {
    code: 'cap-without-armscye',
    where: { piece: id, seam: 'cap' },
    actual: 'a cap that no join sews to an armscye',
    expected: 'a sleeve that is sewn into a bodice',
    hint: 'record this on a pattern with its bodice',
  }
}
