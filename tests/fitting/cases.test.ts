// Real failures that must not happen here, by their numbers in the project's list of cases.
import { describe, expect, it } from 'vitest'
import type { Body } from '../../src/body/body.ts'
import { runChecks } from '../../src/checks/checks.ts'
import { movement } from '../../src/checks/movement.ts'
import { type Choices, CLOTHS, STANDARD_CHOICES } from '../../src/drafting/choices.ts'
import { CLOTH_EASE } from '../../src/drafting/defaults.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import type { Replayed } from '../../src/fitting/replay.ts'
import { slipText } from '../../src/fitting/slip-text.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, seamOf } from '../../src/pattern/seam.ts'
import { body, drafted } from './bodies.ts'
import { cubics, lengthOf, seam, type XY } from './measure.ts'
import { done, ease, fitted, type Step } from './replayed.ts'

const draft = drafted()

function draftFor(of: Body, choices: Partial<Choices> = {}) {
  return draftPattern(of, { ...STANDARD_CHOICES, ...choices })
}

function patternFor(choices: Partial<Choices> = {}, of: Body = body(959, 299, {})): Pattern {
  const result = draftFor(of, choices)
  if (!result.ok) throw new Error(result.problems.map((p) => p.actual).join('; '))
  return result.value.pattern
}

const armscye = (pattern: Pattern) =>
  ['bodice front', 'bodice back'].reduce((sum, id) => sum + lengthOf(seam(pieceOf(pattern, id), 'armscye')), 0)
const capEase = (pattern: Pattern) => ease(pattern, 'front cap') + ease(pattern, 'back cap')
const sleeveSeam = (pattern: Pattern, id: string) => lengthOf(seam(pieceOf(pattern, 'sleeve'), id))

function capCorners(pattern: Pattern) {
  const sleeve = pieceOf(pattern, 'sleeve')
  const front = cubics(sleeve, 'front cap')
  const [underarm, crown] = [front[0]?.p0 as XY, front.at(-1)?.p3 as XY]
  const back = cubics(sleeve, 'back cap').at(-1)?.p3 as XY
  return { width: Math.hypot(underarm.x - back.x, underarm.y - back.y), height: crown.y - underarm.y }
}

const errors = (pattern: Pattern, corners = fittedCorners) =>
  runChecks({ pattern, measures: [], units: 'in', corners }).filter((f) => f.severity === 'error')
const fittedCorners: Replayed['corners'] = []

describe('case 1: the armscye got smaller and the cap larger', () => {
  it('says the ease front and back apart after every correction, and rematch cap restores both', () => {
    const steps: Step[] = [
      ['take in', { seam: 'side seam', at: 'underarm', by: '1/4', 'taper to': 'waist' }],
      ['let out', { seam: 'cap', at: [{ line: 'cap line' }], by: '3/8' }],
      ['rematch cap', {}],
    ]
    const { slip, pattern } = fitted(draft, ...steps)
    for (const entry of slip)
      expect(entry.joins.map((j) => j.join)).toEqual(expect.arrayContaining(['front cap', 'back cap']))
    const eases = slip.map((entry) =>
      ['front cap', 'back cap'].map((id) => entry.joins.find((j) => j.join === id)?.after.ease as number),
    )
    const drafted = ['front cap', 'back cap'].map((id) => ease(draft, id))
    for (const half of [0, 1] as const) {
      // The let-out cap is longer than it was by some mm on each half, and told so apart.
      expect((eases[1]?.[half] as number) - (eases[0]?.[half] as number)).toBeGreaterThan(1)
      expect(Math.abs((eases[2]?.[half] as number) - (drafted[half] as number))).toBeLessThan(0.01)
    }
    expect(Math.abs(ease(pattern, 'front cap') - (drafted[0] as number))).toBeLessThan(0.01)
    const text = slipText(slip, { performer: 'Lamplighter', units: 'in' })
    expect(text).toMatch(/front cap/)
    expect(text).toMatch(/back cap/)
  })

  it('names rematch cap where a cap left its range', () => {
    const { slip } = fitted(draft, ['lower cap', { by: '1' }])
    const off = slip[0]?.joins.filter((j) => j.restores !== undefined) ?? []
    expect(off.length).toBeGreaterThan(0)
    for (const join of off) expect(join.restores).toBe('rematch cap')
    expect(slipText(slip, { performer: 'Lamplighter', units: 'in' })).toContain('rematch cap would')
  })
})

