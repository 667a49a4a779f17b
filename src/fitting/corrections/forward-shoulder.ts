import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { endOf, movePath, type Path, reversePath } from '../../geometry/path.ts'
import { directionAlong, pathLength } from '../../geometry/path-length.ts'
import { along as alongBy, dot, leftOf, type Point, subtract } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { amountWithin } from '../amount-within.ts'
import { type BodiceHalf, bodiceHalves, bodicePieces, draftedParts, seamIdOf } from '../bodice-half.ts'
import { sleevesOf } from '../cap-line.ts'
import { defineCorrection } from '../correction.ts'
import { cutPath } from '../cut-path.ts'
import { followDart } from '../gap-at.ts'
import { moveShoulderMatch } from '../move-shoulder-match.ts'
import { noBodice } from '../no-bodice.ts'
import { type OperationResult, type PatternOperation, runOperations } from '../operation.ts'
import type { AlongMap } from '../position-map.ts'
import { armscyeUp, movedAll, replacedHalf, straightShoulder } from '../redraw-half.ts'
import { type ReplacedSeam, replaceSeams } from '../replace-seams.ts'
import { splitsFor } from '../shift-line.ts'

/** The most at the shoulder point, mm. Our own: more brings the seam off the shoulder. */
const MOST = 38.1

function settings(read: Readers) {
  return z.strictObject({
    by: read.positiveLength(),
    direction: read.name('direction', ['forward', 'back']).default('forward'),
  })
}

/**
 * Moves the shoulder seam at the shoulder point to where the shoulder is: a wedge from the neck point goes from the front
 * to the back. The front armscye loses the amount, the back armscye gains that very piece of curve, their total stays;
 * the shoulder notch of the sleeve moves with the seam.
 */
export const forwardShoulder = defineCorrection({
  name: 'forward shoulder',
  does: 'moves the shoulder seam forward at the shoulder point: the front loses the wedge, the back gains it',
  answers: ['the shoulder seam lies behind the shoulder', 'the neckline pulls back and the front rides up'],
  settings,
  defaults: [{ setting: 'direction', value: 'forward', source: 'common practice' }],
  compile: ({ worn, side }, given) => {
    const large = amountWithin(given.by, {
      correction: 'forward shoulder',
      most: MOST,
      why: 'the seam would leave the shoulder',
    })
    if (large) return failure(large)
    if (bodiceHalves(worn, side).length === 0) return failure(noBodice('shoulder'))
    if (given.by === 0) return success([])
    const forward = given.direction === 'forward'
    const sleeves = sleevesOf(worn, side)
    return success([
      ...splitsFor(side, [...bodicePieces(worn, side), ...sleeves]),
      (pattern, since) => {
        const halves = bodiceHalves(pattern, side)
        const operations = halves.map(
          (_, i): PatternOperation =>
            (now) => {
              const half = bodiceHalves(now, side)[i] as BodiceHalf
              if ((half.half === 'front') === forward) return lose(now, half, given.by)
              // What the other half of this side lost, as it was before.
              const giver = halves.find(
                (h) => h.half !== half.half && (h.side === half.side || h.side === 'both' || half.side === 'both'),
              )
              return giver ? gain(now, half, giver, given.by) : failure(noBodice('shoulder'))
            },
        )
        return runOperations(pattern, since, operations)
      },
      (pattern, since) =>
        runOperations(
          pattern,
          since,
          sleevesOf(pattern, side).map(
            (piece): PatternOperation =>
              (now) =>
                moveShoulderMatch(now, { piece, forward: forward ? given.by : -given.by }),
          ),
        ),
    ])
  },
  word: (given, say) => ({
    what: `move the shoulder seam ${given.direction} by ${say(given.by)}`,
    where:
      `at the shoulder point, to nothing at the neck point: from the ${given.direction === 'forward' ? 'front to the back' : 'back to the front'}; ` +
      'the shoulder notch of the sleeve moves with it',
  }),
})

function lose(pattern: Pattern, half: BodiceHalf, by: number): Result<OperationResult> {
  const path = armscyeUp(half)
  const length = pathLength(path)
  if (draftedParts(half, 'armscye').length > 1 || by > length / 4) return failure(noRoom(half, by, length))
  const kept = cutPath(path, 0, length - by)
  const map: AlongMap = (at) => {
    if (at >= length - 1e-6) return length - by
    return at > length - by
      ? { gone: `it went to the ${half.half === 'front' ? 'back' : 'front'} with the shoulder seam` }
      : at
  }
  return redraw(pattern, half, kept, map, -by)
}

/** The armscye goes on by the piece of curve that the other half lost, laid on so that it runs on smoothly. */
function gain(pattern: Pattern, half: BodiceHalf, giver: BodiceHalf, by: number): Result<OperationResult> {
  const path = armscyeUp(half)
  const length = pathLength(path)
  const given = armscyeUp(giver)
  const givenLength = pathLength(given)
  if (draftedParts(half, 'armscye').length > 1 || by > givenLength / 4) return failure(noRoom(giver, by, givenLength))
  const lost = reversePath(cutPath(given, givenLength - by, givenLength))
  const [from, to] = [endOf(given), endOf(path)]
  const back = directionAlong(given, givenLength)
  const on = directionAlong(path, length)
  // Right sides face each other in the seam, so the one half is the mirror image of the other there.
  const flipped = half.asDrafted === giver.asDrafted ? 1 : -1
  const lay = (p: Point): Point => {
    const d = subtract(p, from)
    return alongBy(alongBy(to, on, -dot(d, back)), leftOf(on), flipped * dot(d, leftOf(back)))
  }
  const map: AlongMap = (at) => (at >= length - 1e-6 ? length + by : at)
  return redraw(pattern, half, [...path, ...movePath(lost, lay)], map, by)
}

/** `out`: by how much the shoulder seam moved out at the shoulder point, mm. */
function redraw(
  pattern: Pattern,
  half: BodiceHalf,
  armscye: Path,
  map: AlongMap,
  out: number,
): Result<OperationResult> {
  const { piece } = half
  const drawn = straightShoulder(half, endOf(armscye))
  if (!drawn) return failure(twoDarts(half))
  const seams = new Map<string, ReplacedSeam>([
    [seamIdOf(half, 'armscye'), replacedHalf(half, 'armscye', [armscye], map)],
    [seamIdOf(half, 'shoulder'), drawn.shoulder],
  ])
  return replaceSeams(pattern, piece, {
    seams,
    darts: piece.darts.map((dart) => followDart(piece, dart, seams, (p) => p)),
    effects: [movedAll(half, 'shoulder', seams, out)],
  })
}

function noRoom(half: BodiceHalf, by: number, length: number): Problem {
  return {
    code: 'no-room-on-armscye',
    where: { piece: half.piece.id, seam: seamIdOf(half, 'armscye') },
    actual: `${by.toFixed(1)} mm off an armscye of ${length.toFixed(1)} mm`,
    expected: 'at most a quarter of it, and no dart on it',
    hint: 'take a smaller amount, or move the dart to another seam first',
  }
}

function twoDarts(half: BodiceHalf): Problem {
  return {
    code: 'two-darts-on-shoulder',
    where: { piece: half.piece.id, seam: seamIdOf(half, 'shoulder') },
    actual: 'more than one dart on the shoulder',
    expected: 'one dart at most',
    hint: 'move one of them to another seam first',
  }
}
