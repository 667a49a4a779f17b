import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const good = readFileSync(lamplighter, 'utf8')

interface Report {
  readonly scyewright: string
  readonly findings: { readonly code: string; readonly severity: string; readonly where: { readonly join?: string } }[]
  readonly measures: {
    readonly name: string
    readonly estimated: boolean
    readonly asked: number
    readonly drafted: number
  }[]
  readonly joins: {
    readonly id: string
    readonly a: number
    readonly b: number
    readonly ease: number
    readonly spans: { readonly from: string; readonly to: string; readonly ease: number }[]
  }[]
  readonly movement: {
    readonly version: string
    readonly capHeight: number
    readonly bicepsWidth: number
    readonly neutralLift: number
  }[]
}

const report = async (...args: string[]) =>
  JSON.parse((await scyeHere(['check', lamplighter, '--json', ...args])).stdout) as Report

/** A performer whose cap, drafted with next to no ease, is taken in until it cannot be set. */
function tooSmall(): { folder: string; file: string } {
  const folder = temporaryFolder()
  const file = join(folder, 'pilot.yaml')
  writeFileSync(
    file,
    good.replace('{ upper arm: 2 }', '{ upper arm: 2, cap: 2 mm }').replace('do: let out', 'do: take in'),
  )
  return { folder, file }
}

describe('scye check', () => {
  test('prints findings first, then walk, measures, allowance and movement, in 100 columns', () => {
    const { status, stdout, stderr } = scye(['check', lamplighter])
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const order = ['Lamplighter', 'Findings', 'Walk', 'Measures', 'Allowance', 'Movement'].map((word) =>
      stdout.indexOf(word),
    )
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(order[0]).toBe(0)
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100)
    expect(stdout).toMatch(/^ {2}front cap +\d.*sews|^ {2}front cap +\d.*too full/m)
    expect(stdout).toMatch(/^ {4}underarm to notch +\d/m)
    expect(stdout).toMatch(/^ {2}bust girth +both +37 3\/4 +/m)
    expect(stdout).toMatch(/shoulder to elbow .* estimated/)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colors where nobody looks
    expect(stdout).not.toMatch(/\u001b/)
  })

  test('writes nothing', async () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'pilot.yaml'), good)
    expect((await scyeHere(['check', join(folder, 'pilot.yaml')])).status).toBe(0)
    expect(readdirSync(folder)).toEqual(['pilot.yaml'])
  })

  test('speaks the file’s unit', async () => {
    const file = join(temporaryFolder(), 'pilot.yaml')
    const metric = good.replaceAll(/: (\d+(?: \d\/\d)?)( *#.*)?$/gm, (whole, inches: string) => {
      const [whole1 = '0', fraction = '0/1'] = inches.split(' ')
      const [over = '0', under = '1'] = fraction.split('/')
      return whole.includes('mock-up')
        ? whole
        : `: ${((Number(whole1) + Number(over) / Number(under)) * 2.54).toFixed(2)}`
    })
    writeFileSync(file, metric.replace('units: in', 'units: cm').replace('mock-up: 2.54', 'mock-up: 1'))
    const { status, stdout, stderr } = await scyeHere(['check', file, '--until', 'none'])
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toContain('lengths in centimeters')
    expect(stdout).toMatch(/^ {2}bust girth +both +95\.89 +/m)
  })

  test('--json prints report/1 with every join walked notch to notch', async () => {
    const { scyewright, joins, measures, movement } = await report()
    expect(scyewright).toBe('report/1')
    expect(joins.map((join) => join.id)).toEqual(['front cap', 'back cap', 'underarm seam', 'shoulder', 'side seam'])
    for (const join of joins) {
      expect(join.a - join.b).toBeCloseTo(join.ease, 4)
      expect(join.spans.reduce((sum, span) => sum + span.ease, 0)).toBeCloseTo(join.ease, 4)
    }
    const marks = (id: string) => joins.find((join) => join.id === id)?.spans.flatMap((span) => [span.from, span.to])
    expect(marks('front cap')).toEqual(['underarm', 'front notch', 'front notch', 'shoulder notch'])
    expect(marks('back cap')).toEqual(['underarm', 'back notch', 'back notch', 'shoulder notch'])
    expect(measures.filter((row) => row.estimated).map((row) => row.name)).toEqual(['shoulder to elbow'])
    expect(movement.map((row) => row.version)).toEqual(['draft', 'first fitting'])
    for (const row of movement) {
      const lift = (Math.atan2(Math.PI * row.capHeight, row.bicepsWidth) * 180) / Math.PI
      expect(row.neutralLift).toBeCloseTo(lift, 4)
    }
  })

  test('before any fitting every asked measure is on the pattern within 0.1 mm', async () => {
    const { measures } = await report('--until', 'none')
    expect(measures.length).toBeGreaterThan(12)
    for (const row of measures) expect(Math.abs(row.drafted - row.asked), row.name).toBeLessThan(0.1)
  })

  test('a cap shorter than its armscye is an error: exit 1, files are still written', async () => {
    const { folder, file } = tooSmall()
    const { status, stdout } = scye(['check', 'pilot.yaml'], { cwd: folder })
    expect(status).toBe(1)
    expect(stdout).toMatch(/^ {2}error +join (front|back) cap: /m)
    expect(stdout).toMatch(/(front|back) cap .* too short/)
    const json = await scyeHere(['check', file, '--json'])
    expect(json.status).toBe(1)
    const { findings } = JSON.parse(json.stdout) as Report
    expect(findings[0]).toMatchObject({ code: 'cap-too-short', severity: 'error' })
    expect((await scyeHere(['draft', file, '--as', 'json'])).status).toBe(1)
    expect(readdirSync(join(folder, 'pilot-pattern'))).toContain('pattern.json')
    const quiet = await scyeHere(['check', file, '--quiet'])
    expect({ status: quiet.status, stdout: quiet.stdout }).toEqual({ status: 1, stdout: '' })
    expect(quiet.stderr).toContain('too short')
  })

  test('several files make one document', async () => {
    const { status, stdout } = await scyeHere(['check', tooSmall().file, lamplighter, '--json'])
    expect(status).toBe(1)
    expect((JSON.parse(stdout) as { scyewright: string; reports: unknown[] }).reports).toHaveLength(2)
  })
})
