import { type Cubic, isLine } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { FIT_SHARE, OffsetFitter } from './offset-fitter.ts'
import { type OffsetEnd, OffsetProbe, type Taper } from './offset-probe.ts'
import { distance as gap } from './point.ts'

/**
 * The offset of one cubic by `distance` mm to the right of travel (a number, or a taper along it), within `tolerance`:
 * cubics that share their ends, first and last point exactly point + distance · normal. Where the concave radius
 * is smaller than the distance the curve runs backward between two cusps, as the offset of mathematics does;
 * `offset` trims that. Not for cubics with a cusp inside: split them there (`smoothParts`).
 */
export function offsetCubic(c: Cubic, distance: number | Taper, tolerance: number): Cubic[] {
  const constant = typeof distance === 'number'
  if (constant && distance === 0) return [c]
  if (constant && isLine(c)) return [shifted(c, distance)]
  const probe = new OffsetProbe(c, distance)
  const pieces: Cubic[] = []
  const fitter = new OffsetFitter(probe, tolerance * FIT_SHARE, pieces)
  const hook = tolerance * (1 - FIT_SHARE)
  fitter.fit(withoutHook(probe, 0, hook), withoutHook(probe, 1, hook), 0)
  return withoutSpecks(pieces)
}

/**
 * An end of the offset. On the hollow side of an end with its handle on it the offset first runs backward, to a cusp and
 * forward again past its own end: a hook, mostly of a few thousandths. Where it comes by within `near` mm of the end the
 * line starts there, at the end's own point.
 */
function withoutHook(probe: OffsetProbe, t: 0 | 1, near: number): OffsetEnd {
  const end = probe.end(t)
  if (end.forward >= 0) return end
  const other = probe.end(t === 0 ? 1 : 0)
  const cusp = t === 0 ? probe.turnsBack(end, other) : probe.turnsBack(other, end)
  if (cusp === undefined) return end
  // How far the offset has come past the end, seen along it.
  const past = (at: number) => {
    probe.at(at)
    const way = (probe.x - end.x) * end.tangentX + (probe.y - end.y) * end.tangentY
    return t === 0 ? way : -way
  }
  const inward = t === 0 ? 1 : -1
  let low = cusp
  let high = cusp
  for (let step = Math.abs(cusp - t); past(high) < 0; step *= 2) {
    low = high
    high += inward * step
    if (high <= 0 || high >= 1) return end
  }
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (past(middle) < 0) low = middle
    else high = middle
  }
  const beside = probe.end(high)
  return gap(beside, end) <= near ? { ...beside, x: end.x, y: end.y } : end
}

/** Without pieces shorter than SAME_POINT, such as the way back into a handle that lies on its end point. */
function withoutSpecks(pieces: readonly Cubic[]): Cubic[] {
  const kept = pieces.filter((c) => gap(c.p0, c.p3) > SAME_POINT || gap(c.p0, c.p1) > SAME_POINT)
  if (kept.length === pieces.length || kept.length === 0) return [...pieces]
  const start = (pieces[0] as Cubic).p0
  const end = (pieces[pieces.length - 1] as Cubic).p3
  return kept.map((c, k) => ({
    ...c,
    p0: k === 0 ? start : (kept[k - 1] as Cubic).p3,
    p3: k === kept.length - 1 ? end : c.p3,
  }))
}

function shifted(c: Cubic, distance: number): Cubic {
  const dx = c.p3.x - c.p0.x
  const dy = c.p3.y - c.p0.y
  const length = Math.hypot(dx, dy)
  const x = (dy / length) * distance
  const y = (-dx / length) * distance
  return {
    p0: { x: c.p0.x + x, y: c.p0.y + y },
    p1: { x: c.p1.x + x, y: c.p1.y + y },
    p2: { x: c.p2.x + x, y: c.p2.y + y },
    p3: { x: c.p3.x + x, y: c.p3.y + y },
  }
}
