// Real failures of fitting a bodice that must not happen here, by their numbers in the project's list of cases.
import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/checks.ts'
import { STANDARD_CHOICES } from '../../src/drafting/choices.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import type { Replayed } from '../../src/fitting/replay.ts'
import { slipText } from '../../src/fitting/slip-text.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { body, drafted } from './bodies.ts'
import { cubics, lengthOf, seam, type XY } from './measure.ts'
import { ease, fitted } from './replayed.ts'

const draft = drafted()
const INCH = 25.4

const length = (pattern: Pattern, piece: string, id: string) => lengthOf(seam(pieceOf(pattern, piece), id))
const armscyes = (pattern: Pattern) => ['bodice front', 'bodice back'].map((id) => length(pattern, id, 'armscye'))
const corner = (pattern: Pattern, piece: string, id: string): XY => cubics(pieceOf(pattern, piece), id)[0]?.p0 as XY
const findings = ({ pattern, corners }: Pick<Replayed, 'pattern' | 'corners'>) =>
  runChecks({ pattern, measures: [], units: 'in', corners })
const codes = (done: Replayed) => findings(done).map((f) => f.code)

describe('case 11: forward shoulder', () => {
  it('takes x off the front and puts it on the back; the armscye stays, the shoulder notch of the sleeve moves by x', () => {
    const x = 0.5 * INCH
    const done = fitted(draft, ['forward shoulder', { by: '1/2' }])
    const [was, is] = [armscyes(draft), armscyes(done.pattern)]
    expect((is[0] as number) - (was[0] as number)).toBeCloseTo(-x, 2)
    expect((is[1] as number) - (was[1] as number)).toBeCloseTo(x, 2)
    const place = (pattern: Pattern) => {
      const notch = pieceOf(pattern, 'sleeve').notches.find((n) => n.id === 'shoulder notch')
      return (notch?.along as number) + (notch?.seam === 'back cap' ? length(pattern, 'sleeve', 'front cap') : 0)
    }
    // Along the cap from the front underarm: toward the front is less.
    expect(place(draft) - place(done.pattern)).toBeCloseTo(x, 3)
    expect(codes(done)).not.toContain('notches-do-not-meet')
    for (const id of ['front cap', 'back cap']) expect(ease(done.pattern, id)).toBeCloseTo(ease(draft, id), 2)
    // The back shoulder moved out into its allowance.
    expect(done.allowances.find((row) => row.piece === 'bodice back' && row.seam === 'shoulder')?.used).toBeCloseTo(
      x,
      6,
    )
    expect(done.allowances.find((row) => row.piece === 'bodice front' && row.seam === 'shoulder')?.used).toBe(0)
  })
})

describe('case 12: shoulder slope changed only at the tip', () => {
  it('moves the armscye with the shoulder: its length stays to 0.01 mm, the underarm goes down, the sleeve still fits', () => {
    const done = fitted(draft, ['shoulder slope', { direction: 'down', by: '1/2' }])
    const [was, is] = [armscyes(draft), armscyes(done.pattern)]
    for (const half of [0, 1]) expect(Math.abs((is[half] as number) - (was[half] as number))).toBeLessThan(0.01)
    const fall = corner(draft, 'bodice front', 'armscye').y - corner(done.pattern, 'bodice front', 'armscye').y
    expect(fall).toBeGreaterThan(6)
    expect(fall).toBeLessThan(0.5 * INCH)
    for (const id of ['front cap', 'back cap']) expect(ease(done.pattern, id)).toBeCloseTo(ease(draft, id), 2)
    expect(findings(done).filter((f) => f.severity === 'error')).toEqual([])
  })

  it('unless told otherwise: then the armscye is shorter, and the slip says what would restore the ease', () => {
    const done = fitted(draft, ['shoulder slope', { direction: 'down', by: '1', armscye: 'stays' }])
    const [was, is] = [armscyes(draft), armscyes(done.pattern)]
    for (const half of [0, 1]) expect((was[half] as number) - (is[half] as number)).toBeGreaterThan(14)
    const text = slipText(done.slip, { performer: 'Lamplighter', units: 'in' }).replace(/\s+/g, ' ')
    for (const cap of ['front', 'back'])
      expect(text).toMatch(new RegExp(`${cap} cap no longer matches: .*?rematch cap`))
  })

  it('made squarer lets the shoulder and the armscye out, as much as there is of their allowance', () => {
    const done = fitted(draft, ['shoulder slope', { direction: 'up', by: '1/2' }])
    for (const piece of ['bodice front', 'bodice back']) {
      const used = (id: string) => done.allowances.find((row) => row.piece === piece && row.seam === id)?.used ?? 0
      expect(used('shoulder')).toBeCloseTo(0.5 * INCH, 6)
      const rise = corner(done.pattern, piece, 'armscye').y - corner(draft, piece, 'armscye').y
      expect(used('armscye')).toBeCloseTo(rise, 6)
    }
  })
})

