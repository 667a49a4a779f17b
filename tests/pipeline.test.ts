import { describe, expect, test } from 'vitest'
import * as z from 'zod'
import type { Check } from '../src/checks/check.ts'
import { CHECKS } from '../src/checks/checks.ts'
import { joinsSmooth } from '../src/checks/joins-smooth.ts'
import { defineCorrection } from '../src/fitting/correction.ts'
import { CORRECTIONS } from '../src/fitting/corrections.ts'
import { versionUnder } from '../src/fitting/version-under.ts'
import { type MadePattern, type MakeOptions, makePattern } from '../src/pipeline.ts'

const BODY = `performer: Ferry Pilot
units: cm
body:
  bust girth: 90
  waist girth: 72
  back waist length: 40.5
  upper arm girth: 29
  outer arm length: 59
`

function made(text: string, options: MakeOptions = {}): MadePattern {
  const result = makePattern(text, 'ferry-pilot.yaml', options)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

const codes = ({ report }: MadePattern) => report.findings.map(({ code }) => code)

const fitted = (correction: string) => `${BODY}fittings:
  - label: first fitting
    mock-up: 1
    corrections:
${correction}
`

describe('findings', () => {
  test('of the draft have the line and column of their field', () => {
    const { report } = made(`${BODY}  front waist length: 44\ndraft:\n  fit: close\n  Bust dart: 2\n`)
    const finding = report.findings.find(({ code }) => code === 'bust-dart-not-used')
    expect(finding?.where).toMatchObject({ file: 'ferry-pilot.yaml', line: 12, column: 14, field: 'draft.Bust dart' })
  })

  test('say an estimate as the note of estimates does', () => {
    const { report } = made(BODY.replace('units: cm', 'units: in').replace(/: (\d+\.?\d*)$/gm, ': $1 cm'))
    const said = (code: string) =>
      /hand girth ([\d/ ]+ in)/.exec(report.findings.find((finding) => finding.code === code)?.actual ?? '')?.[1]
    expect(said('hand-does-not-pass')).toMatch(/\d in/)
    expect(said('hand-does-not-pass')).toBe(said('estimated-measures'))
  })

  test('of the checks have the line and column of the measure they are about', () => {
    const look: Check = {
      name: 'look',
      looksAt: 'the bust',
      run: () => [
        { code: 'looked', severity: 'note', where: { field: 'body.bust girth' }, actual: '', expected: '', hint: '' },
      ],
    }
    const { report } = made(BODY, { checks: [look] })
    expect(report.findings.find(({ code }) => code === 'looked')?.where).toMatchObject({ line: 4, column: 15 })
  })
})

describe('a measure that is missing', () => {
  test.each([
    ['in', 'a length above zero such as 37 1/4 in'],
    ['cm', 'a length above zero such as 95 cm'],
  ])('is asked for with a length that it could have, in %s', (units, expected) => {
    const text = BODY.replace(/ {2}bust girth.*\n/, '').replace('units: cm', `units: ${units}`)
    const result = makePattern(text, 'ferry-pilot.yaml')
    expect(result.ok ? undefined : result.problems.find(({ actual }) => actual === 'no bust girth')?.expected).toBe(
      expected,
    )
  })
})

describe('the draft before any fitting', () => {
  test('is called none or draft', () => {
    const text = fitted('      - do: widen\n        at: upper arm\n        by: 1')
    for (const until of ['none', 'draft']) expect(made(text, { until }).version).toBe('draft')
    const { versions } = made(text)
    for (const name of ['none', 'draft', 'previous']) {
      expect(versionUnder(versions, name)).toEqual({ ok: true, value: versions[0] })
    }
  })
})

describe('a measure in the wrong unit', () => {
  const inches = (name: string, value: string) =>
    `performer: Ferry Pilot
units: in
body:
  bust girth: 38 1/2
  waist girth: 31
  back waist length: 16 1/2
  upper arm girth: 11
  outer arm length: 23
`.replace(new RegExp(`${name}: .*`), `${name}: ${value}`)
  test.each([
    ['waist girth', '79', 5],
    ['bust girth', '98', 5],
    ['back waist length', '41', 6],
  ])('%s of %s is named before what it makes impossible', (name, value, line) => {
    const result = makePattern(inches(name, value), 'ferry-pilot.yaml')
    if (result.ok) throw new Error('drafted')
    const [first, ...others] = result.problems
    expect(first).toMatchObject({ where: { line }, hint: expect.stringMatching(/^look at the unit/) })
    expect(first?.actual).toContain(`${name} ${value} in`)
    expect(others.map(({ code }) => code)).not.toContain(first?.code)
    expect(others).not.toEqual([])
  })

  test.each([
    ['in', '79', / in$/],
    ['cm', '200', / cm$/],
  ])('has remedies in %s, each of which works', (units, waist, ending) => {
    const text = (points: string) =>
      inches('waist girth', waist)
        .replace('units: in', `units: ${units}`)
        .replace(/: (38 1\/2|16 1\/2|11|23)$/gm, ': $1 in') + points
    const result = makePattern(text(''), 'ferry-pilot.yaml')
    if (result.ok) throw new Error('drafted')
    const problem = result.problems.find(({ remedies }) => remedies)
    const lower = problem?.remedies?.find(({ set }) => (set.body as object | undefined) !== undefined)
    expect(lower?.say).not.toMatch(/\d mm/)
    const point = String(
      (lower?.set as Record<string, Record<string, string>> | undefined)?.body?.['neck to bust point'],
    )
    expect(point).toMatch(ending)
    expect(lower?.say).toContain(`neck to bust point ${point}`)
    const after = makePattern(text(`  neck to bust point: ${point}\n`), 'ferry-pilot.yaml')
    expect(after.ok ? [] : after.problems.map(({ code }) => code)).not.toContain(problem?.code)
  })

  test('is named where the fittings cannot be replayed either', () => {
    const text = fitted('      - do: widen\n        at: upper arm\n        by: 600 cm').replace(
      'waist girth: 72',
      'waist girth: 125',
    )
    const drafted = made(text, { until: 'none' }).report.findings
    const result = makePattern(text, 'ferry-pilot.yaml')
    if (result.ok) throw new Error('replayed')
    expect(drafted.filter(({ severity }) => severity === 'warning').map(({ code }) => code)).toContain(
      result.problems[0]?.code,
    )
    expect(result.problems.at(-1)?.where.correction).toBe(1)
  })
})

describe('own parts', () => {
  const settle = defineCorrection({
    name: 'settle',
    does: 'nothing to the pattern',
    answers: [],
    settings: (read) => z.strictObject({ by: read.positiveLength() }),
    defaults: [],
    compile: () => ({ ok: true, value: [] }),
    word: ({ by }, say) => ({ what: `settle by ${say(by)}`, where: 'everywhere' }),
  })
  const text = fitted('      - { do: settle, by: 1 }')

  test('an own correction is read, replayed and worded', () => {
    const { report } = made(text, { corrections: [...CORRECTIONS, settle] })
    expect(report.slip.map(({ what }) => what)).toEqual(['settle by 1 cm'])
  })

  test('without it the file cannot be used', () => {
    const result = makePattern(text, 'ferry-pilot.yaml')
    expect(result.ok ? [] : result.problems.map(({ where }) => where.line)).toEqual([13])
  })

  test('own checks run in place of the usual ones, or beside them', () => {
    const mine: Check = {
      name: 'mine',
      looksAt: 'how many pieces there are',
      run: ({ pattern }) => [
        { code: 'pieces', severity: 'note', where: {}, actual: `${pattern.pieces.length}`, expected: '', hint: '' },
      ],
    }
    expect(codes(made(BODY, { checks: [mine] }))).toContain('pieces')
    const all = codes(made(BODY, { checks: [...CHECKS, mine] }))
    expect(all.filter((code) => code !== 'pieces')).toEqual(codes(made(BODY)))
  })
})

describe('a peak at the underarm', () => {
  test('that a reach means is said once, in the words of the reach', () => {
    const found = codes(made(fitted('      - { do: underarm reach, by: 1.3, along cap: 3.8 }')))
    expect(found).toContain('underarm-peaks')
    expect(found).not.toContain('corner-across-join')
  })

  test('is said once also where only one side was given reach', () => {
    const found = codes(made(fitted('      - { do: underarm reach, by: 1.3, along cap: 3.8, side: left }')))
    expect(found).toContain('underarm-peaks')
    expect(found).not.toContain('corner-across-join')
  })

  test('is said once where the sides were parted after the reach', () => {
    const both = '      - { do: underarm reach, by: 1.3, along cap: 3.8 }'
    const left = '      - { do: let out, seam: cap, by: 0.3, at: [shoulder notch], side: left }'
    const found = codes(made(fitted(`${both}\n${left}`)))
    expect(found).toContain('underarm-peaks')
    expect(found).not.toContain('corner-across-join')
  })

  test('is for the draper to true where the reach does not account for all of it', () => {
    const { pattern } = made(fitted('      - { do: underarm reach, by: 1.3, along cap: 3.8 }'))
    const found = (...angles: number[]) => {
      const corners = angles.map((angle) => ({ kind: 'corner made', piece: 'sleeve', seam: 'cap', angle }) as const)
      return joinsSmooth.run({ pattern, measures: [], units: 'mm', corners }).map(({ where }) => where.seam)
    }
    const [peak] = found()
    expect(peak).toMatch(/^(front|back) cap$/)
    const degrees = /peaks by ([\d.]+)°/.exec(joinsSmooth.run({ pattern, measures: [], units: 'mm' })[0]?.actual ?? '')
    const angle = (Number(degrees?.[1]) * Math.PI) / 180
    expect(angle).toBeGreaterThan(0.2)
    expect(found(angle)).toEqual([])
    expect(found(angle / 2, angle / 2)).toEqual([])
    expect(found(angle / 2)).toEqual([peak])
    expect(found(2 * angle)).toEqual([peak])
    expect(found(-angle)).toEqual([peak])
  })
})

describe('uneven shoulders', () => {
  test('bring no warning about measures that have no sides, each of which has one row', () => {
    const uneven = made(`${BODY}  shoulder slope: { left: 24 deg, right: 18 deg }\n`)
    const { measures } = uneven.report
    const bust = measures.filter(({ name }) => name === 'bust girth')
    expect(bust.map(({ side }) => side)).toEqual(['both'])
    expect(bust[0]?.drafted).toBeCloseTo(bust[0]?.asked ?? Number.NaN, 1)
    expect(measures.filter(({ name }) => name === 'shoulder slope').map(({ side }) => side)).toEqual(['left', 'right'])
    expect(new Set(measures.filter(({ side }) => side !== 'both').map(({ name }) => name))).toEqual(
      new Set(['shoulder slope']),
    )
    const ease = codes(uneven).filter((code) => /ease$|smaller-than-body/.test(code))
    expect(ease).toEqual([])
  })
})
