import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { type FormJson, MEASURE_NAMES, MEASURES } from '../../src/index.ts'
import { withTool } from '../outside-tools.ts'
import { readPdf } from '../pdf-reader.ts'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const form = (folder: string, ...args: string[]) => scyeHere(['form', ...args, '-o', join(folder, 'out')])

const bytes = (folder: string, name: string) => readFileSync(join(folder, 'out', name))

/** The text of a PDF as poppler reads it, its lines joined. */
function pdfText(file: string): string {
  return execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ')
}

/** The example without its measures, as it is begun. */
function unmeasured(): string {
  return readFileSync(lamplighter, 'utf8').replace(/^body:\n(?: .*\n|\n)*/m, 'body:\n')
}

describe('scye form', () => {
  test('writes blank sheets for a4 where nothing is given, and says what', async () => {
    const folder = temporaryFolder()
    const { status, stdout, stderr } = await form(folder)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['fitting-sheet-a4.pdf', 'measuring-sheet-a4.pdf'])
    expect(stdout).toMatch(/^Blank sheets\n {2}measuring sheet, a4: 2 pages\n {2}fitting sheet, a4: 2 pages\n/)
    const pages = readPdf(bytes(folder, 'measuring-sheet-a4.pdf'))
    for (const page of pages) {
      expect([page.width, page.height].map(Math.round)).toEqual([210, 297])
      expect(page.texts.map(({ text }) => text).join(' ')).toContain('Confidential')
    }
    for (const name of readdirSync(join(folder, 'out'))) {
      expect(statSync(join(folder, 'out', name)).mode & 0o777).toBe(0o600)
    }
    expect(statSync(join(folder, 'out')).mode & 0o777).toBe(0o700)
  })

  test('prints what a performer file knows, on letter where it is in inches', async () => {
    const folder = temporaryFolder()
    const { stdout } = await form(folder, lamplighter)
    expect(stdout).toContain('outlines of the pattern, first fitting')
    const words = readPdf(bytes(folder, 'measuring-sheet-letter.pdf')).flatMap((page) => page.texts.map((t) => t.text))
    for (const known of ['Lamplighter', 'The Tin Orchard', '2026-10-02', 'inches', '37¾″', '29⅞″', '22°']) {
      expect(words).toContain(known)
    }
    // One value of a measure with sides is both arms'.
    expect(words.filter((word) => word === '11¾″')).toHaveLength(2)
    const fitting = readPdf(bytes(folder, 'fitting-sheet-letter.pdf')).flatMap((page) => page.texts.map((t) => t.text))
    expect(fitting).toContain('first fitting')
    expect(fitting.join('\n')).toMatch(/provisional: on a stand-in or a form/)
  })

  test('what must be said of earlier fittings is said on the fitting sheet', async () => {
    const folder = temporaryFolder()
    const text = readFileSync(lamplighter, 'utf8').replace(
      '    mock-up: 1\n',
      '    mock-up: 1\n    provisional: stand-in\n',
    )
    writeFileSync(join(folder, 'pilot.yaml'), text)
    await form(folder, join(folder, 'pilot.yaml'))
    const fitting = readPdf(bytes(folder, 'fitting-sheet-letter.pdf')).flatMap((page) => page.texts.map((t) => t.text))
    expect(fitting).toContain('Of this version: provisional: first fitting, on stand-in.')
  })

  test('left and right apart are printed in their own boxes', async () => {
    const folder = temporaryFolder()
    const text = readFileSync(lamplighter, 'utf8').replace(
      /upper arm girth: 11 3\/4/,
      'upper arm girth: { left: 11 5/8, right: 12 }',
    )
    writeFileSync(join(folder, 'pilot.yaml'), text)
    await form(folder, join(folder, 'pilot.yaml'), '--paper', 'a4')
    const texts = readPdf(bytes(folder, 'measuring-sheet-a4.pdf')).flatMap((page) => page.texts)
    const [left, right] = ['11⅝″', '12″'].map((value) => texts.find(({ text }) => text === value)?.at)
    expect(left?.[1]).toBeCloseTo(right?.[1] ?? 0, 3)
    expect(left?.[0]).toBeLessThan(right?.[0] ?? 0)
  })

  test('a performer who is yet to be measured has sheets too, with outlines of a standard body', async () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'pilot.yaml'), unmeasured())
    const { status, stdout } = await form(folder, join(folder, 'pilot.yaml'), '--json')
    expect(status).toBe(0)
    const document = JSON.parse(stdout) as FormJson
    expect(document).toMatchObject({ performer: 'Lamplighter', outlines: 'standard body' })
    expect(document).not.toHaveProperty('version')
    expect(document.measures.some((measure) => measure.printed)).toBe(false)
    const fitting = readPdf(bytes(folder, 'fitting-sheet-letter.pdf')).flatMap((page) => page.texts.map((t) => t.text))
    expect(fitting.join(' ')).toContain('standard body’s pattern')
  })

  test('--json prints form/1 and nothing else; a file for each sheet, paper and format', async () => {
    const folder = temporaryFolder()
    const { status, stdout, stderr } = await form(folder, lamplighter, '--json', '--as', 'svg,pdf', '--paper', 'a4,a3')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const document = JSON.parse(stdout) as FormJson
    expect(document).toMatchObject({
      scyewright: 'form/1',
      performer: 'Lamplighter',
      production: 'The Tin Orchard',
      units: 'in',
      version: 'first fitting',
      outlines: 'pattern',
    })
    expect(document.measures.map((measure) => measure.name)).toEqual(MEASURE_NAMES)
    const blank = document.measures.filter((measure) => !measure.printed).map((measure) => measure.name)
    expect(blank).toEqual(['front neck to waist', 'armscye girth', 'shoulder to elbow'])
    expect(document.sheets.map(({ sheet, paper }) => `${sheet} ${paper}`)).toEqual([
      'measuring a4',
      'fitting a4',
      'measuring a3',
      'fitting a3',
    ])
    for (const { pages, files } of document.sheets) expect(files).toHaveLength(1 + pages)
    expect(readdirSync(join(folder, 'out')).sort()).toEqual([...document.files].sort())
    const svg = readFileSync(join(folder, 'out', 'measuring-sheet-a4-1.svg'), 'utf8')
    expect(svg).toMatch(/<svg[^>]* width="210mm" height="297mm"/)
    const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map((m) => m[1])
    expect(new Set(ids).size).toBe(ids.length)
  })

  test('the same bytes twice, and what was there is said to be replaced', async () => {
    const folder = temporaryFolder()
    const first = await form(folder, lamplighter, '--as', 'pdf,svg')
    expect(first.stdout).not.toContain('replaced')
    const before = readdirSync(join(folder, 'out')).map((name) => [name, bytes(folder, name)] as const)
    const second = await form(folder, lamplighter, '--as', 'pdf,svg')
    for (const [name, content] of before) {
      expect(Buffer.compare(content, bytes(folder, name)), name).toBe(0)
      expect(second.stdout).toMatch(new RegExp(`${name} +\\(replaced\\)`))
    }
  })

  withTool('pdftotext', 'another reader finds every measure and how it is taken', async () => {
    const folder = temporaryFolder()
    await form(folder, '--paper', '148x210mm')
    const words = pdfText(join(folder, 'out', 'measuring-sheet-148x210mm.pdf'))
    for (const name of MEASURE_NAMES) {
      expect(words).toContain(name)
      expect(words).toContain(MEASURES[name].how)
    }
    const fitting = pdfText(join(folder, 'out', 'fitting-sheet-148x210mm.pdf'))
    for (const care of [
      'Points lie away from skin',
      'blunt shears',
      'dizziness or pain',
      'Local rules',
      'Count the pins',
    ]) {
      expect(fitting).toContain(care)
    }
    expect(fitting.indexOf('Match the shoulder notch')).toBeLessThan(fitting.indexOf('Pin the underarm'))
    expect(fitting.indexOf('Pin the underarm')).toBeLessThan(fitting.indexOf('work up the cap'))
  })

  test.each([
    ['a file that is not there', ['nowhere.yaml'], 'no-such-file', 'nowhere.yaml'],
    ['two files', [lamplighter, 'other.yaml'], 'one-file', 'one performer file'],
    ['a format that it has not', ['--as', 'dxf'], 'unknown-format', 'pdf, svg'],
    ['a paper too small', ['--paper', 'a4,100x100mm'], 'paper-too-small', '148 mm'],
    ['an option of another command', ['--pieces', 'sleeve'], 'unknown-option', '--pieces'],
  ])('%s is refused and nothing is written', async (_name, args, code, words) => {
    const folder = temporaryFolder()
    const { status, stdout } = await form(folder, ...args, '--json')
    expect(status).toBe(2)
    const document = JSON.parse(stdout) as { scyewright: string; problems: { code: string }[] }
    expect(document.scyewright).toBe('problems/1')
    expect(document.problems.map((problem) => problem.code)).toContain(code)
    expect(stdout).toContain(words)
    expect(existsSync(join(folder, 'out'))).toBe(false)
  })

  test('as a process: beside the file without -o, silent with --quiet; a file with a wrong measure is refused with its place', () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'pilot.yaml'), unmeasured())
    expect(scye(['form', 'pilot.yaml', '--quiet'], { cwd: folder })).toEqual({ status: 0, stdout: '', stderr: '' })
    expect(readdirSync(join(folder, 'pilot-pattern'))).toHaveLength(2)
    writeFileSync(
      join(folder, 'bad.yaml'),
      readFileSync(lamplighter, 'utf8').replace('bust girth: 37 3/4', 'bust girth: 37 elephants'),
    )
    const { status, stdout, stderr } = scye(['form', 'bad.yaml'], { cwd: folder })
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
    expect(stderr).toMatch(/bad\.yaml:\d+:\d+/)
    expect(existsSync(join(folder, 'bad-pattern'))).toBe(false)
  })
})
