import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { Join, JoinPart, Pattern } from '../pattern/pattern.ts'
import type { Notch } from '../pattern/piece.ts'
import { pieceOf } from '../pattern/seam.ts'
import { lineOf } from '../pattern/sewn-line.ts'
import { baseName } from '../pattern/side-names.ts'
import { capJoins } from './cap-joins.ts'
import { type CapHalf, type CapLine, capLine } from './cap-line.ts'
import { type OperationResult, unchanged } from './operation.ts'

export interface TurnCapOptions {
  /** The sleeve. */
  readonly piece: string
  /** By how much every match point moves along the cap over the top toward the front, mm; negative toward the back. */
  readonly forward: number
}

/**
 * A sleeve turned farther than this in all, mm, lays the hollow of its cap on the round of the armscye: 1 1/2 in, the
 * part that is pinned flat under the arm (common practice).
 */
const FARTHEST = 38.1

/** Marks keep this much of their half of the cap to both sides, mm. */
const CLEAR = 5

const SAME = 1e-6

/**
 * Turns a sleeve in its armscye: shoulder, front and back notch and the point that meets the side seam all move by the
 * same along the cap, and the joins sew the parts between them. The outline, and so the length and the ease of the
 * cap, stays what it is; front and back cap stay parted at the crown. The point that meets the side seam is marked
 * `underarm` wherever it is not the corner. Turning back by the same undoes it. Problems: turned too far, a notch
 * that would come too near to an end of its half, a sleeve that is not sewn in.
 */
export function turnCap(pattern: Pattern, { piece: id, forward }: TurnCapOptions): Result<OperationResult> {
  if (forward === 0) return success(unchanged(pattern))
  const cap = capLine(pieceOf(pattern, id))
  const [up, down] = cap.halves
  const total = up.length + down.length
  const rising = capJoins(pattern, cap, up)
  const falling = capJoins(pattern, cap, down)
  const present = rising[0] && matchPoints(pattern, cap, rising[0])
  if (!present || falling.length === 0) return failure(notSewnIn(cap))
  // The cap as one line from the underarm of its first half: toward the front is back along it where that is the front.
  const by = up.name === 'front' ? -forward : forward
  const underarm = present.underarm + by
  const shoulder = present.shoulder + by
  const turned = shoulder - up.length
  if (Math.abs(turned) > FARTHEST + SAME) return failure(tooFar(cap, forward, turned))
  const notches: Notch[] = []
  for (const notch of cap.piece.notches) {
    const half = cap.halves.find(({ seam }) => seam.id === notch.seam)
    const name = baseName(notch.id)
    if (name === 'underarm') continue
    const moved = half ? movedNotch(cap, half, notch, by) : notch
    if (!moved) return failure(offItsHalf(cap, notch, forward))
    notches.push(moved)
  }
  const mark = placeAt(cap, (underarm + total) % total)
  if (Math.abs(underarm) > SAME) notches.push({ id: 'underarm', seam: mark.half.seam.id, along: mark.along, marks: 1 })
  const parts = (from: number, to: number) => partsBetween(cap, from, to)
  const joins = pattern.joins.map((join) => {
    if (rising.includes(join)) return { ...join, a: parts(underarm, shoulder) }
    if (!falling.includes(join)) return join
    return {
      ...join,
      a: parts(shoulder, underarm + total)
        .reverse()
        .map((part) => ({ ...part, reversed: true })),
    }
  })
  const piece = { ...cap.piece, notches }
  return success({ ...unchanged({ pieces: pattern.pieces.map((p) => (p === cap.piece ? piece : p)), joins }) })
}

/** Where the underarm and the shoulder of the armscye meet the cap, mm along it; the underarm may lie before its start. */
export function matchPoints(
  pattern: Pattern,
  cap: CapLine,
  join: Join,
): { underarm: number; shoulder: number } | undefined {
  const { stretches } = lineOf(pattern, join.a)
  const first = stretches[0]
  const last = stretches[stretches.length - 1]
  const total = cap.halves[0].length + cap.halves[1].length
  const from = first && positionOf(cap, first.seam.id, first.from)
  const to = last && positionOf(cap, last.seam.id, last.to)
  if (from === undefined || to === undefined) return undefined
  return { underarm: from > to ? from - total : from, shoulder: to }
}

function positionOf(cap: CapLine, seam: string, along: number): number | undefined {
  const [up, down] = cap.halves
  if (seam === up.seam.id) return along
  return seam === down.seam.id ? up.length + along : undefined
}

/** The half and the place on it, mm along the cap; the crown belongs to the front. */
export function placeAt(cap: CapLine, at: number): { readonly half: CapHalf; readonly along: number } {
  const [up, down] = cap.halves
  const first = up.name === 'front' ? at <= up.length + SAME : at < up.length - SAME
  if (first) return { half: up, along: Math.min(at, up.length) }
  return { half: down, along: Math.max(0, at - up.length) }
}

function movedNotch(cap: CapLine, half: CapHalf, notch: Notch, by: number): Notch | undefined {
  const at = (positionOf(cap, half.seam.id, notch.along) as number) + by
  const place = placeAt(cap, at)
  if (baseName(notch.id) !== 'shoulder notch') {
    const far = place.along + (notch.marks - 1) * (notch.step ?? 0)
    const inside = (along: number) => along > CLEAR && along < half.length - CLEAR
    if (place.half !== half || !inside(place.along) || !inside(far)) return undefined
  }
  return { ...notch, seam: place.half.seam.id, along: place.along }
}

/** The seam parts between two places along the cap, from < to, in its own order; whole seams without ends. */
export function partsBetween(cap: CapLine, from: number, to: number): JoinPart[] {
  const [up, down] = cap.halves
  const total = up.length + down.length
  return [-total, 0, total].flatMap((round) =>
    [
      { half: up, start: round },
      { half: down, start: round + up.length },
    ].flatMap(({ half, start }): JoinPart[] => {
      const a = Math.max(0, from - start)
      const b = Math.min(half.length, to - start)
      if (b - a <= SAME) return []
      const part = { piece: cap.piece.id, seam: half.seam.id, reversed: false }
      return a <= SAME && b >= half.length - SAME ? [part] : [{ ...part, from: a, to: b }]
    }),
  )
}

function way(forward: number): string {
  return forward > 0 ? 'forward' : 'back'
}

function tooFar(cap: CapLine, forward: number, turned: number): Problem {
  return {
    code: 'turned-too-far',
    where: { piece: cap.piece.id, seam: 'cap' },
    actual: `turned ${way(forward)} by ${Math.abs(forward).toFixed(1)} mm, ${Math.abs(turned).toFixed(1)} mm in all`,
    expected: `at most ${FARTHEST} mm from where it was drafted`,
    hint: 'turn it by less: farther round, the hollow of the cap no longer lies in the hollow of the armscye',
  }
}

function offItsHalf(cap: CapLine, notch: Notch, forward: number): Problem {
  return {
    code: 'notch-off-its-half',
    where: { piece: cap.piece.id, seam: notch.seam },
    actual: `${notch.id}, turned ${way(forward)} by ${Math.abs(forward).toFixed(1)} mm, comes too near to an end of the ${notch.seam}`,
    expected: `front and back notch on their own halves, ${CLEAR} mm from the ends`,
    hint: 'turn the sleeve by less',
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
