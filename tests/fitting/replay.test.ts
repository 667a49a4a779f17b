import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import type { MockUpAllowances } from '../../src/drafting/allowances.ts'
import { correctionNamed } from '../../src/fitting/corrections.ts'
import { isGone } from '../../src/fitting/position-map.ts'
import type { CorrectionRecord, CorrectionSide, FittingRecord } from '../../src/fitting/record.ts'
import { type Replayed, type ReplayOptions, replay } from '../../src/fitting/replay.ts'
import { slipText } from '../../src/fitting/slip-text.ts'
import { pieceOf, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { cubics, lengthOf, outlineOf, seam, shiftAt } from './measure.ts'

const read = makeReaders('in')
const ALLOWANCES: MockUpAllowances = { standard: { default: 25.4, neckline: 12.7 }, byMockUp: {} }
const pattern = drafted()

function record(
  name: string,
  written: Record<string, unknown>,
  extra: Partial<CorrectionRecord> = {},
): CorrectionRecord {
  const settings = correctionNamed(name)?.settings(read).parse(written)
  return { do: name, side: 'both', settings, where: { file: 'lamplighter.yaml', line: 50 }, ...extra }
}

function fitting(corrections: readonly CorrectionRecord[], extra: Partial<FittingRecord> = {}): FittingRecord {
  return { label: 'first fitting', date: '2026-10-09', mockUp: 1, corrections, where: {}, ...extra }
}

function run(fittings: readonly FittingRecord[], options: ReplayOptions = {}, allowances = ALLOWANCES): Replayed {
  const result = replay(pattern, fittings, allowances, options)
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}

const CAP_LINE = [
  { line: 'cap line', 'side of cap': 'front' },
  { line: 'cap line', 'side of cap': 'back' },
]
const LET_OUT = record(
  'let out',
  { seam: 'cap', at: CAP_LINE, by: '3/8', 'taper to': ['shoulder notch', 'front notch', 'back notch'] },
  { seen: 'tight over the upper arm' },
)
const REACH = record('underarm reach', { by: '1/2', 'along cap': '1 1/2' }, { seen: 'cannot reach forward' })

describe('replay', () => {
  it('gives the draft first, then a version for each fitting', () => {
    const second = fitting([record('take in', { seam: 'wrist', by: '1/8' })], { label: 'second fitting' })
    const all = run([fitting([LET_OUT, REACH]), second])
    expect(all.versions.map((v) => v.label)).toEqual(['draft', 'first fitting', 'second fitting'])
    expect(all.versions[0]?.pattern).toBe(pattern)
    expect(all.pattern).toBe(all.versions[2]?.pattern)
    expect(run([fitting([LET_OUT, REACH]), second], { until: 'first fitting' }).pattern).toEqual(
      all.versions[1]?.pattern,
    )
    expect(run([fitting([LET_OUT]), second], { until: 'none' }).pattern).toBe(pattern)
    const wrong = replay(pattern, [fitting([])], ALLOWANCES, { until: 'first fiting' })
    expect(wrong.ok ? '' : wrong.problems[0]?.hint).toContain('first fitting')
  })

  it('without the last correction equals the pattern before it', () => {
    const corrections = [
      LET_OUT,
      REACH,
      record('let out', { seam: 'side seam', by: '1/4', 'taper to': 'underarm' }, { side: 'left' }),
    ]
    for (let n = 0; n < corrections.length; n++) {
      const shorter = run([fitting(corrections.slice(0, n))])
      const longer = run([
        fitting([
          ...corrections.slice(0, n),
          { ...(corrections[n] as CorrectionRecord), voided: 'pinned on the wrong side' },
        ]),
      ])
      expect(longer.pattern).toEqual(shorter.pattern)
    }
  })

  it('is the same twice, and after a round trip of the records through JSON', () => {
    const fittings = [fitting([LET_OUT, REACH, { ...LET_OUT, side: 'left' as CorrectionSide }])]
    const first = run(fittings)
    const again = run(JSON.parse(JSON.stringify(fittings)))
    expect(JSON.stringify(again.pattern)).toBe(JSON.stringify(first.pattern))
    expect(JSON.stringify(again.slip)).toBe(JSON.stringify(first.slip))
    expect(JSON.stringify(again.findings)).toBe(JSON.stringify(first.findings))
  })

  it('refers all places of a fitting to the mock-up as it was worn', () => {
    // The reach moves the underarm out; a place measured from the underarm is still the one that was pinned.
    const place = { from: 'underarm', toward: 'shoulder notch', distance: '3 1/2', 'side of cap': 'front' }
    const out = record('let out', {
      seam: 'cap',
      at: place,
      by: '1/4',
      'taper to': [
        { ...place, distance: '2' },
        { ...place, distance: '5' },
      ],
    })
    const together = run([fitting([REACH, out])]).pattern
    const reached = run([fitting([REACH])])
    const [moved] = reached.versions[1]?.since.seam({ piece: 'sleeve', seam: 'front cap', along: 3.5 * 25.4 }) ?? []
    if (!moved || isGone(moved)) throw new Error('gone')
    const before = cubics(pieceOf(reached.pattern, 'sleeve'), 'front cap')
    expect(
      Math.abs(shiftAt(before, moved.along, cubics(pieceOf(together, 'sleeve'), 'front cap')) - 6.35),
    ).toBeLessThan(0.02)
    // In a second fitting the same words are measured on the new line, a little elsewhere.
    const apart = run([fitting([REACH]), fitting([out], { label: 'second fitting' })]).pattern
    expect(Math.abs(shiftAt(before, 3.5 * 25.4, cubics(pieceOf(apart, 'sleeve'), 'front cap')) - 6.35)).toBeLessThan(
      0.02,
    )
    expect(Math.abs(moved.along - 3.5 * 25.4)).toBeGreaterThan(0.05)
  })

  it('commutes where spans do not overlap, within 0.01 mm', () => {
    const ab = pieceOf(run([fitting([LET_OUT, REACH])]).pattern, 'sleeve')
    const ba = pieceOf(run([fitting([REACH, LET_OUT])]).pattern, 'sleeve')
    for (const s of ab.seams) {
      const other = seamOf(ba, s.id)
      for (let i = 0; i <= 12; i++) {
        const along = (lengthOf(s) * i) / 12
        if (s.parts.length > 1) continue
        expect(Math.abs(shiftAt(s.parts[0] as never, along, other.parts[0] as never))).toBeLessThan(0.01)
      }
      expect(lengthOf(s)).toBeCloseTo(lengthOf(other), 2)
    }
  })

  it('splits at the first one-sided correction, and later ones for both sides go to each', () => {
    const done = run([fitting([{ ...LET_OUT, side: 'right' }, REACH])])
    const [left, right] = [pieceOf(done.pattern, 'sleeve left'), pieceOf(done.pattern, 'sleeve right')]
    expect(lengthOf(seam(right, 'front cap'))).toBeGreaterThan(lengthOf(seam(left, 'front cap')) + 2)
    for (const piece of [left, right]) {
      expect(
        lengthOf(seam(piece, 'front underarm seam')) -
          lengthOf(seam(pieceOf(pattern, 'sleeve'), 'front underarm seam')),
      ).toBeCloseTo(12.7, 1)
      expect(outlineOf(piece).gaps).toBe(0)
    }
    expect(done.pattern.joins.map((j) => j.id)).toContain('front cap left')
    expect(done.allowances.filter((r) => r.piece === 'sleeve left' && r.used > 0).map((r) => r.used)).toEqual([
      12.7, 12.7,
    ])
    expect(done.allowances.find((r) => r.piece === 'sleeve right' && r.seam === 'front cap')?.used).toBeCloseTo(
      22.225,
      9,
    )
  })

  it('adds up let-outs over the fittings of one mock-up and starts again with the next', () => {
    const out = record('let out', { seam: 'cap', at: CAP_LINE, by: '1/2' })
    const same = run([
      fitting([out]),
      fitting([out], { label: 'second fitting' }),
      fitting([out], { label: 'third fitting' }),
    ])
    expect(same.findings.map((f) => [f.code, f.where.fitting, f.where.correction])).toEqual([
      ['allowance-low', 'second fitting', 1],
      ['allowance-low', 'second fitting', 1],
      ['allowance-exceeded', 'third fitting', 1],
      ['allowance-exceeded', 'third fitting', 1],
    ])
    expect(same.findings[2]?.severity).toBe('error')
    const anew = run([fitting([out]), fitting([out], { label: 'second fitting', mockUp: 2 })])
    expect(anew.findings).toEqual([])
    expect(anew.allowances.find((r) => r.seam === 'front cap')?.used).toBeCloseTo(12.7, 9)
  })

  it('says what it did to the partner seams, front and back apart', () => {
    const [first, second] = run([fitting([LET_OUT, REACH])]).slip
    expect(first?.joins.map((j) => j.join)).toEqual(['front cap', 'back cap'])
    const front = first?.joins[0]
    const grown =
      lengthOf(seam(pieceOf(run([fitting([LET_OUT])]).pattern, 'sleeve'), 'front cap')) -
      lengthOf(seam(pieceOf(pattern, 'sleeve'), 'front cap'))
    expect((front?.after.ease ?? 0) - (front?.before.ease ?? 0)).toBeCloseTo(grown, 4)
    expect(front?.after.b).toBe(front?.before.b)
    expect(second?.joins.map((j) => j.join)).toEqual(['front cap', 'back cap', 'underarm seam'])
    expect(second?.joins[2]?.after.ease).toBeCloseTo(second?.joins[2]?.before.ease as number, 6)
    expect(second?.figures.map((f) => f.figure)).toEqual(['cap height', 'biceps width', 'neutral lift'])
    const lift = second?.figures[2]
    expect(lift?.after as number).toBeLessThan(lift?.before as number)
    const theta =
      (Math.atan((Math.PI * (second?.figures[0]?.after ?? 0)) / (second?.figures[1]?.after ?? 1)) * 180) / Math.PI
    expect(lift?.after).toBeCloseTo(theta, 9)
    // An armscye let out makes the cap too short: it says so, and what would restore it; the cap is left alone.
    const low = run([
      fitting([
        record('let out', { seam: 'armscye', at: 'underarm', by: '1', 'taper to': ['front notch', 'back notch'] }),
      ]),
    ])
    expect(seamOf(pieceOf(low.pattern, 'sleeve'), 'front cap')).toBe(seamOf(pieceOf(pattern, 'sleeve'), 'front cap'))
    expect(low.slip[0]?.joins.map((j) => j.join)).toContain('front cap')
  })

  it('reports every problem with its fitting and number, and the file', () => {
    const bad = record('let out', { seam: 'cap', at: 'bust point', by: '1/4' })
    const result = replay(pattern, [fitting([bad, LET_OUT, bad])], ALLOWANCES)
    expect(result.ok).toBe(false)
    const where = result.ok ? [] : result.problems.map((p) => p.where)
    expect(where).toMatchObject([
      { file: 'lamplighter.yaml', line: 50, fitting: 'first fitting', correction: 1, seam: 'cap' },
      { correction: 3 },
    ])
  })

  it('keeps everything in order at random amounts and sides', () => {
    const sides = fc.constantFrom<CorrectionSide>('left', 'right', 'both')
    const amounts = fc.integer({ min: 1, max: 6 })
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom('cap', 'reach', 'seam', 'in'), amounts, sides), {
          minLength: 1,
          maxLength: 4,
        }),
        (list) => {
          const corrections = list.map(([kind, sixteenths, side]) => {
            const by = `${sixteenths}/16`
            if (kind === 'reach') return record('underarm reach', { by }, { side })
            if (kind === 'seam')
              return record('let out', { seam: 'underarm seam', at: { line: 'elbow line' }, by }, { side })
            return record(kind === 'cap' ? 'let out' : 'take in', { seam: 'cap', at: CAP_LINE, by }, { side })
          })
          const result = replay(pattern, [fitting(corrections)], ALLOWANCES)
          if (!result.ok) {
            // A place may be gone or a taper too short; then it must be said, never thrown.
            for (const problem of result.problems) expect(problem.hint).not.toBe('')
            return
          }
          for (const piece of result.value.pattern.pieces) {
            const { gaps, area } = outlineOf(piece)
            expect(gaps).toBeLessThan(1e-9)
            expect(area).toBeGreaterThan(0)
            for (const notch of piece.notches) {
              expect(notch.along).toBeGreaterThanOrEqual(0)
              expect(notch.along).toBeLessThan(seamLength(seamOf(piece, notch.seam)) + 1e-6)
            }
          }
          if (list.every(([, , side]) => side === 'both'))
            expect(pieceOf(result.value.pattern, 'sleeve').side).toBe('pair')
        },
      ),
      { numRuns: 25 },
    )
  })
})

