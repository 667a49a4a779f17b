import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { CAP } from '../drafting/defaults.ts'
import { point, scale, subtract, unit } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { pieceOf, seamEnd, seamStart } from '../pattern/seam.ts'
import { bendSeams, type SeamBend } from './bend-seams.ts'
import { bentBack } from './cap-fairness.ts'
import { type CapLine, capLine } from './cap-line.ts'
import { holdMatchPoints } from './hold-match-points.ts'
import { crownBends, keptPart } from './move-crown.ts'
import { type OperationResult, unchanged } from './operation.ts'
import { sleeveFigures } from './sleeve-figures.ts'
import { solveCrown } from './solve-crown.ts'
import {
  downFromUnderarm,
  elbowBelowUnderarm,
  plainBelowUnderarm,
  type UnderarmHalf,
  underarmHalves,
} from './underarm-half.ts'
import { walkCapNotches } from './walk-cap-notches.ts'

export interface WidenUpperArmOptions {
  /** The sleeve. */
  readonly piece: string
  /** How much wider the biceps line becomes, half of it at each end, mm; negative: narrower. */
  readonly by: number
  /** What the cap keeps while its underarm points go apart: its length, and gets lower; or its height, and gets longer. */
  readonly keep: 'cap length' | 'cap height'
}

/** The underarm seams lean out at most this fast, mm per mm: steeper is a gusset, not a seam. Our own. */
const STEEPEST = 0.4

/** Without an elbow notch the seams taper over this much, mm: about the way from biceps line to elbow. */
const USUAL_TAPER = 150

/**
 * Widens a sleeve at the biceps line. The underarm points go apart along it, half the amount each, and take the
 * underarm part of the cap with them as it is, angle and all; the underarm seams run back to nothing above the elbow
 * and its darts; below, and at the grain, nothing moves. With the cap's length kept, crown and cap come down so that
 * each half keeps its length to 1e-6 mm and sews as it did; with its height kept, the crown stays and the cap grows.
 * Front and back notch are walked again. Problems: too much for the seams, no such cap, one that would be too low or
 * bend back.
 */
export function widenUpperArm(pattern: Pattern, options: WidenUpperArmOptions): Result<OperationResult> {
  const { piece: id, by, keep } = options
  if (by === 0) return success(unchanged(pattern))
  const piece = pieceOf(pattern, id)
  const cap = capLine(piece)
  const halves = underarmHalves(piece)
  const taper = Math.min(elbowBelowUnderarm(piece) ?? USUAL_TAPER, ...halves.map(plainBelowUnderarm))
  const width = sleeveFigures(piece)?.bicepsWidth ?? 0
  if ((1.5 * Math.abs(by)) / 2 / taper > STEEPEST || -by > width / 2) return failure(tooMuch(piece, by, taper, width))
  const underarm = underarmMoves(cap, by)
  const move =
    keep === 'cap length'
      ? solveCrown(cap, { changes: [0, 0], underarm })
      : { by: point(0, 0), kept: cap.halves.map((half) => keptPart(half, CAP.copied)) as [number, number], underarm }
  if (!move) return failure(noSuchCap(piece, by))
  const bent = bendSeams(pattern, id, [
    ...crownBends(cap, move),
    ...halves.map((half) => taperBend(half, taper, underarm[cap.halves[0].name === half.name ? 0 : 1])),
  ])
  if (!bent.ok) return bent
  const now = capLine(pieceOf(bent.value.pattern, id))
  const height = sleeveFigures(now.piece)?.capHeight ?? 0
  const least = CAP.leastRatio * (now.halves[0].length + now.halves[1].length)
  if (height < least) return failure(tooLow(piece, by, height, least))
  const back = bentBack(cap, now)
  if (back) return failure(bendsBack(piece, by, back.seam.id))
  const held = holdMatchPoints(pattern, bent.value.pattern, cap)
  return success({ ...bent.value, pattern: walkCapNotches(held, id) })
}

/** Half the amount outwards along the biceps line, for the underarm of each half of the cap. */
function underarmMoves(cap: CapLine, by: number) {
  const [up, down] = cap.halves
  const out = scale(unit(subtract(seamStart(up.seam), seamEnd(down.seam))), by / 2)
  return [out, scale(out, -1)] as const
}

/** From the underarm's move to nothing `taper` mm below it, flat at both ends: the seam keeps its directions there. */
function taperBend(half: UnderarmHalf, taper: number, by: { x: number; y: number }): SeamBend {
  const [from, to] = half.runsDown ? [0, taper] : [half.length - taper, half.length]
  const way = half.runsDown ? 1 : -1
  return {
    seam: half.seam.id,
    from,
    to,
    bend: (at) => {
      const raw = downFromUnderarm(half, at) / taper
      const u = raw < 1e-9 ? 0 : raw > 1 - 1e-9 ? 1 : raw
      return { by: scale(by, 1 - u * u * (3 - 2 * u)), change: scale(by, (-way * 6 * u * (1 - u)) / taper) }
    },
  }
}

function words(by: number): string {
  return `the upper arm ${by > 0 ? 'widened' : 'narrowed'} by ${Math.abs(by).toFixed(1)} mm`
}

function tooMuch(piece: Piece, by: number, taper: number, width: number): Problem {
  const most = Math.min((2 * STEEPEST * taper) / 1.5, by < 0 ? width / 2 : Number.POSITIVE_INFINITY)
  return {
    code: 'too-much-at-once',
    where: { piece: piece.id, seam: 'underarm seam' },
    actual: `${words(by)} on seams that run back to nothing within ${taper.toFixed(1)} mm`,
    expected: `at most ${most.toFixed(1)} mm`,
    hint: 'take a smaller amount, or change the elbow too',
  }
}

function noSuchCap(piece: Piece, by: number): Problem {
  return {
    code: 'cap-cannot-match',
    where: { piece: piece.id, seam: 'cap' },
    actual: `${words(by)}: no cap over it has the length of the present one`,
    expected: 'a width that the cap reaches across',
    hint: 'take a smaller amount, or keep the cap height instead',
  }
}

function tooLow(piece: Piece, by: number, height: number, least: number): Problem {
  return {
    code: 'cap-too-low',
    where: { piece: piece.id, seam: 'cap' },
    actual: `${words(by)} leaves a cap ${height.toFixed(0)} mm high`,
    expected: `at least ${least.toFixed(0)} mm`,
    hint: 'take a smaller amount, keep the cap height instead, or lower the underarm of the bodice',
  }
}

function bendsBack(piece: Piece, by: number, seam: string): Problem {
  return {
    code: 'cap-bends-back',
    where: { piece: piece.id, seam },
    actual: `${words(by)}, after which the ${seam} would change between hollow and round more than once`,
    expected: 'one change from hollow to round on each half',
    hint: 'take a smaller amount, or keep the other of cap length and cap height',
  }
}
