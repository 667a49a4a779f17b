import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, test } from 'vitest'
import { scyeHere, temporaryFolder } from '../scye.ts'
import { publishedSchemas } from './schemas.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const example = (name: string) => join(root, 'examples', `${name}.yaml`)
const published = (name: string) => readFileSync(join(root, 'src/schema', `${name}.schema.json`), 'utf8')

/** A published schema that also refuses fields it does not know: the code must write none that it does not describe. */
function strictly(name: string) {
  const closed = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value
    if (Array.isArray(value)) return value.map(closed)
    const each = Object.fromEntries(Object.entries(value).map(([key, one]) => [key, closed(one)]))
    return 'properties' in each && 'type' in each && !('additionalProperties' in each)
      ? { ...each, additionalProperties: false }
      : each
  }
  return new Ajv2020({ strict: false, allErrors: true }).compile(closed(JSON.parse(published(name))) as object)
}

const validators = new Map(
  ['pattern', 'report', 'compare', 'advice', 'problems'].map((name) => [name, strictly(name)] as const),
)

function faults(name: string, text: string): unknown {
  const isValid = validators.get(name)
  if (!isValid) throw new Error(`no schema ${name}`)
  return isValid(JSON.parse(text)) ? [] : isValid.errors
}

describe('the published schemas', () => {
  test('are what the code makes of them: npm run schema', () => {
    for (const [name, text] of publishedSchemas())
      expect(readFileSync(join(root, 'src/schema', name), 'utf8') === text, `${name} is stale: npm run schema`).toBe(
        true,
      )
  })

  test.each(['lamplighter', 'ferry-pilot', 'test-sleeve'])('take every document of %s', async (name) => {
    const folder = temporaryFolder()
    const { status, stdout } = await scyeHere(['draft', example(name), '--as', 'json', '-o', folder, '--json'])
    expect(status).toBe(0)
    expect(faults('report', stdout)).toEqual([])
    expect(faults('report', readFileSync(join(folder, 'report.json'), 'utf8'))).toEqual([])
    expect(faults('pattern', readFileSync(join(folder, 'pattern.json'), 'utf8'))).toEqual([])
    const compared = await scyeHere(['compare', example(name), '-o', folder, '--json'])
    expect(faults('compare', compared.stdout)).toEqual([])
  })

  test('take advice and problems', async () => {
    const folder = temporaryFolder()
    expect(faults('advice', (await scyeHere(['advise', 'tight upper arm', '--json'])).stdout)).toEqual([])
    expect(faults('problems', (await scyeHere(['advise', 'tihgt elephant', '--json'])).stdout)).toEqual([])
    expect(faults('problems', (await scyeHere(['check', join(folder, 'none.yaml'), '--json'])).stdout)).toEqual([])
  })

  test('refuse a document that is spoiled', async () => {
    const { stdout } = await scyeHere(['check', example('lamplighter'), '--json'])
    const report = JSON.parse(stdout)
    expect(faults('report', JSON.stringify(report))).toEqual([])
    for (const spoiled of [
      { ...report, joins: undefined },
      { ...report, scyewright: 'report/2' },
      { ...report, findings: [{ ...report.findings[0], severity: 'bad' }] },
      { ...report, allowances: [{ ...report.allowances[0], used: null }] },
    ])
      expect(faults('report', JSON.stringify(spoiled))).not.toEqual([])
  })
})
