import { describe, expect, it } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import type { Result } from '../../src/base/result.ts'
import { bends } from '../../src/checks/cap-inflections.ts'
import { CORRECTIONS, correctionNamed, correctionReaders, readersOf } from '../../src/fitting/corrections.ts'
import { type OperationResult, runOperations } from '../../src/fitting/operation.ts'
import { IDENTITY } from '../../src/fitting/position-map.ts'
import type { CorrectionSide } from '../../src/fitting/record.ts'
import { mirrorPathX } from '../../src/geometry/transform.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, seamOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { fixturePattern } from './fixture.ts'
import { cubics, farthest, lengthOf, outlineOf, seam, shiftAt } from './measure.ts'

const read = makeReaders('in')

function attempt(
  pattern: Pattern,
  name: string,
  written: Record<string, unknown>,
  side: CorrectionSide = 'both',
): Result<OperationResult> {
  const correction = correctionNamed(name)
  if (!correction) throw new Error(`no ${name}`)
  const operations = correction.compile({ worn: pattern, side }, correction.settings(read).parse(written))
  return operations.ok ? runOperations(pattern, IDENTITY, operations.value) : operations
}

function done(...args: Parameters<typeof attempt>): OperationResult {
  const result = attempt(...args)
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}

function codeOf(result: Result<unknown>): string | undefined {
  return result.ok ? undefined : result.problems[0]?.code
}

const DEMO = {
  seam: 'cap',
  at: [
    { line: 'cap line', 'side of cap': 'front' },
    { line: 'cap line', 'side of cap': 'back' },
  ],
  by: '3/8',
  'taper to': ['shoulder notch', 'front notch', 'back notch'],
}

/** Distance along the front cap at which the cap line meets it, by bisection on the drawn curve. */
function capLineAlong(pattern: Pattern): number {
  const sleeve = pieceOf(pattern, 'sleeve')
  const level = sleeve.lines.find((l) => l.id === 'cap line')?.path[0]?.p0.y as number
  const path = cubics(sleeve, 'front cap')
  let [low, high] = [0, lengthOf(seam(sleeve, 'front cap'))]
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2
    const y = shiftPoint(path, middle)
    if (y < level) low = middle
    else high = middle
  }
  return low
}

function shiftPoint(path: ReturnType<typeof cubics>, along: number): number {
  let rest = along
  for (const c of path) {
    const length = lengthOf({ id: '', allowance: 0, parts: [[c]] })
    if (rest > length) {
      rest -= length
      continue
    }
    let before = c.p0
    for (let i = 1; i <= 4000; i++) {
      const t = i / 4000
      const u = 1 - t
      const p = {
        x: u ** 3 * c.p0.x + 3 * u * u * t * c.p1.x + 3 * u * t * t * c.p2.x + t ** 3 * c.p3.x,
        y: u ** 3 * c.p0.y + 3 * u * u * t * c.p1.y + 3 * u * t * t * c.p2.y + t ** 3 * c.p3.y,
      }
      rest -= Math.hypot(p.x - before.x, p.y - before.y)
      if (rest <= 0) return p.y
      before = p
    }
  }
  return path.at(-1)?.p3.y as number
}

describe('the table of corrections', () => {
  it('names each once, with what it does, what it answers and its defaults', () => {
    expect(new Set(CORRECTIONS.map((c) => c.name)).size).toBe(CORRECTIONS.length)
    expect(correctionReaders.names).toEqual(CORRECTIONS.map((correction) => correction.name))
    for (const correction of CORRECTIONS) {
      expect(correction.does.length).toBeGreaterThan(20)
      expect(correction.answers.length).toBeGreaterThan(0)
      for (const fallback of correction.defaults) expect(fallback.source).not.toBe('')
      expect(correctionReaders.settingsOf(correction.name)).toBe(correction.settings)
    }
    expect(correctionReaders.settingsOf('let it out')).toBeUndefined()
    expect(readersOf(CORRECTIONS.slice(0, 1)).names).toEqual(['let out'])
    expect(readersOf([]).settingsOf('let out')).toBeUndefined()
  })

  it('reads settings that survive JSON', () => {
    const settings = correctionNamed('let out')?.settings(read).parse(DEMO)
    expect(JSON.parse(JSON.stringify(settings))).toEqual(settings)
    expect(settings).toMatchObject({ by: 9.525, seam: 'cap' })
    expect(
      correctionNamed('let out')
        ?.settings(read)
        .safeParse({ ...DEMO, amount: 3 }).success,
    ).toBe(false)
    expect(correctionNamed('underarm reach')?.settings(read).parse({ by: '1/2' })).toEqual({
      by: 12.7,
      'along cap': 38.1,
    })
  })
})

