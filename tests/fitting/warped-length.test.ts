import { expect, it } from 'vitest'
import { warpPath } from '../../src/fitting/warp-path.ts'
import { warpedLength } from '../../src/fitting/warped-length.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { cubics, lengthOf } from './measure.ts'

it('is the length of the warped line, as a refit and dense samples find it', () => {
  for (const id of ['bodice front', 'bodice back']) {
    const path = cubics(pieceOf(drafted(), id), 'armscye')
    const length = lengthOf({ id: '', allowance: 0, parts: [path] })
    const of = warpedLength(path)
    expect(Math.abs(of((at) => at) - length)).toBeLessThan(1e-4)
    // Scaled by two about any point a line is twice as long.
    expect(Math.abs(of((at) => ({ x: 2 * at.x + 7, y: 2 * at.y - 3 })) - 2 * length)).toBeLessThan(2e-4)
    const bent = (at: { x: number; y: number }, along: number) => ({ x: at.x + 8 * Math.sin(along / 60), y: at.y })
    const drawn = warpPath(path, bent)
    expect(Math.abs(of(bent) - lengthOf({ id: '', allowance: 0, parts: [drawn.path] }))).toBeLessThan(0.01)
    expect(drawn.now.at(-1)).toBeCloseTo(lengthOf({ id: '', allowance: 0, parts: [drawn.path] }), 3)
  }
})
