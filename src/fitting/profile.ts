/** A height of a profile: `amount` mm at position `at` mm. */
export interface ProfileNode {
  readonly at: number
  readonly amount: number
  /** Slope through the node, mm per mm. Absent: as smooth as it can be without overshooting; 0 at the ends. */
  readonly slope?: number
}

/** How far a stitching line moves, along its length: once continuously differentiable, never beyond its nodes. */
export interface Profile {
  readonly nodes: readonly ProfileNode[]
  /** The amount at a position, mm; constant beyond the ends. */
  amount(at: number): number
  /** Its derivative by position. */
  slope(at: number): number
}

/** A profile of spans, also told at many places at once. */
export interface SmoothProfile extends Profile {
  /** Writes the amounts and slopes at places in rising order: the same numbers as one by one, for less. */
  along(at: readonly number[], amounts: number[], slopes: number[]): void
}

/**
 * The smooth profile through the nodes, in increasing order of position, at least two: piecewise cubic Hermite,
 * monotone between neighbouring nodes, flat at every highest and lowest node and at the ends. Throws on nodes
 * that do not increase, and on a given slope that would make it overshoot. Source of the slopes and of the bound
 * 3 × secant: F. N. Fritsch and R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17
 * (1980); weighted harmonic mean: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984).
 */
export function smoothProfile(nodes: readonly ProfileNode[]): SmoothProfile {
  if (nodes.length < 2) throw new RangeError('a profile needs at least two nodes')
  const widths: number[] = []
  const secants: number[] = []
  for (let i = 1; i < nodes.length; i++) {
    const a = nodes[i - 1] as ProfileNode
    const b = nodes[i] as ProfileNode
    if (!(b.at > a.at)) throw new RangeError(`node ${i} of a profile does not come after node ${i - 1}`)
    widths.push(b.at - a.at)
    secants.push((b.amount - a.amount) / (b.at - a.at))
  }
  const slopes = nodes.map((node, i) => node.slope ?? freeSlope(widths, secants, i))
  secants.forEach((secant, i) => {
    for (const slope of [slopes[i] as number, slopes[i + 1] as number]) {
      const share = slope === 0 ? 0 : slope / secant
      if (!(share >= 0 && share <= 3))
        throw new RangeError(`a slope of ${slope} overshoots between nodes ${i} and ${i + 1}`)
    }
  })
  // By span: where it starts and how wide it is, the amounts at its ends, and the slopes there times its width.
  const spans = widths.map((width, i) => ({
    start: (nodes[i] as ProfileNode).at,
    width,
    a: (nodes[i] as ProfileNode).amount,
    b: (nodes[i + 1] as ProfileNode).amount,
    da: (slopes[i] as number) * width,
    db: (slopes[i + 1] as number) * width,
  }))
  const spanAt = (at: number) => {
    let i = 0
    while (i < spans.length - 1 && at > (spans[i + 1] as Span).start) i++
    return spans[i] as Span
  }
  const first = nodes[0] as ProfileNode
  const last = nodes[nodes.length - 1] as ProfileNode
  const amountOn = (span: Span, at: number) =>
    at <= first.at ? first.amount : at >= last.at ? last.amount : amountWithin(span, at)
  const slopeOn = (span: Span, at: number) => (at < first.at || at > last.at ? 0 : slopeWithin(span, at))
  return {
    nodes,
    amount: (at) => amountOn(spanAt(at), at),
    slope: (at) => slopeOn(spanAt(at), at),
    along: (places, amounts, slopes) => {
      let i = 0
      for (let k = 0; k < places.length; k++) {
        const at = places[k] as number
        while (i < spans.length - 1 && at > (spans[i + 1] as Span).start) i++
        amounts[k] = amountOn(spans[i] as Span, at)
        slopes[k] = slopeOn(spans[i] as Span, at)
      }
    },
  }
}

function amountWithin({ start, width, a, b, da, db }: Span, at: number): number {
  const u = (at - start) / width
  const rise = u * u * (3 - 2 * u)
  return a + (b - a) * rise + u * (1 - u) * ((1 - u) * da - u * db)
}

function slopeWithin({ start, width, a, b, da, db }: Span, at: number): number {
  const u = (at - start) / width
  return (6 * u * (1 - u) * (b - a) + (1 - u) * (1 - 3 * u) * da + u * (3 * u - 2) * db) / width
}

interface Span {
  readonly start: number
  readonly width: number
  readonly a: number
  readonly b: number
  readonly da: number
  readonly db: number
}

function freeSlope(widths: readonly number[], secants: readonly number[], i: number): number {
  const before = secants[i - 1]
  const after = secants[i]
  if (before === undefined || after === undefined || before * after <= 0) return 0
  const w1 = 2 * (widths[i] as number) + (widths[i - 1] as number)
  const w2 = (widths[i] as number) + 2 * (widths[i - 1] as number)
  return (w1 + w2) / (w1 / before + w2 / after)
}
