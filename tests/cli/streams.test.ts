import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { lamplighter, scye, temporaryFolder } from '../scye.ts'

const SOUND = readFileSync(lamplighter)
const UNUSABLE = 'performer: Lamplighter\nunits: in\nbody:\n  bust girth: elephants\n'

interface Document {
  readonly scyewright: string
}

test.each([
  ['compare/1', ['compare', '-', '--json'], ['lamplighter-pattern']],
  ['report/1', ['check', '-', '--json'], []],
  ['report/1', ['draft', '-', '--as', 'json', '--json', '--quiet'], ['lamplighter-pattern']],
  ['advice/1', ['advise', 'gapes', '--json'], []],
])('%s alone is on standard output: %j', (contract, args, written) => {
  const cwd = temporaryFolder()
  const { status, stdout, stderr } = scye(args, { cwd, input: SOUND })
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  expect((JSON.parse(stdout) as Document).scyewright).toBe(contract)
  expect(readdirSync(cwd)).toEqual(written)
})

test.each([
  ['check', ['check', '-', '--quiet'], []],
  ['draft', ['draft', '-', '--as', 'json', '--quiet'], ['lamplighter-pattern']],
])('%s --quiet says nothing of a file that is sound', (_, args, written) => {
  const cwd = temporaryFolder()
  expect(scye(args, { cwd, input: SOUND })).toEqual({ status: 0, stdout: '', stderr: '' })
  expect(readdirSync(cwd)).toEqual(written)
})

test('--quiet still says on standard error what cannot be used, and writes nothing', () => {
  const cwd = temporaryFolder()
  const { status, stdout, stderr } = scye(['draft', '-', '--quiet'], { cwd, input: UNUSABLE })
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
  expect(stderr).toMatch(/^standard input:4:\d+ · body\.bust girth\n {4}4 \| .*elephants\n/m)
  expect(readdirSync(cwd)).toEqual([])
})

test('--json says on standard output what cannot be used', () => {
  const { status, stdout, stderr } = scye(['check', '-', '--json'], { cwd: temporaryFolder(), input: UNUSABLE })
  expect({ status, stderr }).toEqual({ status: 2, stderr: '' })
  expect((JSON.parse(stdout) as Document).scyewright).toBe('problems/1')
})
