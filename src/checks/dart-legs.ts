import type { Finding } from '../base/problem.ts'
import type { LengthUnit } from '../base/units.ts'
import { contains } from '../geometry/contains.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { distance } from '../geometry/point.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import { bridgedOutline } from './bridged-outline.ts'
import type { Check } from './check.ts'
import { sayLength } from './words.ts'

/** Legs that differ by more than this pucker when stitched, mm: a fifth of the 1/32 in that shops accept. */
const EQUAL_LEGS = 0.15

/** A mouth point farther from its seam than this is off it, mm. */
const ON_SEAM = 0.01

/** The legs of every dart are equal, its mouth is the gap between two parts of its seam, its point lies on the piece. */
export const dartLegs: Check = {
  name: 'dart-legs',
  looksAt: 'equal legs of every dart, a mouth on its seam, a point on the piece',
  run: ({ pattern, units }) =>
    pattern.pieces.flatMap((piece) =>
      piece.darts.flatMap((dart) => [...legs(piece, dart, units), ...mouth(piece, dart), ...inside(piece, dart)]),
    ),
}

function legs(piece: Piece, dart: Dart, units: LengthUnit): Finding[] {
  const [one, other] = dart.mouth.map((p) => distance(p, dart.point)) as [number, number]
  if (Math.abs(one - other) <= EQUAL_LEGS) return []
  return [
    {
      code: 'dart-legs-unequal',
      severity: 'error',
      where: { piece: piece.id, seam: dart.seam },
      actual: `the legs of ${dart.id} are ${sayLength(one, units)} and ${sayLength(other, units)}`,
      expected: 'legs of equal length',
      hint: 'fold the dart and true its mouth, or move its point until both legs are equal',
    },
  ]
}

function mouth(piece: Piece, dart: Dart): Finding[] {
  const seam = piece.seams.find((s) => s.id === dart.seam)
  const parts = seam?.parts ?? []
  const sits = parts.some((part, i) => {
    const next = parts[i + 1]
    return (
      next && distance(endOf(part), dart.mouth[0]) < ON_SEAM && distance(startOf(next as Path), dart.mouth[1]) < ON_SEAM
    )
  })
  if (sits) return []
  return [
    {
      code: 'dart-off-seam',
      severity: 'error',
      where: { piece: piece.id, seam: dart.seam },
      actual: `the mouth of ${dart.id} is not a gap of the seam`,
      expected: 'a mouth between two parts of its seam, in the order of the seam',
      hint: 'set the dart again on the seam as it is now',
    },
  ]
}

function inside(piece: Piece, dart: Dart): Finding[] {
  if (contains(bridgedOutline(piece), dart.point)) return []
  return [
    {
      code: 'dart-off-piece',
      severity: 'error',
      where: { piece: piece.id, seam: dart.seam },
      actual: `the point of ${dart.id} lies beside the piece`,
      expected: 'a dart that runs into the piece',
      hint: 'set the dart again: its point belongs inside',
    },
  ]
}
