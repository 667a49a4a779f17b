import { rounded } from '../base/rounded.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { cutLine } from '../pattern/cut-line.ts'
import { easeStitching } from '../pattern/ease-stitching.ts'
import type { Join, JoinPart, Pattern } from '../pattern/pattern.ts'
import type { Landmark, Notch, Piece, Side } from '../pattern/piece.ts'
import { landmarkPoint, notchPoints, pointOnSeam, seamOf } from '../pattern/seam.ts'
import type { Estimate } from '../sheets/estimate-words.ts'
import { pathText } from './path-text.ts'

/** Six decimals keep sums over a seam far inside the 0.01 mm that drafted seams promise to agree to. */
const DECIMALS = 6

/** x and y, mm, y up. */
export type JsonPoint = readonly [number, number]

/** The contract `pattern/1`: mm, y up. Fields may be added, never renamed. */
export interface PatternJson {
  /** Name of the contract. */
  readonly scyewright: 'pattern/1'
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production; empty where there is none. */
  readonly production: string
  /** `draft`, or the label of the last fitting applied. */
  readonly version: string
  /** Of every number. */
  readonly unit: 'mm'
  /** The axis that points up. */
  readonly up: 'y'
  /** Measures that nobody took, in words; absent where all were taken. */
  readonly estimates?: readonly Estimate[]
  /** All pieces. */
  readonly pieces: readonly PieceJson[]
  /** What is sewn to what; the same as in memory. */
  readonly joins: readonly Join[]
}

/** A piece of `pattern/1`. */
export interface PieceJson {
  /** Id of the piece. */
  readonly id: string
  /** As it is printed. */
  readonly name: string
  /** Which side of the body it is for, or how it covers both. */
  readonly side: Side
  /** How many are cut. */
  readonly cut: number
  /** Stitching lines all the way round, anticlockwise, touching end to end. */
  readonly seams: readonly {
    /** Id of the seam. */
    readonly id: string
    /** Paths of absolute M, L and C; one, or one between each two dart mouths. */
    readonly parts: readonly string[]
    /** Seam allowance; 0 on a fold. */
    readonly allowance: number
  }[]
  /** The cutting line, a closed path of absolute M, L, C and Z. */
  readonly cutLine: string
  /** Darts, straight from mouth to point. */
  readonly darts: readonly {
    /** Id of the dart. */
    readonly id: string
    /** Id of the seam that it opens on. */
    readonly seam: string
    /** Where its legs meet the seam, in the seam's order. */
    readonly mouth: readonly [JsonPoint, JsonPoint]
    /** Where its legs meet inside. */
    readonly point: JsonPoint
  }[]
  /** Notches on the seams. */
  readonly notches: readonly NotchJson[]
  /** Grain and balance lines. */
  readonly lines: readonly {
    /** Id of the line. */
    readonly id: string
    /** A path of absolute M, L and C. */
    readonly path: string
  }[]
  /** Points that have a name. */
  readonly landmarks: readonly LandmarkJson[]
}

/** A notch of `pattern/1`. */
export interface NotchJson {
  /** Id of the notch. */
  readonly id: string
  /** Id of its seam. */
  readonly seam: string
  /** Its first mark. */
  readonly at: JsonPoint
  /** Number of marks side by side. */
  readonly marks: number
  /** mm of sewn length from the seam's start. */
  readonly along: number
  /** mm along the seam from one mark to the next. */
  readonly step?: number
  /** Every mark, `at` first. */
  readonly points: readonly JsonPoint[]
}

/** A landmark of `pattern/1`. */
export interface LandmarkJson {
  /** Id of the landmark. */
  readonly id: string
  /** The point. */
  readonly at: JsonPoint
  /** Id of the seam that it lies on, if it lies on one. */
  readonly seam?: string
  /** mm of sewn length from the start of that seam. */
  readonly along?: number
}

/** What `pattern.json` says besides the pattern. */
export interface PatternJsonOptions {
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string
  /** Which replay this is: `draft`, or the label of the last fitting applied. */
  readonly version: string
  /** Measures that nobody took, in words. */
  readonly estimates?: readonly Estimate[]
}

/** The pattern as the `pattern/1` document; every number rounded to 1e-6 mm, cutting lines computed here. */
export function patternJson(pattern: Pattern, options: PatternJsonOptions): PatternJson {
  return {
    scyewright: 'pattern/1',
    performer: options.performer,
    production: options.production ?? '',
    version: options.version,
    unit: 'mm',
    up: 'y',
    ...(options.estimates?.length ? { estimates: options.estimates } : {}),
    pieces: pattern.pieces.map(pieceJson),
    joins: pattern.joins.map(joinJson),
  }
}

/** The text of a document, two spaces deep, ending in a line break. */
export function patternJsonText(json: PatternJson): string {
  return `${JSON.stringify(json, null, 2)}\n`
}

function pieceJson(piece: Piece): PieceJson {
  return {
    id: piece.id,
    name: piece.name,
    side: piece.side,
    cut: piece.cut,
    seams: piece.seams.map((s) => ({ id: s.id, parts: s.parts.map(open), allowance: number(s.allowance) })),
    cutLine: pathText(cutLine(piece), { decimals: DECIMALS, closed: true }),
    darts: piece.darts.map((d) => ({
      id: d.id,
      seam: d.seam,
      mouth: [pair(d.mouth[0]), pair(d.mouth[1])],
      point: pair(d.point),
    })),
    notches: piece.notches.map((n) => notchJson(piece, n)),
    lines: [...piece.lines, ...easeStitching(piece)].map((l) => ({ id: l.id, path: open(l.path) })),
    landmarks: piece.landmarks.map((l) => landmarkJson(piece, l)),
  }
}

function notchJson(piece: Piece, notch: Notch): NotchJson {
  return {
    id: notch.id,
    seam: notch.seam,
    at: pair(pointOnSeam(seamOf(piece, notch.seam), notch.along)),
    marks: notch.marks,
    along: number(notch.along),
    ...(notch.step === undefined ? {} : { step: number(notch.step) }),
    points: notchPoints(piece, notch).map(pair),
  }
}

function landmarkJson(piece: Piece, landmark: Landmark): LandmarkJson {
  const at = pair(landmarkPoint(piece, landmark))
  if ('at' in landmark) return { id: landmark.id, at }
  return { id: landmark.id, at, seam: landmark.seam, along: number(landmark.along) }
}

function joinJson(join: Join): Join {
  const { min, target, max } = join.ease
  return {
    id: join.id,
    a: join.a.map(partJson),
    b: join.b.map(partJson),
    ease: { min: number(min), target: number(target), max: number(max) },
  }
}

function partJson(part: JoinPart): JoinPart {
  return {
    piece: part.piece,
    seam: part.seam,
    reversed: part.reversed,
    ...(part.from === undefined ? {} : { from: number(part.from) }),
    ...(part.to === undefined ? {} : { to: number(part.to) }),
  }
}

function open(path: Path): string {
  return pathText(path, { decimals: DECIMALS })
}

function pair(p: Point): JsonPoint {
  return [number(p.x), number(p.y)]
}

function number(value: number): number {
  return rounded(value, DECIMALS)
}
