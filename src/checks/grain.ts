import type { Finding } from '../base/problem.ts'
import { contains } from '../geometry/contains.ts'
import { endOf, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import type { Piece } from '../pattern/piece.ts'
import { bridgedOutline } from './bridged-outline.ts'
import type { Check } from './check.ts'
import { ofPieces } from './of-pieces.ts'

/** A shorter grain line cannot be laid true on the cloth, mm. */
const SHORTEST = 50

/** Every piece has its grain drawn, long enough to be laid true, on the piece. */
export const grain: Check = {
  name: 'grain',
  looksAt: 'a grain line on every piece',
  run: ofPieces(grainOf),
}

function grainOf(piece: Piece): Finding[] {
  const line = piece.lines.find((l) => l.id === 'grain')
  const outline = bridgedOutline(piece)
  const length = line ? pathLength(line.path) : 0
  const actual = !line
    ? 'no grain line'
    : length < SHORTEST
      ? `a grain line of ${length.toFixed(0)} mm`
      : contains(outline, startOf(line.path)) && contains(outline, endOf(line.path))
        ? undefined
        : 'the grain line runs off the piece'
  if (actual === undefined) return []
  return [
    {
      code: 'no-grain',
      severity: 'error',
      where: { piece: piece.id },
      actual,
      expected: `a grain line of at least ${SHORTEST} mm on the piece`,
      hint: 'draw the grain: a piece without it cannot be laid on the cloth',
    },
  ]
}
