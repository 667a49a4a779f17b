import { expect } from 'vitest'
import { makeReaders } from '../../src/base/readers.ts'
import type { Result } from '../../src/base/result.ts'
import { dartLegs } from '../../src/checks/dart-legs.ts'
import { dartMouths } from '../../src/checks/dart-mouths.ts'
import { joinsSmooth } from '../../src/checks/joins-smooth.ts'
import { outline } from '../../src/checks/outline.ts'
import { selfCrossing } from '../../src/checks/self-crossing.ts'
import { squareCorners } from '../../src/checks/square-corners.ts'
import { walk } from '../../src/checks/walk.ts'
import { walkJoin } from '../../src/checks/walk-join.ts'
import type { Correction } from '../../src/fitting/correction.ts'
import { type OperationResult, runOperations } from '../../src/fitting/operation.ts'
import { IDENTITY } from '../../src/fitting/position-map.ts'
import type { CorrectionSide } from '../../src/fitting/record.ts'
import type { Cubic } from '../../src/geometry/cubic.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { drafted } from './bodies.ts'
import { cubics, lengthOf, outlineOf, seam, type XY } from './measure.ts'

const read = makeReaders('in')

/** With a bust dart and without, small and large. */
export const PATTERNS: readonly [string, Pattern][] = [
  ['a bust dart', drafted(959, 299, { 'front waist length': 465 })],
  ['no bust dart', drafted()],
  ['a large body', drafted(1040, 330, { 'front waist length': 470 })],
]
export const [[, DARTED]] = PATTERNS as [[string, Pattern]]

export function attempt(
  pattern: Pattern,
  correction: Correction,
  written: Record<string, unknown>,
  side: CorrectionSide = 'both',
) {
  const operations = correction.compile({ worn: pattern, side }, correction.settings(read).parse(written))
  return operations.ok ? runOperations(pattern, IDENTITY, operations.value) : operations
}

export function done(...args: Parameters<typeof attempt>): OperationResult {
  const result = attempt(...args)
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  for (const piece of result.value.pattern.pieces) expect(outlineOf(piece).gaps).toBeLessThan(1e-9)
  return result.value
}

export const codeOf = (result: Result<unknown>) => (result.ok ? undefined : result.problems[0]?.code)
export const len = (piece: Piece, id: string) => lengthOf(seam(piece, id))
export const grown = (pattern: Pattern, now: Pattern, piece: string, id: string) =>
  len(pieceOf(now, piece), id) - len(pieceOf(pattern, piece), id)
export const HALVES = ['bodice front', 'bodice back'] as const

/** The ease of a join and of its spans. */
export function walked(pattern: Pattern, id: string) {
  const join = pattern.joins.find((j) => j.id === id)
  const found = join && walkJoin(pattern, join)
  if (!found) throw new Error(`no ${id}`)
  return found
}

/** Codes of what the walk finds that it did not find before. */
export function newFindings(before: Pattern, after: Pattern): string[] {
  const codes = (pattern: Pattern) => walk.run({ pattern } as never).map((f) => `${f.code} ${f.where.join}`)
  const old = codes(before)
  return codes(after).filter((code) => !old.includes(code))
}
/** Codes of everything the checks find on the pattern itself that they did not find before. */
export function newTrouble(before: Pattern, after: Pattern): string[] {
  const found = (pattern: Pattern) =>
    [outline, selfCrossing, dartLegs, dartMouths, joinsSmooth, squareCorners, walk].flatMap((check) =>
      check
        .run({ pattern, measures: [], units: 'mm' } as never)
        .map((f) => `${f.code} ${f.where.join ?? ''} ${f.where.piece ?? ''} ${f.where.seam ?? ''}`),
    )
  const old = found(before)
  return found(after).filter((code) => !old.includes(code))
}

export const corner = (piece: Piece, id: string, which: 0 | -1): XY => {
  const c = cubics(piece, id).at(which) as Cubic
  return which === 0 ? c.p0 : c.p3
}
export const dartOf = (pattern: Pattern, piece: string, id: string) =>
  pieceOf(pattern, piece).darts.find((d) => d.id === id) as Piece['darts'][number]
export const intake = (dart: Piece['darts'][number]) =>
  Math.hypot(dart.mouth[0].x - dart.mouth[1].x, dart.mouth[0].y - dart.mouth[1].y)
export const apart = (a: XY, b: XY) => Math.hypot(a.x - b.x, a.y - b.y)
