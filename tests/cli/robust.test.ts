import { spawn, spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { writeFiles } from '../../src/cli/output.ts'
import { reportUnexpected } from '../../src/cli/unexpected.ts'
import { lamplighter, scye, temporaryFolder } from '../scye.ts'

const bin = fileURLToPath(new URL('../../bin/scye', import.meta.url))
const output = fileURLToPath(new URL('../../src/cli/output.ts', import.meta.url))

describe('a fault of the program itself', () => {
  const said = (args: readonly string[], debug: string) => {
    const before = process.env.SCYE_DEBUG
    process.env.SCYE_DEBUG = debug
    let out = ''
    let err = ''
    const plain = (text: string) => text
    const style = { strong: plain, quiet: plain, bad: plain, doubtful: plain, good: plain }
    const terminal = {
      out: (text: string) => {
        out += text
      },
      err: (text: string) => {
        err += text
      },
      styleOut: style,
      styleErr: style,
    }
    const status = reportUnexpected(new TypeError('no such thing'), args, terminal)
    if (before === undefined) delete process.env.SCYE_DEBUG
    else process.env.SCYE_DEBUG = before
    return { status, out, err }
  }

  test('is one calm sentence and how to report it; the trace only with SCYE_DEBUG', () => {
    const calm = said([], '')
    expect(calm).toMatchObject({ status: 2, out: '' })
    expect(calm.err.replace(/\s+/g, ' ')).toContain('no such thing. To report it, run it again with SCYE_DEBUG=1')
    expect(calm.err).not.toMatch(/^\s+at /m)
    expect(said([], '1').err).toMatch(/^TypeError: no such thing\n\s+at /)
  })

  test('is a document with --json', () => {
    expect(JSON.parse(said(['--json'], '').out)).toMatchObject({ problems: [{ code: 'unexpected' }] })
  })
})

describe('streams', () => {
  test('a reader that has seen enough is no failure', () => {
    const line = `"${process.execPath}" "${bin}" check "${lamplighter}" | head -1; echo "\${PIPESTATUS[@]}"`
    const { stdout, stderr } = spawnSync('bash', ['-c', line], { encoding: 'utf8' })
    expect(stderr).toBe('')
    expect(stdout).toMatch(/^Lamplighter.*\n0 0\n$/)
  })

  // What is to be copied into a performer file stays on its line.
  test('80 columns are enough, and FORCE_COLOR colors what NO_COLOR would not', () => {
    for (const args of [
      ['check', lamplighter],
      ['compare', lamplighter, '-o', join(temporaryFolder(), 'out')],
      ['advise', 'tight upper arm'],
    ]) {
      const { stdout } = scye(args, { env: { COLUMNS: '80' } })
      const long = stdout.split('\n').filter((line) => line.length > 80 && !/^ +at: \[ \{ line/.test(line))
      expect(long, args[0]).toEqual([])
    }
    // biome-ignore lint/suspicious/noControlCharactersInRegex: looking for exactly these
    expect(scye(['advise', 'gapes'], { env: { FORCE_COLOR: '1' } }).stdout).toMatch(/\u001b\[1m/)
  })
})

describe('files', () => {
  const full = (text: string) =>
    Array.from({ length: 6 }, (_, i) => ({ name: `part-${i}.txt`, content: text.repeat(200_000) }))

  test('a run that is killed leaves each file as it was or as it is to be, never half', async () => {
    const folder = join(temporaryFolder(), 'out')
    writeFiles(folder, full('0'))
    // Writes ones and twos by turns until it is killed.
    const script = `import { writeFiles } from ${JSON.stringify(output)}
      const files = (text) => Array.from({ length: 6 }, (_, i) => ({ name: 'part-' + i + '.txt', content: text.repeat(200_000) }))
      process.stdout.write('ready')
      for (;;) for (const text of ['1', '2']) writeFiles(${JSON.stringify(folder)}, files(text))`
    const seen = new Set<string>()
    for (let round = 0; round < 6; round++) {
      const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script])
      await new Promise((done) => child.stdout.once('data', done))
      await new Promise((done) => setTimeout(done, 7 + round * 13))
      child.kill('SIGKILL')
      await new Promise((done) => child.once('exit', done))
      for (const name of readdirSync(folder).filter((one) => one.startsWith('part-'))) {
        const text = readFileSync(join(folder, name), 'utf8')
        expect(text).toHaveLength(200_000)
        expect(new Set(text).size).toBe(1)
        seen.add(text[0] ?? '')
      }
    }
    expect(seen.has('1') || seen.has('2')).toBe(true)
  })

  test('two runs into one folder leave whole files', async () => {
    const folder = temporaryFolder()
    const runs = [1, 2].map(
      () =>
        new Promise((done) =>
          spawn(process.execPath, [bin, 'draft', lamplighter, '--as', 'json', '-o', folder, '-q']).once('exit', done),
        ),
    )
    expect(await Promise.all(runs)).toEqual([0, 0])
    expect(readdirSync(folder).sort()).toEqual(['pattern.json', 'report.json', 'slip.txt'])
    expect(JSON.parse(readFileSync(join(folder, 'pattern.json'), 'utf8'))).toMatchObject({ scyewright: 'pattern/1' })
  })

  test('a full disk leaves nothing half and says so', ({ skip }) => {
    const disk = join(temporaryFolder(), 'disk')
    mkdirSync(disk)
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', disk]).status === 0
    skip(!mounted, 'no small disk can be mounted here: only root may')
    try {
      const before = writeFiles(disk, [{ name: 'pattern.svg', content: 'before' }])
      expect(before.ok).toBe(true)
      const result = writeFiles(disk, [
        { name: 'pattern.svg', content: 'after' },
        { name: 'pattern.json', content: 'x'.repeat(400_000) },
      ])
      expect(result).toMatchObject({ ok: false, problems: [{ code: 'cannot-write', actual: 'the disk is full' }] })
      expect(readdirSync(disk)).toEqual(['pattern.svg'])
      expect(readFileSync(join(disk, 'pattern.svg'), 'utf8')).toBe('before')
    } finally {
      spawnSync('umount', [disk])
    }
  })

  test('a disk that may only be read is said to be, and what stands on it stays', ({ skip }) => {
    const disk = join(temporaryFolder(), 'disk')
    mkdirSync(disk)
    // The mode of a folder holds nobody back who is root; a disk that is mounted to be read does.
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', disk]).status === 0
    skip(!mounted, 'no small disk can be mounted here: only root may')
    try {
      expect(writeFiles(disk, [{ name: 'pattern.svg', content: 'before' }]).ok).toBe(true)
      expect(spawnSync('mount', ['-o', 'remount,ro', disk]).status).toBe(0)
      for (const folder of [disk, join(disk, 'new')]) {
        const result = writeFiles(folder, [{ name: 'pattern.svg', content: 'after' }])
        const problem = { code: 'cannot-write', where: { file: folder }, actual: 'the disk cannot be written to' }
        expect(result).toMatchObject({ ok: false, problems: [problem] })
      }
      expect(readdirSync(disk)).toEqual(['pattern.svg'])
      expect(readFileSync(join(disk, 'pattern.svg'), 'utf8')).toBe('before')
    } finally {
      spawnSync('umount', [disk])
    }
  })
})
