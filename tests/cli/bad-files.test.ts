import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const good = readFileSync(lamplighter, 'utf8')

interface Problem {
  readonly code: string
  readonly where: { readonly file: string; readonly line: number; readonly column: number; readonly field?: string }
  readonly actual: string
  readonly expected: string
  readonly hint: string
}

/** Line and column, from 1, of the first place where `text` stands. */
function placeOf(file: string, text: string): { line: number; column: number } {
  const before = file.slice(0, file.indexOf(text)).split('\n')
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 }
}

function write(content: string | Uint8Array): { folder: string; file: string } {
  const folder = temporaryFolder()
  const file = join(folder, 'performer.yaml')
  writeFileSync(file, content)
  return { folder, file }
}

const without = (line: RegExp) => good.replace(line, '')

describe('a file that cannot be used', () => {
  test.each([
    {
      name: 'a missing measure',
      text: without(/^ {2}back waist length:.*\n/m),
      code: 'missing',
      at: 'body:',
      word: 'back waist length',
    },
    {
      name: 'a word where a length belongs',
      text: good.replace('37 3/4    ', 'large     '),
      code: 'not-a-length',
      at: 'large',
      word: '"large"',
    },
    {
      name: 'an unknown key',
      text: good.replace('front width:', 'frunt width:'),
      code: 'unknown-key',
      at: 'frunt width',
      word: 'front width',
    },
    { name: 'an empty file', text: '', code: 'empty-file', at: '', word: 'performer' },
    { name: 'a file of comments only', text: '# nothing yet\n', code: 'empty-file', at: '', word: 'performer' },
    {
      name: 'YAML that is none',
      text: good.replace('ease: { upper arm: 2 }', 'ease: { upper arm: 2'),
      code: 'not-yaml',
      at: undefined,
      word: 'bracket',
    },
    {
      name: 'measures that contradict each other',
      text: good.replace('back width: 14 5/8', 'back width: 24 5/8'),
      code: undefined,
      at: '24 5/8',
      word: 'back width',
    },
  ])('$name: file, line, column, and what to do', async ({ text, code, at, word }) => {
    const { folder, file } = write(text)
    const plain = scye(['draft', 'performer.yaml'], { cwd: folder })
    expect({ status: plain.status, stdout: plain.stdout }).toEqual({ status: 2, stdout: '' })
    const json = await scyeHere(['draft', file, '--json'])
    expect({ status: json.status, stderr: json.stderr }).toEqual({ status: 2, stderr: '' })
    const { scyewright, problems } = JSON.parse(json.stdout) as { scyewright: string; problems: Problem[] }
    expect(scyewright).toBe('problems/1')
    const [problem] = problems
    if (code !== undefined) expect(problem?.code).toBe(code)
    expect(problem?.where.file).toBe(file)
    if (at !== undefined) expect(problem?.where).toMatchObject(at === '' ? { line: 1, column: 1 } : placeOf(text, at))
    expect(`${problem?.actual} ${problem?.expected} ${problem?.hint}`).toContain(word)
    // The same, for a person: the place that editors jump to, and a mark under the spot.
    expect(plain.stderr).toContain(`performer.yaml:${problem?.where.line}:${problem?.where.column}`)
    expect(plain.stderr).toContain(problem?.hint.split(' ').slice(0, 3).join(' ') ?? '?')
    if (text !== '') expect(plain.stderr).toMatch(/^ +\d+ \| .+\n {6}\| +\^$|^ {2,}\d+ \| .+\n {5} \| *\^$/m)
    expect(readdirSync(folder)).toEqual(['performer.yaml'])
    expect(existsSync(file)).toBe(true)
  })

  test('binary data is no performer file', () => {
    const { folder } = write(Uint8Array.from({ length: 4096 }, (_, i) => (i * 7919) % 256))
    const { status, stdout, stderr } = scye(['check', 'performer.yaml'], { cwd: folder })
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
    expect(stderr).toMatch(/performer\.yaml:1:1/)
    // Nothing of it reaches the terminal.
    // biome-ignore lint/suspicious/noControlCharactersInRegex: looking for exactly these
    expect(stderr).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f]/)
  })

  test('every problem is told at once, with its line', async () => {
    const text = without(/^ {2}waist girth:.*\n/m)
      .replace('37 3/4    ', 'large     ')
      .replace('scye depth', 'scye deep')
    const { stderr } = await scyeHere(['check', write(text).file])
    for (const word of ['waist girth', '"large"', 'scye depth']) expect(stderr).toContain(word)
    expect(stderr).toContain('3 problems')
  })

  test('the mark stands under the value', async () => {
    const { file } = write(good.replace('37 3/4    ', 'large     '))
    const lines = (await scyeHere(['check', file])).stderr.split('\n')
    const mark = lines.findIndex((line) => /^ +\| +\^$/.test(line))
    expect(lines[mark - 1]?.slice(lines[mark]?.indexOf('^'))).toMatch(/^large/)
  })

  test('one bad file never stops the others', async () => {
    const { folder, file } = write(good.replace('37 3/4    ', 'large     '))
    const { status, stdout, stderr } = scye(['draft', 'performer.yaml', lamplighter, '-o', 'out', '--as', 'json'], {
      cwd: folder,
    })
    expect(status).toBe(2)
    expect(stdout).toContain('Written to out/lamplighter/')
    expect(stderr).toContain('"large"')
    expect(readdirSync(join(folder, 'out'))).toEqual(['lamplighter'])
    const json = await scyeHere(['check', file, lamplighter, '--json'])
    const document = JSON.parse(json.stdout) as {
      scyewright: string
      problems: unknown[]
      reports: { performer: string }[]
    }
    expect(document.scyewright).toBe('problems/1')
    expect(document.reports.map((report) => report.performer)).toEqual(['Lamplighter'])
  })

  test('a place that cannot be written to is named, and nothing is left there', async () => {
    const { folder, file } = write('x')
    const { status, stderr } = await scyeHere(['draft', lamplighter, '-o', file, '--as', 'json'])
    expect(status).toBe(2)
    expect(stderr).toContain('a file')
    expect(readdirSync(folder)).toEqual(['performer.yaml'])
  })
})
