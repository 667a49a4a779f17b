import type { TilePage, TileSet } from './lay-out-tiles.ts'
import { placedMarks, type Scene } from './scene.ts'

/** A scene as a single page of its own size, with nothing added. */
export function onePage(scene: Scene): TileSet {
  const frame = { left: 0, bottom: 0, right: scene.width, top: scene.height }
  const page: TilePage = {
    name: 'sheet',
    number: 1,
    pieces: scene.pieces.map((placed) => placed.drawing.id),
    map: false,
    window: frame,
    pattern: [...scene.pieces.flatMap(placedMarks), ...scene.sheet],
    furniture: [],
  }
  return {
    info: scene.info,
    paper: 'one page',
    width: scene.width,
    height: scene.height,
    printScale: { x: 1, y: 1 },
    frame,
    overlap: 0,
    titles: new Map(scene.pieces.map(({ drawing }) => [drawing.id, drawing.title])),
    pages: [page],
  }
}
