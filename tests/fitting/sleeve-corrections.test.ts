import { describe, expect, it } from 'vitest'
import { bends } from '../../src/checks/cap-inflections.ts'
import { runChecks } from '../../src/checks/checks.ts'
import { walkJoin } from '../../src/checks/walk-join.ts'
import { sleeveFigures } from '../../src/fitting/sleeve-figures.ts'
import { pieceOf, pointOnSeam, seamOf } from '../../src/pattern/seam.ts'
import { BODIES, drafted } from './bodies.ts'
import { cubics, largestCorner, lengthOf, outlineOf, seam, shiftAt } from './measure.ts'
import { codeOf, corrected, done, ease, sewn } from './replayed.ts'

describe.each(BODIES)('on a bust of %d and an arm of %d', (bust, arm) => {
  const draft = drafted(bust, arm)
  const sleeve = pieceOf(draft, 'sleeve')
  const notchFrom = (id: string) => {
    const notch = sleeve.notches.find((n) => n.id === id)
    const length = lengthOf(seam(sleeve, notch?.seam as string))
    return id === 'front notch' ? (notch?.along as number) : length - (notch?.along as number)
  }

  it.each(['1/4', '3/8'])('hollow scoops the front cap by %s halfway to the notch and keeps it fair', (by) => {
    const mm = by === '1/4' ? 6.35 : 9.525
    const result = done(draft, ['hollow', { seam: 'front cap', by }])
    const now = pieceOf(result.pattern, 'sleeve')
    const middle = notchFrom('front notch') / 2
    const [old, next] = [cubics(sleeve, 'front cap'), cubics(now, 'front cap')]
    expect(Math.abs(shiftAt(old, middle, next) + mm)).toBeLessThan(0.02)
    expect(next[0]?.p0).toEqual(old[0]?.p0)
    expect(next.at(-1)?.p3).toEqual(old.at(-1)?.p3)
    expect(bends(next)).toHaveLength(2)
    expect(largestCorner(next)).toBeLessThan(0.01)
    expect(seamOf(now, 'back cap')).toBe(seamOf(sleeve, 'back cap'))
    expect(seamOf(now, 'front underarm seam')).toBe(seamOf(sleeve, 'front underarm seam'))
    // The corner that it makes at the underarm is told, so that the check does not ask about it.
    const corners = result.effects.filter((e) => e.kind === 'corner made')
    expect(corners.length).toBeGreaterThan(0)
    const codes = runChecks({ pattern: result.pattern, measures: [], units: 'mm', corners }).map((f) => f.code)
    expect(codes).not.toContain('corner-across-join')
    expect(codes).not.toContain('cap-not-fair')
    expect(codes).not.toContain('self-crossing')
  })

  it('hollow takes both armscyes, or only the front one, in at the same place', () => {
    const now = done(draft, ['hollow', { seam: 'armscye', by: '1/4' }]).pattern
    for (const [id, notch] of [
      ['bodice front', 'front notch'],
      ['bodice back', 'back notch'],
    ] as const) {
      const along = pieceOf(draft, id).notches.find((n) => n.id === notch)?.along as number
      const [old, next] = [pieceOf(draft, id), pieceOf(now, id)].map((p) => cubics(p, 'armscye'))
      expect(Math.abs(shiftAt(old as never, along / 2, next as never) + 6.35)).toBeLessThan(0.02)
    }
    expect(pieceOf(now, 'sleeve')).toBe(sleeve)
    const front = done(draft, ['hollow', { seam: 'front armscye', by: '1/8' }]).pattern
    expect(pieceOf(front, 'bodice back')).toBe(pieceOf(draft, 'bodice back'))
  })

  it('raise cap and lower cap move the crown along the grain by the amount, and nothing below the notches', () => {
    for (const [name, sign] of [
      ['raise cap', 1],
      ['lower cap', -1],
    ] as const) {
      const now = pieceOf(done(draft, [name, { by: '3/8' }]).pattern, 'sleeve')
      const [was, is] = [sleeveFigures(sleeve), sleeveFigures(now)]
      expect((is?.capHeight ?? 0) - (was?.capHeight ?? 0)).toBeCloseTo(sign * 9.525, 6)
      expect(is?.bicepsWidth).toBe(was?.bicepsWidth)
      const [crown, old] = [now, sleeve].map((p) => cubics(p, 'back cap')[0]?.p0)
      expect(crown?.x).toBeCloseTo(old?.x as number, 9)
      expect(cubics(now, 'front cap').at(-1)?.p3).toEqual(crown)
      for (const id of ['front notch', 'back notch']) {
        const half = id === 'front notch' ? 'front cap' : 'back cap'
        const length = lengthOf(seam(sleeve, half))
        for (const away of [10, 40, notchFrom(id) - 0.5]) {
          const along = half === 'front cap' ? away : length - away
          expect(Math.abs(shiftAt(cubics(sleeve, half), along, cubics(now, half)))).toBeLessThan(1e-3)
        }
        expect(bends(cubics(now, half))).toHaveLength(2)
        expect(largestCorner(cubics(now, half))).toBeLessThan(largestCorner(cubics(sleeve, half)) + 1e-6)
      }
      expect(seamOf(now, 'wrist')).toBe(seamOf(sleeve, 'wrist'))
      expect(outlineOf(now).gaps).toBeLessThan(1e-9)
    }
  })

  it.each([
    ['forward', 12.7, 'back cap', 'front cap'],
    ['back', 12.7, 'front cap', 'back cap'],
  ] as const)('turn sleeve %s moves every match point alike and no line', (direction, d, under, over) => {
    const { pattern: now } = done(draft, ['turn sleeve', { direction, by: '1/2' }])
    const turned = pieceOf(now, 'sleeve')
    for (const s of turned.seams) expect(s).toBe(seamOf(sleeve, s.id))
    for (const id of ['front cap', 'back cap']) {
      expect(ease(now, id)).toBeCloseTo(ease(draft, id), 4)
      expect(sewn(now, id, 'b')).toBe(sewn(draft, id, 'b'))
      const [was, is] = [draft, now].map((p) => walkJoin(p, p.joins.find((j) => j.id === id) as never)?.spans ?? [])
      expect(is?.map((s) => s.to)).toEqual(was?.map((s) => s.to))
      for (const [i, span] of is?.entries() ?? []) expect(span.a).toBeCloseTo(was?.[i]?.a as number, 6)
    }
    // Distances along the sewn line, walked on the drawing: each mark lies d further toward the front, or the back.
    const [front, back] = ['front cap', 'back cap'].map((id) => lengthOf(seam(sleeve, id))) as [number, number]
    const way = direction === 'forward' ? -1 : 1
    const place = (p: typeof sleeve, id: string) => {
      const notch = p.notches.find((n) => n.id === id)
      return (notch?.along as number) + (notch?.seam === 'back cap' ? front : 0)
    }
    for (const id of ['front notch', 'back notch', 'shoulder notch']) {
      expect(place(turned, id) - place(sleeve, id), id).toBeCloseTo(way * d, 4)
    }
    const mark = turned.notches.find((n) => n.id === 'underarm')
    expect(mark).toMatchObject({ seam: under, marks: 1 })
    const corner = under === 'back cap' ? back : 0
    expect(Math.abs((mark?.along as number) - corner)).toBeCloseTo(d, 4)
    expect(turned.notches.find((n) => n.id === 'shoulder notch')?.seam).toBe(over)
    const codes = runChecks({ pattern: now, measures: [], units: 'mm' }).map((f) => f.code)
    expect(codes).toEqual(runChecks({ pattern: draft, measures: [], units: 'mm' }).map((f) => f.code))
    const other = direction === 'forward' ? 'back' : 'forward'
    const undone = done(now, ['turn sleeve', { direction: other, by: '1/2' }]).pattern
    expect(undone.joins).toEqual(draft.joins)
    expect(pieceOf(undone, 'sleeve').notches.map((n) => n.id)).toEqual(sleeve.notches.map((n) => n.id))
  })
})

