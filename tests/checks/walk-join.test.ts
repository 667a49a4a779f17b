import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { walkJoins } from '../../src/checks/report.ts'
import { walkJoin } from '../../src/checks/walk-join.ts'
import { splitSides } from '../../src/fitting/split-sides.ts'
import type { Join, Pattern } from '../../src/pattern/pattern.ts'
import { seamLength, seamOf } from '../../src/pattern/seam.ts'
import { placeOnLine, sewnLine } from '../../src/pattern/sewn-line.ts'
import { DRAFT, pieceNamed, SPLIT, withPiece, withSeam } from './fixture.ts'

const { pattern } = DRAFT

function joinNamed(p: Pattern, id: string): Join {
  const join = p.joins.find((j) => j.id === id)
  if (!join) throw new Error(`no join ${id}`)
  return join
}

const capLengths = () => {
  const sleeve = pieceNamed(pattern, 'sleeve')
  return { front: seamLength(seamOf(sleeve, 'front cap')), back: seamLength(seamOf(sleeve, 'back cap')) }
}

/** The pattern with its sleeve turned forward by d: outline as it was, match points and joins moved (DESIGN.md). */
function turned(d: number): Pattern {
  const { front, back } = capLengths()
  const part = { piece: 'sleeve', reversed: false }
  const moved = withPiece(pattern, 'sleeve', (piece) => ({
    ...piece,
    notches: piece.notches.map((n) => {
      if (n.id === 'shoulder notch') return { ...n, seam: 'front cap', along: front - d }
      if (n.id === 'front notch') return { ...n, along: n.along - d }
      return n.id === 'back notch' ? { ...n, along: n.along - d } : n
    }),
  }))
  return {
    ...moved,
    joins: moved.joins.map((join) => {
      if (join.id === 'front cap') {
        return {
          ...join,
          a: [
            { ...part, seam: 'back cap', from: back - d, to: back },
            { ...part, seam: 'front cap', from: 0, to: front - d },
          ],
        }
      }
      if (join.id !== 'back cap') return join
      return {
        ...join,
        a: [
          { ...part, seam: 'back cap', reversed: true, from: 0, to: back - d },
          { ...part, seam: 'front cap', reversed: true, from: front - d, to: front },
        ],
      }
    }),
  }
}

describe('walking', () => {
  test('every span adds up to its join, and ease is a − b', () => {
    const walked = walkJoins(pattern)
    expect(walked).toHaveLength(pattern.joins.length)
    for (const { a, b, ease, spans } of walked) {
      expect(ease).toBeCloseTo(a - b, 9)
      expect(spans.reduce((sum, s) => sum + s.a, 0)).toBeCloseTo(a, 9)
      expect(spans.reduce((sum, s) => sum + s.b, 0)).toBeCloseTo(b, 9)
    }
  })

  test('no ease lies below the notches of a fresh draft, all of it above', () => {
    for (const id of ['front cap', 'back cap']) {
      const walked = walkJoin(pattern, joinNamed(pattern, id))
      expect(walked?.spans.map((s) => [s.from, s.to])).toEqual([
        ['underarm', id.replace('cap', 'notch')],
        [id.replace('cap', 'notch'), 'shoulder notch'],
      ])
      expect(walked?.spans[0]?.ease).toBeCloseTo(0, 6)
      expect(walked?.spans[1]?.ease).toBeCloseTo(walked?.declared.target ?? Number.NaN, 5)
    }
  })

  test('with left and right apart every join is walked twice, alike', () => {
    const walked = walkJoins(SPLIT)
    expect(walked).toHaveLength(2 * pattern.joins.length)
    for (const join of walkJoins(pattern)) {
      for (const side of ['left', 'right']) {
        const half = walked.find((w) => w.id === `${join.id} ${side}`)
        expect(half?.a).toBeCloseTo(join.a, 6)
        expect(half?.b).toBeCloseTo(join.b, 6)
        expect(half?.spans.map((s) => [s.from, s.to])).toEqual(join.spans.map((s) => [s.from, s.to]))
        for (const [i, span] of join.spans.entries()) expect(half?.spans[i]?.ease).toBeCloseTo(span.ease, 6)
      }
    }
  })

  test.each([['bodice front'], ['bodice back'], ['sleeve']])(
    'with only the %s apart, caps are still walked from notch to notch',
    (id) => {
      const walked = walkJoins(splitSides(pattern, id).pattern)
      for (const name of ['front cap', 'back cap']) {
        const before = walkJoin(pattern, joinNamed(pattern, name))
        for (const cap of walked.filter((w) => w.id.startsWith(name))) {
          expect(cap.spans.map((s) => [s.from, s.to])).toEqual(before?.spans.map((s) => [s.from, s.to]))
          for (const [i, span] of cap.spans.entries()) expect(span.ease).toBeCloseTo(before?.spans[i]?.ease ?? 0, 6)
        }
      }
    },
  )

  test('a turned sleeve keeps the total and meets its notches: the outline does not change', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 30, noNaN: true }), (d) => {
        const before = walkJoins(pattern)
        const after = walkJoins(turned(d))
        const total = (walked: typeof before) =>
          walked.filter((w) => /cap/.test(w.id)).reduce((sum, w) => sum + w.ease, 0)
        expect(total(after)).toBeCloseTo(total(before), 6)
        for (const id of ['front cap', 'back cap']) {
          const [was, now] = [before, after].map((walked) => walked.find((w) => w.id === id))
          // Front: d from the back cap in, d over the crown out. Every match point moved by d, so the spans sew as before.
          expect(now?.a).toBeCloseTo(was?.a ?? Number.NaN, 6)
          expect(now?.spans.map((s) => s.to)).toEqual(was?.spans.map((s) => s.to))
          for (const [i, span] of (was?.spans ?? []).entries()) expect(now?.spans[i]?.a).toBeCloseTo(span.a, 6)
        }
      }),
      { numRuns: 30 },
    )
  })

  test('changing an allowance changes no walk', () => {
    const wide = withSeam(pattern, 'sleeve', 'front cap', (seam) => ({ ...seam, allowance: 60 }))
    expect(walkJoins(wide)).toEqual(walkJoins(pattern))
  })
})

describe('a line of several seam parts', () => {
  test('counts places from its start, against the seam where it is sewn so', () => {
    const { front, back } = capLengths()
    const [line, other] = ['front cap', 'back cap'].map((id) => sewnLine(turned(10), joinNamed(turned(10), id).a))
    expect(line?.length).toBeCloseTo(front, 9)
    expect(line && placeOnLine(line, 'sleeve', 'back cap', back - 4)).toBeCloseTo(6, 9)
    expect(line && placeOnLine(line, 'sleeve', 'front cap', 30)).toBeCloseTo(40, 9)
    expect(line && placeOnLine(line, 'sleeve', 'front cap', front - 4)).toBeUndefined()
    expect(other && placeOnLine(other, 'sleeve', 'back cap', 0)).toBeCloseTo(back - 10, 9)
    expect(other && placeOnLine(other, 'sleeve', 'front cap', front - 4)).toBeCloseTo(back - 6, 9)
  })

  test('is undefined where a seam is not there', () => {
    expect(sewnLine(pattern, [{ piece: 'sleeve', seam: 'yoke', reversed: false }])).toBeUndefined()
    expect(sewnLine(pattern, [{ piece: 'hood', seam: 'waist', reversed: false }])).toBeUndefined()
    expect(sewnLine(pattern, [])).toBeUndefined()
  })
})
