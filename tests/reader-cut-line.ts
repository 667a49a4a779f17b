// The cutting line as the independent reader sees it. It shares no line with src/, so that a mistake there cannot hide here.

import type { RawPiece, RawSeam, Reading, Say } from './independent-reader.ts'
import { chainOf, crossings, distanceWithin, signedArea } from './reader-chains.ts'
import { type Curve, curvesOf, flattened, gap, lengthOf, type Pt, sampled } from './reader-curves.ts'

/** How far the chords that stand for curves may lie off them, mm. */
export const CHORDS = 0.005
/** The cutting line is looked at this often to a curve, and this densely, mm. */
const LOOKS = { perCurve: 16, apart: 5 }

/** Whether the cutting line keeps every seam's allowance and crosses nothing. */
export function checkCutLine({ piece, seams, outline }: Reading, say: Say): void {
  const curves = curvesOf(piece.cutLine)
  const cut = chainOf(flattened(curves, CHORDS), true)
  if (!/Z\s*$/.test(piece.cutLine)) say(piece.id, 'cut line is not closed')
  if (!(signedArea(cut) > signedArea(outline))) say(piece.id, 'cut line encloses less than the stitching line')
  if (crossings(cut) > 0) say(piece.id, 'cut line crosses itself')
  if (crossings(cut, outline) > 0) say(piece.id, 'cut line crosses the stitching line')
  // Part by part: the chord over a dart's mouth is no stitching line.
  const parts = seams.flatMap(({ seam, parts }) =>
    parts.map((part) => ({ seam, chain: chainOf(flattened(part, CHORDS), false) })),
  )
  const corners = cornersOf(seams)
  const widest = Math.max(...piece.seams.map((seam) => seam.allowance))
  let before: { readonly p: Pt; readonly nearest: number } | undefined
  let worst: { readonly p: Pt; readonly nearest: number; readonly short: number } | undefined
  for (const curve of curves) {
    const looks = Math.max(LOOKS.perCurve, Math.ceil(lengthOf([curve]) / LOOKS.apart))
    for (const p of sampled([curve], looks)) {
      // No farther than from the point before plus the way from there.
      let nearest = Math.min(widest + 1, before ? before.nearest + gap(before.p, p) + 0.01 : Infinity)
      const near: { readonly seam: RawSeam; readonly off: number }[] = []
      for (const { seam, chain } of parts) {
        const off = distanceWithin(chain, p[0], p[1], nearest + 0.01)
        nearest = Math.min(nearest, off)
        if (off < Infinity) near.push({ seam, off })
      }
      before = { p, nearest }
      // Near a corner two seams are equally far: the smaller allowance of the nearest ones counts.
      const least = Math.min(...near.filter(({ off }) => off < nearest + 0.01).map(({ seam }) => seam.allowance))
      if (near.length === 0 || nearest >= least - 0.05) continue
      if (corners.some((corner) => isOnLineDrawnOn(corner, p, least))) continue
      // Over a dart's mouth the line mirrors what the folded dart lies on, so it may run nearer to the seam beside it:
      // where it lies when the dart is folded, the whole allowance is asked for.
      const folded = piece.darts.filter((dart) => isOverDart(dart, p)).flatMap((dart) => foldedPlaces(dart, p))
      const offParts = ([x, y]: Pt) => Math.min(...parts.map(({ chain }) => distanceWithin(chain, x, y, widest + 1)))
      const short = least - Math.max(nearest, ...folded.map(offParts))
      if (short > Math.max(0.05, worst?.short ?? 0)) worst = { p, nearest, short }
    }
  }
  if (worst) {
    const at = worst.p.map((v) => v.toFixed(1)).join(' ')
    say(piece.id, 'cut line only', worst.nearest.toFixed(3), 'mm outside at', at)
  }
}

/** Whether a point outside the piece lies between the legs of a dart, drawn on beyond its mouth. */
function isOverDart({ mouth: [a, b], point: [x, y] }: RawPiece['darts'][number], [px, py]: Pt): boolean {
  const side = (q: Pt) => ((q[0] - x) * (py - y) - (q[1] - y) * (px - x)) / gap(q, [x, y])
  const ahead = ((a[0] + b[0]) / 2 - x) * (px - x) + ((a[1] + b[1]) / 2 - y) * (py - y) > 0
  return ahead && side(a) * side(b) < 0.05
}

/** Where a point over a dart's mouth comes to lie when the dart is folded to either side: its near or its far half. */
function foldedPlaces({ mouth: [a, b], point }: RawPiece['darts'][number], p: Pt): Pt[] {
  const angle = (q: Pt) => Math.atan2(q[1] - point[1], q[0] - point[0])
  const over = (axis: number, q: Pt): Pt => {
    const [r, turned] = [gap(q, point), 2 * axis - angle(q)]
    return [point[0] + r * Math.cos(turned), point[1] + r * Math.sin(turned)]
  }
  const [one, other] = [angle(a), angle(b)]
  const middle = one + Math.atan2(Math.sin(other - one), Math.cos(other - one)) / 2
  return [one, other].flatMap((leg) => [over(leg, p), over(leg, over(middle, p))])
}

/** A corner that points outward: where it is, the way on past it along the seam of less allowance, and that allowance. */
interface Corner {
  readonly at: Pt
  readonly way: Pt
  readonly outside: Pt
  readonly allowance: number
}

/** Corners between seams of unlike allowance, outward ones alone. */
function cornersOf(seams: Reading['seams']): Corner[] {
  return seams.flatMap(({ seam, parts }, k) => {
    const next = seams[(k + 1) % seams.length] as Reading['seams'][number]
    if (seam.allowance === next.seam.allowance) return []
    const last = parts.at(-1)?.at(-1) as Curve
    const first = next.parts[0]?.[0] as Curve
    const [into, out] = [ways(last)[1], ways(first)[0]]
    if (!(into[0] * out[1] - into[1] * out[0] > 0)) return []
    const narrow = seam.allowance < next.seam.allowance
    const way: Pt = narrow ? into : [-out[0], -out[1]]
    const outside: Pt = narrow ? [into[1], -into[0]] : [out[1], -out[0]]
    return [{ at: first[0], way, outside, allowance: Math.min(seam.allowance, next.seam.allowance) }]
  })
}

/** The unit directions at the start and the end of a curve. */
function ways([a, b, c, d]: Curve): [Pt, Pt] {
  const unit = (from: Pt, to: Pt): Pt => [(to[0] - from[0]) / gap(from, to), (to[1] - from[1]) / gap(from, to)]
  return [
    unit(a, gap(a, b) > 1e-6 ? b : gap(a, c) > 1e-6 ? c : d),
    unit(gap(c, d) > 1e-6 ? c : gap(b, d) > 1e-6 ? b : a, d),
  ]
}

/**
 * Past an outward corner the narrower allowance runs on beside its seam drawn on, until it meets the cutting line of the
 * wider one: there it is nearer to the corner than the wider asks, and rightly. No farther than three of the wider.
 */
function isOnLineDrawnOn({ at, way, outside, allowance }: Corner, p: Pt, wider: number): boolean {
  const past: Pt = [p[0] - at[0], p[1] - at[1]]
  const ahead = past[0] * way[0] + past[1] * way[1]
  const off = past[0] * outside[0] + past[1] * outside[1]
  return ahead > 0 && ahead < 3 * wider && Math.abs(off - allowance) < 0.05
}
