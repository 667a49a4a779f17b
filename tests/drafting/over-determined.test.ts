import { describe, expect, it } from 'vitest'
import type { Draft } from '../../src/drafting/draft.ts'
import { pieceOf, seamEnd, seamLength, seamOf, seamStart } from '../../src/pattern/seam.ts'
import { codesOf, draftOf, draftWritten, remedyFaults, sayings } from './written.ts'

/** Biceps width, cap height, cap ease and armscye as they lie on the drafted pattern, mm. */
function figures({ pattern }: Draft) {
  const sleeve = pieceOf(pattern, 'sleeve')
  const front = seamOf(sleeve, 'front cap')
  const back = seamOf(sleeve, 'back cap')
  const armscye = ['bodice front', 'bodice back'].reduce(
    (sum, id) => sum + seamLength(seamOf(pieceOf(pattern, id), 'armscye')),
    0,
  )
  return {
    width: seamStart(front).x - seamEnd(back).x,
    height: seamEnd(front).y,
    ease: seamLength(front) + seamLength(back) - armscye,
    armscye,
  }
}

const free = figures(draftOf())
const given = (draft: Readonly<Record<string, unknown>>) => ({ draft })

describe('any two of biceps width, cap height and cap ease decide the third (CASES 4)', () => {
  it.each([
    ['width and ease', { 'biceps width': '352 mm', ease: { cap: '22 mm' } }, { width: 352, ease: 22 }],
    ['width and height', { 'biceps width': '352 mm', 'cap height': '140 mm' }, { width: 352, height: 140 }],
    ['height and ease', { 'cap height': '136 mm', ease: { cap: '22 mm' } }, { height: 136, ease: 22 }],
    ['width and the cloth’s ease', { 'biceps width': '352 mm' }, { width: 352, ease: 0.06 * free.armscye }],
    ['height and the arm’s width', { 'cap height': '136 mm' }, { height: 136, width: 348 }],
    ['ease and the arm’s width', { ease: { cap: '5 %' } }, { ease: 0.05 * free.armscye, width: 348 }],
  ])('%s', (_, draft, asked) => {
    const found = figures(draftOf(given(draft)))
    for (const [name, value] of Object.entries(asked))
      expect(found[name as keyof typeof found], name).toBeCloseTo(value, 5)
  })

  it('gives back what it solved: three figures that agree are taken', () => {
    const { width, height, ease } = free
    const [w, h, e] = [width, height, ease].map((mm) => `${mm.toFixed(6)} mm`)
    const three = { 'biceps width': w, 'cap height': h, ease: { cap: e } }
    expect(figures(draftOf(given(three))).height).toBeCloseTo(height, 5)
  })
})

describe('three figures that do not agree', () => {
  const three = given({ 'biceps width': '352 mm', 'cap height': '132 mm', ease: { cap: '22 mm' } })
  const [problem] = draftWritten(three).problems ?? []

  it('are shown with the numbers, and with each figure that would agree', () => {
    expect(problem).toMatchObject({ code: 'cap-contradicts-itself', where: { field: 'draft.cap height' } })
    expect(problem?.actual).toMatch(/352\.0 mm with 22\.0 mm of cap ease makes a cap 1\d\d\.\d mm high, not 132\.0 mm/)
    expect(problem?.actual).toMatch(/it is \d+\.\d mm wide/)
    // Each of the three left out, too.
    for (const name of ['biceps width', 'cap height', 'cap ease'])
      expect(sayings(problem)).toContain(`leave the ${name} out`)
    expect(remedyFaults(three)).toEqual([])
  })

  it('offers figures that the other two make when drafted', () => {
    const figure = problem?.remedies?.find(({ say }) => /^biceps width/.test(say))
    const found = figures(draftOf(three, figure?.set ?? {}))
    expect(found.ease).toBeCloseTo(22, 5)
    // To the 0.01 mm in which the figure is offered, times the slope of height over width.
    expect(Math.abs(found.height - 132)).toBeLessThan(0.02)
  })

  it('show the conflict also where width and ease make no cap at all', () => {
    const none = given({ 'biceps width': '470 mm', 'cap height': '120 mm', ease: { cap: '0 mm' } })
    expect(codesOf(none)).toEqual(['cap-contradicts-itself'])
    expect(remedyFaults(none)).toEqual([])
  })
})

describe('a cap that cannot be', () => {
  it('too low as given: the cap height is to blame, not the arm, and a higher one is offered', () => {
    const low = given({ 'cap height': '50 mm', 'biceps width': '420 mm' })
    const [problem] = draftWritten(low).problems ?? []
    expect(problem).toMatchObject({ code: 'cap-too-low', where: { field: 'draft.cap height' } })
    expect(sayings(problem)).toMatch(/cap height \d+ mm instead of 50 mm/)
    expect(sayings(problem)).toContain('leave the cap height out')
    expect(remedyFaults(low)).toEqual([])
  })

  it.each([
    ['biceps width: 250', { 'biceps width': '250 mm' }, 'draft.biceps width', 'leave the biceps width out'],
    ['an ease below zero', { ease: { 'upper arm': '-20 mm' } }, 'draft.ease.upper arm', 'leave the upper arm ease out'],
    [
      'height and ease',
      { 'cap height': '145 mm', ease: { cap: '4 mm' } },
      'draft.cap height',
      'leave the cap height out',
    ],
  ])(
    'narrower than the arm by %s: the choice is to blame, and no cap height is named that nobody gave',
    (_, draft, field, remedy) => {
      const [problem] = draftWritten(given(draft)).problems ?? []
      expect(problem).toMatchObject({ code: 'sleeve-narrower-than-arm', where: { field } })
      expect(sayings(problem)).toContain(remedy)
      if (!('cap height' in draft)) expect(sayings(problem)).not.toContain('cap height')
      expect(remedyFaults(given(draft))).toEqual([])
    },
  )

  it.each([
    ['shorter than its armscye', { 'cap height': '96 mm' }, 'cap-too-short'],
    ['three times as high as an arm', { 'cap height': '900 mm' }, 'no-such-cap'],
    ['with more width than armscye', { 'biceps width': '480 mm' }, 'cap-too-low'],
  ])('%s has remedies that work', (_, draft, code) => {
    expect(codesOf(given(draft))).toEqual([code])
    expect(remedyFaults(given(draft))).toEqual([])
  })

  it('whose arm is too thick has the three classic remedies, the least that works of each', () => {
    const thick = { body: { 'upper arm girth': 390 } }
    const [problem] = draftWritten(thick).problems ?? []
    expect(problem).toMatchObject({ code: 'cap-too-low', where: { field: 'body.upper arm girth' } })
    expect(sayings(problem)).toMatch(/armscye depth ease \d+ mm instead of 20 mm/)
    expect(remedyFaults(thick)).toEqual([])
    // One step less of the first does not do.
    const depth = Number(/armscye depth ease (\d+) mm/.exec(sayings(problem))?.[1])
    expect(codesOf(thick, given({ ease: { 'armscye depth': `${depth - 2} mm` } }))).toEqual(['cap-too-low'])
  })
})
