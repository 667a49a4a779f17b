import { describe, expect, test } from 'vitest'
import { lamplighter, scye, scyeHere } from '../scye.ts'

describe('what was typed', () => {
  test('help fits into the columns that COLUMNS says where no terminal does', () => {
    const longest = (columns: string) =>
      Math.max(
        ...scye(['draft', '--help'], { env: { COLUMNS: columns } })
          .stdout.split('\n')
          .map((line) => line.length),
      )
    expect(longest('72')).toBeLessThanOrEqual(72)
    expect(longest('')).toBeGreaterThan(72)
  })

  test('--version prints the version of package.json', async () => {
    const { version } = (await import('../../package.json', { with: { type: 'json' } })).default
    expect(scye(['--version'])).toEqual({ status: 0, stdout: `${version}\n`, stderr: '' })
  })

  test('--help names the commands, and every command its options', async () => {
    const { status, stdout, stderr } = scye(['--help'])
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(/scye draft .*\n.*scye check /)
    const help = (await scyeHere(['draft', '--help'])).stdout
    for (const option of [
      '--output',
      '--as',
      '--paper',
      '--overlap',
      '--square-measured',
      '--pieces',
      '--until',
      '--json',
      '--quiet',
    ]) {
      expect(help).toContain(option)
    }
  })

  test.each([
    ['nothing', [], 'no-command', 'no command'],
    ['an unknown command', ['dratf', 'a.yaml'], 'unknown-command', 'did you mean draft?'],
    ['no file', ['draft'], 'no-file', 'at least one performer file'],
    ['an unknown option', ['draft', lamplighter, '--papr', 'a4'], 'unknown-option', 'did you mean --paper?'],
    ['an option of the other command', ['check', lamplighter, '--paper', 'a4'], 'unknown-option', '--paper'],
    ['an option without its value', ['draft', lamplighter, '-o'], 'empty-option', '-o'],
    ['a setting without its value', ['record', lamplighter, '--taper-to'], 'empty-option', '--taper-to'],
    ['an empty list', ['draft', lamplighter, '--as', ','], 'empty-option', '--as'],
    ['a folder twice', ['draft', lamplighter, '-o', 'a', '-o', 'b'], 'option-twice', '2 times'],
    ['a switch with a value', ['check', '--quiet=no', lamplighter], 'not-a-switch', '--quiet'],
    ['a file twice', ['check', lamplighter, lamplighter], 'file-twice', 'lamplighter.yaml'],
    ['an unknown format', ['draft', lamplighter, '--as', 'svg,png'], 'unknown-format', '"png"'],
    ['an unknown paper', ['draft', lamplighter, '--paper', 'a4,b17'], 'unknown-paper', '"b17"'],
    ['a paper without a unit', ['draft', lamplighter, '--paper', '610x914'], 'paper-without-unit', 'mm, cm or in'],
    [
      'an overlap without room for the marks',
      ['draft', lamplighter, '--overlap', '0.5mm'],
      'overlap-out-of-range',
      '1/2in',
    ],
    ['an overlap without a unit', ['draft', lamplighter, '--overlap', '12'], 'overlap-without-unit', '12mm'],
    ['a part of an inch', ['draft', lamplighter, '--overlap', '1/2'], 'overlap-without-unit', '1/2in'],
    ['a square that is none', ['draft', lamplighter, '--square-measured', '97.2'], 'square-unreadable', '97.2x98.0'],
    [
      'a square of a page fitted to its paper',
      ['draft', lamplighter, '--square-measured', '80x80'],
      'square-absurd',
      '100 %',
    ],
    ['a square stretched one way', ['draft', lamplighter, '--square-measured', '92x98'], 'square-uneven', 'measure'],
    [
      'an unknown piece',
      ['draft', lamplighter, '--pieces', 'sleve'],
      'unknown-piece',
      'bodice back, bodice front, sleeve',
    ],
    ['an unknown fitting', ['draft', lamplighter, '--until', 'tenth'], 'unknown-fitting', 'first fitting'],
    ['an earlier version', ['draft', lamplighter, '--under', 'tenth'], 'no-earlier-version', 'previous, draft'],
    ['a missing file', ['check', 'not-there.yaml'], 'no-such-file', 'not-there.yaml'],
    ['a folder for a file', ['check', '.'], 'not-a-file', 'a folder'],
  ])('%s is refused with its code and in words', async (_name, args, code, word) => {
    const { status, stdout } = await scyeHere([...args, '--json'])
    expect(status).toBe(2)
    const document = JSON.parse(stdout) as { scyewright: string; problems: { code: string; hint: string }[] }
    expect(document.scyewright).toBe('problems/1')
    expect(document.problems.map((problem) => problem.code)).toContain(code)
    expect(stdout.replaceAll('\\"', '"')).toContain(word)
    for (const problem of document.problems) expect(problem.hint.length).toBeGreaterThan(5)
  })

  test('for a person the words go to stderr, without a trace of the program', () => {
    for (const args of [
      ['draft', lamplighter, '--papr', 'a4'],
      ['check', '--json=no', lamplighter],
      ['draft', lamplighter, '--until', 'x'],
    ]) {
      const { status, stdout, stderr } = scye(args)
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
      expect(stderr).toMatch(/^ {2}found {5}.+\n {2}expected {2}/m)
      expect(stderr).toContain('do this')
      expect(stderr).not.toMatch(/^\s+at |node:|\.mjs/m)
    }
  })

  test('several mistakes are told at once', async () => {
    const { stderr } = await scyeHere(['draft', lamplighter, '--as', 'png', '--paper', 'b17'])
    expect(stderr).toContain('"png"')
    expect(stderr).toContain('"b17"')
    expect(stderr).toContain('2 problems; nothing was written')
  })
})
