import { describe, expect, it } from 'vitest'
import { bends } from '../../src/checks/cap-inflections.ts'
import { runChecks } from '../../src/checks/checks.ts'
import { walkJoin } from '../../src/checks/walk-join.ts'
import { isGone } from '../../src/fitting/position-map.ts'
import type { CorrectionSide } from '../../src/fitting/record.ts'
import { resolveCap } from '../../src/fitting/resolve-cap.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, seamOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { cubics, largestCorner, lengthOf, outlineOf, seam, shiftAt } from './measure.ts'
import { corrected, done, ease, type Step } from './replayed.ts'

const target = (pattern: Pattern, id: string) => pattern.joins.find((j) => j.id === id)?.ease.target as number

const CHANGES: readonly (readonly [string, readonly Step[]])[] = [
  [
    'a lower underarm',
    [['let out', { seam: 'armscye', at: 'underarm', by: '1/2', 'taper to': ['front notch', 'back notch'] }]],
  ],
  ['a cap let out', [['let out', { seam: 'cap', at: [{ line: 'cap line' }], by: '3/8' }]]],
  ['an armscye let out', [['let out', { seam: 'back armscye', at: 'back notch', by: '1/8' }]]],
  ['an armscye taken in', [['take in', { seam: 'front armscye', at: 'front notch', by: '1/4' }]]],
  ['a reach', [['underarm reach', { by: '1/2' }]]],
  [
    'let out, reach and armscye',
    [
      ['let out', { seam: 'cap', at: [{ line: 'cap line', 'side of cap': 'front' }], by: '1/4' }],
      ['underarm reach', { by: '3/8', 'along cap': '2' }],
      ['take in', { seam: 'back armscye', at: 'back notch', by: '1/4' }],
    ],
  ],
]

describe.each(BODIES)('rematch cap on a bust of %d and an arm of %d', (bust, arm) => {
  const draft = drafted(bust, arm)

  it.each(CHANGES)('after %s gives front and back their ease again', (_, steps) => {
    const before = done(draft, ...steps).pattern
    const now = done(before, ['rematch cap', {}]).pattern
    const off = ['front cap', 'back cap'].map((id) => Math.abs(ease(before, id) - target(draft, id)))
    expect(Math.max(...off)).toBeGreaterThan(0.1)
    for (const id of ['front cap', 'back cap']) {
      expect(Math.abs(ease(now, id) - target(draft, id))).toBeLessThan(0.01)
    }
    const [old, sleeve] = [pieceOf(before, 'sleeve'), pieceOf(now, 'sleeve')]
    // The underarm seams are the same objects, the underarm parts the same numbers: biceps width and underarm stay.
    for (const id of ['front underarm seam', 'back underarm seam', 'wrist']) {
      expect(seamOf(sleeve, id)).toBe(seamOf(old, id))
    }
    const fore = cubics(sleeve, 'front cap')[0]
    const aft = cubics(sleeve, 'back cap').at(-1)
    expect(fore).toBe(cubics(old, 'front cap')[0])
    expect(aft).toBe(cubics(old, 'back cap').at(-1))
    for (const along of [5, 20, 36]) {
      expect(Math.abs(shiftAt(cubics(old, 'front cap'), along, cubics(sleeve, 'front cap')))).toBeLessThan(1e-5)
      const back = lengthOf(seam(old, 'back cap'))
      expect(Math.abs(shiftAt(cubics(old, 'back cap'), back - along, cubics(sleeve, 'back cap')))).toBeLessThan(1e-5)
    }
    for (const id of ['front cap', 'back cap']) {
      expect(bends(cubics(sleeve, id)), id).toHaveLength(2)
      expect(largestCorner(cubics(sleeve, id))).toBeLessThan(largestCorner(cubics(old, id)) + 1e-6)
    }
    expect(outlineOf(sleeve).gaps).toBeLessThan(1e-9)
    // Notches are walked again: no ease below them, the shoulder notch at the crown.
    for (const join of now.joins.filter((j) => /cap/.test(j.id))) {
      const spans = walkJoin(now, join)?.spans ?? []
      expect(spans).toHaveLength(2)
      expect(Math.abs(spans[0]?.ease ?? 9)).toBeLessThan(1e-3)
    }
    const shoulder = sleeve.notches.find((n) => n.id === 'shoulder notch')
    expect(shoulder?.along).toBeCloseTo(lengthOf(seam(sleeve, 'front cap')), 4)
    // The grain stays, and so do all other pieces.
    expect(sleeve.lines.find((l) => l.id === 'grain')).toBe(old.lines.find((l) => l.id === 'grain'))
    for (const piece of before.pieces) if (piece !== old) expect(now.pieces).toContain(piece)
    const codes = runChecks({ pattern: now, measures: [], units: 'mm' }).map((f) => f.code)
    for (const code of ['cap-not-fair', 'cap-too-short', 'cap-too-full', 'notches-do-not-meet', 'self-crossing']) {
      expect(codes).not.toContain(code)
    }
  })

  it('comes to an ease that is asked for, and declares it', () => {
    const now = done(draft, ['rematch cap', { ease: '4 %' }]).pattern
    const armscye = ['bodice front', 'bodice back'].reduce(
      (sum, id) => sum + lengthOf(seam(pieceOf(draft, id), 'armscye')),
      0,
    )
    expect(Math.abs(ease(now, 'front cap') - 0.04 * armscye * 0.45)).toBeLessThan(0.01)
    expect(Math.abs(ease(now, 'back cap') - 0.04 * armscye * 0.55)).toBeLessThan(0.01)
    expect(target(now, 'back cap')).toBeCloseTo(0.04 * armscye * 0.55, 4)
    const length = done(draft, ['rematch cap', { ease: '1' }]).pattern
    expect(Math.abs(ease(length, 'front cap') + ease(length, 'back cap') - 25.4)).toBeLessThan(0.01)
  })

  it('leaves a cap that matches alone', () => {
    expect(done(draft, ['rematch cap', {}]).pattern).toBe(draft)
    const steps = CHANGES[0]?.[1] ?? []
    const once = done(draft, ...steps, ['rematch cap', {}]).pattern
    expect(done(once, ['rematch cap', {}]).pattern).toBe(once)
  })

  it('keeps what a fitting shaped: the cap line stays let out by nearly as much', () => {
    const at = [{ line: 'cap line', 'side of cap': 'front' }]
    const plain = done(draft, ['rematch cap', { ease: '5 %' }]).pattern
    const shaped = done(draft, ['let out', { seam: 'cap', at, by: '3/8' }], ['rematch cap', { ease: '5 %' }]).pattern
    const front = (pattern: Pattern) => cubics(pieceOf(pattern, 'sleeve'), 'front cap')
    const middle = lengthOf(seam(pieceOf(plain, 'sleeve'), 'front cap')) * 0.6
    expect(shiftAt(front(plain), middle, front(shaped))).toBeGreaterThan(9.525 * 0.5)
  })
})

