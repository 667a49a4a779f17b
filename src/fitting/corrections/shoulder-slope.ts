import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { asin } from '../../base/trig.ts'
import { movePath, type Path } from '../../geometry/path.ts'
import { pathLength } from '../../geometry/path-length.ts'
import { distance, type Point } from '../../geometry/point.ts'
import { turn } from '../../geometry/transform.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { amountWithin } from '../amount-within.ts'
import {
  type BodiceHalf,
  bodiceHalves,
  bodicePieces,
  draftedEnds,
  draftedParts,
  outward,
  seamIdOf,
} from '../bodice-half.ts'
import { defineCorrection } from '../correction.ts'
import { followDart } from '../gap-at.ts'
import { noBodice } from '../no-bodice.ts'
import { type OperationResult, type PatternOperation, runOperations } from '../operation.ts'
import { armscyeUp, movedAll, moveHalfEnd, replacedHalf, warpHalfSeam } from '../redraw-half.ts'
import { type ReplacedSeam, replaceSeams } from '../replace-seams.ts'
import { splitsFor } from '../shift-line.ts'
import { warpedLength } from '../warped-length.ts'

/** The most at the shoulder point, mm: about 11° on a shoulder of 128 mm. Our own. */
const MOST = 25.4

/** Over how many mm the neckline is trued to the turned shoulder. Our own. */
const TRUE_OVER = 40

function settings(read: Readers) {
  return z.strictObject({
    by: read.positiveLength(),
    direction: read.name('direction', ['down', 'up']),
    armscye: read.name('armscye', ['moves', 'stays']).default('moves'),
  })
}

/**
 * Gives the shoulders more or less slope: both shoulder seams turn about the neck point and keep their length. The
 * armscye goes with the shoulder point and keeps its length, so that the sleeve still fits, unless it is told to stay.
 */
export const shoulderSlope = defineCorrection({
  name: 'shoulder slope',
  does: 'turns the shoulder about the neck point; the armscye moves down or up with the shoulder point and keeps its length',
  answers: [
    'folds from the neck to the armscye, over a shoulder that slopes more',
    'drag lines from the shoulder point to the neck, over a square shoulder',
    'one shoulder lower than the other',
  ],
  settings,
  defaults: [
    { setting: 'armscye', value: 'moves with the shoulder', source: 'common practice: the sleeve still fits' },
  ],
  leaves: 'where the armscye stays, it is shorter or longer: rematch cap draws the sleeve to it again',
  compile: ({ worn, side }, given) => {
    const large = amountWithin(given.by, { correction: 'shoulder slope', most: MOST, why: 'more is another shoulder' })
    if (large) return failure(large)
    if (bodiceHalves(worn, side).length === 0) return failure(noBodice('shoulder'))
    if (given.by === 0) return success([])
    return success([
      ...splitsFor(side, bodicePieces(worn, side)),
      (pattern, since) => {
        const angles = bodiceHalves(pattern, side).map((half) => slopeAngle(half, given.by, given.direction))
        const drops = bodiceHalves(pattern, side).map((half, i) =>
          given.armscye === 'stays' ? 0 : dropFor(half, angles[i] as number),
        )
        const operations = drops.map(
          (_, i): PatternOperation =>
            (now) => {
              const half = bodiceHalves(now, side)[i] as BodiceHalf
              // Front and back of one side go down alike, so that the side seams still agree.
              const halves = bodiceHalves(pattern, side)
              const beside = (other: BodiceHalf | undefined) =>
                other?.side === half.side || other?.side === 'both' || half.side === 'both'
              const same = drops.filter((_, k) => beside(halves[k]))
              const up = same.reduce((a, b) => a + b, 0) / same.length
              const angle = angles[i] as number
              const change = lengthChange(half, angle)
              const bow = given.armscye === 'stays' ? 0 : settled((x) => change(up, x), 0)
              return reslope(now, half, angle, up, bow)
            },
        )
        return runOperations(pattern, since, operations)
      },
    ])
  },
  word: (given, say) => ({
    what: `${given.direction === 'down' ? 'slope the shoulder more' : 'make the shoulder squarer'} by ${say(given.by)}, front and back`,
    where:
      given.armscye === 'moves'
        ? `at the shoulder point, to nothing at the neck point; the armscye goes ${given.direction} with it`
        : 'at the shoulder point, to nothing at the neck point; the armscye stays at the underarm',
  }),
})

/** The angle by which a shoulder turns about its neck point for the shoulder point to go down or up by the amount. */
function slopeAngle(half: BodiceHalf, by: number, direction: 'down' | 'up'): number {
  const [tip, neck] = draftedEnds(half, 'shoulder')
  const angle = 2 * asin(by / 2 / distance(tip, neck))
  const down = turn(neck, angle)(tip).y < tip.y
  return down === (direction === 'down') ? angle : -angle
}

