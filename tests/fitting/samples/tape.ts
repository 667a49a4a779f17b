// What a tape finds on the pattern: dense samples, no arithmetic shared with the corrections.
import type { Pattern } from '../../../src/pattern/pattern.ts'
import { pieceOf } from '../../../src/pattern/seam.ts'
import { cubics, densePoints, farthest, lengthOf, seam, type XY } from '../measure.ts'
import type { Measured, Written } from './sample.ts'

/** Refit is within 0.05 mm, and the dense samples within 0.02. */
export const REFIT = 0.07

export const WRIST: Written = { do: 'let out', settings: { seam: 'wrist', by: '4 mm' } }

export const mm = (amount: number) => `${amount} mm`

/** How far a seam moved at most, either way round. */
export function moved(before: Pattern, after: Pattern, piece: string, id: string): number {
  const [a, b] = [cubics(pieceOf(before, piece), id), cubics(pieceOf(after, piece), id)]
  return Math.max(farthest(a, b), farthest(b, a))
}

/** Sewn length of a seam, darts closed. */
export function sewnLength(pattern: Pattern, piece: string, id: string): number {
  return lengthOf(seam(pieceOf(pattern, piece), id))
}

/** By how much a seam is longer now than it should be. */
export function longer(
  before: Pattern,
  after: Pattern,
  [piece, id]: readonly [string, string],
  should: number,
  within = 0.1,
): Measured {
  const is = sewnLength(after, piece, id) - sewnLength(before, piece, id)
  return { what: `${piece}, ${id} longer`, is, should, within }
}

/** The highest point of the cap. */
export function capTop(pattern: Pattern): number {
  const points = ['front cap', 'back cap'].flatMap((id) => densePoints(cubics(pieceOf(pattern, 'sleeve'), id)))
  return Math.max(...points.map((p) => p.y))
}

/** Ease of the whole cap over both armscyes. */
export function capEase(pattern: Pattern): number {
  return (
    sewnLength(pattern, 'sleeve', 'front cap') +
    sewnLength(pattern, 'sleeve', 'back cap') -
    sewnLength(pattern, 'bodice front', 'armscye') -
    sewnLength(pattern, 'bodice back', 'armscye')
  )
}

/** Where a notch of the sleeve lies, by walking the dense line. */
export function notchPlace(pattern: Pattern, id: string): XY {
  const sleeve = pieceOf(pattern, 'sleeve')
  const notch = sleeve.notches.find((n) => n.id === id)
  if (!notch) throw new Error(`no ${id}`)
  let rest = notch.along
  const points = densePoints(cubics(sleeve, notch.seam))
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as XY, points[i] as XY]
    const step = Math.hypot(b.x - a.x, b.y - a.y)
    if (step >= rest) return { x: a.x + ((b.x - a.x) * rest) / step, y: a.y + ((b.y - a.y) * rest) / step }
    rest -= step
  }
  return points.at(-1) as XY
}

/** Where a seam begins. */
export function start(pattern: Pattern, piece: string, id: string): XY {
  return cubics(pieceOf(pattern, piece), id)[0]?.p0 as XY
}

export function away(a: XY, b: XY): number {
  return Math.hypot(a.x - b.x, a.y - b.y)
}

/** From underarm to underarm. */
export function bicepsWidth(pattern: Pattern): number {
  const back = cubics(pieceOf(pattern, 'sleeve'), 'back cap').at(-1)?.p3 as XY
  return away(start(pattern, 'sleeve', 'front cap'), back)
}

/** The mouths of the darts of a piece whose names begin so, together. */
export function intakes(pattern: Pattern, piece: string, name: string): number {
  const darts = pieceOf(pattern, piece).darts.filter((dart) => dart.id.startsWith(name))
  return darts.reduce((sum, { mouth: [a, b] }) => sum + away(a, b), 0)
}
