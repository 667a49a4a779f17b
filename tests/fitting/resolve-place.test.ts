import { describe, expect, it } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import { placeReader, type SeamPlace } from '../../src/fitting/position.ts'
import { resolvePlace } from '../../src/fitting/resolve-place.ts'
import { type SeamName, seamLines } from '../../src/fitting/seam-names.ts'
import { seamRun } from '../../src/fitting/seam-run.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, pointOnSeam, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { fixturePattern } from './fixture.ts'

const read = makeReaders('in')
const place = (written: unknown): SeamPlace => placeReader(read).parse(written)

function find(pattern: Pattern, seam: SeamName, written: unknown) {
  const runs = seamLines(pattern, seam, 'both').map((line) => seamRun(pieceOf(pattern, line.piece), line.seams))
  return resolvePlace(place(written), runs, seam)
}

function places(pattern: Pattern, seam: SeamName, written: unknown) {
  const found = find(pattern, seam, written)
  if (!found.ok) throw new Error(found.problems[0]?.actual)
  return found.value
}

describe('a place in the performer file', () => {
  it('is a name, a line, a distance or a share', () => {
    expect(place('Shoulder-Notch')).toEqual({ landmark: 'shoulder notch' })
    expect(place({ line: 'cap line', 'side of cap': 'front' })).toEqual({ line: 'cap line', half: 'front' })
    expect(place({ from: 'underarm', toward: 'shoulder notch', distance: '1 1/2' })).toEqual({
      from: 'underarm',
      toward: 'shoulder notch',
      distance: 38.1,
    })
    expect(place({ between: ['front notch', 'shoulder notch'] })).toEqual({
      between: ['front notch', 'shoulder notch'],
      share: 0.5,
    })
    expect(place({ between: ['a', 'b'], share: '25 %' })).toEqual({ between: ['a', 'b'], share: 0.25 })
  })

  it('is refused when half said or said in two ways', () => {
    for (const written of [
      {},
      { from: 'underarm' },
      { from: 'a', toward: 'b' },
      { line: 'cap line', landmark: 'underarm' },
      { share: '5 %' },
      { lines: 'cap line' },
      [],
      '',
    ]) {
      expect(placeReader(read).safeParse(written).success, JSON.stringify(written)).toBe(false)
    }
  })
})

describe.each([
  ['the fixture', fixturePattern()],
  ['a draft', drafted()],
] as [string, Pattern][])('places on %s', (_, pattern) => {
  const sleeve = pieceOf(pattern, 'sleeve')
  const front = seamLength(seamOf(sleeve, 'front cap'))
  const back = seamLength(seamOf(sleeve, 'back cap'))

  it('finds notches, landmarks and corners by name', () => {
    const notch = sleeve.notches.find((n) => n.id === 'front notch')?.along
    expect(places(pattern, 'cap', 'front notch')).toEqual([{ piece: 'sleeve', seam: 'front cap', along: notch }])
    const [start, end] = places(pattern, 'cap', 'underarm')
    expect(start).toEqual({ piece: 'sleeve', seam: 'front cap', along: 0 })
    expect(end?.seam).toBe('back cap')
    expect(end?.along).toBeCloseTo(back, 6)
    expect(places(pattern, 'cap', 'shoulder notch')[0]?.along).toBeCloseTo(front, 6)
    // The shoulder notch belongs to the front cap; on the back cap alone it is its first end.
    expect(places(pattern, 'back cap', 'shoulder notch')).toEqual([{ piece: 'sleeve', seam: 'back cap', along: 0 }])
    expect(places(pattern, 'underarm seam', 'wrist').map((p) => p.seam)).toEqual([
      'front underarm seam',
      'back underarm seam',
    ])
    expect(
      places(pattern, 'side seam', 'underarm')
        .map((p) => p.piece)
        .sort(),
    ).toEqual(['bodice back', 'bodice front'])
    expect(places(pattern, 'front armscye', 'shoulder point')[0]?.along).toBeCloseTo(
      seamLength(seamOf(pieceOf(pattern, 'bodice front'), 'armscye')),
      6,
    )
  })

  it('finds where a balance line meets the seam', () => {
    const [a, b] = places(pattern, 'cap', { line: 'cap line' })
    const level = sleeve.lines.find((l) => l.id === 'cap line')?.path[0]?.p0.y as number
    expect(a?.seam).toBe('front cap')
    expect(b?.seam).toBe('back cap')
    for (const p of [a, b]) if (p) expect(pointOnSeam(seamOf(sleeve, p.seam), p.along).y).toBeCloseTo(level, 4)
    expect(places(pattern, 'cap', { line: 'cap line', 'side of cap': 'back' })).toEqual([b])
  })

  it('measures along the seam from one place toward another', () => {
    const both = places(pattern, 'cap', { from: 'underarm', toward: 'shoulder notch', distance: '1 1/2' })
    expect(both[0]).toEqual({ piece: 'sleeve', seam: 'front cap', along: 38.1 })
    expect(both[1]?.along).toBeCloseTo(back - 38.1, 6)
    const one = places(pattern, 'cap', {
      from: 'shoulder notch',
      toward: 'underarm',
      distance: '1',
      'side of cap': 'back',
    })
    expect(one).toHaveLength(1)
    expect(one[0]?.seam).toBe('back cap')
    expect(one[0]?.along).toBeCloseTo(25.4, 6)
    const [half] = places(pattern, 'front cap', { between: ['underarm', 'shoulder notch'], share: '25 %' })
    expect(half?.along).toBeCloseTo(front / 4, 6)
  })

  it('says what there is when a place is not on the seam', () => {
    const unknown = find(pattern, 'cap', 'bust point')
    expect(unknown.ok).toBe(false)
    const problem = unknown.ok ? undefined : unknown.problems[0]
    expect(problem?.code).toBe('unknown-place')
    expect(problem?.expected).toContain('front notch')
    expect(problem?.hint).toContain('cap line')
    const far = find(pattern, 'cap', { from: 'shoulder notch', toward: 'underarm', distance: '30' })
    expect(far.ok ? '' : far.problems[0]?.code).toBe('place-off-seam')
  })
})
