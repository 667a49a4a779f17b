import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Report } from '../../src/index.ts'
import { lamplighter, scyeHere, temporaryFolder } from '../scye.ts'

const head = readFileSync(lamplighter, 'utf8').split('fittings:')[0] as string

/** A performer file with these fittings in a folder of its own. */
function file(fittings: string): { folder: string; path: string } {
  const folder = temporaryFolder()
  const path = join(folder, 'ferry-pilot.yaml')
  writeFileSync(path, `${head}fittings:\n${fittings}`)
  return { folder, path }
}

const letOut = (by: string, ...more: string[]) =>
  ['      - do: let out', '        seam: wrist', `        by: ${by}`, ...more.map((line) => `        ${line}`)].join(
    '\n',
  )

const fitting = (label: string, mockUp: number, corrections: string, ...more: string[]) =>
  [
    `  - label: ${label}`,
    `    mock-up: ${mockUp}`,
    ...more.map((line) => `    ${line}`),
    '    corrections:',
    corrections,
    '',
  ].join('\n')

describe('a provisional fitting and a voided correction', () => {
  const fittings = fitting(
    'first fitting',
    1,
    `${letOut('1/4', 'seen: tight at the wrist')}\n${letOut('1/8', 'voided: pinned on the wrong side')}`,
    'provisional: stand-in',
  )

  test('are seen in every output', async () => {
    const { folder, path } = file(fittings)
    const out = join(folder, 'out')
    const drafted = await scyeHere(['draft', path, '-o', out, '--as', 'svg'])
    expect(drafted.status, drafted.stderr).toBe(0)
    expect((await scyeHere(['compare', path, '-o', out])).status).toBe(0)
    const outputs: [string, string][] = [
      ['draft', drafted.stdout],
      ['check', (await scyeHere(['check', path])).stdout],
      ...['slip.txt', 'report.json', 'pattern.svg', 'compare.svg'].map((name): [string, string] => [
        name,
        readFileSync(join(out, name), 'utf8'),
      ]),
    ]
    for (const [name, text] of outputs) {
      expect(text, name).toMatch(/provisional/i)
      expect(text, name).toContain('stand-in')
      expect(text, name).toMatch(/voided|does not count/)
    }
    // On three pieces and at the foot of the sheet.
    const svg = readFileSync(join(out, 'pattern.svg'), 'utf8')
    expect(svg.match(/provisional: first fitting, on stand-in/g)?.length).toBe(4)
    expect(svg.match(/voided: first fitting, correction 2/g)?.length).toBe(4)
    const report = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as Report
    const note = (code: string) => report.findings.find((f) => f.code === code)
    expect(note('fitting-provisional')).toMatchObject({
      severity: 'note',
      where: { fitting: 'first fitting', line: expect.any(Number) },
    })
    expect(note('correction-voided')).toMatchObject({
      severity: 'note',
      where: { fitting: 'first fitting', correction: 2 },
    })
    expect(note('correction-voided')?.actual).toContain('pinned on the wrong side')
    expect(report.slip.map((entry) => entry.voided)).toEqual([undefined, 'pinned on the wrong side'])
    expect(report.allowances.find((row) => row.seam === 'wrist')?.used).toBeCloseTo(6.35, 6)
  })
})

describe('the allowance of one mock-up', () => {
  const report = async (fittings: string) => {
    const { status, stdout } = await scyeHere(['check', file(fittings).path, '--json'])
    const document = JSON.parse(stdout) as Report
    return { status, findings: document.findings.filter((f) => f.code.startsWith('allowance')), document }
  }

  test('adds up over its fittings: less than 3 mm left is a warning', async () => {
    // 1 in was cut; 1/2 and 7/16 leave 1/16 in, 1.6 mm.
    const { status, findings } = await report(
      fitting('first fitting', 1, letOut('1/2')) + fitting('second fitting', 1, letOut('7/16')),
    )
    expect(status).toBe(0)
    expect(findings).toMatchObject([
      {
        code: 'allowance-low',
        severity: 'warning',
        where: { fitting: 'second fitting', correction: 1, seam: 'wrist' },
      },
    ])
    expect(findings[0]?.actual).toContain('1/16 in')
  })

  test('more than there was is an error that names what remained', async () => {
    const { status, findings } = await report(
      fitting('first fitting', 1, letOut('1/2')) + fitting('second fitting', 1, letOut('5/8')),
    )
    expect(status).toBe(1)
    expect(findings).toMatchObject([{ code: 'allowance-exceeded', severity: 'error' }])
    expect(findings[0]?.actual).toContain('1/2 in of its allowance remained')
    expect(findings[0]?.expected).toContain('at most 1/2 in')
  })

  test('begins again with the next one', async () => {
    const { status, findings, document } = await report(
      fitting('first fitting', 1, letOut('1/2')) + fitting('second fitting', 2, letOut('5/8')),
    )
    expect({ status, findings }).toEqual({ status: 0, findings: [] })
    expect(document.allowances.find((row) => row.seam === 'wrist')).toMatchObject({ cut: 25.4, used: 15.875 })
  })

  test('is not used by what was voided', async () => {
    const { findings } = await report(
      fitting('first fitting', 1, letOut('1/2', 'voided: read off the wrong pin')) +
        fitting('second fitting', 1, letOut('5/8')),
    )
    expect(findings).toEqual([])
  })
})
