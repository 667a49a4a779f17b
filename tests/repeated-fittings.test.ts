import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { arcLengthBetween } from '../src/geometry/arc-length.ts'
import { curvatureAt } from '../src/geometry/cubic.ts'
import { pieceOf, seamOf } from '../src/pattern/seam.ts'
import { type MadePattern, makePattern } from '../src/pipeline.ts'

const demo = readFileSync(new URL('../examples/lamplighter.yaml', import.meta.url), 'utf8')
const [draft, fitting] = demo.split('fittings:\n') as [string, string]
const letOut = fitting.slice(0, fitting.indexOf('      - do: underarm reach'))

/** The demo with one fitting for each text, each on a mock-up of its own. */
function fittedAgain(fittings: readonly string[]): MadePattern {
  const texts = fittings.map((text, k) => text.replace('first', `${k}th`).replace('mock-up: 1', `mock-up: ${k + 1}`))
  const result = makePattern(`${draft}fittings:\n${texts.join('')}`, 'lamplighter.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** The smallest radius of a cap half more than an inch from the underarm, where a reach may make a corner, mm. */
function sharpest(made: MadePattern, name: string): number {
  const seam = seamOf(pieceOf(made.pattern, 'sleeve'), name)
  const path = seam.parts.flat()
  const whole = path.reduce((sum, c) => sum + arcLengthBetween(c, 0, 1), 0)
  const [from, to] = name === 'front cap' ? [25.4, whole] : [0, whole - 25.4]
  let along = 0
  let least = Number.POSITIVE_INFINITY
  for (const c of path) {
    for (let k = 0; k <= 50; k++) {
      const at = along + arcLengthBetween(c, 0, k / 50)
      if (at >= from && at <= to) least = Math.min(least, 1 / Math.abs(curvatureAt(c, k / 50)))
    }
    along += arcLengthBetween(c, 0, 1)
  }
  return least
}

describe('the same fitting again and again', () => {
  const small = fitting.replace('by: 3/8', 'by: 1/16').replace('by: 1/2', 'by: 1/16')
  const out = letOut.replace('by: 3/8', 'by: 1/8')
  const total = fitting.replace('by: 3/8', 'by: 5/16').replace('by: 1/2', 'by: 5/16')
  const byTurns = [0, 1, 2, 3, 4, 5].map((k) => (k % 2 === 0 ? out : out.replace('let out', 'take in')))
  const histories: [name: string, fittings: string[], same: string[]][] = [
    ['five sixteenths one by one', [small, small, small, small, small], [total]],
    ['out and in by turns', byTurns, []],
  ]
  test.each(histories)('%s: the cap can still be corrected and is as fair as at once', (_, fittings, same) => {
    const made = fittedAgain(fittings)
    const atOnce = fittedAgain(same)
    for (const name of ['front cap', 'back cap']) {
      expect(sharpest(made, name)).toBeGreaterThan(sharpest(atOnce, name) / 2)
    }
  })
})

/** The two fittings of the Ferry Pilot, so often over, each under a label of its own. */
function ferryPilotTimes(times: number): string {
  const text = readFileSync(new URL('../examples/ferry-pilot.yaml', import.meta.url), 'utf8')
  const at = text.indexOf('  - label: first')
  const again = Array.from({ length: times }, (_, k) =>
    text.slice(at).replace(/label: .*/g, (label) => `${label} ${k}`),
  )
  return `${text.slice(0, at)}${again.join('\n')}`
}

function problemsOf(text: string): string[] {
  const made = makePattern(text, 'ferry-pilot.yaml')
  if (made.ok) return []
  return made.problems.map(({ code, where }) => [code, where.fitting, where.correction, where.piece].join(' | '))
}

describe('fittings again that the pattern has no more room for', () => {
  test('a place that the left side has lost and the right side has not is told, not left out', () => {
    expect(problemsOf(ferryPilotTimes(1))).toEqual([])
    expect(problemsOf(ferryPilotTimes(2))).toEqual(['unknown-place | second fitting 1 | 2 | bodice back left'])
  })

  test('an underarm lowered into the bust dart by shoulder slopes is told, not drawn back on itself', () => {
    const problems = problemsOf(ferryPilotTimes(6))
    expect(problems[1]).toBe('no-room-on-side-seam | first fitting 2 | 1 | bodice front')
    expect(problems.filter((problem) => problem.startsWith('no-room-on-side-seam'))).toHaveLength(4)
  })
})
