import type { TileSet } from '../sheets/lay-out-tiles.ts'
import { KIND_ORDER, type Mark, type MarkKind, pluralOf } from '../sheets/scene.ts'

/** Of a whole version with its lines inside, or of one kind of line on the page itself. */
export interface LayerGroup {
  readonly title: string
  /** Name of the group in a page's content; absent of what belongs to the page and to no version. */
  readonly name?: string
  readonly layers: readonly Layer[]
}

/** The marks of one kind and version: an optional content group of their own. */
export interface Layer {
  readonly name: string
  readonly title: string
  readonly kind: MarkKind
  readonly has: (mark: Mark) => boolean
}

/**
 * The layers of the pages, from the bottom up: for each version that has marks on them, others before the sheet's
 * own, a group with a layer for each kind of line; then a layer for each kind that belongs to the page.
 */
export function pdfLayers(tiles: TileSet): LayerGroup[] {
  const own = tiles.info.version
  const versionOf = (mark: Mark) => mark.version ?? own
  const pattern = tiles.pages.flatMap((page) => page.pattern)
  const others = new Set(pattern.map(versionOf).filter((version) => version !== own))
  let count = 0
  const layersOf = (marks: readonly Mark[], titleOf: (plural: string) => string, has: (mark: Mark) => boolean) => {
    const present = new Set(marks.filter(has).map((mark) => mark.kind))
    return KIND_ORDER.filter((kind) => present.has(kind)).map((kind): Layer => {
      const name = `L${count++}`
      return { name, title: capitalized(titleOf(pluralOf(kind))), kind, has: (mark) => mark.kind === kind && has(mark) }
    })
  }
  const versions = [...others, own].map((version, k): LayerGroup => {
    const titleOf = (plural: string) => (version === own ? plural : `${version}: ${plural}`)
    return { title: version, name: `V${k}`, layers: layersOf(pattern, titleOf, (mark) => versionOf(mark) === version) }
  })
  const furniture = tiles.pages.flatMap((page) => page.furniture)
  return [
    ...versions,
    {
      title: 'Page',
      layers: layersOf(
        furniture,
        (plural) => plural,
        () => true,
      ),
    },
  ]
}

function capitalized(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