describe.each([
  ['the fixture', fixturePattern()],
  ['a draft', drafted()],
] as [string, Pattern][])('let out and take in on %s', (_, pattern) => {
  const sleeve = pieceOf(pattern, 'sleeve')

  it('puts the cap 3/8 in outside at the cap line, and nothing beyond the notches', () => {
    const now = pieceOf(done(pattern, 'let out', DEMO).pattern, 'sleeve')
    const along = capLineAlong(pattern)
    expect(Math.abs(shiftAt(cubics(sleeve, 'front cap'), along, cubics(now, 'front cap')) - 9.525)).toBeLessThan(0.05)
    expect(shiftAt(cubics(sleeve, 'front cap'), 30, cubics(now, 'front cap'))).toBeCloseTo(0, 5)
    expect(cubics(now, 'front cap')[0]?.p0).toEqual(cubics(sleeve, 'front cap')[0]?.p0)
    expect(now.seams.filter((s, i) => s === sleeve.seams[i]).map((s) => s.id)).toEqual([
      'wrist',
      'front underarm seam',
      'back underarm seam',
    ])
    for (const id of ['front cap', 'back cap']) expect(bends(cubics(now, id))).toHaveLength(2)
  })

  it('takes in by the same amount inwards', () => {
    const now = pieceOf(done(pattern, 'take in', { ...DEMO, by: '1/4' }).pattern, 'sleeve')
    expect(
      Math.abs(shiftAt(cubics(sleeve, 'front cap'), capLineAlong(pattern), cubics(now, 'front cap')) + 6.35),
    ).toBeLessThan(0.05)
  })

  it('tapers to the next notches when nothing is said', () => {
    const { 'taper to': _, ...bare } = DEMO
    expect(done(pattern, 'let out', bare).pattern).toEqual(done(pattern, 'let out', DEMO).pattern)
    const one = done(pattern, 'let out', {
      seam: 'cap',
      at: { line: 'cap line', 'side of cap': 'front' },
      by: '3/8',
    }).pattern
    expect(seamOf(pieceOf(one, 'sleeve'), 'back cap')).toBe(seamOf(sleeve, 'back cap'))
  })

  it('lets out one half only when that is named', () => {
    const now = pieceOf(
      done(pattern, 'let out', { seam: 'back cap', at: { line: 'cap line' }, by: '1/4' }).pattern,
      'sleeve',
    )
    expect(seamOf(now, 'front cap')).toBe(seamOf(sleeve, 'front cap'))
    expect(lengthOf(seam(now, 'back cap'))).toBeGreaterThan(lengthOf(seam(sleeve, 'back cap')))
  })

  it('lets the crown out as one line, still level across it', () => {
    const now = pieceOf(done(pattern, 'let out', { seam: 'cap', at: 'shoulder notch', by: '1/4' }).pattern, 'sleeve')
    const crown = cubics(now, 'back cap')[0]?.p0
    expect(crown).toEqual(cubics(now, 'front cap').at(-1)?.p3)
    expect((crown?.y as number) - (cubics(sleeve, 'back cap')[0]?.p0.y as number)).toBeCloseTo(6.35, 4)
  })

  it('moves a whole straight seam evenly, and its neighbours follow', () => {
    const now = pieceOf(done(pattern, 'let out', { seam: 'back side seam', by: '1/2' }).pattern, 'bodice back')
    const old = pieceOf(pattern, 'bodice back')
    for (const along of [5, 60, 120]) {
      expect(Math.abs(shiftAt(cubics(old, 'side seam'), along, cubics(now, 'side seam')) - 12.7)).toBeLessThan(0.02)
    }
    expect(outlineOf(now).gaps).toBe(0)
    expect(lengthOf(seam(now, 'waist')) - lengthOf(seam(old, 'waist'))).toBeGreaterThan(12)
    expect(lengthOf(seam(now, 'armscye')) - lengthOf(seam(old, 'armscye'))).toBeGreaterThan(12)
  })

  it('takes a side seam in at the waist to nothing at the underarm', () => {
    const now = done(pattern, 'take in', { seam: 'side seam', by: '1/4', 'taper to': 'underarm' }).pattern
    for (const id of ['bodice front', 'bodice back']) {
      const [old, next] = [pieceOf(pattern, id), pieceOf(now, id)]
      expect(seamOf(next, 'armscye')).toBe(seamOf(old, 'armscye'))
      expect(Math.abs(shiftAt(cubics(old, 'side seam'), 0.5, cubics(next, 'side seam')) + 6.35)).toBeLessThan(0.05)
    }
  })

  it('splits the pair for one side, and leaves the other side as it was drawn', () => {
    const { pattern: now } = done(pattern, 'let out', DEMO, 'right')
    const both = pieceOf(done(pattern, 'let out', DEMO).pattern, 'sleeve')
    expect(pieceOf(now, 'sleeve right').seams).toEqual(both.seams)
    expect(lengthOf(seam(pieceOf(now, 'sleeve left'), 'front cap'))).toBeCloseTo(lengthOf(seam(sleeve, 'front cap')), 6)
    expect(now.pieces.map((p) => p.id)).toContain('bodice back')
  })

  it('gives mirrored results on mirrored sides', () => {
    const left = pieceOf(done(pattern, 'let out', DEMO, 'left').pattern, 'sleeve left')
    const right = pieceOf(done(pattern, 'let out', DEMO, 'right').pattern, 'sleeve right')
    for (const s of right.seams) {
      // Refits run the other way on the mirrored side: the joints lie elsewhere, the line is the same.
      const mirrored = mirrorPathX(seamOf(left, s.id).parts.flat())
      expect(farthest(s.parts.flat(), mirrored)).toBeLessThan(0.02)
      expect(lengthOf(s)).toBeCloseTo(lengthOf(seam(left, s.id)), 2)
    }
  })

  it('lets half a neckline out on one side, to nothing at the center, where the piece is opened', () => {
    const { pattern: now } = done(pattern, 'let out', { seam: 'front neckline', by: '1/4' }, 'left')
    const front = pieceOf(now, 'bodice front')
    expect(front.side).toBe('whole')
    expect(outlineOf(front).gaps).toBeLessThan(1e-9)
    expect(lengthOf(seam(front, 'neckline right'))).toBeCloseTo(
      lengthOf(seam(pieceOf(pattern, 'bodice front'), 'neckline')),
      5,
    )
    const left = cubics(front, 'neckline left')
    expect(Math.abs(shiftAt(cubics(pieceOf(pattern, 'bodice front'), 'neckline'), 0, left) - 6.35)).toBeLessThan(0.05)
    expect(left.at(-1)?.p3.x).toBeCloseTo(0, 9)
  })

  it('goes on from a place where an earlier correction ended, without slivers', () => {
    const first = done(pattern, 'let out', { seam: 'armscye', at: 'underarm', by: '1/16' }).pattern
    const second = done(first, 'let out', { seam: 'armscye', at: 'underarm', by: '1/16' }, 'left').pattern
    for (const piece of second.pieces) {
      for (const c of piece.seams.flatMap((s) => s.parts.flat()))
        expect(Math.hypot(c.p3.x - c.p0.x, c.p3.y - c.p0.y)).toBeGreaterThan(1e-3)
    }
  })

  it('says what cannot be', () => {
    expect(codeOf(attempt(pattern, 'let out', { ...DEMO, at: 'bust point' }))).toBe('unknown-place')
    expect(codeOf(attempt(pattern, 'let out', { ...DEMO, from: 'front notch' }))).toBe('places-contradict')
    expect(
      codeOf(attempt(pattern, 'let out', { seam: 'back side seam', by: '1/2', 'taper to': ['underarm', 'waist'] })),
    ).toBe('tapers-at-both-ends')
    expect(
      codeOf(
        attempt(pattern, 'let out', {
          seam: 'front cap',
          at: 'front notch',
          by: 3,
          'taper to': [{ from: 'front notch', toward: 'underarm', distance: 1 }],
        }),
      ),
    ).toBe('taper-too-short')
    expect(codeOf(attempt({ pieces: [], joins: [] }, 'let out', DEMO))).toBe('no-such-seam')
  })
})

