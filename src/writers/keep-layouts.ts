/** As much of a font in a pdfkit document as its texts are laid out with. */
export interface EmbeddedFont {
  /** The font as it was read, and what it has found out about its letters since. */
  font: { createSubset: () => unknown }
  /** The letters that this document uses. */
  subset: unknown
  /** Lays a text out. */
  layoutRun: (text: string, features?: unknown) => unknown
}

interface Known {
  readonly font: EmbeddedFont['font']
  readonly runs: Map<string, unknown>
}

/** By the bytes of the font. */
const KNOWN = new WeakMap<Uint8Array, Known>()

/** Sheets have a few hundred different texts; more come from the names and dates of other files. */
const MOST_RUNS = 2000

/**
 * Lays no text out twice in this document and the next ones with a font of the same bytes, which is read once for all:
 * pdfkit asks for every text three times and remembers none where features are asked for, and most words of a sheet are
 * on every other one too. All text of our documents has the same features.
 */
export function keepLayouts(embedded: EmbeddedFont, bytes: Uint8Array): void {
  const { font, runs } = KNOWN.get(bytes) ?? { font: embedded.font, runs: new Map<string, unknown>() }
  KNOWN.set(bytes, { font, runs })
  if (font !== embedded.font) {
    embedded.font = font
    embedded.subset = font.createSubset()
  }
  const layOut = embedded.layoutRun.bind(embedded)
  embedded.layoutRun = (text, features) => {
    const run = runs.get(text) ?? layOut(text, features)
    if (runs.size >= MOST_RUNS) runs.clear()
    runs.set(text, run)
    return run
  }
}
