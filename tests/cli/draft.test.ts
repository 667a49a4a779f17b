import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { readPdf } from '../pdf-reader.ts'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

interface Report {
  readonly scyewright: string
  readonly version: string
  readonly files: string[]
  readonly findings: { readonly severity: string }[]
  readonly joins: { readonly id: string; readonly ease: number }[]
}

const draft = (folder: string, ...args: string[]) =>
  scyeHere(['draft', lamplighter, '-o', join(folder, 'out'), ...args])
const read = (folder: string, name: string) => readFileSync(join(folder, 'out', name), 'utf8')

describe('scye draft', () => {
  test('the demo writes pieces, report and slip, and says where they are', async () => {
    const folder = temporaryFolder()
    const { status, stdout, stderr } = scye(['draft', lamplighter, '-o', 'out', '--paper', 'a4,letter'], {
      cwd: folder,
    })
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const files = ['pattern.json', 'pattern.svg', 'report.json', 'slip.txt', 'tiles-a4.pdf', 'tiles-letter.pdf']
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(files)
    for (const file of files) expect(stdout).toContain(`  ${file}`)
    expect(stdout).toContain('Written to out/')
    const report = JSON.parse(read(folder, 'report.json')) as Report
    expect(report).toMatchObject({ scyewright: 'report/1', version: 'first fitting' })
    expect([...report.files].sort()).toEqual(files)
    expect(report.findings.filter((finding) => finding.severity === 'error')).toEqual([])
  })

  test('ends with the figures a draper looks at first, before and after the fitting', async () => {
    const { stdout } = await draft(temporaryFolder(), '--as', 'json')
    expect(stdout).toMatch(/^ +draft +first fitting$/m)
    for (const figure of [
      'cap height',
      'biceps width',
      'armscye',
      'ease, front cap',
      'ease, back cap',
      'sleeve hangs at',
    ]) {
      expect(stdout).toMatch(new RegExp(`^  ${figure} +[\\d ]+(/\\d+)? ?(in|°).*\\d`, 'm'))
    }
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colors where nobody looks
    expect(stdout).not.toMatch(/\u001b/)
  })

  test('--under, --mirror-pairs, --projector and --as dxf write what they name', async () => {
    const folder = temporaryFolder()
    const { status, stdout } = await draft(
      folder,
      ...['--under', 'previous', '--mirror-pairs', '--projector', '--as', 'svg,pdf,dxf', '--pieces', 'sleeve-left'],
    )
    expect(status).toBe(0)
    const files = ['pattern.dxf', 'pattern.svg', 'projector.pdf', 'projector.svg', 'report.json', 'slip.txt']
    expect(readdirSync(join(folder, 'out')).sort()).toEqual([...files, 'tiles-letter.pdf'])
    for (const file of files) expect(stdout).toContain(`  ${file}`)
    for (const svg of ['pattern.svg', 'projector.svg']) {
      const text = read(folder, svg)
      expect(text).toContain('<g id="sleeve-left-previous-version"')
      expect(text).not.toContain('id="sleeve-right"')
    }
    expect(readPdf(readFileSync(join(folder, 'out', 'projector.pdf')))).toHaveLength(1)
    const tiles = readPdf(readFileSync(join(folder, 'out', 'tiles-letter.pdf')))
    const layers = new Set(tiles.flatMap((page) => page.paths.flatMap((path) => path.layers)))
    expect(Array.from(layers)).toContain('Draft: stitching lines')
    expect(read(folder, 'pattern.dxf')).toMatch(/SLEEVE-LEFT/)
    expect(read(folder, 'pattern.dxf')).not.toMatch(/SLEEVE-RIGHT/)
  })

  test('--until none writes the draft before any fitting', async () => {
    const folder = temporaryFolder()
    expect(scye(['draft', lamplighter, '-o', 'out', '--until', 'none', '--as', 'json'], { cwd: folder }).status).toBe(0)
    const before = JSON.parse(read(folder, 'report.json')) as Report
    expect(before.version).toBe('draft')
    expect((await draft(folder, '--until', 'first fitting', '--as', 'json')).status).toBe(0)
    const after = JSON.parse(read(folder, 'report.json')) as Report
    expect(after.version).toBe('first fitting')
    const ease = (report: Report, id: string) => report.joins.find((join) => join.id === id)?.ease ?? Number.NaN
    // Letting out a cap by 3/8 in over the crown makes both halves longer.
    expect(ease(after, 'front cap')).toBeGreaterThan(ease(before, 'front cap') + 1)
    expect(ease(after, 'back cap')).toBeGreaterThan(ease(before, 'back cap') + 1)
  })

  test('--pieces sleeve prints the sleeve alone; pattern.json holds all', async () => {
    const folder = temporaryFolder()
    expect(
      scye(['draft', lamplighter, '-o', 'out', '--pieces', 'sleeve', '--as', 'svg,json'], { cwd: folder }).status,
    ).toBe(0)
    const svg = read(folder, 'pattern.svg')
    expect(svg).toContain('sleeve')
    expect(svg).not.toContain('bodice-front')
    expect(svg).not.toContain('bodice front')
    expect((JSON.parse(read(folder, 'pattern.json')) as { pieces: unknown[] }).pieces).toHaveLength(3)
  })

  test('--square-measured and --overlap reach the pages, however the file is named', async () => {
    const folder = temporaryFolder()
    const options = ['--pieces', 'sleeve', '--as', 'pdf', '--paper', 'letter']
    expect((await draft(folder, ...options, '--square-measured', '97.2x98.0', '--overlap', '12mm')).status).toBe(0)
    const pages = readPdf(readFileSync(join(folder, 'out', 'tiles-letter.pdf')))
    const widths = pages.map((page) => {
      const sides = page.paths
        .filter((path) => path.layers.at(-1) === 'Measured squares')
        .map((path) => path.parts.flat().map(([x]) => x))
        .map((xs) => Math.max(...xs) - Math.min(...xs))
      return sides.filter((side) => Math.abs(side - (100 * 100) / 97.2) < 0.001).length
    })
    for (const count of widths) expect(count).toBe(1)
    for (const page of pages) {
      const words = page.texts.map(({ text }) => text).join('\n')
      expect(words).toContain('97.2 × 98 mm')
      expect(words).toContain('overlap 12 mm')
    }
  })

  test('--as chooses the formats; report and slip are always written', async () => {
    const folder = temporaryFolder()
    expect((await draft(folder, '--as', 'svg')).status).toBe(0)
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['pattern.svg', 'report.json', 'slip.txt'])
  })

  test('letter is the paper of a file in inches', async () => {
    const folder = temporaryFolder()
    expect((await draft(folder, '--as', 'pdf')).status).toBe(0)
    expect(readdirSync(join(folder, 'out'))).toContain('tiles-letter.pdf')
    expect(readdirSync(join(folder, 'out'))).not.toContain('tiles-a4.pdf')
  })

  test('only the owner may read what is written', async () => {
    const folder = temporaryFolder()
    await draft(folder, '--as', 'json')
    expect(statSync(join(folder, 'out')).mode & 0o777).toBe(0o700)
    for (const file of readdirSync(join(folder, 'out')))
      expect(statSync(join(folder, 'out', file)).mode & 0o777).toBe(0o600)
  })

  test('says which files it replaced and which were left from an earlier run', async () => {
    const folder = temporaryFolder()
    await draft(folder, '--as', 'json,svg')
    writeFileSync(join(folder, 'out', 'notes.txt'), 'mine')
    const { stdout } = await draft(folder, '--as', 'json')
    expect(stdout).toMatch(/pattern\.json {2}\(replaced\)/)
    expect(stdout).toMatch(/left from an earlier run: pattern\.svg$/m)
    expect(readFileSync(join(folder, 'out', 'notes.txt'), 'utf8')).toBe('mine')
  })

  test('the same input gives the same bytes', async () => {
    const bytes = () => {
      const folder = temporaryFolder()
      scye(['draft', lamplighter, '-o', join(folder, 'out')], { env: { SOURCE_DATE_EPOCH: '1791504000' } })
      return readdirSync(join(folder, 'out')).map((file) => [
        file,
        readFileSync(join(folder, 'out', file)).toString('base64'),
      ])
    }
    expect(bytes()).toEqual(bytes())
  })

  test('reads standard input under the name -', async () => {
    const folder = temporaryFolder()
    const { status, stdout } = scye(['draft', '-', '--as', 'json'], { cwd: folder, input: readFileSync(lamplighter) })
    expect(status).toBe(0)
    expect(stdout).toContain('Written to lamplighter-pattern/')
    expect(readdirSync(folder)).toEqual(['lamplighter-pattern'])
  })

  test('without -o writes beside the file', async () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'pilot.yaml'), readFileSync(lamplighter))
    expect(scye(['draft', join(folder, 'pilot.yaml'), '--as', 'json']).status).toBe(0)
    expect(readdirSync(folder).sort()).toEqual(['pilot-pattern', 'pilot.yaml'])
  })

  test('several files go to a folder each', async () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'pilot.yaml'), readFileSync(lamplighter))
    const { status, stdout } = scye(['draft', 'pilot.yaml', lamplighter, '-o', 'out', '--as', 'json', '--json'], {
      cwd: folder,
    })
    expect(status).toBe(0)
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['lamplighter', 'pilot'])
    const document = JSON.parse(stdout) as { scyewright: string; reports: Report[] }
    expect(document.scyewright).toBe('reports/1')
    expect(document.reports).toHaveLength(2)
  })

  test('--json prints the report and nothing else', async () => {
    const folder = temporaryFolder()
    const { status, stdout, stderr } = await draft(folder, '--as', 'json', '--json')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(JSON.parse(stdout)).toEqual(JSON.parse(read(folder, 'report.json')))
  })

  test('--quiet prints nothing when all is well', async () => {
    expect(await draft(temporaryFolder(), '--as', 'json', '--quiet')).toEqual({ status: 0, stdout: '', stderr: '' })
  })
})
