import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { complaints, exportsOf, type Promised, partsOf, promised, promisesTable, proofs, testsOf } from './promises.ts'
import { INNER, PROOFS } from './proofs.ts'

const README = fileURLToPath(new URL('../../src/geometry/README.md', import.meta.url))
const textOf = (file: string) => readFileSync(new URL(`./${file}.test.ts`, import.meta.url), 'utf8')

describe('the promises of the kernel', () => {
  it('every function has a promise, and a proof that exists, runs and uses it', () => {
    const functions = promised()
    // It has read the kernel.
    expect(functions.length).toBeGreaterThan(70)
    expect(proofs().length).toBeGreaterThan(100)
    expect(complaints(functions, PROOFS, proofs(), textOf)).toEqual([])
  })

  it('no name is that of two functions', () => {
    const names = promised().map(({ name }) => name)
    expect(names.filter((name, k) => names.indexOf(name) !== k)).toEqual([])
  })

  it('the table of src/geometry/README.md is what the functions and proofs say (-u writes it anew)', async () => {
    const [before, , after] = readFileSync(README, 'utf8').split(
      /(?<=<!-- promises -->\n)|(?=\n<!-- end of promises -->)/,
    )
    await expect(`${before}\n${promisesTable()}\n${after}`).toMatchFileSnapshot(README)
  })

  it('modules for the kernel alone are used by no other stage', () => {
    const src = fileURLToPath(new URL('../../src', import.meta.url))
    const outside = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
      (file) => file.endsWith('.ts') && !file.startsWith('geometry'),
    )
    expect(outside.length).toBeGreaterThan(50)
    const uses = outside.flatMap((file) => {
      const text = readFileSync(join(src, file), 'utf8')
      return INNER.filter((module) => text.includes(`geometry/${module}.ts'`)).map((module) => `${file}: ${module}`)
    })
    expect(uses).toEqual([])
    for (const module of INNER) expect(() => readFileSync(join(src, 'geometry', `${module}.ts`))).not.toThrow()
  })
})

describe('how the promises are checked', () => {
  const text =
    "import { half } from '../../src/geometry/half.ts'\nit('halves', () => {})\nit.skip('sleeps', () => {})\n"
  const half: Promised = { name: 'half', module: 'half', kind: 'function', says: 'Half of it.', value: '' }
  const tests = testsOf('half', text)
  const check = (one: Promised, named: Readonly<Record<string, readonly string[]>>) =>
    complaints([one], named, tests, () => text)

  it('is content with a promise that is proven', () => {
    expect(check(half, { half: ['half: halves'] })).toEqual([])
  })

  it('finds a function without promise or proof, and a proof that is missing, skipped or of something else', () => {
    expect(check({ ...half, says: '' }, { half: ['half: halves'] })).toEqual(['half.ts: half promises nothing'])
    expect(check(half, {})).toEqual(['half.ts: half has no proof'])
    expect(check(half, { half: ['half: doubles'] })).toEqual(['half: there is no test "half: doubles"'])
    expect(check(half, { half: ['half: sleeps'] })).toEqual(['half: "half: sleeps" is skipped'])
    const third: Promised = { ...half, name: 'third' }
    expect(check(third, { third: ['half: halves'] })).toEqual(['third: half.test.ts does not import it from half.ts'])
    expect(check(half, { half: ['half: halves'], gone: ['half: halves'] })).toEqual([
      'there is no function gone to prove',
    ])
  })

  it('reads exports, docstrings and names of tests from source', () => {
    const source =
      '/** Twice a.\n * Exact. */\nexport function twice(a: number) { return 2 * a }\nfunction inner() {}\n'
    expect(exportsOf('m', source)).toEqual([
      { name: 'twice', module: 'm', kind: 'function', says: 'Twice a. Exact.', value: '' },
    ])
    const calls = [`for (const a of [1]) it(\`by \${a} mm\`, () => {})`, `describe.skip('x', () => it('y', () => {}))`]
    expect(testsOf('t', calls.join('\n'))).toEqual([
      { file: 't', name: 'by … mm', skipped: false },
      { file: 't', name: 'y', skipped: true },
    ])
    expect(partsOf('The sum by J. D. Hobby in mm. Cost: 2 µs. Throws on none.')).toEqual({
      promise: 'The sum by J. D. Hobby in mm.',
      cost: '2 µs',
      failure: 'throws on none',
    })
  })
})
