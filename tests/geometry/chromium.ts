import { existsSync } from 'node:fs'
import { type Browser, chromium } from 'playwright-core'

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']

/** Where Chromium is, or undefined. */
export const CHROMIUM = PLACES.find((file) => existsSync(file))

/** Chromium without a window, which asks nobody for anything; to be closed by whoever started it. */
export async function startChromium(): Promise<Browser> {
  if (CHROMIUM === undefined) throw new Error('there is no Chromium')
  const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run']
  return chromium.launch({ executablePath: CHROMIUM, headless: true, args })
}

/** What Chromium's getTotalLength says of each SVG path, in the units of the path. */
export async function chromiumLengths(paths: readonly string[]): Promise<number[]> {
  const browser = await startChromium()
  try {
    const page = await browser.newPage()
    // Text, for the page's own functions are not known to a program without a page.
    const lengths = `(${JSON.stringify(paths)}).map((d) => {
      const path = document.createElementNS('http://www.w3.org/2000/svg', 'path')
      path.setAttribute('d', d)
      return path.getTotalLength()
    })`
    return await page.evaluate<number[]>(lengths)
  } finally {
    await browser.close()
  }
}
