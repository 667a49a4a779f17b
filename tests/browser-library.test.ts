import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'tsdown'
import { describe, expect, test } from 'vitest'
import { makePattern, parsePaper, writePattern, writeViewPage } from '../src/index.ts'
import { CHROMIUM, startChromium } from './geometry/chromium.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const date = '2026-11-30'
const EXAMPLES = ['lamplighter', 'ferry-pilot', 'test-sleeve']
const texts = EXAMPLES.map((name) => readFileSync(join(root, 'examples', `${name}.yaml`), 'utf8'))
const font = readFileSync(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'))
if (!CHROMIUM) console.warn('Chromium is not installed: the library is not run in a browser')

/** Every file of a performer by its name, text as Latin letters of its bytes. */
type Files = Readonly<Record<string, string>>

const latin = (content: string | Uint8Array) => Buffer.from(content).toString('latin1')

async function writtenHere(text: string): Promise<Files> {
  const made = makePattern(text, 'a.yaml')
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const paper = parsePaper('a4')
  if (!paper.ok) throw new Error('no a4')
  const formats = ['svg', 'pdf', 'dxf', 'json'] as const
  const written = await writePattern(made.value, {
    formats,
    papers: [paper.value],
    date,
    font: () => new Uint8Array(font),
  })
  if (!written.ok) throw new Error(JSON.stringify(written.problems))
  const files = written.value.files.map(({ name, content }) => [name, latin(content)] as const)
  return { ...Object.fromEntries(files), 'view.html': latin(writeViewPage(made.value, { date })) }
}

/** The same as a program of the page, where the library is a file beside it. */
const IN_PAGE = `async ({ text, date }) => {
  const { makePattern, parsePaper, writePattern, writeViewPage } = await import('/library.js')
  const font = new Uint8Array(await (await fetch('/font.ttf')).arrayBuffer())
  const latin = (content) => {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content
    let letters = ''
    for (const byte of bytes) letters += String.fromCharCode(byte)
    return letters
  }
  const made = makePattern(text, 'a.yaml')
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const papers = [parsePaper('a4').value]
  const written = await writePattern(made.value, { formats: ['svg', 'pdf', 'dxf', 'json'], papers, date, font: () => font })
  if (!written.ok) throw new Error(JSON.stringify(written.problems))
  const files = written.value.files.map(({ name, content }) => [name, latin(content)])
  return { ...Object.fromEntries(files), 'view.html': latin(writeViewPage(made.value, { date })) }
}`

/** Bundled for a browser by an ordinary bundler, nothing of Node put in its place; what Node alone needs stays out. */
async function bundle(folder: string): Promise<void> {
  await build({
    config: false,
    cwd: root,
    entry: { library: 'src/index.ts' },
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    dts: false,
    external: ['svgdom'],
    noExternal: [/.*/],
    outDir: folder,
    logLevel: 'silent',
  })
}

async function writtenInBrowser(): Promise<readonly Files[]> {
  const folder = mkdtempSync(join(tmpdir(), 'scye-library-'))
  await bundle(folder)
  const browser = await startChromium()
  try {
    const page = await browser.newPage()
    const said: string[] = []
    page.on('pageerror', (error) => said.push(error.message))
    const names = readdirSync(folder)
    await page.route('**/*', (route) => {
      const name = new URL(route.request().url()).pathname.slice(1)
      if (name === '') return route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>library</title>' })
      if (name === 'font.ttf') return route.fulfill({ contentType: 'font/ttf', body: font })
      if (!names.includes(name)) return route.abort()
      return route.fulfill({ contentType: 'text/javascript', body: readFileSync(join(folder, name)) })
    })
    await page.goto('http://scyewright.invalid/')
    const files: Files[] = []
    for (const text of texts) files.push(await page.evaluate<Files>(`(${IN_PAGE})(${JSON.stringify({ text, date })})`))
    expect(said).toEqual([])
    return files
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Where two files part, with what is round it; empty where they are the same. */
function difference(a: string, b: string): string {
  if (a === b) return ''
  let at = 0
  while (a[at] === b[at]) at++
  return `at ${at} of ${a.length} and ${b.length}: ${JSON.stringify(a.slice(Math.max(0, at - 60), at + 40))} in Node, ${JSON.stringify(b.slice(Math.max(0, at - 60), at + 40))} in the browser`
}

describe.skipIf(!CHROMIUM)('the library in a browser (skipped where Chromium is not installed)', () => {
  test('writes the same bytes as in Node: SVG, PDF, DXF, JSON, HTML, slip', async () => {
    const theirs = await writtenInBrowser()
    for (const [k, text] of texts.entries()) {
      const ours = await writtenHere(text)
      expect(Object.keys(theirs[k] ?? {})).toEqual(Object.keys(ours))
      for (const [name, content] of Object.entries(ours))
        expect.soft(difference(content, theirs[k]?.[name] ?? ''), `${EXAMPLES[k]}, ${name}`).toBe('')
    }
  }, 60_000)
})
