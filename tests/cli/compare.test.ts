import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { ComparisonJson } from '../../src/index.ts'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const compare = (folder: string, ...args: string[]) =>
  scyeHere(['compare', lamplighter, '-o', join(folder, 'out'), ...args])

describe('scye compare', () => {
  test('writes the overlay and prints what moved, the joins and what did not change', async () => {
    const folder = temporaryFolder()
    const { status, stdout, stderr } = await compare(folder)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(readdirSync(join(folder, 'out'))).toEqual(['compare.svg'])
    expect(stdout).toContain('from draft to first fitting')
    // The let-out of the example: 3/8 in on the cap line; the reach: 1/2 in at the underarm.
    expect(stdout).toMatch(/^ {2}sleeve, front cap +1\/2 .*\n {6}1\/2 out at underarm\n {6}3\/8 out at .*front notch/m)
    expect(stdout).toMatch(/^ {2}bodice back: everything$/m)
    expect(stdout).toMatch(/^ {2}sleeve: wrist,/m)
    expect(stdout).toMatch(/^ {2}front cap +\+1\/2 +\+11\/16/m)
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100)
  })

  test('says of a file without fittings that there is none', async () => {
    const folder = temporaryFolder()
    const file = join(folder, 'new.yaml')
    const text = readFileSync(lamplighter, 'utf8')
    writeFileSync(file, text.slice(0, text.indexOf('fittings:')))
    const { status, stdout } = await scyeHere(['compare', file, '-o', join(folder, 'out')])
    expect(status).toBe(0)
    expect(stdout).toContain('no fitting yet')
    expect(stdout).not.toContain('from draft to draft')
  })

  test('a difference is that of the numbers beside it', async () => {
    const { stdout } = await compare(temporaryFolder())
    const value = (text: string) =>
      text
        .split(/[+ ]/)
        .reduce(
          (sum, part) =>
            sum + (part.includes('/') ? Number(part.split('/')[0]) / Number(part.split('/')[1]) : Number(part)),
          0,
        )
    const number = '((?:\\d+ )?\\d+(?:/\\d+)?)'
    const rows = [...stdout.matchAll(new RegExp(`^  \\w[^\\n]*? +${number}  +${number}  +\\+${number}$`, 'gm'))]
    expect(rows.length).toBeGreaterThan(2)
    for (const [, before = '', after = '', longer = ''] of rows)
      expect(value(after) - value(before)).toBe(value(longer))
  })

  test('the overlay has what changed twice, before dashed, and everything as it is solid', async () => {
    const folder = temporaryFolder()
    await compare(folder)
    const svg = readFileSync(join(folder, 'out', 'compare.svg'), 'utf8')
    const group = (id: string) => new RegExp(`<g id="${id}"[^>]*>(.*?)</g>`, 's').exec(svg)?.[0] ?? ''
    expect(group('sleeve-lines-before')).toMatch(/stroke-dasharray="3 2"/)
    expect(group('sleeve-lines-after')).not.toContain('dasharray')
    const ids = (text: string) =>
      [...text.matchAll(/<path id="([^"]+)"|<path [^>]*?id="([^"]+)"/g)].map((m) => m[1] ?? m[2])
    expect(ids(group('sleeve-lines-before')).join(' ')).toMatch(/front-cap/)
    expect(ids(group('sleeve-lines-before')).join(' ')).not.toMatch(/wrist/)
    expect(ids(group('sleeve-lines-after')).join(' ')).toMatch(/wrist/)
    expect(svg).not.toContain('id="bodice-back-lines-before"')
    expect(group('sleeve-moves')).toContain('arrow-head')
    expect(svg).toContain('⅜″')
    expect(svg).toMatch(/<svg[^>]* width="[\d.]+mm"/)
  })

  test('--json prints compare/1 and nothing else', async () => {
    const { status, stdout, stderr } = await compare(temporaryFolder(), '--json')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const document = JSON.parse(stdout) as ComparisonJson
    expect(document).toMatchObject({
      scyewright: 'compare/1',
      from: 'draft',
      to: 'first fitting',
      files: ['compare.svg'],
    })
    const cap = document.seams.find((row) => row.piece === 'sleeve' && row.seam === 'front cap')
    expect(cap?.move).toBeCloseTo(12.7, 1)
    expect(cap?.peaks[1]?.move).toBeCloseTo(9.525, 1)
    const [from, to] = [cap?.peaks[1]?.from, cap?.peaks[1]?.to]
    expect(Math.hypot((from?.[0] ?? 0) - (to?.[0] ?? 0), (from?.[1] ?? 0) - (to?.[1] ?? 0))).toBeCloseTo(9.525, 1)
    expect(document.pieces.map((piece) => piece.piece)).toEqual(['bodice front', 'bodice back', 'sleeve'].sort())
  })

  test('--from and --to name versions; the same one twice moved nothing', async () => {
    const folder = temporaryFolder()
    const same = await compare(folder, '--from', 'first fitting')
    expect(same.stdout).toMatch(/^Moved\n {2}nothing$/m)
    expect(same.stdout).toMatch(/^ {2}sleeve: everything$/m)
    const back = await compare(folder, '--from', 'first fitting', '--to', 'none')
    expect(back.stdout).toContain('from first fitting to draft')
    expect(back.stdout).toMatch(/^ {6}3\/8 in at /m)
  })

  test.each([
    [
      'a version that is not there',
      ['--from', 'frist fitting'],
      'unknown-fitting',
      'did you mean \\"first fitting\\"?',
    ],
    ['the start of a label', ['--to', 'first'], 'unknown-fitting', 'did you mean \\"first fitting\\"?'],
    ['a version twice', ['--to', 'none', '--to', 'none'], 'option-twice', '2 times'],
    ['two files', ['other.yaml'], 'one-file', 'one performer file'],
    ['an option of another command', ['--paper', 'a4'], 'unknown-option', '--paper'],
  ])('%s is refused and nothing is written', async (_name, args, code, words) => {
    const folder = temporaryFolder()
    const { status, stdout } = await compare(folder, ...args, '--json')
    expect(status).toBe(2)
    const document = JSON.parse(stdout) as { scyewright: string; problems: { code: string }[] }
    expect(document.scyewright).toBe('problems/1')
    expect(document.problems.map((problem) => problem.code)).toContain(code)
    expect(stdout).toContain(words)
    expect(existsSync(join(folder, 'out'))).toBe(false)
  })

  test('a file that cannot be used is refused with its place', () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'a.yaml'), readFileSync(lamplighter, 'utf8').replace('by: 3/8', 'by: 3/8 elephants'))
    const { status, stdout, stderr } = scye(['compare', 'a.yaml'], { cwd: folder })
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
    expect(stderr).toMatch(/a\.yaml:\d+:\d+/)
    expect(readdirSync(folder)).toEqual(['a.yaml'])
  })

  test('--quiet writes and says nothing; without -o beside the file', () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'pilot.yaml'), readFileSync(lamplighter))
    const run = scye(['compare', join(folder, 'pilot.yaml'), '--quiet'], { cwd: folder })
    expect(run).toEqual({ status: 0, stdout: '', stderr: '' })
    expect(readdirSync(join(folder, 'pilot-pattern'))).toEqual(['compare.svg'])
  })
})