describe('case 13: uneven shoulders, one larger arm', () => {
  it('one correction for one side yields left and right pieces, marked so, in its own lines and no others', () => {
    const { pattern } = fitted(draft, ['shoulder slope', { direction: 'down', by: '3/8' }, 'right'])
    expect(pattern.pieces.map(({ id, side }) => `${id}: ${side}`)).toEqual([
      'bodice back left: left',
      'bodice back right: right',
      'bodice front: whole',
      'sleeve: pair',
    ])
    expect(pieceOf(pattern, 'sleeve')).toBe(pieceOf(draft, 'sleeve'))
    expect(pieceOf(pattern, 'bodice back left').name).toMatch(/left/i)
    expect(lengthOf(seam(pieceOf(pattern, 'bodice back left'), 'side seam'))).toBeCloseTo(
      length(draft, 'bodice back', 'side seam'),
      6,
    )
  })

  it('a body with one larger arm is drafted with a sleeve for each', () => {
    const [left, right] = [body(959, 299, {}).left, body(959, 312, {}).right]
    const result = draftPattern({ left, right }, STANDARD_CHOICES)
    if (!result.ok) throw new Error(result.problems.map((p) => p.actual).join('; '))
    const { pattern } = result.value
    const width = (id: string) => {
      const sleeve = pieceOf(pattern, id)
      const [a, b] = [cubics(sleeve, 'front cap')[0]?.p0 as XY, cubics(sleeve, 'back cap').at(-1)?.p3 as XY]
      const [c, d] = [cubics(sleeve, 'front cap').at(-1)?.p3 as XY, cubics(sleeve, 'back cap')[0]?.p0 as XY]
      return Math.max(Math.hypot(a.x - b.x, a.y - b.y), Math.hypot(c.x - d.x, c.y - d.y))
    }
    expect(width('sleeve right') - width('sleeve left')).toBeCloseTo(13, 3)
    expect(pieceOf(pattern, 'sleeve left').side).toBe('left')
    expect(pieceOf(pattern, 'sleeve right').side).toBe('right')
  })
})

describe('case 14: sway back taken as a short waist', () => {
  it('takes the wedge off the center back alone; the side seam keeps its length, the waist is square at both ends', () => {
    const done = fitted(draft, ['sway back', { by: '3/4' }])
    const { pattern } = done
    expect(length(pattern, 'bodice back', 'center back') - length(draft, 'bodice back', 'center back')).toBeCloseTo(
      -0.75 * INCH,
      3,
    )
    expect(length(pattern, 'bodice back', 'side seam')).toBe(length(draft, 'bodice back', 'side seam'))
    expect(pieceOf(pattern, 'bodice front')).toBe(pieceOf(draft, 'bodice front'))
    const square = (p: Pattern) => findings({ pattern: p, corners: [] }).filter((f) => /square/.test(f.code)).length
    expect(square(pattern)).toBe(square(draft))
    const waist = cubics(pieceOf(pattern, 'bodice back'), 'waist')[0]
    // At the center it leaves level.
    expect(Math.abs((waist?.p1.y as number) - (waist?.p0.y as number))).toBeLessThan(1e-6)
  })
})

describe('case 15: the armscye peaks or dips across the shoulder seam', () => {
  /** The front armscye coming to the shoulder point at another angle, degrees. */
  function turned(degrees: number): Pattern {
    const front = pieceOf(draft, 'bodice front')
    const seams = front.seams.map((s) => {
      if (s.id !== 'armscye') return s
      const path = s.parts[0] ?? []
      const last = path.at(-1)
      if (!last) throw new Error('no armscye')
      const [x, y] = [last.p2.x - last.p3.x, last.p2.y - last.p3.y]
      const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
      const p2 = { x: last.p3.x + x * cos - y * sin, y: last.p3.y + x * sin + y * cos }
      return { ...s, parts: [[...path.slice(0, -1), { ...last, p2 }]] }
    })
    return { ...draft, pieces: draft.pieces.map((p) => (p === front ? { ...front, seams } : p)) }
  }

  const across = (pattern: Pattern) =>
    findings({ pattern, corners: [] }).filter((f) => f.code === 'corner-across-join' && f.where.join === 'shoulder')

  it('tells every corner of more than 5° across the sewn seam, which way and how large', () => {
    expect(across(draft)).toEqual([])
    const drafted = (angle: number) => across(turned(angle)).map((f) => f.actual)
    const told = [-12, -8, 8, 12].map(drafted)
    for (const words of told) expect(words).toHaveLength(1)
    const angles = told.map(([words = '']) => (/peaks/.test(words) ? 1 : -1) * Number(/by (\d+\.\d)°/.exec(words)?.[1]))
    // As far apart as they were turned, whatever the draft itself has of a corner; and the two ways are told apart.
    for (const [i, step] of [4, 16, 4].entries())
      expect(Math.abs((angles[i + 1] as number) - (angles[i] as number))).toBeCloseTo(step, 0)
    expect(Math.sign(angles[0] as number)).toBe(-Math.sign(angles[3] as number))
  })
})
