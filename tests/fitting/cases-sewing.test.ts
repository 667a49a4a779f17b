// Real failures of sewing and truing that must not happen here, by their numbers in the project's list of cases.
import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/checks.ts'
import { walkJoin } from '../../src/checks/walk-join.ts'
import { pointAt } from '../../src/geometry/cubic.ts'
import { nearestParameter } from '../../src/geometry/nearest.ts'
import { mirrorAcross } from '../../src/geometry/transform.ts'
import { cutLine } from '../../src/pattern/cut-line.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, pointOnSeam, seamOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { cubics, lengthOf, seam, type XY } from './measure.ts'
import { done, ease, fitted } from './replayed.ts'

const draft = drafted()

const findings = (pattern: Pattern) => runChecks({ pattern, measures: [], units: 'mm', corners: [] })
const walks = (pattern: Pattern) => pattern.joins.map((join) => walkJoin(pattern, join))
const length = (pattern: Pattern, piece: string, id: string) => lengthOf(seam(pieceOf(pattern, piece), id))

describe('case 2: a cap shorter than its armscye', () => {
  it('is an error: 19 mm short, as it was published', () => {
    // Both side seams let out until the armscye is 19 mm longer than the cap.
    const asked = ease(draft, 'front cap') + ease(draft, 'back cap')
    const short = (by: number) => {
      const { pattern } = done(draft, ['let out', { seam: 'side seam', by: `${by.toFixed(3)} mm` }])
      return { pattern, ease: ease(pattern, 'front cap') + ease(pattern, 'back cap') }
    }
    const guess = (asked + 19) / 2
    const slope = (short(guess).ease - asked) / guess
    const { pattern, ease: missing } = short((-19 - asked) / slope)
    expect(missing).toBeCloseTo(-19, 0)
    const found = findings(pattern).filter((f) => f.code === 'cap-too-short')
    expect(found.map((f) => [f.severity, f.where.join])).toEqual([
      ['error', 'front cap'],
      ['error', 'back cap'],
    ])
    const told = found.map((f) => Number(/ease −(\d+\.\d) mm/.exec(f.actual)?.[1]))
    for (const [i, id] of ['front cap', 'back cap'].entries()) expect(told[i]).toBeCloseTo(-ease(pattern, id), 1)
  })
})

describe('case 18: the cut edge was measured, or darts left open', () => {
  it('changing the allowance changes no walk', () => {
    const cut = (allowance: number): Pattern => ({
      ...draft,
      pieces: draft.pieces.map((piece) => ({
        ...piece,
        seams: piece.seams.map((s) => (s.allowance === 0 ? s : { ...s, allowance })),
      })),
    })
    const edge = (pattern: Pattern) => pattern.pieces.map((piece) => cutLine(piece)[0]?.p0)
    expect(edge(cut(6))).not.toEqual(edge(cut(38)))
    expect(walks(cut(6))).toEqual(walks(cut(38)))
    expect(walks(cut(6))).toEqual(walks(draft))
  })

  it('walks with darts closed: a wider dart leaves the seam longer only as it is cut', () => {
    const { pattern } = done(draft, ['elbow dart intake', { intake: '40 mm' }])
    const join = pattern.joins.find((j) => j.id === 'underarm seam')
    const walked = join && walkJoin(pattern, join)
    const { parts } = seam(pieceOf(pattern, 'sleeve'), 'back underarm seam')
    const mouths = parts.slice(1).reduce((sum, part, i) => {
      const [a, b] = [parts[i]?.at(-1)?.p3 as XY, part[0]?.p0 as XY]
      return sum + Math.hypot(a.x - b.x, a.y - b.y)
    }, 0)
    expect(mouths).toBeCloseTo(40, 2)
    const back = walked?.a ?? 0
    expect(back).toBeCloseTo(length(draft, 'sleeve', 'back underarm seam'), 1)
    expect(Math.abs(back - (walked?.b ?? 0))).toBeLessThan(0.1)
  })
})

