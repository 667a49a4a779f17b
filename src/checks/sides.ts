import type { Finding } from '../base/problem.ts'
import type { BodySide } from '../base/side.ts'
import type { LengthUnit } from '../base/units.ts'
import { seamAfter } from '../pattern/corners.ts'
import { halvesOf } from '../pattern/join-pattern.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { seamLength } from '../pattern/seam.ts'
import { baseName, drawnSide, namedSide, otherSide } from '../pattern/side-names.ts'
import type { Check } from './check.ts'
import { sayLength } from './words.ts'

/** Left and right that differ by no more are cut as one, mm; the walk accepts as much between two notches (CASES 17). */
const ALIKE = 25.4 / 16

/** Seams that follow each other anticlockwise where a piece shows the side that a draft draws: right sleeve, right back, left front. */
const AS_DRAWN: readonly (readonly [string, string])[] = [
  ['front cap', 'back cap'],
  ['armscye', 'shoulder'],
]

/** Left and right are true mirrors, each with its own hand, and what differs on purpose is said. */
export const sides: Check = {
  name: 'sides',
  looksAt: 'left and right: each of its own hand, closings equal, differences told',
  run: ({ pattern, units }) => [
    ...pattern.pieces.flatMap(handed),
    ...pattern.pieces.flatMap((piece) => (namedSide(piece.id) === 'right' ? compared(pattern, piece, units) : [])),
    ...pattern.pieces.flatMap((piece) => (piece.side === 'whole' ? compared(pattern, piece, units) : [])),
  ],
}

/** Two right sleeves, or a back drawn face down: the seams come round in the order of the other hand. */
function handed(piece: Piece): Finding[] {
  const drawn = drawnSide(piece)
  const wrong = piece.seams.filter((seam) => {
    const side: BodySide = namedSide(piece.id) ?? namedSide(seam.id) ?? drawn
    const next = seamAfter(piece, seam)
    return AS_DRAWN.some(([first, second]) => {
      const [one, other] = side === drawn ? [second, first] : [first, second]
      return baseName(seam.id) === one && baseName(next.id) === other
    })
  })
  if (wrong.length === 0) return []
  const side = namedSide(piece.id)
  return [
    {
      code: 'wrong-hand',
      severity: 'error',
      where: { piece: piece.id },
      actual: side ? `${piece.id} is drawn as a ${otherSide(side)} one` : `${piece.id} is drawn face down`,
      expected: side ? `the mirror of the ${otherSide(side)} one` : 'a piece drawn face up',
      hint: side
        ? 'two of one hand would be cut: mirror it'
        : 'mirror the piece: what is marked left would be cut right',
    },
  ]
}

function compared(pattern: Pattern, piece: Piece, units: LengthUnit): Finding[] {
  const id = baseName(piece.id)
  if (handed(piece).length > 0) return []
  const halves = halvesOf(pattern, id)
  if (!halves) return []
  const other = (seam: string) => halves.other.seams.find((s) => s.id === seam)
  const differences = halves.drawn.seams.flatMap((seam) => {
    const twin = other(seam.id)
    if (!twin) return [{ seam: seam.id, by: Number.NaN }]
    const by = seamLength(seam) - seamLength(twin)
    return Math.abs(by) > ALIKE ? [{ seam: seam.id, by }] : []
  })
  const drawn = drawnSide(halves.drawn)
  const longer = (by: number) => (by > 0 ? drawn : otherSide(drawn))
  const closing = differences.find(({ seam }) => /^center (front|back)$/.test(seam))
  const rest = differences.filter((difference) => difference !== closing)
  const say = ({ seam, by }: { seam: string; by: number }) =>
    Number.isNaN(by) ? `${seam} on one side only` : `${seam} ${longer(by)} longer by ${sayLength(Math.abs(by), units)}`
  return [
    ...(closing === undefined
      ? []
      : [
          {
            code: 'closing-uneven',
            severity: 'warning' as const,
            where: { piece: id, seam: closing.seam },
            actual: say(closing),
            expected: `left and right equal, within ${sayLength(ALIKE, units)}: they are closed together`,
            hint: `make the change of the ${closing.seam} on both sides`,
          },
        ]),
    ...(rest.length === 0
      ? []
      : [
          {
            code: 'sides-differ',
            severity: 'note' as const,
            where: { piece: id },
            actual: rest.map(say).join('; '),
            expected: 'left and right equal, or different on purpose',
            hint: 'cut each side from its own piece, this side up',
          },
        ]),
  ]
}
