import { isCapJoin } from '../pattern/sewn-line.ts'
import { baseName, namedSide } from '../pattern/side-names.ts'
import type { WrittenCorrection } from './check.ts'

/** The edge that a seam ends at, by its join: moving the edge there makes the seam longer or shorter. */
const EDGES: Readonly<Record<string, { readonly a: Edge; readonly b: Edge }>> = {
  'side seam': {
    a: { seam: 'back waist', at: 'side seam', 'taper to': 'center back' },
    b: { seam: 'front waist', at: 'side seam', 'taper to': 'center front' },
  },
  shoulder: {
    a: { seam: 'back armscye', at: 'shoulder point', 'taper to': 'back notch' },
    b: { seam: 'front armscye', at: 'shoulder point', 'taper to': 'front notch' },
  },
  'underarm seam': {
    a: { seam: 'wrist', at: 'back underarm seam', 'taper to': 'front underarm seam' },
    b: { seam: 'wrist', at: 'front underarm seam', 'taper to': 'back underarm seam' },
  },
}

type Edge = Readonly<Record<'seam' | 'at' | 'taper to', string>>

/**
 * What could bring a join back to the ease that it declares, the first seam being `excess` mm too long for it: the cap
 * drawn again over its armscye; the shorter of two seams let out at its lower end, or the longer taken in.
 */
export function triesForJoin(join: string, excess: number): WrittenCorrection[] {
  const side = namedSide(join)
  const on = side === undefined ? {} : { side }
  if (isCapJoin({ id: join })) return [{ do: 'rematch cap', ...on }]
  const edges = EDGES[baseName(join)]
  if (!edges) return []
  const by = `${Math.abs(excess).toFixed(1)} mm`
  const [short, long] = excess > 0 ? [edges.b, edges.a] : [edges.a, edges.b]
  return [
    { do: 'let out', ...moved(short, by), ...on },
    { do: 'take in', ...moved(long, by), ...on },
  ]
}

function moved({ seam, at, ...taper }: Edge, by: string) {
  return { seam, at, by, ...taper }
}

/** The side that a correction of this piece names; nothing where it is a pair. */
export function onSide(piece: { readonly side: string }): { readonly side?: 'left' | 'right' } {
  return piece.side === 'left' || piece.side === 'right' ? { side: piece.side } : {}
}
