import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { ViewJson } from '../../src/index.ts'
import { lamplighter, scyeHere, temporaryFolder } from '../scye.ts'

const view = (folder: string, ...args: string[]) => scyeHere(['view', lamplighter, '-o', join(folder, 'out'), ...args])

describe('scye view', () => {
  test('writes one page that only its owner may read, and says where it is', async () => {
    const folder = temporaryFolder()
    const { status, stdout, stderr } = await view(folder)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(readdirSync(join(folder, 'out'))).toEqual(['view.html'])
    expect(statSync(join(folder, 'out', 'view.html')).mode & 0o777).toBe(0o600)
    expect(stdout).toContain('view.html in a browser')
    expect(stdout).toContain('Findings:')
    for (const line of stdout.split('\n').filter((text) => !text.includes(folder)))
      expect(line.length).toBeLessThanOrEqual(100)
  })

  test('--json prints view/1 and nothing else; --until leaves the fittings out', async () => {
    const folder = temporaryFolder()
    const { status, stdout, stderr } = await view(folder, '--json')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const document = JSON.parse(stdout) as ViewJson
    expect(document).toMatchObject({
      scyewright: 'view/1',
      performer: 'Lamplighter',
      versions: ['draft', 'first fitting'],
      files: ['view.html'],
    })
    expect(document.findings.length).toBeGreaterThan(0)
    const draft = await view(folder, '--json', '--until', 'none')
    expect((JSON.parse(draft.stdout) as ViewJson).versions).toEqual(['draft'])
    expect(readFileSync(join(folder, 'out', 'view.html'), 'utf8')).toContain('No fitting yet.')
  })

  test.each([
    ['two files', ['other.yaml'], 'one-file'],
    ['a fitting that is not there', ['--until', 'frist fitting'], 'unknown-fitting'],
    ['an option of another command', ['--paper', 'a4'], 'unknown-option'],
    ['a folder twice', ['-o', 'elsewhere'], 'option-twice'],
  ])('%s is refused and nothing is written', async (_name, args, code) => {
    const folder = temporaryFolder()
    const { status, stdout } = await view(folder, ...args, '--json')
    expect(status).toBe(2)
    const { problems } = JSON.parse(stdout) as { problems: { code: string }[] }
    expect(problems.map((problem) => problem.code)).toContain(code)
    expect(existsSync(join(folder, 'out'))).toBe(false)
  })

  test('findings of severity error are shown and end with status 1', async () => {
    const folder = temporaryFolder()
    const text = readFileSync(lamplighter, 'utf8')
    const file = join(folder, 'tight.yaml')
    writeFileSync(
      file,
      text.replace('{ upper arm: 2 }', '{ upper arm: 2, cap: 2 mm }').replace('do: let out', 'do: take in'),
    )
    const { status } = await scyeHere(['view', file, '-o', join(folder, 'out')])
    expect(status).toBe(1)
    expect(readFileSync(join(folder, 'out', 'view.html'), 'utf8')).toContain('<li class="is-error">')
  })
})
