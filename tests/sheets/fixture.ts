import type { Body } from '../../src/body/body.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import type { Point } from '../../src/geometry/point.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Mark, SheetInfo, TextMark } from '../../src/sheets/scene.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { SIZE_12 } from '../drafting/bodies.ts'

export const INFO: SheetInfo = {
  performer: 'Lamplighter',
  production: 'The Tin Orchard',
  version: 'first fitting',
  fittings: ['first fitting'],
  date: '2026-10-09',
  units: 'in',
}

/** A drafted pattern: front on the fold, back and sleeve as pairs. */
export function drafted(body: Body = SIZE_12): Pattern {
  const draft = draftPattern(body)
  if (!draft.ok) throw new Error(JSON.stringify(draft.problems))
  return draft.value.pattern
}

/** The same pattern after its sides came apart: every piece twice, the left ones mirrored names only. */
export function split(pattern: Pattern): Pattern {
  const pieces = pattern.pieces.flatMap((piece) =>
    piece.side === 'fold'
      ? [piece]
      : (['left', 'right'] as const).map((side) => ({
          ...piece,
          id: `${piece.id} ${side}`,
          name: `${piece.name}`,
          side,
          cut: 1,
        })),
  )
  return { pieces, joins: [] }
}

/** Points on the ink of a mark, found by evaluating its curves; not the way the library looks for ink. */
export function samplesOf(mark: Mark, steps = 24): Point[] {
  if (mark.type === 'text') return textCorners(mark)
  const paths = mark.type === 'fill' ? [mark.outline] : mark.paths
  return paths.flatMap((path) =>
    path.flatMap(({ p0, p1, p2, p3 }) =>
      Array.from({ length: steps + 1 }, (_, k) => {
        const t = k / steps
        const u = 1 - t
        const [a, b, c, d] = [u ** 3, 3 * u * u * t, 3 * u * t * t, t ** 3]
        return { x: a * p0.x + b * p1.x + c * p2.x + d * p3.x, y: a * p0.y + b * p1.y + c * p2.y + d * p3.y }
      }),
    ),
  )
}

/** The corners of the box from baseline to capital height; widths have a test of their own. */
function textCorners(mark: TextMark): Point[] {
  const half = textWidth(mark.text, mark.size) / 2
  const c = Math.cos(mark.angle)
  const s = Math.sin(mark.angle)
  return [
    [-half, 0],
    [half, 0],
    [half, 0.73 * mark.size],
    [-half, 0.73 * mark.size],
  ].map(([x = 0, y = 0]) => ({ x: mark.at.x + x * c - y * s, y: mark.at.y + x * s + y * c }))
}
