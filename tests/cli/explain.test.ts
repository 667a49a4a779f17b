import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { ExplanationJson } from '../../src/index.ts'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const explain = (folder: string, ...args: string[]) =>
  scyeHere(['explain', lamplighter, '-o', join(folder, 'out'), ...args])

describe('scye explain', () => {
  test('writes HTML and PDF that only their owner reads, the same bytes again', async () => {
    const folder = temporaryFolder()
    const out = join(folder, 'out')
    const { status, stdout, stderr } = await explain(folder)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(/^Lamplighter, the draft by hand\n {2}Bodice back: 9 steps\n/)
    expect(stdout).toContain(`Written to ${out}/\n  explain.html\n  explain.pdf\n`)
    expect(readdirSync(out).sort()).toEqual(['explain.html', 'explain.pdf'])
    const before = readdirSync(out).map((name) => readFileSync(join(out, name)))
    for (const name of readdirSync(out)) expect(statSync(join(out, name)).mode & 0o777).toBe(0o600)
    expect(before[1]?.subarray(0, 5).toString()).toBe('%PDF-')
    expect((await explain(folder)).stdout).toContain('explain.html  (replaced)')
    readdirSync(out).forEach((name, k) => {
      expect(readFileSync(join(out, name)).equals(before[k] as Buffer), name).toBe(true)
    })
  })

  test('--json prints explain/1 and nothing else; the draft is explained, whatever the fittings did', async () => {
    const { status, stdout, stderr } = await explain(temporaryFolder(), '--json', '--as', 'html', '--piece', 'sleeve')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const document = JSON.parse(stdout) as ExplanationJson
    expect(document).toMatchObject({ scyewright: 'explain/1', unit: 'mm', ruler: 25.4 / 16, files: ['explain.html'] })
    expect(document.sections.map(({ piece }) => piece)).toEqual(['sleeve', 'checks'])
    const [first] = document.sections[0]?.steps ?? []
    // Outer arm length 22 3/4 in from the crown to the wrist level.
    expect(first?.points.map(({ what }) => what).at(-1)).toBe('wrist level')
    expect(first?.points.at(-1)?.placing).toEqual({ how: 'square', from: 'B', across: 0, up: -22.75 * 25.4 })
    expect(first?.lines.map(({ text }) => text)).toContain('D, wrist level: from B 22¾″ down.')
  })

  test.each([
    ['a piece that is not there', ['--pieces', 'sleve'], 'unknown-piece', 'did you mean sleeve?'],
    ['a format of another command', ['--as', 'dxf'], 'unknown-format', 'html, pdf'],
    ['two papers', ['--paper', 'a4,letter'], 'one-paper', '2 papers'],
    ['a roll', ['--paper', 'roll-36in'], 'not-a-sheet', 'a4 or letter'],
    ['two files', ['other.yaml'], 'one-file', 'one performer file'],
    ['an option of another command', ['--until', 'none'], 'unknown-option', '--until'],
  ])('%s is refused and nothing is written', async (_name, args, code, words) => {
    const folder = temporaryFolder()
    const { status, stdout } = await explain(folder, ...args, '--json')
    expect(status).toBe(2)
    const document = JSON.parse(stdout) as { problems: { code: string }[] }
    expect(document.problems.map((problem) => problem.code)).toContain(code)
    expect(stdout).toContain(words)
    expect(existsSync(join(folder, 'out'))).toBe(false)
  })

  test('--quiet writes and says nothing; without -o beside the file', () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'pilot.yaml'), readFileSync(lamplighter))
    const run = scye(['explain', join(folder, 'pilot.yaml'), '--quiet', '--as', 'html'], { cwd: folder })
    expect(run).toEqual({ status: 0, stdout: '', stderr: '' })
    expect(readdirSync(join(folder, 'pilot-pattern'))).toEqual(['explain.html'])
  })
})
