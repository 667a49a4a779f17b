import { describe, expect, it } from 'vitest'
import { formatLength } from '../../src/base/format-length.ts'
import { wordCapHeight } from '../../src/fitting/corrections/cap-height.ts'
import type { SeamPlace } from '../../src/fitting/position.ts'
import { sayPlace } from '../../src/fitting/resolve-place.ts'
import { sayPlaces } from '../../src/fitting/say-places.ts'
import { slipText } from '../../src/fitting/slip-text.ts'
import { makePattern } from '../../src/pipeline.ts'

const HEAD = [
  'performer: Ferry Pilot',
  'production: The Tin Orchard',
  'units: mm',
  'body: { bust girth: 959, waist girth: 759, back waist length: 416, upper arm girth: 299, outer arm length: 578 }',
  'fittings:',
  '  - label: first fitting',
  '    corrections:',
]

/** A performer file with these lines as its corrections; the first stands in line 8. */
function file(...lines: string[]): string {
  return [...HEAD, ...lines.map((line) => `      ${line}`), ''].join('\n')
}

function problems(...lines: string[]) {
  const made = makePattern(file(...lines), 'ferry-pilot.yaml')
  return made.ok ? [] : made.problems
}

const say = (mm: number) => `${mm} mm`

describe('places in words', () => {
  it('have their articles, and say once what only differs in the half', () => {
    const both = [
      { line: 'cap line', half: 'front' },
      { line: 'cap line', half: 'back' },
    ] as const
    expect(sayPlaces(both, say)).toBe('the cap line, front and back')
    expect(sayPlaces([{ landmark: 'shoulder notch' }, { landmark: 'front notch' }], say)).toBe(
      'the shoulder notch and the front notch',
    )
    expect(sayPlaces([...both, { from: 'underarm', toward: 'front notch', distance: 38 }], say)).toBe(
      'the cap line, front and back; 38 mm from the underarm toward the front notch',
    )
    expect(sayPlaces([{ between: ['underarm', 'front notch'], share: 0.5 }], say)).toBe(
      'halfway from the underarm to the front notch',
    )
  })
})

describe('a problem of a correction', () => {
  it('points at the value that cannot be met, in the list where it stands', () => {
    const lines = ['- do: let out', '  seam: cap', '  at: crown', '  by: 5', '  taper to: [ front notch, elbow line ]']
    const [problem] = problems(...lines)
    expect(problem).toMatchObject({ code: 'unknown-place', where: { fitting: 'first fitting', correction: 1 } })
    expect(problem?.where).toMatchObject({ line: 12, column: 34, field: 'fittings.1.corrections.1.taper to.2' })
  })

  it('points at the setting of a single value', () => {
    const [problem] = problems('- do: let out', '  by: 5', '  at: bust point', '  seam: cap')
    expect(problem?.where).toMatchObject({ line: 10, column: 13, field: 'fittings.1.corrections.1.at' })
  })

  it('points at a distance that is too long', () => {
    const [problem] = problems('- do: underarm reach', '  by: 5', '  along cap: 900')
    expect(problem?.where).toMatchObject({ line: 10, column: 20, field: 'fittings.1.corrections.1.along cap' })
  })
})

describe('the slip', () => {
  it('says from where to where a line moved, and on which side', () => {
    const made = makePattern(
      file(
        '- do: let out',
        '  seam: front cap',
        '  at: { line: cap line }',
        '  by: 6',
        '  side: right',
        '- do: underarm reach',
        '  by: 8',
      ),
      'ferry-pilot.yaml',
    )
    if (!made.ok) throw new Error(made.problems[0]?.actual)
    const text = slipText(made.value.report.slip, { performer: 'Ferry Pilot', units: 'mm' })
    expect(text).toMatch(/Where {3}at the cap line, to nothing at the next notches/)
    expect(text.replace(/\n +/g, ' ')).toContain(
      'sleeve right, front cap: outward by up to 6 mm, from the front notch to the shoulder notch',
    )
    expect(text).toMatch(/Sleeve {2}left, cap height/)
    expect(text).toMatch(/Sleeve {2}right, cap height/)
    const [move] = made.value.report.slip[0]?.moves ?? []
    expect(move).toMatchObject({ piece: 'sleeve right', seam: 'front cap', from: { landmark: 'front notch' } })
    expect(move?.amount).toBeCloseTo(6, 6)
  })

  it('says a run from its named end, and no distance that a tape cannot show', () => {
    const made = makePattern(file('- do: underarm reach', '  by: 8'), 'ferry-pilot.yaml')
    if (!made.ok) throw new Error(made.problems[0]?.actual)
    const [entry] = made.value.report.slip
    const [move] = entry?.moves ?? []
    if (!entry || !move) throw new Error('no move')
    const said = (from: SeamPlace, to: SeamPlace) =>
      slipText([{ ...entry, moves: [{ ...move, from, to }] }], { performer: 'Ferry Pilot', units: 'in' }).replace(
        /\n +/g,
        ' ',
      )
    const up = (distance: number): SeamPlace => ({ from: 'front notch', toward: 'underarm', distance })
    expect(said(up(36.5), { landmark: 'underarm' })).toContain(
      ', between the underarm and a point 1 7/16 in from the front notch toward it ',
    )
    expect(said({ landmark: 'front notch' }, up(36.5))).toContain(
      ', between the front notch and a point 1 7/16 in from it toward the underarm ',
    )
    expect(said({ landmark: 'shoulder notch' }, up(0.7))).toContain(', from the shoulder notch to the front notch ')
    expect(sayPlace(up(0.7), (mm) => formatLength(mm, 'in'))).toBe('front notch')
    expect(said(up(0.7), { landmark: 'underarm' })).not.toMatch(/declared|\(-| 0 in from/)
    expect(said(up(0.7), { landmark: 'underarm' })).toContain(
      'underarm seam: ease 0 in as before (may be −0.5 mm to 0.5 mm)',
    )
    expect(wordCapHeight('raise', { by: 10 }, (mm) => `${mm} mm`).where).toContain(
      'to nothing at the front notch and the back notch; the underarm and the biceps width stay',
    )
  })

  it('points allowance findings at the amount', () => {
    const made = makePattern(file('- do: let out', '  seam: wrist', '  by: 30'), 'ferry-pilot.yaml')
    if (!made.ok) throw new Error(made.problems[0]?.actual)
    const finding = made.value.report.findings.find((f) => f.code === 'allowance-exceeded')
    expect(finding?.where).toMatchObject({ line: 10, column: 13, field: 'fittings.1.corrections.1.by' })
  })
})
