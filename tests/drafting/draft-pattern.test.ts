import { describe, expect, it } from 'vitest'
import { type Body, type BodyHalf, measureOf } from '../../src/body/body.ts'
import { type Choices, STANDARD_CHOICES } from '../../src/drafting/choices.ts'
import type { Draft } from '../../src/drafting/draft.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { curvatureAt } from '../../src/geometry/cubic.ts'
import { type Path, startOf } from '../../src/geometry/path.ts'
import { directionAlong, pathLength, pointAlong } from '../../src/geometry/path-length.ts'
import { add, distance, rotateAbout, subtract, turnBetween } from '../../src/geometry/point.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf, seamEnd, seamLength, seamOf, seamStart } from '../../src/pattern/seam.ts'
import { SIZE_12, SIZES } from './bodies.ts'

function drafted(body: Body, choices: Choices = STANDARD_CHOICES): Draft {
  const result = draftPattern(body, choices)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

function seam(pattern: Pattern, piece: string, id: string) {
  return seamOf(pieceOf(pattern, piece), id)
}

const length = (pattern: Pattern, piece: string, id: string) => seamLength(seam(pattern, piece, id))

/** Sign changes of the curvature along a path, by dense sampling; straight stretches do not count. */
function inflections(path: Path): number {
  let changes = 0
  let last = 0
  for (const c of path) {
    for (let k = 1; k < 200; k++) {
      const curvature = curvatureAt(c, k / 200)
      if (Math.abs(curvature) < 1e-6) continue
      const sign = Math.sign(curvature)
      if (last !== 0 && sign !== last) changes++
      last = sign
    }
  }
  return changes
}

describe.each(SIZES.map((body, k) => ({ size: 6 + 2 * k, body })))('a body of size $size', ({ body }) => {
  const draft = drafted(body)
  const { pattern } = draft
  const half = body.right

  it('closes every piece, seam to seam', () => {
    for (const piece of pattern.pieces) {
      piece.seams.forEach((s, k) => {
        const next = piece.seams[(k + 1) % piece.seams.length] as typeof s
        expect(distance(seamEnd(s), seamStart(next)), `${piece.id}: ${s.id} to ${next.id}`).toBeLessThan(1e-9)
      })
    }
  })

  it('gives the cap the armscye and the asked ease, front and back, to 1e-6 mm', () => {
    const front = length(pattern, 'bodice front', 'armscye')
    const back = length(pattern, 'bodice back', 'armscye')
    const ease = 0.06 * (front + back)
    expect(length(pattern, 'sleeve', 'front cap') - front).toBeCloseTo(0.45 * ease, 6)
    expect(length(pattern, 'sleeve', 'back cap') - back).toBeCloseTo(0.55 * ease, 6)
  })

  it('measures on the flat pattern what was asked, within 0.1 mm', () => {
    expect(draft.measures.length).toBeGreaterThan(15)
    for (const row of draft.measures) {
      expect(Math.abs(row.drafted - row.asked), `${row.name}: asked ${row.asked}, drafted ${row.drafted}`).toBeLessThan(
        0.1,
      )
    }
  })

  it('lays the first 38 mm of the cap as the armscye lies, turned as one', () => {
    const cap = seam(pattern, 'sleeve', 'front cap').parts[0] as Path
    const armscye = seam(pattern, 'bodice front', 'armscye').parts[0] as Path
    const turn = turnBetween(directionAlong(armscye, 0), directionAlong(cap, 0))
    for (let along = 0; along <= 38; along += 2) {
      const laid = add(
        startOf(cap),
        rotateAbout(subtract(pointAlong(armscye, along), startOf(armscye)), { x: 0, y: 0 }, turn),
      )
      expect(distance(laid, pointAlong(cap, along))).toBeLessThan(1e-6)
    }
  })

  it('makes the angles at the underarm total 180° on the sleeve and on the bodice', () => {
    const inside = (piece: string, into: string, out: string) => {
      const before = seam(pattern, piece, into)
      const after = seam(pattern, piece, out)
      const arriving = directionAlong(before.parts.at(-1) as Path, pathLength(before.parts.at(-1) as Path))
      return Math.PI - turnBetween(arriving, directionAlong(after.parts[0] as Path, 0))
    }
    const bodice = inside('bodice front', 'side seam', 'armscye') + inside('bodice back', 'side seam', 'armscye')
    const sleeve =
      inside('sleeve', 'front underarm seam', 'front cap') + inside('sleeve', 'back cap', 'back underarm seam')
    expect(bodice).toBeCloseTo(Math.PI, 6)
    expect(sleeve).toBeCloseTo(Math.PI, 6)
  })

  it('turns each cap side once, and no armscye between width point and underarm', () => {
    for (const id of ['front cap', 'back cap'])
      expect(inflections(seam(pattern, 'sleeve', id).parts.flat()), id).toBe(1)
    for (const id of ['bodice front', 'bodice back']) {
      expect(inflections((seam(pattern, id, 'armscye').parts[0] as Path).slice(0, 2)), id).toBe(0)
    }
  })

  it('sews the underarm seams and the side seams equal, and the back shoulder 6 mm longer', () => {
    const underarm = length(pattern, 'sleeve', 'back underarm seam') - length(pattern, 'sleeve', 'front underarm seam')
    expect(Math.abs(underarm)).toBeLessThan(1e-6)
    const side = length(pattern, 'bodice back', 'side seam') - length(pattern, 'bodice front', 'side seam')
    expect(Math.abs(side)).toBeLessThan(1e-6)
    expect(length(pattern, 'bodice back', 'shoulder') - length(pattern, 'bodice front', 'shoulder')).toBeCloseTo(6, 6)
  })

  it('draws darts with equal legs, and elbow darts of 32 mm in all', () => {
    for (const dart of pattern.pieces.flatMap((piece) => piece.darts)) {
      const legs = dart.mouth.map((end) => distance(end, dart.point)) as [number, number]
      expect(Math.abs(legs[0] - legs[1]), dart.id).toBeLessThan(1e-6)
    }
    const elbow = pieceOf(pattern, 'sleeve').darts
    expect(elbow.reduce((sum, dart) => sum + distance(...dart.mouth), 0)).toBeCloseTo(32, 6)
  })

  it('keeps to the handbooks', () => {
    const neck = measureOf(half, 'neck base girth')
    const width = seamStart(seam(pattern, 'bodice back', 'neckline')).x
    // Neck width N/6 to N/5 of the neck girth: School Sewing, 1916 "To Draft Shirt" (read).
    expect(width).toBeGreaterThan(neck / 6)
    expect(width).toBeLessThan(neck / 5)
    const armscye = length(pattern, 'bodice front', 'armscye') + length(pattern, 'bodice back', 'armscye')
    const height = seamEnd(seam(pattern, 'sleeve', 'front cap')).y
    // Cap height about 1/3 of the armscye, fitted (from memory); 0.25–0.35 typical.
    expect(height / armscye).toBeGreaterThan(0.25)
    expect(height / armscye).toBeLessThan(0.35)
    for (const notch of pattern.pieces.flatMap((piece) => piece.notches)) {
      if (notch.id !== 'front notch') continue
      // 2 1/2–3 1/2 in up from the underarm (from memory).
      expect(notch.along).toBeGreaterThanOrEqual(63)
      expect(notch.along).toBeLessThanOrEqual(89)
    }
  })
})

describe('the armscye beside the body’s own', () => {
  it.each(SIZES.map((b, k) => ({ size: 6 + 2 * k, body: b })))('runs a little over it on size $size', ({ body }) => {
    const { 'front waist length': _, ...half } = body.right
    const { pattern } = drafted(
      { left: half, right: half },
      { ...STANDARD_CHOICES, fit: 'standing', ease: { 'back width': 12, 'front width': 6 }, bustDart: 'flat' },
    )
    const armscye = length(pattern, 'bodice front', 'armscye') + length(pattern, 'bodice back', 'armscye')
    // Bust ease 64, no bust intake; the girths are from memory, so the range is wide: 5 % either way.
    expect(armscye / measureOf(body.right, 'armscye girth')).toBeGreaterThan(0.95)
    expect(armscye / measureOf(body.right, 'armscye girth')).toBeLessThan(1.05)
  })
})

describe('choices', () => {
  it('takes the flexed upper arm where it is the wider one', () => {
    const flexed: BodyHalf = { ...SIZE_12.right, 'upper arm girth flexed': { value: 340, estimated: false } }
    const row = drafted({ left: flexed, right: flexed }).measures.find((m) => m.name === 'upper arm girth')
    expect(row).toMatchObject({ body: 340, ease: 25, asked: 365, from: 'flexed' })
  })

  it('cuts the back on the fold and the front as a pair where the opening is at the center front', () => {
    const { pattern } = drafted(SIZE_12, { ...STANDARD_CHOICES, opening: 'center front' })
    expect(pieceOf(pattern, 'bodice front')).toMatchObject({ side: 'pair', cut: 2 })
    expect(pieceOf(pattern, 'bodice back')).toMatchObject({ side: 'fold', cut: 1 })
    expect(seam(pattern, 'bodice back', 'center back').allowance).toBe(0)
    expect(seam(pattern, 'bodice front', 'center front').allowance).toBe(25)
  })

  it('takes a cap ease in mm, split 45 to 55', () => {
    const { pattern } = drafted(SIZE_12, { ...STANDARD_CHOICES, capEase: { mm: 20 } })
    expect(length(pattern, 'sleeve', 'front cap') - length(pattern, 'bodice front', 'armscye')).toBeCloseTo(9, 6)
    expect(length(pattern, 'sleeve', 'back cap') - length(pattern, 'bodice back', 'armscye')).toBeCloseTo(11, 6)
  })
})

describe('measures that cannot be true together', () => {
  it('names the widths that leave no room for the armscye', () => {
    const wide: BodyHalf = { ...SIZE_12.right, 'back width': { value: 520, estimated: false } }
    const result = draftPattern({ left: wide, right: wide })
    expect(result.ok ? [] : result.problems.map((p) => p.code)).toEqual(['no-room-for-armscye'])
  })

  it('refuses an arm too thick for its armscye instead of drawing a wrong sleeve', () => {
    const thick: BodyHalf = { ...SIZE_12.right, 'upper arm girth': { value: 460, estimated: false } }
    const result = draftPattern({ left: thick, right: thick })
    expect(result.ok ? [] : result.problems.map((p) => p.code)).toEqual(['cap-too-low'])
  })
})
