import { expect } from 'vitest'
import { stringify } from 'yaml'
import { makeReaders } from '../../src/base/readers.ts'
import type { Result } from '../../src/base/result.ts'
import { comparePiece } from '../../src/fitting/compare-piece.ts'
import { CORRECTIONS, correctionNamed, correctionReaders } from '../../src/fitting/corrections.ts'
import { runOperations } from '../../src/fitting/operation.ts'
import { IDENTITY, isGone, type PositionMap } from '../../src/fitting/position-map.ts'
import type { CorrectionRecord, CorrectionSide, FittingRecord } from '../../src/fitting/record.ts'
import { type Replayed, replay } from '../../src/fitting/replay.ts'
import { halvesOf } from '../../src/pattern/join-pattern.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pieceOf, seamLength } from '../../src/pattern/seam.ts'
import { readPerformer } from '../../src/performer-file.ts'
import { outlineOf } from './measure.ts'
import type { Sample, Written } from './samples/sample.ts'

const read = makeReaders('mm')

/** What the order of two corrections that lie apart may make, mm. */
const COMMUTES = 0.01

/** Left and right may differ by this, mm: lines are fitted alike whichever way they run, but sampled from their starts. */
const MIRRORED = 0.01

/** What a performer file must have; the pattern is not drafted from it here. */
const BODY = {
  'bust girth': '959',
  'waist girth': '767',
  'back waist length': '416',
  'upper arm girth': '299',
  'outer arm length': '580',
}

/** A correction as it is recorded. */
export function recordOf({ do: name, settings }: Written, side: CorrectionSide = 'both'): CorrectionRecord {
  const correction = correctionNamed(name)
  if (!correction) throw new Error(`no correction "${name}"; there are ${CORRECTIONS.map((c) => c.name).join(', ')}`)
  return { do: name, side, settings: correction.settings(read).parse(settings), where: {} }
}

/** What a correction does by itself, before its fitting is trued. */
const RAW = { raw: true }

const ALLOWANCES = { standard: { default: 25.4, neckline: 12.7 }, byMockUp: {} }

/** One fitting with these corrections replayed on the pattern. */
export function attempt(pattern: Pattern, corrections: readonly CorrectionRecord[]): Result<Replayed> {
  const fitting: FittingRecord = { label: 'first fitting', mockUp: 1, corrections, where: {} }
  return replay(pattern, [fitting], ALLOWANCES, RAW)
}

function run(pattern: Pattern, corrections: readonly CorrectionRecord[]): Replayed {
  const done = attempt(pattern, corrections)
  if (!done.ok) throw new Error(done.problems.map((p) => `${p.code}: ${p.actual}; expected ${p.expected}`).join('; '))
  return done.value
}

/**
 * Everything that must hold of a correction, whichever it is: the amount is what a tape finds, zero is nothing, a
 * record replays from JSON and YAML to the same bytes, places keep their order, undo is replay without it, pieces it
 * does not touch are the same objects, it and a correction apart from it may change places, and left is right mirrored.
 */
export function checkCorrection(name: string, sample: Sample, pattern: Pattern, amount: number): void {
  const written: Written = { do: name, settings: sample.written(amount) }
  const record = recordOf(written)
  const done = run(pattern, [record])
  for (const { what, is, should, within } of sample.measure(pattern, done.pattern, amount))
    expect(Math.abs(is - should), `${what} is ${is}, should be ${should}`).toBeLessThanOrEqual(within)
  for (const piece of done.pattern.pieces) {
    expect(outlineOf(piece).gaps, `${piece.id} has a gap`).toBeLessThan(1e-9)
    expect(outlineOf(piece).area).toBeGreaterThan(0)
  }
  changesOnly(sample, pattern, done.pattern)
  zeroIsNothing(name, sample, pattern, record)
  survivesWriting(written, record, pattern, done)
  keepsOrder(pattern, done.versions[1]?.since ?? IDENTITY)
  undoes(sample, pattern, record)
  commutes(sample, pattern, record)
  if (sample.oneSided !== false) mirrors(pattern, written, done)
  inWords(done)
}

/** Pieces named by the sample change, all others are the very same objects. */
function changesOnly({ pieces }: Sample, before: Pattern, after: Pattern): void {
  for (const piece of before.pieces) {
    const same = pieceOf(after, piece.id) === piece
    expect(same, same ? `${piece.id} did not change` : `${piece.id} is another object`).toBe(!pieces.includes(piece.id))
  }
}

function zeroIsNothing(name: string, sample: Sample, pattern: Pattern, record: CorrectionRecord): void {
  const settings = record.settings as Record<string, unknown>
  const zero = sample.zero ? sample.zero(settings, pattern) : { ...settings, by: 0 }
  const operations = correctionNamed(name)?.compile({ worn: pattern, side: 'both' }, zero)
  if (!operations?.ok) throw new Error(`${name} with zero: ${operations?.problems[0]?.actual}`)
  const done = runOperations(pattern, IDENTITY, operations.value)
  if (!done.ok) throw new Error(`${name} with zero: ${done.problems[0]?.actual}`)
  for (const piece of pattern.pieces)
    expect(pieceOf(done.value.pattern, piece.id) === piece, `zero made another ${piece.id}`).toBe(true)
}