describe('case 19: length taken off at the hem lost the shape', () => {
  it.each([
    ['lengthen', 1],
    ['shorten', -1],
  ] as const)(
    '%s happens inside the sleeve: the wrist is the same line, partner seams change alike, the notch below moves along',
    (name, sign) => {
      const { pattern } = done(draft, [name, { part: 'above elbow', by: '1' }])
      const by = 25.4 * sign
      const wrist = (p: Pattern) => {
        const path = cubics(pieceOf(p, 'sleeve'), 'wrist')
        const from = path[0]?.p0 as XY
        return path.flatMap((c) => [c.p0, c.p1, c.p2, c.p3].flatMap((q) => [q.x - from.x, q.y - from.y]))
      }
      for (const [i, value] of wrist(pattern).entries()) expect(value).toBeCloseTo(wrist(draft)[i] as number, 9)
      const longer = ['front underarm seam', 'back underarm seam'].map(
        (id) => length(pattern, 'sleeve', id) - length(draft, 'sleeve', id),
      )
      expect(Math.abs((longer[0] as number) - (longer[1] as number))).toBeLessThan(0.05)
      expect(longer[0]).toBeCloseTo(by, 0)
      const elbow = (p: Pattern): XY => {
        const notch = pieceOf(p, 'sleeve').notches.find((n) => n.id === 'elbow notch')
        return pointOnSeam(seamOf(pieceOf(p, 'sleeve'), notch?.seam as string), notch?.along as number)
      }
      expect(elbow(draft).y - elbow(pattern).y).toBeCloseTo(by, 6)
      expect(findings(pattern).filter((f) => f.code === 'notches-do-not-meet')).toEqual([])
      expect(cubics(pieceOf(pattern, 'sleeve'), 'front cap')).toEqual(cubics(pieceOf(draft, 'sleeve'), 'front cap'))
    },
  )
})

describe('case 20: folded darts and tapered hems lacked cloth at the fold', () => {
  const { pattern } = fitted(
    draft,
    ['widen', { at: 'wrist', by: '1' }],
    ['elbow dart intake', { intake: '1 1/2' }],
    ['move elbow darts', { direction: 'down', by: '1/2' }],
  )
  const sleeve = pieceOf(pattern, 'sleeve')
  const edge = cutLine({
    ...sleeve,
    seams: sleeve.seams.map((s) => ({ ...s, allowance: 25.4 })),
  })
  const points = edge.flatMap((c) => Array.from({ length: 21 }, (_, k) => pointAt(c, k / 20)))

  it('beyond the wrist of a fitted sleeve the edge is the mirror image of the seam beside it', () => {
    const wrist = cubics(sleeve, 'wrist')
    for (const end of [0, 1]) {
      const c = wrist.at(end === 0 ? 0 : -1)
      const [p, q] = (end === 0 ? [c?.p0, c?.p1] : [c?.p3, c?.p2]) as [XY, XY]
      const size = Math.hypot(q.x - p.x, q.y - p.y)
      const inward = { x: (q.x - p.x) / size, y: (q.y - p.y) / size }
      const fold = mirrorAcross(p, q)
      const beyond = points.filter(({ x, y }) => {
        const off = { x: x - p.x, y: y - p.y }
        const out = -(off.x * inward.x + off.y * inward.y)
        const below = (end === 0 ? 1 : -1) * (inward.y * off.x - inward.x * off.y)
        return out > 15 && below > 0.01 && below < 24 && Math.hypot(off.x, off.y) < 60
      })
      expect(beyond.length, `end ${end}`).toBeGreaterThan(3)
      for (const at of beyond) expect(nearestParameter(edge, fold(at)).distance).toBeLessThan(0.01)
    }
  })

  it('over the mouth of a moved elbow dart the edge lies on the edge beside it when the dart is folded', () => {
    const dart = sleeve.darts.find((d) => d.id === 'elbow dart lower')
    if (!dart) throw new Error('no lower elbow dart')
    const angle = (p: XY) => Math.atan2(p.y - dart.point.y, p.x - dart.point.x)
    const turn = (a: number, b: number) => Math.atan2(Math.sin(b - a), Math.cos(b - a))
    const [one, other] = [angle(dart.mouth[0]), angle(dart.mouth[1])]
    const middle = one + turn(one, other) / 2
    const center = { x: dart.point.x + Math.cos(middle), y: dart.point.y + Math.sin(middle) }
    // Folded down: onto the lower leg.
    const [lower, sign] = dart.mouth[1].y < dart.mouth[0].y ? [dart.mouth[1], 1] : [dart.mouth[0], -1]
    const over = points.filter((p) => {
      const from = turn(one, angle(p)) / turn(one, other)
      return from > 0.02 && from < 0.98 && Math.hypot(p.x - dart.point.x, p.y - dart.point.y) < 140
    })
    expect(over.length).toBeGreaterThan(5)
    for (const p of over) {
      const nearLower = turn(middle, angle(p)) * Math.sign(turn(one, other)) * sign > 0
      const once = nearLower ? p : mirrorAcross(dart.point, center)(p)
      expect(nearestParameter(edge, mirrorAcross(dart.point, lower)(once)).distance).toBeLessThan(0.02)
    }
  })
})
