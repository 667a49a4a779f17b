import { describe, expect, it } from 'vitest'
import { draftedBody } from './drafted-body.ts'
import { D5585_95, D5585_95_SIZES, d5585_95 } from './published-bodies.ts'
import { IN, TAPE } from './tape.ts'

type Place =
  | 'bust girth'
  | 'waist girth'
  | 'scye depth'
  | 'back width'
  | 'upper arm girth'
  | 'elbow girth'
  | 'wrist girth'

/** Inches of ease: least and most. */
const CLOSE: readonly (readonly [Place, number, number, string])[] = [
  ['bust girth', 1.5, 2, 'read: Central Washington University costume text, ch. 16'],
  ['waist girth', 0.75, 1, 'read: the same'],
  ['upper arm girth', 2, Infinity, 'read: Threads, 27 Sep 2021'],
  ['scye depth', 0.5, 1, 'from memory: armscye below the armpit'],
  ['back width', 0.5, 1, 'from memory: in total'],
  ['elbow girth', 1, 1.5, 'from memory: a tight sleeve'],
  ['wrist girth', 0.5, 1, 'from memory: a tight sleeve'],
]

const EASY: readonly (readonly [Place, number, number, string])[] = [
  ['upper arm girth', 1.5, Infinity, 'read: Santa Rosa JC, FASH 7.2: 1 1/2–2 in or more'],
  ['elbow girth', 1.5, Infinity, 'read: the same'],
]

describe.each(D5585_95_SIZES.map((size, k) => ({ size, k })))('wearing ease of D5585-95 size $size', ({ k }) => {
  it.each([
    ['close', CLOSE],
    ['easy', EASY],
  ] as const)('%s, as the handbooks say', (fit, table) => {
    const { measures } = draftedBody(d5585_95(k), { fit }).report
    for (const [name, least, most, source] of table) {
      // The body by the table of this test, the garment as the flat pattern measures: no number of the draft's own.
      const drafted = measures.find((row) => row.name === name)?.drafted as number
      const ease = drafted - (D5585_95[k]?.[name] ?? Number.NaN) * IN
      expect(ease, `${name}: ${source}`).toBeGreaterThan(least * IN - TAPE)
      expect(ease, `${name}: ${source}`).toBeLessThan(most * IN + TAPE)
    }
  })
})

describe.each(D5585_95_SIZES.map((size, k) => ({ size, k })))('cap ease of D5585-95 size $size', ({ k }) => {
  const capEase = (cloth: string) => {
    const draft = draftedBody(d5585_95(k), { cloth })
    const front = draft.length('sleeve', 'front cap') - draft.length('bodice front', 'armscye')
    const back = draft.length('sleeve', 'back cap') - draft.length('bodice back', 'armscye')
    return { front, back, share: (front + back) / draft.armscye }
  }

  // REFERENCES.md section 6, percent of a seam that can be eased (from memory).
  it.each([
    ['leather', 0, 2],
    ['firm', 2, 4],
    ['muslin', 4, 6],
    ['soft wool', 6, 10],
  ])('%s takes %s to %s %% of the armscye', (cloth, least, most) => {
    const { share } = capEase(cloth)
    expect(100 * share).toBeGreaterThan(least - 1e-6)
    expect(100 * share).toBeLessThan(most + 1e-6)
  })

  it('in cloth that eases well is 1–1 7/8 in', () => {
    // Read: Santa Rosa JC, FASH 7.2. Muslin, asked for at 6 %, comes to 0.93–1.03 in: a little below on small sizes.
    const { front, back } = capEase('soft wool')
    expect(front + back).toBeGreaterThan(IN)
    expect(front + back).toBeLessThan(1.875 * IN)
  })

  it('lies at the back for 55 to 60 %', () => {
    // From memory: between 45/55 and 40/60.
    const { front, back } = capEase('muslin')
    expect(back / (front + back)).toBeGreaterThan(0.55 - 1e-6)
    expect(back / (front + back)).toBeLessThan(0.6 + 1e-6)
  })
})
