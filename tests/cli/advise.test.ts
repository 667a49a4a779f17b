import { describe, expect, test } from 'vitest'
import { scye, scyeHere } from '../scye.ts'

interface AdviceJson {
  readonly scyewright: string
  readonly source: string
  readonly words?: string
  readonly place?: string
  readonly entries: { readonly id: string; readonly causes: { readonly snippet?: string }[] }[]
  readonly unknown: { readonly word: string; readonly nearest?: string }[]
}

describe('scye advise', () => {
  test('--quiet says problems only', async () => {
    expect(await scyeHere(['advise', 'gapes', '--quiet'])).toEqual({ status: 0, stdout: '', stderr: '' })
    const none = await scyeHere(['advise', 'zzzzqq', '-q'])
    expect({ status: none.status, stdout: none.stdout }).toEqual({ status: 2, stdout: '' })
    expect(none.stderr).toContain('nothing on "zzzzqq"')
  })

  test('tells what to try, in order, in 100 columns and without colors where nobody looks', () => {
    const { status, stdout, stderr } = scye(['advise', 'tight', 'upper', 'arm'])
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(/^Lines run level round the upper arm/)
    const order = [
      '  1  The cap is too narrow',
      'pin     open',
      'write   - do: let out',
      'costs',
      '  2  The whole sleeve',
    ]
    const at = order.map((words) => stdout.indexOf(words))
    expect(at).toEqual([...at].sort((a, b) => a - b))
    expect(at[0]).toBeGreaterThan(0)
    expect(stdout).toContain('mind    Lift the cloth clear')
    expect(stdout).toContain('Common practice')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colors where nobody looks
    expect(stdout).not.toMatch(/\u001b/)
  })

  test('no entry is wider than 100 columns', async () => {
    const list = (await scyeHere(['advise'])).stdout
    const ids = [...new Set([...list.matchAll(/^ {2}([a-z]+(?:-[a-z]+)+) /gm)].map(([, id]) => id as string))]
    expect(ids.length).toBeGreaterThanOrEqual(30)
    const texts = [
      list,
      (await scyeHere(['advise', 'lines'])).stdout,
      (await scyeHere(['advise', 'xyz', 'cap'])).stdout,
    ]
    for (const id of ids) texts.push((await scyeHere(['advise', id])).stdout)
    for (const line of texts.join('\n').split('\n')) expect(line.length, line).toBeLessThanOrEqual(100)
  })

  test('without words it lists the entries by place; --place shows one', async () => {
    const { status, stdout } = await scyeHere(['advise'])
    expect(status).toBe(0)
    const places = ['cap', 'underarm', 'elbow', 'shoulder', 'neck', 'front', 'back', 'waist']
    expect(stdout.split('\n').filter((line) => places.includes(line))).toEqual(places)
    const neck = (await scyeHere(['advise', '--place', 'neck'])).stdout
    expect(neck).toMatch(/^neck\n {2}/)
    expect(neck).not.toMatch(/^cap$/m)
  })

  test('--json prints advice/1', async () => {
    const { status, stdout } = await scyeHere(['advise', 'cannot', 'reach', '--place', 'back', '--json'])
    expect(status).toBe(0)
    const advice = JSON.parse(stdout) as AdviceJson
    expect(advice).toMatchObject({
      scyewright: 'advice/1',
      source: 'common practice',
      words: 'cannot reach',
      place: 'back',
    })
    expect(advice.entries[0]?.id).toBe('cannot-reach')
    expect(advice.entries[0]?.causes[0]?.snippet).toMatch(/^- do: underarm reach\n {2}by: 1\/2 in/)
    expect(advice.unknown).toEqual([])
  })

  test.each([
    ['nothing found: the nearest word', ['gusst'], 'no-advice', 'did you mean gusset?'],
    ['nothing at the place', ['choke', '--place', 'elbow'], 'no-advice', 'leave --place out'],
    ['an unknown place', ['tight', '--place', 'nek'], 'unknown-place', 'did you mean neck?'],
    ['words that say nothing', ['the'], 'no-advice', 'lists what there is advice on'],
  ])('%s', async (_name, args, code, hint) => {
    const { status, stdout } = await scyeHere(['advise', ...args, '--json'])
    expect(status).toBe(2)
    const { problems } = JSON.parse(stdout) as { problems: { code: string; hint: string }[] }
    expect(problems.map((problem) => problem.code)).toEqual([code])
    expect(problems[0]?.hint).toContain(hint)
  })

  test('a word that is not known is said, beside what the others find', async () => {
    const { status, stdout } = await scyeHere(['advise', 'neck', 'chokess'])
    expect(status).toBe(0)
    expect(stdout).toMatch(/^no entry speaks of "chokess"; did you mean chokes\?/)
  })
})