describe('case 3: teachers disagree on cap ease', () => {
  it.each(CLOTHS)('takes what the cloth takes by default: %s', (cloth) => {
    const pattern = patternFor({ cloth })
    expect(capEase(pattern) / armscye(pattern)).toBeCloseTo(CLOTH_EASE[cloth].asked, 4)
    const most = pattern.joins.filter((j) => /cap/.test(j.id)).reduce((sum, j) => sum + j.ease.max, 0)
    expect(most / armscye(pattern)).toBeCloseTo(CLOTH_EASE[cloth].most, 4)
  })

  it('and any other that is asked for, in the draft and after a fitting', () => {
    for (const mm of [12.7, 25.4, 47.6]) {
      expect(Math.abs(capEase(patternFor({ capEase: { mm } })) - mm)).toBeLessThan(0.01)
      expect(Math.abs(capEase(done(draft, ['rematch cap', { ease: `${mm} mm` }]).pattern) - mm)).toBeLessThan(0.01)
    }
  })
})

describe('case 4: width, height and armscye all fixed at once', () => {
  const { width, height } = capCorners(draft)
  const asked = capEase(draft)

  it('takes any two and solves the third', () => {
    for (const choices of [
      { bicepsWidth: width, capHeight: height },
      { capHeight: height, capEase: { mm: asked } },
      { bicepsWidth: width, capEase: { mm: asked } },
    ]) {
      const pattern = patternFor(choices)
      expect(capCorners(pattern).width).toBeCloseTo(width, 3)
      expect(capCorners(pattern).height).toBeCloseTo(height, 3)
      expect(Math.abs(capEase(pattern) - asked)).toBeLessThan(0.01)
    }
  })

  it('shows the conflict of three with the numbers', () => {
    const result = draftFor(body(959, 299, {}), { bicepsWidth: width, capHeight: height + 20, capEase: { mm: asked } })
    const problem = result.ok ? undefined : result.problems[0]
    expect(problem?.code).toBe('cap-contradicts-itself')
    for (const number of [width, height, height + 20, asked]) expect(problem?.actual).toContain(number.toFixed(1))
    expect(problem?.remedies?.length).toBeGreaterThan(1)
  })
})

describe('case 5: measured relaxed, burst when flexed', () => {
  it('drafts the larger of relaxed and flexed, each with its own ease', () => {
    const flexed = (value: number): Body => {
      const plain = body(959, 299, {})
      const half = { ...plain.right, 'upper arm girth flexed': { value, estimated: false } }
      return { left: half, right: half }
    }
    expect(capCorners(patternFor({}, flexed(300))).width).toBeCloseTo(299 + 50, 3)
    expect(capCorners(patternFor({}, flexed(340))).width).toBeCloseTo(340 + 25, 3)
    const result = draftFor(flexed(340))
    const row = result.ok
      ? result.value.measures.find((m) => m.name === 'upper arm girth flexed' || m.from === 'flexed')
      : undefined
    expect(row?.body).toBe(340)
  })
})

describe('case 6: letting width into the upper arm flattened the cap', () => {
  it('says what a widening did to cap height, cap length and ease', () => {
    const kept = fitted(draft, ['widen', { at: 'upper arm', by: '1' }])
    const [entry] = kept.slip
    const figure = (name: string) => entry?.figures.find((f) => f.figure === name)
    expect((figure('biceps width')?.after ?? 0) - (figure('biceps width')?.before ?? 0)).toBeCloseTo(25.4, 6)
    const fall = (figure('cap height')?.before ?? 0) - (figure('cap height')?.after ?? 0)
    expect(fall).toBeCloseTo(capCorners(draft).height - capCorners(kept.pattern).height, 6)
    expect(fall).toBeGreaterThan(8)
    expect(fall).toBeLessThan(13)
    expect(entry?.joins.map((j) => j.join)).toEqual(expect.arrayContaining(['front cap', 'back cap']))
    for (const join of entry?.joins.filter((j) => /cap/.test(j.join)) ?? []) {
      expect(join.after.ease).toBeCloseTo(join.before.ease, 4)
    }
    const longer = fitted(draft, ['widen', { at: 'upper arm', by: '1', keep: 'cap height' }]).slip[0]
    const caps = longer?.joins.filter((j) => /cap/.test(j.join)) ?? []
    expect(caps).toHaveLength(2)
    for (const join of caps) expect(join.after.ease - join.before.ease).toBeGreaterThan(5)
    const text = slipText(kept.slip, { performer: 'Lamplighter', units: 'in' })
    for (const words of ['cap height', 'biceps width', 'hangs at', 'front cap', 'back cap'])
      expect(text).toContain(words)
  })
})

