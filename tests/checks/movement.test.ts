import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { movement } from '../../src/checks/movement.ts'
import { makePattern } from '../../src/pipeline.ts'
import { lamplighter } from '../scye.ts'

const DEMO = readFileSync(lamplighter, 'utf8').trimEnd()

function made(...corrections: string[]) {
  const written = corrections
    .map((text) => `\n${text}`)
    .join('')
    .replace(/^(?=.)/gm, '      ')
  const more = corrections.length === 0 ? '' : `\n  - label: more\n    mock-up: 2\n    corrections:${written}`
  const result = makePattern(`${DEMO}${more}\n`, 'demo.yaml')
  if (!result.ok) throw new Error(result.problems.map((p) => p.actual).join('; '))
  return result.value
}

/** The cylinder's own relation, the other way round than it is computed: cap height for a lift (REFERENCES.md, section 4). */
const capFor = (degrees: number, biceps: number) => (biceps / Math.PI) * Math.tan((degrees * Math.PI) / 180)

describe('the movement of the demo', () => {
  const { report, versions, draft } = made()
  const [before, after] = report.movement
  if (!before || !after) throw new Error('no movement')

  test('has a row before and after the fitting, with what it had before', () => {
    expect(report.movement.map(({ side, version }) => [side, version])).toEqual([
      ['both', 'draft'],
      ['both', 'first fitting'],
    ])
    expect(Object.keys(before)).toEqual(
      expect.arrayContaining(['side', 'version', 'capHeight', 'armscye', 'bicepsWidth', 'neutralLift', 'liftPer10mm']),
    )
    expect(JSON.parse(JSON.stringify(report.movement))).toEqual(report.movement)
  })

  test('10 mm of cap height and of underarm reach change the lift as the cylinder does', () => {
    for (const row of [before, after]) {
      expect(capFor(row.neutralLift, row.bicepsWidth)).toBeCloseTo(row.capHeight, 3)
      expect(capFor(row.neutralLift + row.liftPer10mm, row.bicepsWidth)).toBeCloseTo(row.capHeight + 10, 3)
      expect(capFor(row.neutralLift + row.liftPer10mmReach, row.bicepsWidth)).toBeCloseTo(row.capHeight - 10, 3)
      expect(row.liftPer10mm).toBeGreaterThan(0)
      expect(row.liftPer10mmReach).toBeLessThan(-row.liftPer10mm)
    }
  })

  test('a reach of 1/2 in is seen in the length under the arm', () => {
    const joins = new Map(report.joins.map((join) => [join.id, join]))
    expect(after.underarmSeam).toBeCloseTo(joins.get('underarm seam')?.b ?? 0, 2)
    expect(after.underarmLength).toBeCloseTo((after.underarmSeam ?? 0) + (joins.get('side seam')?.b ?? 0), 2)
    expect((after.underarmSeam ?? 0) - (before.underarmSeam ?? 0)).toBeGreaterThan(11)
    expect((after.underarmSeam ?? 0) - (before.underarmSeam ?? 0)).toBeLessThan(13.5)
  })

  test('the back grows by 13 to 26 % of its width reaching forward, to 5 mm, and says where that is from', () => {
    const reach = after.reachForward
    expect(reach?.body).toBeCloseTo(14.625 * 25.4, 6)
    expect(reach?.ease).toBeCloseTo(12, 1)
    expect(reach?.growth).toEqual({ least: 50, most: 95 })
    expect(reach?.source).toMatch(/estimate.*Kirk and Ibrahim 1966, from memory.*p\. 186/)
  })

  test('without measures there is no back to speak of', () => {
    for (const row of movement(versions)) expect(row.reachForward).toBeUndefined()
    expect(movement(versions, draft.measures)[0]?.reachForward).toBeDefined()
  })
})

describe('a back made wider', () => {
  test('has the more ease after the fitting and not before it', () => {
    const { report } = made('- do: back width\n  direction: wider\n  by: 1/4 in')
    const eases = report.movement.map((row) => row.reachForward?.ease ?? Number.NaN)
    expect(eases[1]).toBeCloseTo(12, 1)
    expect(eases[2]).toBeCloseTo(12 + 12.7, 0)
  })
})

describe('sides apart', () => {
  test('a bodice taken apart under a pair of sleeves: each sleeve has its own armscye', () => {
    const { report } = made('- do: lower underarm\n  by: 1/2 in\n  side: right')
    const rows = report.movement.filter((row) => row.version === 'more')
    expect(rows.map((row) => row.side).sort()).toEqual(['left', 'right'])
    const [left, right] = ['left', 'right'].map((side) => rows.find((row) => row.side === side))
    expect(left?.armscye).toBeCloseTo(report.movement[1]?.armscye ?? 0, 3)
    expect((right?.armscye ?? 0) - (left?.armscye ?? 0)).toBeGreaterThan(5)
    expect((right?.armscye ?? 0) - (left?.armscye ?? 0)).toBeLessThan(40)
    expect(left?.capHeight).toBe(right?.capHeight)
    expect((left?.underarmLength ?? 0) - (right?.underarmLength ?? 0)).toBeCloseTo(12.7, 0)
    expect(report.findings.map((f) => f.code)).not.toContain('cap-flat')
  })
})