function survivesWriting(written: Written, record: CorrectionRecord, pattern: Pattern, done: Replayed): void {
  const bytes = JSON.stringify([done.pattern, done.slip, done.findings])
  const again = run(pattern, [JSON.parse(JSON.stringify(record)) as CorrectionRecord])
  expect(JSON.stringify([again.pattern, again.slip, again.findings])).toBe(bytes)
  const text = stringify({
    performer: 'Ferry Pilot',
    units: 'mm',
    body: BODY,
    fittings: [{ label: 'first fitting', 'mock-up': '1', corrections: [{ do: written.do, ...written.settings }] }],
  })
  const file = readPerformer(text, 'ferry-pilot.yaml', correctionReaders)
  if (!file.ok) throw new Error(file.problems.map((p) => p.actual).join('; '))
  const fittings = file.value.fittings
  const fromFile = replay(pattern, fittings, ALLOWANCES, RAW)
  if (!fromFile.ok) throw new Error('the file does not replay')
  expect(JSON.stringify(fromFile.value.pattern)).toBe(JSON.stringify(done.pattern))
}

/** Along every seam the order of places stays, or is turned round on a mirrored piece; what is gone says why. */
function keepsOrder(pattern: Pattern, map: PositionMap): void {
  for (const piece of pattern.pieces) {
    for (const seam of piece.seams) {
      const length = seamLength(seam)
      const lines = new Map<string, number[]>()
      for (let k = 0; k <= 24; k++) {
        for (const place of map.seam({ piece: piece.id, seam: seam.id, along: (k / 24) * length })) {
          if (isGone(place)) expect(place.gone.length).toBeGreaterThan(5)
          else {
            const key = `${place.piece}, ${place.seam}`
            lines.set(key, [...(lines.get(key) ?? []), place.along])
          }
        }
      }
      for (const [key, places] of lines) {
        const steps = places.slice(1).map((at, i) => at - (places[i] as number))
        const rises = steps.every((step) => step >= -1e-9)
        expect(rises || steps.every((step) => step <= 1e-9), `${seam.id} → ${key}: ${places}`).toBe(true)
      }
    }
  }
}

/** Replay without the last correction is the pattern before it. */
function undoes({ apart }: Sample, pattern: Pattern, record: CorrectionRecord): void {
  const before = apart ? [recordOf(apart)] : []
  const undone = run(pattern, [...before, { ...record, voided: 'pinned on the wrong side' }])
  expect(JSON.stringify(undone.pattern)).toBe(JSON.stringify(run(pattern, before).pattern))
}

function commutes({ apart }: Sample, pattern: Pattern, record: CorrectionRecord): void {
  if (!apart) return
  const other = recordOf(apart)
  const [ab, ba] = [run(pattern, [record, other]).pattern, run(pattern, [other, record]).pattern]
  for (const piece of ab.pieces) same(pieceOf(ba, piece.id), piece, COMMUTES, 'in the other order')
}

/** Right, then left, is both; and the left result is the right one mirrored. */
function mirrors(pattern: Pattern, written: Written, both: Replayed): void {
  const { pattern: sides } = run(pattern, [recordOf(written, 'right'), recordOf(written, 'left')])
  for (const piece of both.pattern.pieces) {
    const halves = halvesOf(sides, piece.id)
    if (!halves) {
      same(pieceOf(sides, piece.id), piece, MIRRORED, 'one side after the other')
      continue
    }
    same(plain(halves.other), plain(halves.drawn), MIRRORED, 'left mirrored')
    same(plain(halves.drawn), plain(piece), MIRRORED, 'one side after the other')
  }
}

/** The grain is marked once on a whole piece; names of lines say nothing of the side. */
function plain(piece: Piece): Piece {
  return { ...piece, lines: piece.lines.filter((line) => line.id !== 'grain') }
}

function same(one: Piece, other: Piece, within: number, how: string): void {
  if (one === other) return
  const { changed, added, removed } = comparePiece(one, other, undefined, within)
  const unlike = [changed, added, removed].flatMap((parts) => Object.values(parts).flat())
  expect(unlike, `${other.id}, ${how}`).toEqual([])
}

/** The slip says what, where and with what; nothing that was not computed. */
function inWords({ slip }: Replayed): void {
  for (const entry of slip) {
    const words = [entry.what, entry.where, entry.leaves ?? ''].join(' ')
    expect(entry.what.length).toBeGreaterThan(8)
    expect(entry.where.length).toBeGreaterThan(3)
    expect(words).not.toMatch(/undefined|NaN|\[object|\d\.\d{4}/)
  }
}
