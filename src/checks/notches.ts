import type { Finding } from '../base/problem.ts'
import { distance } from '../geometry/point.ts'
import type { Join, Pattern } from '../pattern/pattern.ts'
import type { Notch, Piece } from '../pattern/piece.ts'
import { pointOnSeam, seamLength } from '../pattern/seam.ts'
import { isCapJoin, joinLines, lineEnd, notchesOn, piecesOf, type SewnLine } from '../pattern/sewn-line.ts'
import { baseName } from '../pattern/side-names.ts'
import type { Check } from './check.ts'

const ROUNDING = 0.001

/** A shoulder notch farther than this from the place that meets the shoulder seam is set wrong, mm. */
const AT_SHOULDER = 0.5

/** Notches lie on their seams, front and back cannot be mistaken, and every one of a cap has its partner. */
export const notches: Check = {
  name: 'notches',
  looksAt: 'notches lie on their seams, one in front and two at the back, each with its partner',
  run: ({ pattern }) => [
    ...pattern.pieces.flatMap((piece) => piece.notches.flatMap((notch) => onSeam(piece, notch))),
    ...pattern.joins.filter(isCapJoin).flatMap((join) => matched(pattern, join)),
  ],
}

function onSeam(piece: Piece, notch: Notch): Finding[] {
  const findings: Finding[] = []
  const where = { piece: piece.id, seam: notch.seam }
  const seam = piece.seams.find((s) => s.id === notch.seam)
  const length = seam ? seamLength(seam) : 0
  const far = notch.along + (notch.marks - 1) * (notch.step ?? 0)
  if (!seam || Math.min(notch.along, far) < -ROUNDING || Math.max(notch.along, far) > length + ROUNDING) {
    findings.push({
      code: 'notch-off-seam',
      severity: 'error',
      where,
      actual: `${notch.id} is ${notch.along.toFixed(1)} mm along the seam${notch.marks > 1 ? `, its last mark ${far.toFixed(1)} mm` : ''}`,
      expected: seam
        ? `a place on the seam, 0 to ${length.toFixed(1)} mm`
        : `a seam called ${notch.seam} on ${piece.id}`,
      hint: 'move the notch back onto its seam',
    })
  }
  const marks = notch.id.startsWith('front notch') ? 1 : notch.id.startsWith('back notch') ? 2 : notch.marks
  if (notch.marks !== marks || (notch.marks > 1 && !notch.step)) {
    findings.push({
      code: 'notch-count',
      severity: 'error',
      where,
      actual: `${notch.id} has ${notch.marks} mark${notch.marks === 1 ? '' : 's'}${notch.step ? '' : ' in one place'}`,
      expected: 'one mark in front, two apart at the back',
      hint: 'front and back of a sleeve are told apart by their notches: mark one in front and two at the back',
    })
  }
  return findings
}

function matched(pattern: Pattern, join: Join): Finding[] {
  const lines = joinLines(pattern, join)
  if (!lines) return []
  return [...lacking(join, lines.a, lines.b), ...lacking(join, lines.b, lines.a), ...shoulderNotch(join, lines.a)]
}

/** Marks of `one` inside the line that have no partner on `other`. */
function lacking(join: Join, one: SewnLine, other: SewnLine): Finding[] {
  const there = new Set(notchesOn(other).map(([name]) => name))
  return notchesOn(one)
    .filter(([name, place]) => !there.has(name) && place > AT_SHOULDER && place < one.length - AT_SHOULDER)
    .map(([name]) => ({
      code: 'notch-without-partner',
      severity: 'error',
      where: {
        join: join.id,
        piece: piecesOf(one)
          .map((p) => p.id)
          .join(', '),
      },
      actual: `${name} has no partner on ${piecesOf(other)
        .map((p) => p.id)
        .join(', ')}`,
      expected: 'the same notch on both sides of the join',
      hint: `walk the seam from the underarm and mark ${name} on the other piece`,
    }))
}

/** The sleeve's shoulder notch lies where its cap meets the shoulder seam. */
function shoulderNotch(join: Join, cap: SewnLine): Finding[] {
  const { stretch, along } = lineEnd(cap, 'end')
  const at = pointOnSeam(stretch.seam, along)
  const notch = stretch.piece.notches.find((n) => baseName(n.id) === 'shoulder notch')
  const seam = notch && stretch.piece.seams.find((s) => s.id === notch.seam)
  const off =
    notch && seam ? distance(pointOnSeam(seam, Math.max(0, Math.min(notch.along, seamLength(seam)))), at) : undefined
  if (off !== undefined && off <= AT_SHOULDER) return []
  return [
    {
      code: 'shoulder-notch-off',
      severity: 'error',
      where: { join: join.id, piece: stretch.piece.id },
      actual: off === undefined ? 'the cap has no shoulder notch' : `the shoulder notch lies ${off.toFixed(1)} mm off`,
      expected: 'a shoulder notch where the cap meets the shoulder seam',
      hint: 'set the shoulder notch where front and back cap join, or turn the sleeve so that they meet there',
    },
  ]
}