describe('rematch cap on sides that differ', () => {
  const draft = drafted()
  const lowered: Step = [
    'let out',
    { seam: 'armscye', at: 'underarm', by: '1/2', 'taper to': ['front notch', 'back notch'] },
    'left',
  ]

  it('parts a pair of sleeves where the armscyes ask for different caps, and matches each', () => {
    const now = done(draft, lowered, ['rematch cap', {}]).pattern
    for (const side of ['left', 'right']) {
      for (const half of ['front cap', 'back cap']) {
        expect(Math.abs(ease(now, `${half} ${side}`) - target(draft, half))).toBeLessThan(0.01)
      }
    }
    const [left, right] = [pieceOf(now, 'sleeve left'), pieceOf(now, 'sleeve right')]
    expect(right.seams).toEqual(pieceOf(draft, 'sleeve').seams)
    expect(lengthOf(seam(left, 'back cap'))).not.toBeCloseTo(lengthOf(seam(right, 'back cap')), 1)
    expect(bends(cubics(left, 'front cap'))).toHaveLength(2)
  })

  it('gives mirrored results on mirrored sides', () => {
    const make = (side: CorrectionSide) =>
      pieceOf(done(draft, [lowered[0], lowered[1], side], ['rematch cap', {}, side]).pattern, `sleeve ${side}`)
    const [left, right] = [make('left'), make('right')]
    for (const s of right.seams) expect(lengthOf(s)).toBeCloseTo(lengthOf(seam(left, s.id)), 5)
    const [start, end] = [cubics(left, 'front cap')[0]?.p0, cubics(right, 'front cap').at(-1)?.p3]
    expect(start?.y).toBeCloseTo(end?.y as number, 5)
    expect(start?.x).toBeCloseTo(-(end?.x as number), 5)
  })

  it('rematches one side only where one is named', () => {
    const now = done(draft, [lowered[0], lowered[1]], ['rematch cap', {}, 'right']).pattern
    expect(Math.abs(ease(now, 'front cap right') - target(draft, 'front cap'))).toBeLessThan(0.01)
    expect(lengthOf(seam(pieceOf(now, 'sleeve left'), 'front cap'))).toBeCloseTo(
      lengthOf(seam(pieceOf(draft, 'sleeve'), 'front cap')),
      6,
    )
  })
})

describe('what rematch cap says', () => {
  const draft = drafted()

  it('refuses what no cap can do, with the numbers', () => {
    const low = resolveCap(draft, { piece: 'sleeve', front: -55, back: -55 })
    expect(low.ok ? '' : low.problems[0]?.code).toBe('cap-too-low')
    expect(low.ok ? '' : low.problems[0]?.actual).toMatch(/a cap \d+ mm high on an armscye of \d+ mm/)
    const none = resolveCap(draft, { piece: 'sleeve', front: -150, back: -150 })
    expect(none.ok ? '' : none.problems[0]?.code).toBe('cap-cannot-match')
    expect(none.ok ? '' : none.problems[0]?.actual).toMatch(/the front cap of [\d.]+ mm shortened by [\d.]+ mm/)
    const alone = corrected({ ...draft, joins: [] }, ['rematch cap', {}])
    expect(alone.ok ? '' : alone.problems[0]?.code).toBe('cap-without-armscye')
    const bare = corrected({ pieces: [], joins: [] }, ['rematch cap', {}])
    expect(bare.ok ? '' : bare.problems[0]?.code).toBe('no-such-seam')
  })

  it('carries places on: along each half they keep their order, the underarm its place', () => {
    const lowered: Step = [
      'let out',
      { seam: 'armscye', at: 'underarm', by: '1/2', 'taper to': ['front notch', 'back notch'] },
    ]
    const before = done(draft, lowered).pattern
    const { map } = done(before, ['rematch cap', {}])
    for (const half of ['front cap', 'back cap']) {
      const length = lengthOf(seam(pieceOf(before, 'sleeve'), half))
      let last = -1
      for (let i = 0; i <= 40; i++) {
        const [moved] = map.seam({ piece: 'sleeve', seam: half, along: (length * i) / 40 })
        if (!moved || isGone(moved)) throw new Error('gone')
        expect(moved.along).toBeGreaterThan(last)
        last = moved.along
      }
    }
    expect(map.seam({ piece: 'sleeve', seam: 'front cap', along: 20 })).toEqual([
      { piece: 'sleeve', seam: 'front cap', along: 20 },
    ])
  })
})
