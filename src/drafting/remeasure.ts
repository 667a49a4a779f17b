import { atan2 } from '../base/trig.ts'
import type { MeasureName } from '../body/measure.ts'
import { levelCrossings } from '../geometry/level-crossings.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { between, distance, type Point, rotateAbout, subtract, turnBetween } from '../geometry/point.ts'
import type { Dart, Line, Piece } from '../pattern/piece.ts'
import { landmarkPoint, seamEnd, seamLength, seamOf, seamStart } from '../pattern/seam.ts'
import { ARMSCYE } from './defaults.ts'
import { closedWaistHeight } from './waist-seam.ts'

/** The pieces of one side of the body as drafted: right back, left front and right sleeve, face up. */
export interface DraftedPieces {
  readonly back: Piece
  readonly front: Piece
  readonly sleeve: Piece
}

/**
 * Measures the flat pattern again, darts closed, as a tape would: mm round the body or the limb, the shoulder
 * slope in radians. Only what the pattern shows; girths of half a bodice are doubled.
 */
export function remeasure({ back, front, sleeve }: DraftedPieces): Readonly<Partial<Record<MeasureName, number>>> {
  const bust = landmark(front, 'bust point')
  const neck = landmark(front, 'neck point')
  const underarm = (piece: Piece) => landmark(piece, 'underarm')
  const nape = seamEnd(seamOf(back, 'neckline'))
  const arm = remeasureArm(sleeve)
  return {
    'neck base girth': 2 * (seamLength(seamOf(back, 'neckline')) + seamLength(seamOf(front, 'neckline'))),
    'shoulder length': seamLength(seamOf(front, 'shoulder')),
    'shoulder slope': (slope(back) + slope(front)) / 2,
    'bust girth': 2 * (underarm(back).x + underarm(front).x),
    'waist girth': 2 * (seamLength(seamOf(back, 'waist')) + seamLength(seamOf(front, 'waist'))),
    'back waist length': distance(nape, seamStart(seamOf(back, 'waist'))),
    'scye depth': nape.y - underarm(back).y,
    'back width': widthAcross(back),
    'front width': widthAcross(front),
    'neck to bust point': distance(neck, bust),
    'bust point width': 2 * bust.x,
    'front waist length': distance(neck, bust) + bust.y - closedWaistHeight(closedWaist(front), bust.x),
    'front neck to waist': seamLength(seamOf(front, 'center front')),
    'armscye girth': seamLength(seamOf(back, 'armscye')) + seamLength(seamOf(front, 'armscye')),
    ...arm,
  }
}

function remeasureArm(sleeve: Piece): Readonly<Partial<Record<MeasureName, number>>> {
  const biceps = lineOf(sleeve, 'biceps line')
  const elbow = lineOf(sleeve, 'elbow line')
  const forearm = lineOf(sleeve, 'forearm line')
  const crown = seamEnd(seamOf(sleeve, 'front cap'))
  const frontElbow = startOf(elbow)
  // The elbow darts open half of their wedge above the elbow line and half below it: neither half is arm.
  const wedge = wedgeAngles(sleeve)
  const level = rotateAbout(endOf(elbow), frontElbow, -wedge.upper)
  const toElbow = crown.y - heightOnLine(frontElbow, level, crown.x)
  const wrist = endOf(forearm)
  const lowerCenter = rotateAbout(between(frontElbow, endOf(elbow), 0.5), frontElbow, wedge.lower)
  return {
    'upper arm girth': pathLength(biceps),
    'elbow girth': pathLength(elbow),
    'wrist girth': seamLength(seamOf(sleeve, 'wrist')),
    'shoulder to elbow': toElbow,
    'outer arm length': toElbow + distance(lowerCenter, wrist),
  }
}

/** By how much each elbow dart turns what lies below it about the front elbow point. */
function wedgeAngles(sleeve: Piece): { upper: number; lower: number } {
  const pivot = startOf(lineOf(sleeve, 'elbow line'))
  const angle = (dart: Dart | undefined) =>
    dart ? turnBetween(subtract(dart.mouth[0], pivot), subtract(dart.mouth[1], pivot)) : 0
  const darts = sleeve.darts.filter((dart) => dart.seam === 'back underarm seam')
  // The elbow line halves one dart and runs between two.
  if (darts.length === 1) return { upper: angle(darts[0]) / 2, lower: angle(darts[0]) / 2 }
  return { upper: angle(darts[0]), lower: angle(darts[1]) }
}

/** Twice the distance from the center to the armscye at the height of the width point. */
function widthAcross(piece: Piece): number {
  const armscye = seamOf(piece, 'armscye')
  const height = between(seamStart(armscye), seamEnd(armscye), ARMSCYE.widthPoint).y
  const [at] = levelCrossings(armscye.parts.flat(), height)
  return at ? 2 * at.x : Number.NaN
}

function slope(piece: Piece): number {
  // The part next to the neck: a dart's opening turns only what lies outside it.
  const shoulder = seamOf(piece, 'shoulder').parts.at(-1) as Path
  const tip = startOf(shoulder)
  const neck = endOf(shoulder)
  return atan2(neck.y - tip.y, tip.x - neck.x)
}

/** The waist seam with its darts, as the tape finds it. */
function closedWaist(piece: Piece): { parts: readonly Path[]; darts: readonly Dart[] } {
  return { parts: seamOf(piece, 'waist').parts, darts: piece.darts.filter((dart) => dart.seam === 'waist') }
}

function heightOnLine(a: Point, b: Point, x: number): number {
  return between(a, b, (x - a.x) / (b.x - a.x)).y
}

function lineOf(piece: Piece, id: string): Path {
  const found: Line | undefined = piece.lines.find((l) => l.id === id)
  if (!found) throw new RangeError(`no line "${id}" on ${piece.id}`)
  return found.path
}

function landmark(piece: Piece, id: string): Point {
  const found = piece.landmarks.find((l) => l.id === id)
  if (!found) throw new RangeError(`no landmark "${id}" on ${piece.id}`)
  return landmarkPoint(piece, found)
}
