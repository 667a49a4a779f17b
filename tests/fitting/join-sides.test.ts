import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import { correctionNamed } from '../../src/fitting/corrections.ts'
import { joinSides } from '../../src/fitting/join-sides.ts'
import { composeMaps, isGone } from '../../src/fitting/position-map.ts'
import type { CorrectionRecord, CorrectionSide, FittingRecord } from '../../src/fitting/record.ts'
import { replay } from '../../src/fitting/replay.ts'
import { slipText } from '../../src/fitting/slip-text.ts'
import { splitSides } from '../../src/fitting/split-sides.ts'
import { joinPattern } from '../../src/pattern/join-pattern.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, seamLength } from '../../src/pattern/seam.ts'
import { joinLengths } from '../../src/pattern/sewn-line.ts'
import { BODIES, drafted } from './bodies.ts'
import { cubics, farthest, outlineOf } from './measure.ts'

const read = makeReaders('mm')

function record(name: string, written: Record<string, unknown>, side: CorrectionSide = 'both'): CorrectionRecord {
  return { do: name, side, settings: correctionNamed(name)?.settings(read).parse(written), where: {} }
}

function attempt(pattern: Pattern, ...corrections: CorrectionRecord[]) {
  const fitting: FittingRecord = { label: 'first', mockUp: 1, corrections, where: {} }
  return replay(pattern, [fitting], { standard: { default: 25.4 }, byMockUp: {} })
}

