import { describe, expect, it } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import { correctionNamed } from '../../src/fitting/corrections.ts'
import { innerPlaceReader } from '../../src/fitting/inner-place.ts'
import { replay } from '../../src/fitting/replay.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { DARTED } from './bodice-tape.ts'
import { cubics, type XY } from './measure.ts'
import { fitted, type Step } from './replayed.ts'

const read = makeReaders('mm')
const FRONT = 'bodice front'

function mark(pattern: Pattern, id: string, piece = FRONT): XY {
  const found = pieceOf(pattern, piece).landmarks.find((m) => m.id === id)
  if (!found || !('at' in found)) throw new Error(`no ${id}`)
  return found.at
}

const underarm = (pattern: Pattern) => cubics(pieceOf(pattern, FRONT), 'armscye')[0]?.p0 as XY
const waistEnd = (pattern: Pattern) => cubics(pieceOf(pattern, FRONT), 'side seam')[0]?.p0 as XY

describe('a point inside a piece by two marks', () => {
  it('lies on the straight line from one to the other, at a distance or a share', () => {
    const [bust, side] = [mark(DARTED, 'bust point'), underarm(DARTED)]
    const away = Math.hypot(side.x - bust.x, side.y - bust.y)
    const at = fitted(DARTED, ['move bust point', { to: { from: 'bust point', toward: 'underarm', distance: '1/2' } }])
    const now = mark(at.pattern, 'bust point')
    expect(Math.hypot(now.x - bust.x, now.y - bust.y)).toBeCloseTo(12.7, 9)
    expect(Math.hypot(now.x - side.x, now.y - side.y)).toBeCloseTo(away - 12.7, 9)
    const share = fitted(DARTED, ['move bust point', { to: { between: ['bust point', 'underarm'], share: '10 %' } }])
    const tenth = mark(share.pattern, 'bust point')
    expect(Math.hypot(tenth.x - bust.x, tenth.y - bust.y)).toBeCloseTo(away / 10, 9)
  })

  it('is meant on the mock-up as worn and goes with the cloth of earlier corrections', () => {
    const move: Step = ['move bust point', { to: { from: 'bust point', toward: 'underarm', distance: '1/2' } }]
    const cut: Step = [
      'lengthen',
      { part: 'bodice', at: { from: 'underarm', toward: 'waist', distance: '1/8' }, by: '1' },
    ]
    const [alone, after] = [fitted(DARTED, move), fitted(DARTED, cut, move)]
    const [a, b] = [mark(alone.pattern, 'bust point'), mark(after.pattern, 'bust point')]
    expect(b.x).toBeCloseTo(a.x, 9)
    // The bust point lies below the cut, so that all of it went down by an inch.
    expect(a.y - b.y).toBeCloseTo(25.4, 9)
  })

  it('is found on each side of a piece that was opened, and moves on the one side alone', () => {
    const right = fitted(DARTED, [
      'move bust point',
      { to: { from: 'bust point', toward: 'underarm', distance: '1/2' } },
      'right',
    ]).pattern
    const both = fitted(DARTED, [
      'move bust point',
      { to: { from: 'bust point', toward: 'underarm', distance: '1/2' } },
    ])
    const [l, r] = [mark(right, 'bust point left'), mark(right, 'bust point right')]
    const one = mark(both.pattern, 'bust point')
    expect(Math.abs(r.x)).toBeCloseTo(Math.abs(one.x), 9)
    expect(r.y).toBeCloseTo(one.y, 9)
    expect(Math.abs(l.x)).toBeCloseTo(Math.abs(mark(DARTED, 'bust point').x), 9)
    expect(Math.sign(l.x)).toBe(-Math.sign(r.x))
  })

  it('that an earlier correction folded away is a problem that names the correction', () => {
    const by = 15
    // Straight across, halfway up the side seam below its dart, as far as nothing else is said.
    const low = cubics(pieceOf(DARTED, FRONT), 'side seam')
    const up = pieceOf(DARTED, FRONT)
      .seams.find((s) => s.id === 'side seam')
      ?.parts[0]?.at(-1)?.p3 as XY
    const height = (low[0]?.p0.y as number) + (up.y - (low[0]?.p0.y as number)) / 2 - by / 2
    const [top, foot] = [mark(DARTED, 'bust point'), waistEnd(DARTED)]
    const share = (top.y - height) / (top.y - foot.y)
    const settings = [
      ['shorten', { part: 'bodice', by: `${by}` }],
      ['move bust point', { to: { between: ['bust point', 'waist'], share: `${(share * 100).toFixed(3)} %` } }],
    ] as const
    const corrections = settings.map(([name, written]) => ({
      do: name,
      side: 'both' as const,
      settings: correctionNamed(name)?.settings(read).parse(written),
      where: {},
    }))
    const result = replay(DARTED, [{ label: 'first fitting', mockUp: 1, corrections, where: {} }], {
      standard: { default: 25.4 },
      byMockUp: {},
    })
    const [problem] = result.ok ? [] : result.problems
    expect(problem).toMatchObject({ code: 'place-gone', where: { fitting: 'first fitting', correction: 2 } })
    expect(problem?.actual).toMatch(/folded away.*\(shorten, correction 1\)/)
  })

  it('is refused as a line, with a name that is not there, and beside an amount', () => {
    expect(innerPlaceReader(read).safeParse({ line: 'bust line' }).success).toBe(false)
    expect(innerPlaceReader(read).safeParse({ landmark: 'bust point', 'side of cap': 'front' }).success).toBe(false)
    const problem = (written: Record<string, unknown>) => {
      try {
        fitted(DARTED, ['move bust point', written])
        return undefined
      } catch (error) {
        return String(error)
      }
    }
    expect(problem({ to: 'crown' })).toContain('unknown-place')
    expect(problem({ to: 'bust point', by: '1/4' })).toContain('places-contradict')
    expect(problem({ by: '1/4' })).toContain('places-contradict')
    expect(problem({ to: 'underarm' })).toContain('amount-too-large')
    expect(problem({ to: 'bust point' })).toBeUndefined()
  })
})
