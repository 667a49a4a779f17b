import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { PatternJson, Report } from '../../src/index.ts'
import { CHROMIUM, startChromium } from '../geometry/chromium.ts'
import { scyeHere } from '../scye.ts'

const example = fileURLToPath(new URL('../../examples/lamplighter.yaml', import.meta.url))
if (!CHROMIUM) console.warn('Chromium is not installed: the viewing page is not tested in a browser')

describe.skipIf(!CHROMIUM)('the viewing page in Chromium (skipped where Chromium is not installed)', () => {
  const folder = mkdtempSync(join(tmpdir(), 'scye-view-'))
  const said: string[] = []
  const asked: string[] = []
  let browser: Browser
  let page: Page
  let report: Report
  let pattern: PatternJson

  beforeAll(async () => {
    await scyeHere(['view', example, '-o', folder, '--quiet'])
    await scyeHere(['draft', example, '-o', folder, '--as', 'json', '--quiet'])
    report = JSON.parse(readFileSync(join(folder, 'report.json'), 'utf8'))
    pattern = JSON.parse(readFileSync(join(folder, 'pattern.json'), 'utf8'))
    browser = await startChromium()
    page = await browser.newPage({ viewport: { width: 1300, height: 850 } })
    page.setDefaultTimeout(10_000)
    page.on('console', (message) => said.push(message.text()))
    page.on('pageerror', (error) => said.push(error.message))
    page.on('request', (request) => asked.push(request.url()))
    await page.goto(pathToFileURL(join(folder, 'view.html')).href)
  }, 60_000)

  afterAll(async () => {
    await browser?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  const start = async () => {
    await page.locator('input[name=mode][value=""]').check()
    if (await page.locator('#later').isEnabled()) await page.locator('#later').click()
    await page.locator('#whole').click()
  }
  const measured = async () => Number(await page.locator('#result').getAttribute('data-mm'))
  const choose = async (from: string, to: string) => {
    await page.locator('#from').selectOption({ label: from })
    await page.locator('#to').selectOption({ label: to })
  }
  /** Where a point of a piece is in the window: from its mark on the page. */
  const inWindow = async (piece: string, name: string): Promise<{ x: number; y: number }> =>
    page.evaluate(`(() => {
      const { versions } = JSON.parse(document.getElementById('data').textContent)
      const mark = versions.at(-1).marks.find((m) => m.piece === ${JSON.stringify(piece)} && m.name === ${JSON.stringify(name)})
      const svg = document.getElementById('drawing')
      const p = new DOMPoint(mark.x, mark.y).matrixTransform(svg.getScreenCTM())
      return { x: p.x, y: p.y }
    })()`)
  const span = (join: string, from: string, to: string) => {
    const found = report.joins.find(({ id }) => id === join)?.spans.find((one) => one.from === from && one.to === to)
    if (!found) throw new Error(`no span ${from} to ${to} of ${join}`)
    return found
  }

  test('is there, with every piece, and has asked for nothing and complained of nothing', async () => {
    expect(await page.locator('.version:not([hidden]) .seam').count()).toBe(
      pattern.pieces.reduce((sum, piece) => sum + piece.seams.length, 0),
    )
    expect(await page.title()).toContain('Lamplighter')
    expect(said).toEqual([])
    expect(asked.filter((url) => !url.startsWith('file:'))).toEqual([])
    expect(asked).toHaveLength(1)
  })

  test.each([
    ['front cap', 'underarm', 'front notch', 'sleeve', 'underarm, front cap', 'front notch', 'a'],
    ['front cap', 'front notch', 'shoulder notch', 'sleeve', 'front notch', 'shoulder notch', 'a'],
    ['back cap', 'back notch', 'shoulder notch', 'sleeve', 'back notch', 'shoulder notch', 'a'],
    ['front cap', 'underarm', 'front notch', 'bodice front', 'underarm', 'front notch', 'b'],
  ] as const)('%s from %s to %s on the %s is what the report walked', async (join, from, to, piece, a, b, side) => {
    await start()
    await choose(`${piece}, ${a}`, `${piece}, ${b}`)
    expect(Math.abs((await measured()) - span(join, from, to)[side])).toBeLessThan(0.05)
    expect(await page.locator('#result').textContent()).toContain('along')
  })

  test('two taps near notches measure from notch to notch, and Escape forgets it', async () => {
    await start()
    await page.locator('input[value=along]').check()
    const a = await inWindow('sleeve', 'front notch')
    const b = await inWindow('sleeve', 'shoulder notch')
    await page.mouse.click(a.x + 3, a.y - 2)
    await page.mouse.click(b.x - 2, b.y + 3)
    expect(Math.abs((await measured()) - span('front cap', 'front notch', 'shoulder notch').a)).toBeLessThan(0.05)
    expect(await page.locator('#measured path').count()).toBe(1)
    await page.keyboard.press('Escape')
    expect(await page.locator('#measured path').count()).toBe(0)
  })

  test('a tap beside a stitching line goes to it, darts closed', async () => {
    await start()
    await page.locator('input[value=along]').check()
    // From the front of the waist over its dart to the side seam: the whole of the seam.
    const a = await inWindow('bodice front', 'corner of center front and waist')
    const b = await inWindow('bodice front', 'corner of waist and side seam')
    await page.mouse.click(a.x, a.y)
    await page.mouse.click(b.x, b.y)
    const words =
      (await page
        .locator('.version:not([hidden]) [data-piece="bodice front"][data-seam=waist]')
        .getAttribute('aria-label')) ?? ''
    const [, mm] = /\(([\d.]+) mm\)/.exec(words) ?? []
    expect(Math.abs((await measured()) - Number(mm))).toBeLessThan(0.051)
  })

  test('straight is the distance of the coordinates', async () => {
    await start()
    await page.locator('input[value=straight]').check()
    await choose('sleeve, front notch', 'sleeve, back notch')
    const at = (id: string) =>
      pattern.pieces.find((p) => p.id === 'sleeve')?.notches.find((n) => n.id === id)?.at ?? [NaN, NaN]
    const [a, b] = [at('front notch'), at('back notch')]
    expect(Math.abs((await measured()) - Math.hypot(a[0] - b[0], a[1] - b[1]))).toBeLessThan(0.001)
  })

  test('layers go and come', async () => {
    await start()
    for (const [layer, mark] of [
      ['cutting', '.cutting-line'],
      ['stitching', '.stitching-line'],
      ['darts', '.dart'],
      ['notches', '.notch'],
      ['lines', '.grain-line.solid'],
      ['labels', '.labels text'],
    ] as const) {
      const shown = () => page.locator(`.version:not([hidden]) ${mark}`).first().isVisible()
      expect(await shown(), layer).toBe(true)
      await page.locator(`input[value=${layer}]`).uncheck()
      expect(await shown(), layer).toBe(false)
      await page.locator(`input[value=${layer}]`).check()
    }
  })

  test('the slider shows one version at a stop and both between, and measures what it shows', async () => {
    await start()
    const visible = () =>
      page.evaluate("[...document.querySelectorAll('.version:not([hidden])')].map((g) => g.dataset.label)")
    expect(await visible()).toEqual(['first fitting'])
    await page.locator('#when').fill('0.5')
    expect(await visible()).toEqual(['draft', 'first fitting'])
    expect(await page.locator('#when-label').textContent()).toContain('fading into')
    await page.locator('#earlier').click()
    expect(await visible()).toEqual(['draft'])
    await choose('sleeve, front notch', 'sleeve, shoulder notch')
    const draft = await measured()
    expect(span('front cap', 'front notch', 'shoulder notch').a - draft).toBeGreaterThan(1)
    await page.locator('#under').selectOption({ label: 'first fitting' })
    expect(await page.locator('.version.under').getAttribute('data-label')).toBe('first fitting')
    await page.locator('#under').selectOption('')
  })

  test('a finding leads to its place: the last version, the seam in sight and in focus', async () => {
    await start()
    await page.locator('#earlier').click()
    await page.locator('.finding[data-piece=sleeve]').first().click()
    const focused = await page.evaluate('({ ...document.activeElement.dataset })')
    expect(focused).toMatchObject({ piece: 'sleeve', seam: 'front cap' })
    expect(await page.locator('.version:not([hidden])').getAttribute('data-label')).toBe('first fitting')
    const [seam, drawing] = [
      await page.locator('.seam:focus').boundingBox(),
      await page.locator('#drawing').boundingBox(),
    ]
    expect(seam && drawing && seam.x >= drawing.x && seam.x + seam.width <= drawing.x + drawing.width).toBe(true)
    expect(await page.locator('#about').textContent()).toMatch(
      /^sleeve, front cap: .*sewn to bodice front, armscye .*ease/,
    )
  })

  test('the keys alone do it all', async () => {
    await start()
    await page.locator('#drawing').focus()
    const width = async () => Number((await page.locator('#drawing').getAttribute('viewBox'))?.split(' ')[2])
    const before = await width()
    await page.keyboard.press('+')
    expect(await width()).toBeLessThan(before)
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('0')
    expect(await width()).toBeCloseTo(before, 3)
    await page.keyboard.press('Tab')
    expect(await page.locator('#about').textContent()).toContain(
      await page.locator('.seam:focus').getAttribute('aria-label'),
    )
    // Every control is reached, and shows that it is.
    const reached = new Set<string>()
    for (let k = 0; k < 60; k++) {
      await page.keyboard.press('Tab')
      const id = await page.evaluate<string>(
        "document.activeElement.id || document.activeElement.getAttribute('class') || document.activeElement.name || ''",
      )
      if (id === '') break
      for (const one of id.split(' ')) reached.add(one)
      if (id === 'from')
        expect(await page.evaluate('getComputedStyle(document.activeElement).outlineStyle')).toBe('solid')
    }
    for (const id of [
      'seam',
      'nearer',
      'farther',
      'whole',
      'when',
      'earlier',
      'layer',
      'under',
      'mode',
      'from',
      'to',
      'finding',
    ])
      expect([...reached], id).toContain(id)
  })

  test('on paper there are the drawing, the version and the findings, and nothing to press', async () => {
    await start()
    await page.emulateMedia({ media: 'print' })
    for (const id of ['tools', 'about', 'from', 'when'])
      expect(await page.locator(`#${id}`).isVisible(), id).toBe(false)
    for (const id of ['drawing', 'shown']) expect(await page.locator(`#${id}`).isVisible(), id).toBe(true)
    expect(await page.locator('.finding').first().isVisible()).toBe(true)
    await page.emulateMedia({ media: 'screen' })
    expect(said).toEqual([])
  })
})