function run(pattern: Pattern, ...corrections: CorrectionRecord[]) {
  const done = attempt(pattern, ...corrections)
  if (!done.ok) throw new Error(done.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return done.value
}

const CAP = {
  seam: 'cap',
  at: [
    { line: 'cap line', 'side of cap': 'front' },
    { line: 'cap line', 'side of cap': 'back' },
  ],
  by: '8 mm',
  'taper to': ['shoulder notch', 'front notch', 'back notch'],
}
const SIDE = { seam: 'front side seam', by: '6 mm', 'taper to': 'underarm' }
const JOIN = record('join sides', { piece: 'sleeve' })

const piecesOf = (pattern: Pattern) => pattern.pieces.map((piece) => piece.id)

describe.each(BODIES.map(([bust, arm]) => [bust, arm] as const))('on a body of %d, %d', (bust, arm) => {
  const pattern = drafted(bust, arm)

  it.each(['sleeve', 'bodice back', 'bodice front'])('takes back the splitting of the %s', (id) => {
    const split = splitSides(pattern, id)
    const joined = joinSides(split.pattern, id)
    if (!joined.ok) throw new Error(joined.problems[0]?.actual)
    const [was, now] = [pieceOf(pattern, id), pieceOf(joined.value.pattern, id)]
    expect([now.side, now.cut, now.name]).toEqual([was.side, was.cut, was.name])
    expect(piecesOf(joined.value.pattern)).toEqual(piecesOf(pattern))
    expect(now.seams).toEqual(was.seams)
    expect(now.darts).toEqual(was.darts)
    expect(now.lines).toEqual(was.lines)
    expect(new Set(now.notches)).toEqual(new Set(was.notches))
    expect(joined.value.pattern.joins).toEqual(pattern.joins)
    expect(Math.abs(outlineOf(now).area - outlineOf(was).area)).toBeLessThan(1e-6)
    // Every place comes back to where it was, from the left as from the right.
    const map = composeMaps(split.map, joined.value.map)
    fc.assert(
      fc.property(fc.constantFrom(...was.seams), fc.double({ min: 0, max: 1, noNaN: true }), (seam, share) => {
        const along = share * seamLength(seam)
        for (const place of map.seam({ piece: id, seam: seam.id, along })) {
          if (isGone(place)) expect(seam.allowance).toBe(0)
          else {
            expect([place.piece, place.seam]).toEqual([id, seam.id])
            expect(place.along).toBeCloseTo(along, 6)
          }
        }
      }),
    )
  })

  it('joins piece by piece, in whatever order they were taken apart', () => {
    const ids = ['sleeve', 'bodice front', 'bodice back']
    fc.assert(
      fc.property(
        fc.shuffledSubarray(ids, { minLength: 3 }),
        fc.shuffledSubarray(ids, { minLength: 3 }),
        (out, back) => {
          const apart = out.reduce((p, id) => splitSides(p, id).pattern, pattern)
          const together = back.reduce((p, id) => joinPattern(p, id), apart)
          expect(together.joins).toEqual(pattern.joins)
          for (const join of together.joins) expect(joinLengths(together, join)).toEqual(joinLengths(pattern, join))
        },
      ),
      { numRuns: 12 },
    )
  })

  it('joins a sleeve that was let out on the right and then on the left', () => {
    const both = run(pattern, record('let out', CAP))
    const joined = run(pattern, record('let out', CAP, 'right'), record('let out', CAP, 'left'), JOIN)
    expect(piecesOf(joined.pattern)).toEqual(piecesOf(pattern))
    for (const half of ['front cap', 'back cap']) {
      const [a, b] = [both, joined].map((r) => cubics(pieceOf(r.pattern, 'sleeve'), half))
      if (a && b) expect(Math.max(farthest(a, b), farthest(b, a))).toBeLessThan(0.01)
    }
    // Each side was let out once: the pair has used that, not both together.
    expect(joined.findings.filter((f) => f.code.startsWith('allowance'))).toEqual([])
    expect(joined.allowances.find((r) => r.piece === 'sleeve' && r.seam === 'front cap')?.used).toBeCloseTo(8, 9)
    expect(joined.pattern.joins.map((j) => j.id)).toEqual(pattern.joins.map((j) => j.id))
    // And goes on as a pair, or apart again.
    expect(
      run(
        pattern,
        record('let out', CAP, 'right'),
        record('let out', CAP, 'left'),
        JOIN,
        record('let out', { ...CAP, by: '2 mm' }),
      ).allowances.find((r) => r.piece === 'sleeve' && r.seam === 'back cap')?.used,
    ).toBeCloseTo(10, 9)
  })

  it('folds a front whose side seams were let out one after the other', () => {
    const both = run(pattern, record('let out', SIDE))
    const join = record('join sides', { piece: 'bodice front' })
    const joined = run(pattern, record('let out', SIDE, 'left'), record('let out', SIDE, 'right'), join)
    const [a, b] = [pieceOf(both.pattern, 'bodice front'), pieceOf(joined.pattern, 'bodice front')]
    expect(b.side).toBe('fold')
    for (const seam of a.seams) expect(farthest(cubics(a, seam.id), cubics(b, seam.id))).toBeLessThan(0.01)
  })
})

describe('joining', () => {
  const pattern = drafted()

  it('is refused while the sides differ, saying where and by how much', () => {
    const result = attempt(pattern, record('let out', CAP, 'right'), JOIN)
    if (result.ok) throw new Error('joined')
    expect(result.problems[0]).toMatchObject({ code: 'sides-differ', where: { fitting: 'first', correction: 2 } })
    expect(result.problems[0]?.actual).toMatch(/the (front|back) cap differs by (7\.9|8\.0) mm/)
  })

  it('is refused for one side, and where there is nothing of the name', () => {
    const oneSided = attempt(pattern, { ...JOIN, side: 'left' })
    expect(oneSided.ok ? '' : oneSided.problems[0]?.code).toBe('needs-both-sides')
    const none = joinSides({ ...pattern, pieces: pattern.pieces.slice(0, 1) }, 'sleeve')
    expect(none.ok ? '' : none.problems[0]?.code).toBe('no-such-piece')
  })

  it('leaves a pair as it is: the same object', () => {
    expect(run(pattern, JOIN).pattern).toBe(pattern)
  })

  it('of sides with another allowance is refused', () => {
    const split = splitSides(pattern, 'sleeve').pattern
    const pieces = split.pieces.map((piece) =>
      piece.id === 'sleeve left'
        ? { ...piece, seams: piece.seams.map((s) => (s.id === 'wrist' ? { ...s, allowance: 50 } : s)) }
        : piece,
    )
    const result = joinSides({ ...split, pieces }, 'sleeve')
    expect(result.ok ? '' : result.problems[0]?.actual).toContain('the wrist is not cut alike')
  })

  it('is on the slip in words', () => {
    const { slip } = run(pattern, record('let out', CAP, 'right'), record('let out', CAP, 'left'), JOIN)
    expect(slipText(slip, { performer: 'Ferry Pilot', units: 'in' })).toContain(
      '3. Both sides: cut left and right of the sleeve as one again',
    )
  })
})
