import type { Piece } from '../pattern/piece.ts'

/** A measure that nobody took: it was drafted from an estimate. */
export interface Estimate {
  /** Name of the measure. */
  readonly measure: string
  /** The wearer's side, or both where they agree. */
  readonly side: 'left' | 'right' | 'both'
  /** Value and standard error in the reader's unit: `9 15/16 in ± 7/16 in`. */
  readonly words: string
}

/** Measures that one kind of piece alone is drafted from; all others shape both bodice pieces. */
const ONLY: Readonly<Record<string, RegExp>> = {
  sleeve: /^(upper arm|elbow|wrist|hand|outer arm|shoulder to elbow)/,
  'bodice front': /^(front|neck to bust point|bust point|upper chest)/,
  'bodice back': /^back/,
}

/** The estimates a piece was drafted from, for its label: `estimated: wrist girth 6 1/4 in ± 1/4 in`; none, no words. */
export function estimateWords(piece: Piece, estimates: readonly Estimate[]): string | undefined {
  const kind = Object.keys(ONLY).find((id) => piece.id.startsWith(id)) ?? ''
  const shaping = estimates.filter(({ measure, side }) => {
    const alone = Object.keys(ONLY).find((id) => ONLY[id]?.test(measure))
    const drafted = alone === undefined ? kind.startsWith('bodice') : alone === kind
    return drafted && (side === 'both' || piece.side === side || (piece.side !== 'left' && piece.side !== 'right'))
  })
  if (shaping.length === 0) return undefined
  const named = shaping.map((estimate) =>
    saidEstimate(estimate.side === piece.side ? { ...estimate, side: 'both' } : estimate),
  )
  return `estimated: ${named.join(', ')}`
}

/** One of them: `left wrist girth 6 1/4 in ± 1/4 in`; the side is not said where both agree. */
export function saidEstimate(estimate: Estimate): string {
  return `${namedEstimate(estimate)} ${estimate.words}`
}

/** Its name alone: `left wrist girth`. */
export function namedEstimate({ measure, side }: Estimate): string {
  return `${side === 'both' ? '' : `${side} `}${measure}`
}
