import { execFileSync } from 'node:child_process'
import { test } from 'vitest'

/** A test that needs a program of the system; skipped by name where it is missing. `bash .ci/run` installs all of them. */
export function withTool(tool: string, name: string, run: () => void | Promise<void>, timeout?: number): void {
  if (isThere(tool)) test(name, run, timeout)
  else test.skip(`${name} (needs ${tool}, which is not installed)`, () => {})
}

export function isThere(tool: string): boolean {
  try {
    execFileSync('sh', ['-c', 'command -v "$0"', tool], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

/** A rendered page; darkness 0 (paper) to 1 (ink), x to the right, y down, in pixels. */
export interface Picture {
  readonly width: number
  readonly height: number
  readonly darkness: (x: number, y: number) => number
}

export interface RenderOptions {
  readonly dpi: number
  /** Page numbers from and to; all when absent. */
  readonly pages?: readonly [number, number]
  /** Lines smoothed in grays; without it every line is at least a pixel wide and black. */
  readonly smooth?: boolean
}

/** The pages of a PDF as poppler draws them. */
export function renderPages(file: string, { dpi, pages, smooth = true }: RenderOptions): Picture[] {
  const range = pages ? ['-f', `${pages[0]}`, '-l', `${pages[1]}`] : []
  const plain = smooth ? [] : ['-aa', 'no', '-aaVector', 'no']
  const bytes = execFileSync('pdftoppm', ['-gray', '-r', `${dpi}`, ...range, ...plain, file], { maxBuffer: 2e9 })
  const found: Picture[] = []
  for (let at = 0; at < bytes.length; ) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(at, at + 40).toString('latin1'))
    if (!head) throw new Error('not a gray picture')
    const [width, height] = [Number(head[1]), Number(head[2])]
    const start = at + head[0].length
    found.push({ width, height, darkness: (x, y) => 1 - (bytes[start + y * width + x] ?? 255) / 255 })
    at = start + width * height
  }
  return found
}