describe('turn sleeve', () => {
  const draft = drafted()

  it('sews the parts that the contract names', () => {
    const now = done(draft, ['turn sleeve', { direction: 'forward', by: '1/2' }]).pattern
    const [lf, lb] = ['front cap', 'back cap'].map((id) => lengthOf(seam(pieceOf(draft, 'sleeve'), id))) as [
      number,
      number,
    ]
    const near = (value: number | undefined, wanted: number) => expect(value).toBeCloseTo(wanted, 4)
    const [front, back] = ['front cap', 'back cap'].map((id) => now.joins.find((j) => j.id === id)?.a ?? [])
    expect(front).toMatchObject([
      { seam: 'back cap', reversed: false },
      { seam: 'front cap', reversed: false },
    ])
    near(front?.[0]?.from, lb - 12.7)
    near(front?.[0]?.to, lb)
    near(front?.[1]?.from, 0)
    near(front?.[1]?.to, lf - 12.7)
    expect(back).toMatchObject([
      { seam: 'back cap', reversed: true },
      { seam: 'front cap', reversed: true },
    ])
    near(back?.[0]?.from, 0)
    near(back?.[0]?.to, lb - 12.7)
    near(back?.[1]?.from, lf - 12.7)
    near(back?.[1]?.to, lf)
  })

  it('is the mirror image on the left', () => {
    const now = done(draft, ['turn sleeve', { direction: 'forward', by: '1/2' }, 'left']).pattern
    const right = pieceOf(
      done(draft, ['turn sleeve', { direction: 'forward', by: '1/2' }, 'right']).pattern,
      'sleeve right',
    )
    const left = pieceOf(now, 'sleeve left')
    expect(pieceOf(now, 'sleeve right').notches).toEqual(pieceOf(draft, 'sleeve').notches)
    for (const notch of right.notches) {
      const twin = left.notches.find((n) => n.id === notch.id)
      const [a, b] = [
        pointOnSeam(seamOf(right, notch.seam), notch.along),
        pointOnSeam(seamOf(left, twin?.seam as string), twin?.along as number),
      ]
      expect(a.x).toBeCloseTo(-b.x, 5)
      expect(a.y).toBeCloseTo(b.y, 5)
    }
    expect(walkJoin(now, now.joins.find((j) => j.id === 'front cap left') as never)?.ease).toBeCloseTo(
      ease(draft, 'front cap'),
      4,
    )
  })

  it('keeps the turn through later corrections and a rematch', () => {
    const later = done(
      draft,
      ['turn sleeve', { direction: 'forward', by: '1/2' }],
      ['let out', { seam: 'cap', at: { line: 'cap line' }, by: '1/4' }],
      ['underarm reach', { by: '3/8' }],
      ['hollow', { seam: 'front armscye', by: '1/4' }],
      ['rematch cap', {}],
    ).pattern
    for (const id of ['front cap', 'back cap']) {
      const target = draft.joins.find((j) => j.id === id)?.ease.target as number
      expect(Math.abs(ease(later, id) - target)).toBeLessThan(0.01)
      const walked = walkJoin(later, later.joins.find((j) => j.id === id) as never)
      expect(walked?.spans[0]?.ease).toBeCloseTo(0, 4)
    }
    const sleeve = pieceOf(later, 'sleeve')
    const shoulder = sleeve.notches.find((n) => n.id === 'shoulder notch')
    expect(lengthOf(seam(sleeve, 'front cap')) - (shoulder?.along as number)).toBeCloseTo(12.7, 1)
    const codes = runChecks({ pattern: later, measures: [], units: 'mm' }).map((f) => f.code)
    for (const code of ['shoulder-notch-off', 'notch-off-seam', 'notch-without-partner', 'join-without-seam']) {
      expect(codes).not.toContain(code)
    }
  })

  it('refuses to turn too far, counting what was turned before', () => {
    expect(codeOf(corrected(draft, ['turn sleeve', { direction: 'back', by: '2' }]))).toBe('turned-too-far')
    expect(
      codeOf(
        corrected(
          draft,
          ['turn sleeve', { direction: 'back', by: '1' }],
          ['turn sleeve', { direction: 'back', by: '1' }],
        ),
      ),
    ).toBe('turned-too-far')
    expect(codeOf(corrected({ ...draft, joins: [] }, ['turn sleeve', { direction: 'back', by: '1' }]))).toBe(
      'cap-without-armscye',
    )
    expect(codeOf(corrected({ pieces: [], joins: [] }, ['turn sleeve', { direction: 'back', by: '1' }]))).toBe(
      'no-such-seam',
    )
  })
})

describe('what cannot be', () => {
  const draft = drafted()

  it('is refused with a problem', () => {
    expect(codeOf(corrected(draft, ['hollow', { seam: 'front cap', by: '2' }]))).toMatch(
      /taper-too-short|shift-folds-over/,
    )
    expect(codeOf(corrected(draft, ['hollow', { seam: 'front cap', by: '1/4', at: 'bust point' }]))).toBe(
      'unknown-place',
    )
    expect(codeOf(corrected(draft, ['raise cap', { by: '6' }]))).toBe('taper-too-short')
    expect(
      codeOf(
        corrected(draft, [
          'lower cap',
          { by: '3 3/8', 'taper to': [{ from: 'underarm', toward: 'shoulder notch', distance: '1' }] },
        ]),
      ),
    ).toBe('cap-too-low')
    expect(codeOf(corrected({ pieces: [], joins: [] }, ['hollow', { seam: 'armscye', by: '1/4' }]))).toBe(
      'no-such-seam',
    )
    expect(codeOf(corrected({ pieces: [], joins: [] }, ['raise cap', { by: '1/4' }]))).toBe('no-such-seam')
  })
})
