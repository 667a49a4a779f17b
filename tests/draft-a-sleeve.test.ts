import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { draftASleeve } from '../examples/draft-a-sleeve.ts'

test('the example drafts, fits, checks and draws a sleeve', async () => {
  const { slip, walk, findings, svg } = await draftASleeve()
  expect(slip).toContain('Both sides: let out the cap by 6 mm')
  expect(slip).toContain('tight over the upper arm')
  expect(walk.map((join) => join.id)).toContain('front cap')
  expect(findings.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual([])
  expect(svg).toMatch(/^<(\?xml|svg)/)
  expect(svg).toContain('SLEEVE')
  expect(svg).not.toContain('BODICE')
})

test('the README shows the calls of the example', () => {
  const read = (file: string) => readFileSync(new URL(`../${file}`, import.meta.url), 'utf8')
  const shown = /```ts\n([\s\S]*?)```/.exec(read('README.md'))?.[1] ?? ''
  const calls = [...shown.matchAll(/\b([a-zA-Z]+)\(/g)].map((match) => match[1] as string)
  expect(calls.length).toBeGreaterThan(5)
  const example = read('examples/draft-a-sleeve.ts')
  for (const line of shown.split('\n').filter((text) => text.startsWith('const')))
    expect(example).toContain(`  ${line}\n`)
})