describe('the alteration slip', () => {
  const replayed = run(
    [fitting([LET_OUT, REACH, { ...LET_OUT, voided: 'pinned on the wrong side' }], { provisional: 'dress form' })],
    { units: 'in' },
  )
  const text = slipText(replayed.slip, { performer: 'Lamplighter', production: 'The Tin Orchard', units: 'in' })

  it('reads as a stitcher reads: seen, what, where, how much, which side, what else, what is left', () => {
    for (const words of [
      'The Tin Orchard, Lamplighter',
      'first fitting, 2026-10-09, mock-up 1',
      'dress form',
      '1. Both sides: let out the cap by 3/8 in',
      'tight over the upper arm',
      'cap line, front',
      'shoulder notch',
      '2. Both sides: raise the underarm of the sleeve by 1/2 in',
      '5/8 in of 1 in',
      'hangs at',
      'voided: pinned on the wrong side',
    ]) {
      expect(text).toContain(words)
    }
    expect(text.endsWith('\n')).toBe(true)
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(78)
    expect(text).not.toMatch(/undefined|NaN|\d\.\d{3}/)
  })

  it('is plain data for report.json', () => {
    expect(JSON.parse(JSON.stringify(replayed.slip))).toEqual(replayed.slip)
    expect(replayed.slip.map((e) => e.voided)).toEqual([undefined, undefined, 'pinned on the wrong side'])
    expect(replayed.slip[0]?.allowances.map((a) => a.seam)).toEqual(['front cap', 'back cap'])
  })

  it('says so when there is nothing', () => {
    expect(slipText([], { performer: 'Ferry Pilot', units: 'cm' })).toContain('No corrections.')
  })
})
