import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { scyeHere, temporaryFolder } from '../scye.ts'
import { fileOf } from './problem-cases.ts'

const IN = 25.4

interface Document {
  readonly measures?: readonly { readonly name: string; readonly body: number }[]
  readonly problems?: readonly {
    readonly code: string
    readonly where: { readonly line: number; readonly column: number }
  }[]
}

/** What the command makes of a text where a measure in inches belongs. */
async function checked(
  measure: string,
  written: string,
): Promise<{ readonly status: number | null; readonly document: Document }> {
  const file = join(temporaryFolder(), 'lamplighter.yaml')
  const text = fileOf({ code: '' })
    .replace('units: mm', 'units: in')
    .replace(/^( {2}[a-z ]+: )(\d+)$/gm, '$1$2 mm')
    .replace(new RegExp(`^  ${measure}: .*$`, 'm'), `  ${measure}: ${written}`)
  writeFileSync(file, text)
  const { status, stdout } = await scyeHere(['check', file, '--json'])
  return { status, document: JSON.parse(stdout) }
}

describe('what people type beside a tape, from the file to the report', () => {
  test.each<[string, string, number]>([
    ['outer arm length', '22 1/2', 22.5 * IN],
    ['outer arm length', '22½″', 22.5 * IN],
    ['outer arm length', '22 1/2"', 22.5 * IN],
    ['outer arm length', '22-1/2 in', 22.5 * IN],
    ['outer arm length', '57,8 cm', 578],
    ['outer arm length', '22 ⅝', 22.625 * IN],
    ['outer arm length', '22½', 22.5 * IN],
    ['outer arm length', '022', 22 * IN],
    ['outer arm length', '22 1/2 in (57.2 cm)', 22.5 * IN],
    ['shoulder slope', '22 deg', 22],
    ['shoulder slope', '22 1/2°', 22.5],
    ['shoulder slope', '21,5 degrees', 21.5],
  ])('%s: %s', async (measure, written, value) => {
    const { document } = await checked(measure, written)
    expect(document.problems).toBeUndefined()
    expect(document.measures?.find(({ name }) => name === measure)?.body).toBeCloseTo(value, 6)
  })

  test.each<[string, string, string]>([
    ['outer arm length', '15 1/2 3', 'not-a-length'],
    ['outer arm length', '12:30', 'not-a-length'],
    ['outer arm length', 'no', 'not-a-length'],
    ['outer arm length', '1e3', 'not-a-length'],
    ['outer arm length', '0x16', 'not-a-length'],
    ['outer arm length', '1_000', 'not-a-length'],
    ['outer arm length', '22 1/2 in (50 cm)', 'units-disagree'],
    ['outer arm length', '⅝', 'measure-out-of-range'],
    ['outer arm length', '2½', 'measure-out-of-range'],
    ['shoulder slope', '22', 'not-an-angle'],
    ['shoulder slope', '12:30 deg', 'not-an-angle'],
    ['shoulder slope', '22 deg 5', 'not-an-angle'],
  ])('%s: %s is no guess but a problem at its place', async (measure, written, code) => {
    const { status, document } = await checked(measure, written)
    expect(status).toBe(2)
    const line = measure === 'shoulder slope' ? 6 : 20
    expect(document.problems).toMatchObject([{ code, where: { line, column: `  ${measure}: `.length + 1 } }])
  })
})