describe('case 7: comfortable at rest, binds reaching forward', () => {
  it('shows the movement figures before and after a reach', () => {
    const { versions, slip } = fitted(draft, ['underarm reach', { by: '1/2' }])
    const [before, after] = movement(versions)
    expect(before?.version).toBe('draft')
    expect(after?.version).toBe('first fitting')
    expect((before?.capHeight ?? 0) - (after?.capHeight ?? 0)).toBeGreaterThan(11)
    // A sleeve with a lower cap lies without strain at a higher arm.
    const lift = (h: number, b: number) => (Math.atan((Math.PI * h) / b) * 180) / Math.PI
    expect(after?.neutralLift).toBeCloseTo(lift(after?.capHeight ?? 0, after?.bicepsWidth ?? 1), 6)
    expect(after?.neutralLift ?? 90).toBeLessThan((before?.neutralLift ?? 0) - 1)
    expect(slip[0]?.figures.map((f) => f.figure)).toContain('neutral lift')
  })
})

describe('case 8: gussets before a dance show', () => {
  it.each([
    [['underarm reach', { by: '3/4' }]],
    [['widen', { at: 'upper arm', by: '1 1/2' }]],
    [
      ['widen', { at: 'upper arm', by: '1' }],
      ['underarm reach', { by: '1/2' }],
    ],
    [
      ['let out', { seam: 'underarm seam', at: 'underarm', by: '1/4' }],
      ['rematch cap', {}],
    ],
  ] as unknown as Step[][])('lets the underarm out, both underarm seams equal and the cap sewable: %j', (...steps) => {
    const { pattern, corners } = fitted(draft, ...steps)
    expect(
      Math.abs(sleeveSeam(pattern, 'back underarm seam') - sleeveSeam(pattern, 'front underarm seam')),
    ).toBeLessThan(0.5)
    expect(errors(pattern, corners)).toEqual([])
    for (const id of ['front cap', 'back cap']) expect(ease(pattern, id)).toBeGreaterThan(0)
  })
})

describe('case 9: a sleeve set to the wrong mark', () => {
  it('marks one in front and two at the back', () => {
    const marks = (id: string) => pieceOf(draft, 'sleeve').notches.find((n) => n.id === id)?.marks
    expect([marks('front notch'), marks('back notch'), marks('shoulder notch')]).toEqual([1, 2, 1])
  })

  it('turning moves all match points together and leaves the cap length alone', () => {
    const { pattern } = fitted(draft, ['turn sleeve', { direction: 'forward', by: '3/8' }])
    for (const id of ['front cap', 'back cap']) {
      expect(seamOf(pieceOf(pattern, 'sleeve'), id).parts).toEqual(seamOf(pieceOf(draft, 'sleeve'), id).parts)
      expect(ease(pattern, id)).toBeCloseTo(ease(draft, id), 4)
    }
    const front = sleeveSeam(draft, 'front cap')
    const place = (from: Pattern, id: string) => {
      const notch = pieceOf(from, 'sleeve').notches.find((n) => n.id === id)
      return (notch?.along as number) + (notch?.seam === 'back cap' ? front : 0)
    }
    const moves = ['front notch', 'shoulder notch', 'back notch'].map((id) => place(draft, id) - place(pattern, id))
    for (const move of moves) expect(move).toBeCloseTo(9.525, 6)
    const whole = front + sleeveSeam(draft, 'back cap')
    expect(whole - place(pattern, 'underarm')).toBeCloseTo(9.525, 3)
    expect(errors(pattern)).toEqual([])
  })
})

describe('case 10: elbow darts moved, intake lost', () => {
  it.each([
    ['move elbow darts', { direction: 'up', by: '3/4' }],
    ['move elbow darts', { direction: 'down', by: '3/4' }],
    ['move elbow darts', { direction: 'forward', by: '1/4' }],
  ] as unknown as Step[])('%s keeps the intake: back seam − intakes − ease = front seam', (...step) => {
    const { pattern } = fitted(draft, step as unknown as Step)
    const measured = (from: Pattern) => {
      const sleeve = pieceOf(from, 'sleeve')
      const intakes = sleeve.darts.reduce((sum, { mouth: [a, b] }) => sum + Math.hypot(a.x - b.x, a.y - b.y), 0)
      const parts = seam(sleeve, 'back underarm seam').parts
      // The back edge as it is cut: the seam's parts and the mouths between them.
      const gaps = parts.slice(1).reduce((sum, part, i) => {
        const [a, b] = [parts[i]?.at(-1)?.p3 as XY, part[0]?.p0 as XY]
        return sum + Math.hypot(a.x - b.x, a.y - b.y)
      }, 0)
      return {
        intakes,
        edge: sleeveSeam(from, 'back underarm seam') + gaps,
        front: sleeveSeam(from, 'front underarm seam'),
      }
    }
    const [was, now] = [measured(draft), measured(pattern)]
    expect(now.intakes).toBeCloseTo(was.intakes, 6)
    expect(was.intakes).toBeCloseTo(32, 2)
    expect(Math.abs(now.edge - now.intakes - now.front)).toBeLessThan(0.01)
    expect(errors(pattern)).toEqual([])
  })
})
