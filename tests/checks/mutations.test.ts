import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { CHECKS, runChecks } from '../../src/checks/checks.ts'
import { PIECE_MUTATIONS } from './piece-mutations.ts'
import { SEAM_MUTATIONS } from './seam-mutations.ts'

const MUTATIONS = [...SEAM_MUTATIONS, ...PIECE_MUTATIONS]

describe(`${MUTATIONS.length} ways to break a good pattern: exactly what is listed beside each is found`, () => {
  test('among them every code that a check can find', () => {
    const folder = fileURLToPath(new URL('../../src/checks', import.meta.url))
    const sources = readdirSync(folder).filter((name) => name.endsWith('.ts'))
    const written = sources.flatMap((name) => {
      const lines = readFileSync(join(folder, name), 'utf8')
        .split('\n')
        .filter((line) => /^\s+code: /.test(line))
      return lines.flatMap((line) => line.match(/(?<=')[a-z]+(?:-[a-z]+)+(?=')/g) ?? [])
    })
    expect(written.length).toBeGreaterThan(25)
    const listed = new Set(MUTATIONS.flatMap(({ codes }) => codes))
    expect([...new Set(written)].filter((code) => !listed.has(code))).toEqual([])
    const table = readFileSync(join(folder, 'README.md'), 'utf8')
    expect([...new Set(written)].filter((code) => !table.includes(`| \`${code}\` |`))).toEqual([])
  })

  test('are forty or more', () => expect(MUTATIONS.length).toBeGreaterThanOrEqual(40))

  test.each(MUTATIONS.map((mutation) => [mutation.how, mutation] as const))('%s', (_how, { broken, codes }) => {
    const found = runChecks(broken())
    expect([...new Set(found.map(({ code }) => code))].sort()).toEqual([...codes].sort())
    // A mend that is tried is not shown to a mild check again, which must have no error to find.
    const mild = CHECKS.filter((check) => check.mild).flatMap((check) => check.run(broken()))
    expect(mild.filter(({ severity }) => severity === 'error')).toEqual([])
    for (const { actual, expected, hint, where } of found) {
      expect([actual, expected, hint].every((words) => words.length > 3)).toBe(true)
      expect(Object.keys(where).length).toBeGreaterThan(0)
    }
  })
})
