import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const good = readFileSync(lamplighter, 'utf8')
const named = (name: string) => good.replace('performer: Lamplighter', `performer: ${name}`)

interface Row {
  readonly file: string
  readonly performer?: string
  readonly status: string
  readonly problems: readonly { readonly code: string; readonly where: { readonly file?: string } }[]
  readonly findings: readonly { readonly severity: string }[]
  readonly files: readonly string[]
  readonly fittings: readonly string[]
}

function folderOf(files: Readonly<Record<string, string>>): string {
  const folder = temporaryFolder()
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text)
  return folder
}

async function cast(folder: string, ...args: readonly string[]) {
  const run = await scyeHere(['cast', folder, '--as', 'json', '--json', ...args])
  const document = JSON.parse(run.stdout) as { scyewright: string; performers: Row[]; index: string }
  return {
    ...run,
    ...document,
    row: (name: string) => document.performers.find(({ file }) => file.endsWith(`/${name}`)),
  }
}

describe('scye cast', () => {
  test('one bad file of any kind never stops the others, and every file has its row', async () => {
    const folder = folderOf({
      'pilot.yaml': named('Ferry Pilot'),
      'pilot.yml': named('Second Pilot'),
      'bad.yaml': good.replace('37 3/4    ', 'large     '),
      'list.yaml': '- fabric\n- thread\n',
      'notes.txt': 'nothing',
      '.hidden.yaml': 'x',
    })
    mkdirSync(join(folder, 'act-two.yaml'))
    symlinkSync('loop.yaml', join(folder, 'loop.yaml'))
    const { status, stderr, scyewright, performers, row, index } = await cast(folder, '--jobs', '2')
    expect({ status, stderr, scyewright }).toEqual({ status: 2, stderr: '', scyewright: 'cast/1' })
    expect(performers.map(({ file }) => file.split('/').pop())).toEqual([
      ...['bad.yaml', 'list.yaml', 'loop.yaml', 'pilot.yaml', 'pilot.yml'],
    ])
    expect(row('pilot.yaml')).toMatchObject({
      performer: 'Ferry Pilot',
      status: 'ok',
      fittings: ['first fitting'],
      files: ['pattern.json', 'slip.txt', 'report.json'],
    })
    expect(row('pilot.yml')?.problems.map(({ code }) => code)).toEqual(['same-folder'])
    expect(row('bad.yaml')?.problems.map(({ code }) => code)).toEqual(['not-a-length'])
    expect(row('list.yaml')?.problems.map(({ code }) => code)).toEqual(['not-a-performer'])
    expect(row('loop.yaml')?.problems.map(({ code }) => code)).toEqual(['not-readable'])
    expect(existsSync(join(folder, 'bad-pattern'))).toBe(false)
    expect(index).toBe(join(folder, 'cast-index', 'index.html'))
    // The same bytes as a draft of that file alone.
    const alone = temporaryFolder()
    await scyeHere(['draft', join(folder, 'pilot.yaml'), '--as', 'json', '-o', alone])
    for (const name of ['pattern.json', 'slip.txt', 'report.json'])
      expect(readFileSync(join(folder, 'pilot-pattern', name))).toEqual(readFileSync(join(alone, name)))
    expect(statSync(index).mode & 0o777).toBe(0o600)
  })

  test('the index has a sheet for each, needs no network and links to files that are there', async () => {
    const folder = folderOf({ 'a & b.yaml': named('"A & <B>"'), 'bad.yaml': '' })
    const { index, status } = await cast(folder, '-o', join(folder, 'out'))
    expect(status).toBe(2)
    const page = readFileSync(index, 'utf8')
    expect(index).toBe(join(folder, 'out', 'index.html'))
    expect(page.match(/<section /g)).toHaveLength(2)
    expect(page).toContain('A &amp; &lt;B&gt;')
    expect(page).not.toMatch(/https?:|<script|<link|@import|url\(/)
    expect(page.match(/<svg viewBox="0 0 [\d.]+ [\d.]+"/g)).toHaveLength(1)
    const links = Array.from(page.matchAll(/href="([^"#]+)"/g), ([, href]) => href ?? '')
    expect(links).toHaveLength(3)
    for (const href of links) expect(existsSync(join(folder, 'out', decodeURIComponent(href)))).toBe(true)
  })

  test('exit status 1 with an error, 0 with none; the table says the worst', async () => {
    const folder = folderOf({ 'good.yaml': good })
    expect((await cast(folder)).status).toBe(0)
    // A cap drafted with hardly any ease and taken in is shorter than its armscye.
    const short = good.replace('{ upper arm: 2 }', '{ upper arm: 2, cap: 2 mm }').replace('do: let out', 'do: take in')
    writeFileSync(join(folder, 'tight.yaml'), short)
    const { status, row } = await cast(folder)
    expect(row('tight.yaml')?.findings.map(({ severity }) => severity)).toContain('error')
    expect(row('tight.yaml')?.status).toBe('findings')
    expect(status).toBe(1)
    const { stdout, stderr } = await scyeHere(['cast', folder, '--as', 'json'])
    expect(stdout).toMatch(/Lamplighter +1 +1 +errors .*error: /)
    expect(stdout).toContain('2 files: 1 ok, 1 with errors, 0 that cannot be used')
    expect(stderr).toContain('tight.yaml')
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100)
  })

  test('--design takes choices and allowances from another file, no body and no fitting, and says so', async () => {
    const cover = good.slice(0, good.indexOf('\ndraft:')).replace('bust girth: 37 3/4', 'bust girth: 39')
    const folder = folderOf({ 'cover.yaml': cover.replace('Lamplighter', 'Cover') })
    const design = join(temporaryFolder(), 'design.yaml')
    writeFileSync(design, good.replace('fit: close', 'fit: standing').replace('default: 1,', 'default: 3/4,'))
    const { row, stdout } = await cast(folder, '--design', design)
    expect(row('cover.yaml')).toMatchObject({ status: 'ok', fittings: [], performer: 'Cover' })
    expect(JSON.parse(stdout).design).toEqual({ file: design, performer: 'Lamplighter' })
    // As if the choices stood in the cover's own file.
    const own = folderOf({
      'cover.yaml': `${cover.replace('Lamplighter', 'Cover')}${readFileSync(design, 'utf8').slice(good.indexOf('\ndraft:')).split('\nfittings:')[0]}\n`,
    })
    await cast(own)
    const pattern = (where: string) => readFileSync(join(where, 'cover-pattern', 'pattern.json'), 'utf8')
    expect(pattern(folder)).toBe(pattern(own))
    const { stdout: said } = await scyeHere(['cast', folder, '--as', 'json', '--design', design])
    expect(said.replace(/\s+/g, ' ')).toContain('those of Lamplighter')
    expect(readFileSync(join(folder, 'cast-index', 'index.html'), 'utf8')).toContain('those of Lamplighter')
  })

  test.each([
    ['an empty folder', () => [temporaryFolder()], 'no-performer-files'],
    ['a folder that is not there', () => [join(temporaryFolder(), 'none')], 'no-such-folder'],
    ['a file', () => [lamplighter], 'not-a-folder'],
    ['standard input', () => ['-'], 'not-a-folder'],
    ['no jobs', () => [temporaryFolder(), '--jobs', '0'], 'jobs-out-of-range'],
    ['a design that is none', () => [temporaryFolder(), '--design', 'none.yaml'], 'no-such-file'],
  ])('%s is refused', async (_name, args, code) => {
    const { status, stdout } = await scyeHere(['cast', ...args(), '--json'])
    expect(status).toBe(2)
    expect(JSON.parse(stdout)).toMatchObject({ scyewright: 'problems/1', problems: [{ code }] })
  })

  test('an output that cannot be written to is each file’s problem', async () => {
    const folder = folderOf({ 'a.yaml': good, out: 'a file' })
    const run = await scyeHere(['cast', folder, '--as', 'json', '-o', join(folder, 'out'), '--json'])
    expect(run.status).toBe(2)
    const { performers, problems } = JSON.parse(run.stdout) as { performers: Row[]; problems: unknown[] }
    expect(performers[0]?.problems.map(({ code }) => code)).toEqual(['cannot-write'])
    expect(problems).toMatchObject([{ code: 'cannot-write' }])
    expect(readdirSync(folder).sort()).toEqual(['a.yaml', 'out'])
  })

  test('in a process of its own: no bar where nobody looks, and it ends', () => {
    const folder = folderOf({ 'a.yaml': good })
    const { status, stderr } = scye(['cast', folder, '--as', 'json'])
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  })
})
