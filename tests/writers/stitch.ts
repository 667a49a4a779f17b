import { execFileSync } from 'node:child_process'
import type { Picture } from '../outside-tools.ts'

/** Ink or none, pixel by pixel, row by row from the top. */
export interface Bitmap {
  readonly width: number
  readonly height: number
  readonly ink: Uint8Array
}

/** A page as somebody with scissors sees it: its name in the grid, and where its border is, in pixels. */
export interface CutPage {
  readonly column: number
  readonly row: number
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** What is written on the pages: size of the border and overlap, mm, and the name of each page. */
export interface Written {
  readonly border: readonly [number, number]
  readonly overlap: number
  readonly names: readonly string[]
}

/** The words of the pages by pdftotext. */
export function wordsOn(file: string): Written {
  const pages = execFileSync('pdftotext', ['-raw', file, '-']).toString('utf8').split('\f').slice(0, -1)
  const all = pages.join('\n')
  const [, width, height] = /border (\d+) × (\d+) mm/.exec(all) ?? []
  return {
    border: [Number(width), Number(height)],
    overlap: Number(/overlap (\d+) mm/.exec(all)?.[1] ?? 0),
    names: pages.map((page) => /^([A-Z]+\d+|map)$/m.exec(page)?.[1] ?? ''),
  }
}

/** Finds the border of a page in its picture: the outermost lines that run over most of it. */
export function findBorder({ width, height, darkness }: Picture, name: string): CutPage {
  const dark = (x: number, y: number) => darkness(x, y) > 0.4
  const share = (length: number, at: (k: number) => boolean) => {
    let count = 0
    for (let k = 0; k < length; k++) if (at(k)) count++
    return count / length
  }
  const upright = (x: number) => share(height, (y) => dark(x, y)) > 0.75
  const level = (y: number) => share(width, (x) => dark(x, y)) > 0.75
  const first = (count: number, is: (k: number) => boolean) => {
    for (let k = 0; k < count; k++) if (is(k)) return k
    throw new Error(`page ${name} has no border`)
  }
  const left = first(width, upright)
  const right = width - 1 - first(width, (k) => upright(width - 1 - k))
  const top = first(height, level)
  // The rule below is as long as the border: the side of the border ends where the border does.
  const bottom = top + first(height - top, (k) => !dark(left, top + k + 1))
  const letters = /^[A-Z]+/.exec(name)?.[0] ?? ''
  const row = Array.from(letters).reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) - 1
  return { column: Number(name.slice(letters.length)) - 1, row, left, top, right, bottom }
}

/**
 * Lays the pages over each other as the map says, row by row: each is cut along its border and laid with its left and
 * top edge on the line that lies an overlap before the border of the page before.
 */
export function stitch(
  pages: readonly { cut: CutPage; picture: Picture }[],
  { border, overlap }: Written,
  dpi: number,
): Bitmap {
  const pixels = (mm: number) => Math.round((mm * dpi) / 25.4)
  const stepX = border[0] - overlap
  const stepY = border[1] - overlap
  const columns = 1 + Math.max(...pages.map(({ cut }) => cut.column))
  const rows = 1 + Math.max(...pages.map(({ cut }) => cut.row))
  const width = pixels(columns * stepX + overlap) + 1
  const height = pixels(rows * stepY + overlap) + 1
  const ink = new Uint8Array(width * height)
  const inOrder = [...pages].sort((a, b) => a.cut.row - b.cut.row || a.cut.column - b.cut.column)
  for (const { cut, picture } of inOrder) {
    const [x0, y0] = [pixels(cut.column * stepX), pixels(cut.row * stepY)]
    for (let y = cut.top; y <= cut.bottom; y++) {
      for (let x = cut.left; x <= cut.right; x++) {
        const [u, v] = [x0 + x - cut.left, y0 + y - cut.top]
        if (u < width && v < height) ink[v * width + u] = picture.darkness(x, y) > 0.4 ? 1 : 0
      }
    }
  }
  return { width, height, ink }
}

export function bitmapOf({ width, height, darkness }: Picture): Bitmap {
  const ink = new Uint8Array(width * height)
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) ink[y * width + x] = darkness(x, y) > 0.4 ? 1 : 0
  return { width, height, ink }
}

/** Pixels of ink in `a` that have none within a pixel in `b`. */
export function unmatched(a: Bitmap, b: Bitmap): { x: number; y: number }[] {
  const found: { x: number; y: number }[] = []
  for (let y = 0; y < a.height; y++) {
    for (let x = 0; x < a.width; x++) {
      if (a.ink[y * a.width + x] && !inkNear(b, x, y)) found.push({ x, y })
    }
  }
  return found
}

function inkNear({ width, height, ink }: Bitmap, x: number, y: number): boolean {
  for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
    for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) if (ink[v * width + u]) return true
  }
  return false
}

/** The file with these layers turned off, byte for byte as long: what a viewer's list of layers does. */
export function withoutLayers(file: Uint8Array, names: readonly string[]): Buffer {
  const text = Buffer.from(file).toString('latin1')
  const refs = names.map((name) => new RegExp(`(\\d+) 0 obj\\n<<\\n/Type /OCG\\n/Name \\(${name}\\)`).exec(text)?.[1])
  const on = /\/ON \[[^\]]*\]/.exec(text)
  if (!on || refs.includes(undefined)) throw new Error('no such layers')
  const off = `/OFF [${refs.map((ref) => `${ref} 0 R`).join(' ')}]`
  if (off.length > on[0].length) throw new Error('no room for the list of layers')
  return Buffer.from(text.replace(on[0], off.padEnd(on[0].length)), 'latin1')
}
