import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cubic } from '../../src/geometry/cubic.ts'
import type { Path } from '../../src/geometry/path.ts'
import { pathLength } from '../../src/geometry/path-length.ts'
import { point } from '../../src/geometry/point.ts'
import { CHROMIUM, chromiumLengths } from './chromium.ts'
import { anyCubic, fairCubic, pathData, roundOutline } from './shapes.ts'

describe.skipIf(!CHROMIUM)('beside getTotalLength of Chromium (skipped where Chromium is not installed)', () => {
  it('lengths of seams, outlines, cusps and hairpins are the same but for its single precision', async () => {
    const paths: readonly Path[] = [
      ...fc.sample(fairCubic, 150).map((c) => [c]),
      ...fc.sample(anyCubic, 150).map((c) => [c]),
      ...fc.sample(roundOutline(60, 160), 50),
      [cubic(point(0, 0), point(332, 0.001), point(332, -0.001), point(0, 0))],
      [cubic(point(0, 0), point(100, 100), point(0, 100), point(100, 0))],
      [cubic(point(0, 0), point(150, 0), point(-50, 0), point(100, 0))],
    ]
    const theirs = await chromiumLengths(paths.map(pathData))
    expect(theirs).toHaveLength(paths.length)
    paths.forEach((path, k) => {
      const ours = pathLength(path)
      // It rounds coordinates up to 300 mm and the sum to 24 bits, and adds up short chords.
      expect(Math.abs((theirs[k] as number) - ours), pathData(path)).toBeLessThan(1e-4 + 3e-6 * ours)
    })
  }, 120_000)
})