describe('underarm reach', () => {
  it.each(BODIES)('on a bust of %d and an arm of %d raises the underarm by the amount, evenly', (bust, arm) => {
    const pattern = drafted(bust, arm)
    const sleeve = pieceOf(pattern, 'sleeve')
    for (const [by, mm] of [
      ['1/4', 6.35],
      ['1/2', 12.7],
    ] as const) {
      const now = pieceOf(done(pattern, 'underarm reach', { by, 'along cap': '1 1/2' }).pattern, 'sleeve')
      expect(outlineOf(now).gaps).toBe(0)
      expect(Math.abs(shiftAt(cubics(sleeve, 'front cap'), 0, cubics(now, 'front cap')) - mm)).toBeLessThan(0.05)
      const back = lengthOf(seam(sleeve, 'back cap'))
      expect(Math.abs(shiftAt(cubics(sleeve, 'back cap'), back, cubics(now, 'back cap')) - mm)).toBeLessThan(0.05)
      for (const away of [38.2, 60, 120]) {
        expect(Math.abs(shiftAt(cubics(sleeve, 'front cap'), away, cubics(now, 'front cap')))).toBeLessThan(1e-4)
        expect(Math.abs(shiftAt(cubics(sleeve, 'back cap'), back - away, cubics(now, 'back cap')))).toBeLessThan(1e-4)
      }
      const grown = (id: string) => lengthOf(seam(now, id)) - lengthOf(seam(sleeve, id))
      expect(Math.abs(grown('front underarm seam') - mm)).toBeLessThan(0.05)
      expect(Math.abs(grown('front underarm seam') - grown('back underarm seam'))).toBeLessThan(0.01)
      for (const id of ['front cap', 'back cap']) expect(bends(cubics(now, id)), id).toHaveLength(2)
    }
  })

  it('keeps each half of the cap within 1 mm, or says that it does not', () => {
    for (const [bust, arm] of BODIES) {
      const pattern = drafted(bust, arm)
      const result = done(pattern, 'underarm reach', { by: '1/2', 'along cap': '1 1/2' })
      const now = pieceOf(result.pattern, 'sleeve')
      const changes = ['front cap', 'back cap'].map(
        (id) => lengthOf(seam(now, id)) - lengthOf(seam(pieceOf(pattern, 'sleeve'), id)),
      )
      const said = result.effects.some((e) => e.kind === 'finding' && e.finding.code === 'reach-changes-cap')
      expect(said).toBe(changes.some((change) => Math.abs(change) > 1))
      for (const change of changes) expect(Math.abs(change)).toBeLessThan(2)
    }
  })

  it('runs smoothly across the underarm where the taper is long enough', () => {
    const pattern = fixturePattern()
    const gentle = done(pattern, 'underarm reach', { by: '1/8', 'along cap': '2' })
    expect(gentle.effects.filter((e) => e.kind === 'finding')).toEqual([])
    const [old, now] = [pieceOf(pattern, 'sleeve'), pieceOf(gentle.pattern, 'sleeve')].map((p) => {
      const c = cubics(p, 'front cap')[0]
      return Math.atan2((c?.p1.y as number) - (c?.p0.y as number), (c?.p1.x as number) - (c?.p0.x as number))
    })
    expect(Math.abs((old as number) - (now as number))).toBeLessThan((5 * Math.PI) / 180)
  })

  it('can be pinned near the underarm, and then goes over it into the other half', () => {
    const pattern = drafted()
    const sleeve = pieceOf(pattern, 'sleeve')
    const at = { from: 'underarm', toward: 'shoulder notch', distance: '1/2', 'side of cap': 'front' }
    const now = pieceOf(done(pattern, 'underarm reach', { by: '3/8', at, 'along cap': '1 1/2' }).pattern, 'sleeve')
    expect(Math.abs(shiftAt(cubics(sleeve, 'front cap'), 12.7, cubics(now, 'front cap')) - 9.525)).toBeLessThan(0.05)
    const grown = (id: string) => lengthOf(seam(now, id)) - lengthOf(seam(sleeve, id))
    expect(Math.abs(grown('front underarm seam') - grown('back underarm seam'))).toBeLessThan(0.01)
    expect(grown('front underarm seam')).toBeGreaterThan(5)
    expect(grown('front underarm seam')).toBeLessThan(9.525)
  })

  it('is the same on the left as on the right', () => {
    const pattern = drafted()
    const left = pieceOf(done(pattern, 'underarm reach', { by: '1/2' }, 'left').pattern, 'sleeve left')
    const right = pieceOf(done(pattern, 'underarm reach', { by: '1/2' }, 'right').pattern, 'sleeve right')
    for (const s of right.seams) expect(lengthOf(s)).toBeCloseTo(lengthOf(seam(left, s.id)), 2)
    expect(bends(cubics(left, 'front cap'))).toHaveLength(2)
  })

  it('refuses a taper longer than the cap and a place too far away', () => {
    const pattern = drafted()
    expect(codeOf(attempt(pattern, 'underarm reach', { by: '1/2', 'along cap': '12' }))).toBe('taper-off-seam')
    expect(codeOf(attempt(pattern, 'underarm reach', { by: '1/2', at: 'front notch' }))).toBe('place-too-far')
    expect(codeOf(attempt({ pieces: [], joins: [] }, 'underarm reach', { by: '1/2' }))).toBe('no-such-seam')
  })
})
