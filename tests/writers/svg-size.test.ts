import { spawnSync } from 'node:child_process'
import { inflateSync } from 'node:zlib'
import { chromium } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { writeSvg } from '../../src/writers/svg.ts'
import { CHROMIUM } from '../geometry/chromium.ts'
import { withTool } from '../outside-tools.ts'
import { drafted, INFO } from '../sheets/fixture.ts'

const scene = layOut(drafted(), { ...INFO, pieces: ['sleeve'] })
const svg = await writeSvg(scene, { title: 'Sleeve', description: 'The sleeve alone' })

/** The lower left of the sheet alone, with the measured squares: small enough to look at pixel by pixel. */
const corner = { ...scene, pieces: [], width: 130, height: 130 }
/** Corner of the squares, mm from the left and from the top. */
const SQUARES = { left: 15, bottom: corner.height - 15 }

interface Picture {
  readonly width: number
  readonly height: number
  /** How dark a pixel is, 0 white to 255 black. */
  readonly ink: (column: number, row: number) => number
}

/** An 8 bit RGBA picture that is not interlaced, as rsvg-convert writes them (PNG specification, filters 0 to 4). */
function readPng(file: Buffer): Picture {
  const [width, height] = [file.readUInt32BE(16), file.readUInt32BE(20)]
  expect([file[24], file[25], file[28]]).toEqual([8, 6, 0])
  const data: Buffer[] = []
  for (let at = 8; at < file.length; at += 12 + file.readUInt32BE(at)) {
    if (file.toString('latin1', at + 4, at + 8) === 'IDAT')
      data.push(file.subarray(at + 8, at + 8 + file.readUInt32BE(at)))
  }
  const raw = inflateSync(Buffer.concat(data))
  const line = width * 4
  const out = Buffer.alloc(line * height)
  for (let row = 0; row < height; row++) {
    const filter = raw[row * (line + 1)]
    for (let k = 0; k < line; k++) {
      const a = k >= 4 ? (out[row * line + k - 4] as number) : 0
      const b = row > 0 ? (out[(row - 1) * line + k] as number) : 0
      const c = k >= 4 && row > 0 ? (out[(row - 1) * line + k - 4] as number) : 0
      const before = [0, a, b, (a + b) >> 1, filter === 4 ? nearest(a, b, c) : 0][filter as number] as number
      out[row * line + k] = (raw[row * (line + 1) + 1 + k] as number) + before
    }
  }
  // Black ink on nothing: the opacity alone.
  return { width, height, ink: (column, row) => out[row * line + column * 4 + 3] as number }
}

/** The one of three that is nearest to a + b − c, the first of equals. */
function nearest(a: number, b: number, c: number): number {
  const [p, q, r] = [Math.abs(b - c), Math.abs(a - c), Math.abs(a + b - 2 * c)]
  if (p <= q && p <= r) return a
  return q <= r ? b : c
}

/** Where the solid and the dashed square's line crosses a row or column of pixels: centers of ink, in pixels. */
function centers(values: readonly number[]): number[] {
  const found: number[] = []
  let [sum, moment] = [0, 0]
  values.forEach((value, k) => {
    sum += value
    moment += value * (k + 0.5)
    if (value > 0 && (values[k + 1] ?? 0) === 0) {
      found.push(moment / sum)
      ;[sum, moment] = [0, 0]
    }
  })
  return found
}

const RSVG = 'rsvg-convert'

describe('drawn by rsvg-convert', () => {
  /** At 127 dpi: five pixels a millimetre. */
  function draw(input: string): Buffer {
    const { stdout, status } = spawnSync(RSVG, ['-d', '127', '-p', '127'], { input, maxBuffer: 1e8 })
    expect(status).toBe(0)
    return stdout
  }

  withTool(RSVG, 'the sheet has its size', () => {
    const file = draw(svg)
    expect([file.readUInt32BE(16), file.readUInt32BE(20)]).toEqual([scene.width * 5, scene.height * 5])
  })

  withTool(RSVG, 'the square measures 100 mm both ways', async () => {
    const picture = readPng(draw(await writeSvg(corner, { title: 'Foot', description: 'Squares' })))
    const from = (SQUARES.left - 3) * 5
    const row = Array.from({ length: 108 * 5 }, (_, k) => picture.ink(from + k, (SQUARES.bottom - 50) * 5))
    const low = (SQUARES.bottom - 105) * 5
    const column = Array.from({ length: 108 * 5 }, (_, k) => picture.ink((SQUARES.left + 50) * 5, low + k))
    const across = centers(row).filter((at) => at < 104 * 5)
    expect(((across[1] as number) - (across[0] as number)) / 5).toBeCloseTo(100, 1)
    const down = centers(column).slice(-2)
    const top = centers(column).find((at) => Math.abs(at / 5 - 5) < 0.5)
    expect(((down[1] as number) - (top as number)) / 5).toBeCloseTo(100, 1)
  })
})

describe.skipIf(!CHROMIUM)('drawn by Chromium (skipped where there is none)', () => {
  test('sheet, squares and texts have the size that they were given', async () => {
    const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run']
    const browser = await chromium.launch({ executablePath: CHROMIUM ?? '', headless: true, args })
    try {
      const page = await browser.newPage()
      await page.setContent(`<body style="margin:0">${svg.replace(/^<\?xml[^>]*>/, '')}</body>`)
      const measured = await page.evaluate<{ boxes: number[][]; texts: [string, number, number][] }>(`(() => {
        const box = (id) => { const r = document.getElementById(id).getBoundingClientRect(); return [r.width, r.height] }
        return {
          boxes: ['sheet', 'foot-measured-square-100-mm-square', 'foot-measured-square-4-in-square'].map(box),
          texts: [...document.querySelectorAll('text')].map((t) =>
            [t.textContent, Number(t.getAttribute('textLength')), t.getComputedTextLength()]),
        }
      })()`)
      const px = 96 / 25.4
      const asked = [
        [scene.width, scene.height],
        [100, 100],
        [101.6, 101.6],
      ]
      for (const [k, box] of measured.boxes.entries()) {
        for (const [side, size] of box.entries()) expect(size / px).toBeCloseTo(asked[k]?.[side] as number, 1)
      }
      expect(measured.texts.length).toBeGreaterThan(20)
      // Wherever DejaVu Sans is, a text is as wide as it was placed; elsewhere textLength makes it so.
      for (const [text, given, drawn] of measured.texts)
        expect(Math.abs(drawn - given), text).toBeLessThan(0.02 * given + 0.2)
    } finally {
      await browser.close()
    }
  }, 60_000)
})
