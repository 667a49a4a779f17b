import type { Problem } from '../base/problem.ts'
import { failure, type Result } from '../base/result.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { inSetting } from './in-setting.ts'
import { type PatternOperation, runOperations, unchanged } from './operation.ts'
import { isGone, type PositionMap, type SeamPosition } from './position-map.ts'
import type { CorrectionSide } from './record.ts'
import { type SeamLine, type SeamName, seamLines } from './seam-names.ts'
import type { Anchor, Station } from './shift-profile.ts'
import { shiftSeam } from './shift-seam.ts'
import { splitSides } from './split-sides.ts'

/** A place of the mock-up as worn, and by how much it moves. */
export interface ShiftStation extends SeamPosition {
  /** mm along the outward normal; negative moves it inwards. */
  readonly amount: number
  /** Only at an end of the line: how the amount changes from there into the line, mm per mm. */
  readonly inward?: number
}

/** A shift of a named stitching line, its places given on the mock-up as worn. */
export interface ShiftLineRequest {
  /** The line by its trade name. */
  readonly seam: SeamName
  /** The wearer's side, or both. */
  readonly side: CorrectionSide
  /** Where it moves and how far; between them it runs smoothly. */
  readonly stations: readonly ShiftStation[]
  /** Where it stays. */
  readonly anchors: readonly SeamPosition[]
}

/**
 * The operations that shift a named line: pieces that it touches are split first when it is for one side; then each
 * line that has a station is shifted (`shiftSeam`), with every place carried on from the mock-up as worn to where it is now.
 * Problems: a place that is gone, and those of `shiftSeam`.
 */
export function shiftLine(request: ShiftLineRequest): PatternOperation[] {
  const pieces = [...new Set(request.stations.map((station) => station.piece))]
  return [...splitsFor(request.side, pieces), (pattern, since) => shiftEach(pattern, since, request)]
}

/** The operations that part left and right on the pieces where a correction is for one side only. */
export function splitsFor(side: CorrectionSide, pieces: readonly string[]): PatternOperation[] {
  if (side === 'both') return []
  return pieces.map((id) => (pattern) => {
    const piece = pattern.pieces.find((p) => p.id === id)
    return { ok: true, value: piece ? splitSides(pattern, id) : unchanged(pattern) }
  })
}

function shiftEach(pattern: Pattern, since: PositionMap, request: ShiftLineRequest) {
  const operations = seamLines(pattern, request.seam, request.side).map(
    (line): PatternOperation =>
      (now, sinceWorn) => {
        const stations = inSetting('at', carried(request.stations, sinceWorn, line, toStation))
        if (!stations.ok) return stations
        const anchors = inSetting(
          'taper to',
          carried(request.anchors, sinceWorn, line, (_, at): Anchor => at),
        )
        if (!anchors.ok) return anchors
        if (stations.value.length === 0) return { ok: true, value: unchanged(now) }
        return shiftSeam(now, {
          piece: line.piece,
          seams: line.seams,
          stations: stations.value,
          anchors: anchors.value,
        })
      },
  )
  return runOperations(pattern, since, operations)
}

function toStation({ amount, inward }: ShiftStation, at: Anchor, line: SeamLine): Station {
  if (inward === undefined) return { ...at, amount }
  // Seams run the other way on a mirrored piece: what points into the line is told by its end.
  return { ...at, amount, slope: at.seam === line.seams[0] && at.along === 0 ? inward : -inward }
}

/** The places that now lie on a line; a problem when one is gone. */
export function carried<P extends SeamPosition, T>(
  places: readonly P[],
  since: PositionMap,
  line: SeamLine,
  make: (place: P, at: Anchor, line: SeamLine) => T,
): Result<T[]> {
  const found: T[] = []
  for (const place of places) {
    for (const moved of since.seam(place)) {
      if (isGone(moved)) return failure(placeGone(place, moved.gone))
      if (moved.piece !== line.piece || !line.seams.includes(moved.seam)) continue
      found.push(make(place, { seam: moved.seam, along: moved.along }, line))
    }
  }
  return { ok: true, value: found }
}

function placeGone(place: SeamPosition, reason: string): Problem {
  return {
    code: 'place-gone',
    where: { piece: place.piece, seam: place.seam },
    actual: `the place ${place.along.toFixed(1)} mm along the ${place.seam} is gone: ${reason}`,
    expected: 'a place that earlier corrections of the same fitting left on the pattern',
    hint: 'name another place, or put this correction before the one that removed it',
  }
}
