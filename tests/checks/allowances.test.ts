import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { walkJoins } from '../../src/checks/report.ts'
import { makePattern } from '../../src/pipeline.ts'

const FILE = readFileSync(new URL('../../examples/ferry-pilot.yaml', import.meta.url), 'utf8')

test('walks run on stitching lines: allowances of 10 or of 25 mm change no figure of any walk', () => {
  const walked = (allowance: string) => {
    const made = makePattern(
      FILE.replace(/allowance: \{.*\}/, `allowance: { default: ${allowance}, neckline: ${allowance} }`),
      'file',
    )
    if (!made.ok) throw new Error(JSON.stringify(made.problems))
    const cut = made.value.pattern.pieces.flatMap((piece) => piece.seams.map((seam) => seam.allowance))
    return { walk: walkJoins(made.value.pattern), joins: made.value.report.joins, cut }
  }
  const [narrow, wide] = [walked('10 mm'), walked('25 mm')]
  expect(Math.max(...narrow.cut)).toBeLessThanOrEqual(25)
  expect(narrow.cut).not.toEqual(wide.cut)
  expect(narrow.walk.length).toBeGreaterThan(8)
  expect(wide.walk).toEqual(narrow.walk)
  expect(wide.joins).toEqual(narrow.joins)
})