/**
 * How the armscye goes along: the whole of it moves as the shoulder point and the underarm do, eased in between; near the
 * shoulder it turns with the shoulder seam, to which it stays square. `bow` mm outward in the middle settle its length.
 */
function armscyeWarp(half: BodiceHalf, angle: number, up: number, bow: number): (at: Point, along: number) => Point {
  const [tip, neck] = draftedEnds(half, 'shoulder')
  const length = pathLength(armscyeUp(half))
  const moved = turn(neck, angle)(tip)
  const out = outward(half).x
  return (at, along) => {
    const u = Math.min(1, Math.max(0, along / length))
    const near = Math.min(1, Math.max(0, 1 - (length - along) / TRUE_OVER))
    const share = u * u * (3 - 2 * u)
    const turned = turn(tip, angle * near * near * (3 - 2 * near))(at)
    return {
      x: turned.x + share * (moved.x - tip.x) + out * bow * 16 * u * u * (1 - u) * (1 - u),
      y: turned.y + share * (moved.y - tip.y) + (1 - share) * up,
    }
  }
}

/** By how much the underarm must go up (negative: down) for the armscye to keep its length, mm, to 1e-7. */
function dropFor(half: BodiceHalf, angle: number): number {
  const [tip, neck] = draftedEnds(half, 'shoulder')
  const change = lengthChange(half, angle)
  return settled((up) => change(up, 0), turn(neck, angle)(tip).y - tip.y)
}

function lengthChange(half: BodiceHalf, angle: number): (up: number, bow: number) => number {
  const path = armscyeUp(half)
  const lengthOf = warpedLength(path)
  const before = lengthOf((at) => at)
  return (up, bow) => lengthOf(armscyeWarp(half, angle, up, bow)) - before
}

/** Where a nearly linear function of a length vanishes, by secant from a guess. */
function settled(miss: (x: number) => number, guess: number): number {
  let a = guess
  let fa = miss(a)
  let b = a + fa
  for (let i = 0; i < 20 && Math.abs(b - a) > 1e-9; i++) {
    const fb = miss(b)
    if (Math.abs(fb) < 1e-7 || fb === fa) return b
    const next = b - (fb * (b - a)) / (fb - fa)
    a = b
    fa = fb
    b = next
  }
  return b
}

function reslope(pattern: Pattern, half: BodiceHalf, angle: number, up: number, bow: number): Result<OperationResult> {
  const { piece } = half
  const [tip, neck] = draftedEnds(half, 'shoulder')
  const move = turn(neck, angle)
  const by = distance(move(tip), tip)
  const shoulder = replacedHalf(
    half,
    'shoulder',
    draftedParts(half, 'shoulder').map((part): Path => movePath(part, move)),
    (along) => along,
  )
  const side = up === 0 ? [] : [moveHalfEnd(half, 'side seam', { x: 0, y: up })]
  if (side.includes(undefined)) return failure(noRoom(half, -up))
  const seams = new Map<string, ReplacedSeam>([
    [seamIdOf(half, 'shoulder'), shoulder],
    [seamIdOf(half, 'armscye'), warpHalfSeam(half, 'armscye', armscyeWarp(half, angle, up, bow))],
    [
      seamIdOf(half, 'neckline'),
      warpHalfSeam(
        half,
        'neckline',
        (at, along) => {
          const u = Math.min(1, Math.max(0, 1 - along / TRUE_OVER))
          return turn(neck, angle * u * u * (3 - 2 * u))(at)
        },
        { to: TRUE_OVER },
      ),
    ],
    ...side.map((seam) => [seamIdOf(half, 'side seam'), seam] as [string, ReplacedSeam]),
  ])
  const onShoulder = piece.darts.filter((dart) => dart.seam === seamIdOf(half, 'shoulder'))
  return replaceSeams(pattern, piece, {
    seams,
    darts: piece.darts.map((dart) => followDart(piece, dart, seams, onShoulder.includes(dart) ? move : (p) => p)),
    effects: [movedAll(half, 'shoulder', seams, move(tip).y < tip.y ? -by : by), movedAll(half, 'armscye', seams, up)],
  })
}

function noRoom(half: BodiceHalf, down: number): Problem {
  const parts = draftedParts(half, 'side seam')
  return {
    code: 'no-room-on-side-seam',
    where: { piece: half.piece.id, seam: seamIdOf(half, 'side seam') },
    actual: `the underarm goes down by ${down.toFixed(1)} mm on ${pathLength(parts[parts.length - 1] as Path).toFixed(1)} mm of side seam${parts.length > 1 ? ' above the dart' : ''}`,
    expected: 'at most half of that length',
    hint: 'take a smaller amount, let the armscye stay, or move the dart away from the underarm first',
  }
}
