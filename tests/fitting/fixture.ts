import { line } from '../../src/geometry/cubic.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import { levelCrossings } from '../../src/geometry/level-crossings.ts'
import { endOf, type Path, polyline, reversePath, startOf } from '../../src/geometry/path.ts'
import { directionAlong, pathLength, splitPath } from '../../src/geometry/path-length.ts'
import { add, along, heading, leftOf, type Point, point, scale, subtract, unit } from '../../src/geometry/point.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Dart, Line, Piece, Seam } from '../../src/pattern/piece.ts'

/** A body of the tests: the few sizes that shape a plausible sleeve and bodice, mm. */
export interface Shape {
  readonly biceps: number
  readonly capHeight: number
  readonly shift: number
  readonly intake: number
}

const SHAPE: Shape = { biceps: 350, capHeight: 135, shift: 3, intake: 16 }

const ALLOWANCE = 25.4

/** A sleeve and a bodice drawn by hand for the tests of fittings: plausible, fair, and not the real draft. */
export function fixturePattern(shape: Shape = SHAPE): Pattern {
  const sleeve = fixtureSleeve(shape)
  const front = bodiceHalf('front')
  const back = bodiceHalf('back')
  const whole = { min: -300, target: 0, max: 300 }
  return {
    pieces: [front, back, sleeve],
    joins: [
      join('front cap', ['sleeve', 'front cap', false], ['bodice front', 'armscye', false], whole),
      join('back cap', ['sleeve', 'back cap', true], ['bodice back', 'armscye', false], whole),
      join('underarm seam', ['sleeve', 'back underarm seam', false], ['sleeve', 'front underarm seam', true], whole),
      join('shoulder', ['bodice back', 'shoulder', true], ['bodice front', 'shoulder', true], whole),
      join('side seam', ['bodice back', 'side seam', true], ['bodice front', 'side seam', true], whole),
    ],
  }
}

function join(
  id: string,
  a: [string, string, boolean],
  b: [string, string, boolean],
  ease: Pattern['joins'][number]['ease'],
) {
  const part = ([piece, seam, reversed]: [string, string, boolean]) => ({ piece, seam, reversed })
  return { id, a: [part(a)], b: [part(b)], ease }
}

function fixtureSleeve({ biceps, capHeight, shift, intake }: Shape): Piece {
  const half = biceps / 2
  const frontUnderarm = point(half - shift, 0)
  const backUnderarm = point(-half - shift, 0)
  const up = unit(point(30, 190))
  const frontElbow = along(frontUnderarm, up, -190)
  const frontWrist = add(frontElbow, point(-12, -215))
  const crown = point(0, capHeight)
  // Front cap: hollow square to the underarm seam, then round to the level crown.
  const capSide = (from: Point, toward: 1 | -1): Path => {
    const leave = toward === 1 ? leftOf(up) : point(-leftOf(up).x, leftOf(up).y)
    return hobbySpline([
      { at: from, direction: leave },
      { at: add(from, point(-toward * half * 0.3, capHeight * 0.2)) },
      { at: add(from, point(-toward * half * 0.52, capHeight * 0.62)) },
      { at: crown, direction: point(-toward, 0) },
    ])
  }
  const frontCap = capSide(frontUnderarm, 1)
  const backCap = reversePath(capSide(backUnderarm, -1))
  const frontSeam = hobbySpline([
    { at: frontWrist, direction: point(0.05, 1) },
    { at: frontElbow },
    { at: frontUnderarm, direction: up },
  ])
  const down = point(up.x, -up.y)
  const backElbow = add(backUnderarm, scale(down, 192))
  const outline = hobbySpline([
    { at: backUnderarm, direction: down },
    { at: backElbow },
    { at: add(backElbow, point(14, -215)), direction: point(0.06, -1) },
  ])
  const { parts, darts } = withDarts(outline, [175, 209], intake, 'back underarm seam', 70)
  const backWrist = endOf(parts[parts.length - 1] as Path)
  const frontLength = pathLength(frontCap)
  const backLength = pathLength(backCap)
  return {
    id: 'sleeve',
    name: 'sleeve',
    side: 'pair',
    cut: 2,
    seams: [
      seam('wrist', [[line(backWrist, frontWrist)]]),
      seam('front underarm seam', [frontSeam]),
      seam('front cap', [frontCap]),
      seam('back cap', [backCap]),
      seam('back underarm seam', parts),
    ],
    darts,
    notches: [
      { id: 'front notch', seam: 'front cap', along: 70, marks: 1 },
      { id: 'shoulder notch', seam: 'front cap', along: frontLength, marks: 1 },
      { id: 'back notch', seam: 'back cap', along: backLength - 68, marks: 2, step: -12 },
      { id: 'elbow notch', seam: 'front underarm seam', along: pathLength(frontSeam) - 190, marks: 1 },
    ],
    lines: [
      { id: 'grain', path: [line(point(0, capHeight * 0.6), point(0, -170))] },
      levelLine('cap line', [frontCap, backCap], (capHeight * 2) / 3),
      { id: 'biceps line', path: [line(backUnderarm, frontUnderarm)] },
      { id: 'elbow line', path: [line(frontElbow, add(backElbow, point(0, 0)))] },
    ],
    landmarks: [
      { id: 'underarm', seam: 'front cap', along: 0 },
      { id: 'underarm', seam: 'back cap', along: backLength },
    ],
  }
}

function levelLine(id: string, edges: readonly Path[], height: number): Line {
  const xs = edges.flatMap((edge) => levelCrossings(edge, height)).map((p) => p.x)
  return { id, path: [line(point(Math.min(...xs), height), point(Math.max(...xs), height))] }
}

/** Opens a dart at each place of a seam: what follows turns about the dart's point by its angle. */
function withDarts(whole: Path, places: readonly number[], intake: number, seamId: string, length: number) {
  const parts: Path[] = []
  const darts: Dart[] = []
  let rest = whole
  let done = 0
  places.forEach((place, i) => {
    const [before, after] = splitPath(rest, place - done)
    done = place
    const mouth = endOf(before)
    const tangent = directionAlong(before, pathLength(before))
    const inward = leftOf(tangent)
    const tip = add(mouth, scale(inward, length))
    // Anticlockwise round the piece, so opening a wedge turns the rest anticlockwise about the tip.
    const angle = 2 * Math.asin(intake / 2 / length)
    const turned = after.map((c) => ({
      p0: turnAbout(c.p0, tip, angle),
      p1: turnAbout(c.p1, tip, angle),
      p2: turnAbout(c.p2, tip, angle),
      p3: turnAbout(c.p3, tip, angle),
    }))
    parts.push(before)
    darts.push({ id: `elbow dart ${i + 1}`, seam: seamId, mouth: [mouth, startOf(turned)], point: tip })
    rest = turned
  })
  parts.push(rest)
  return { parts, darts }
}

function turnAbout(p: Point, center: Point, angle: number): Point {
  const d = subtract(p, center)
  const h = heading(angle)
  return point(center.x + d.x * h.x - d.y * h.y, center.y + d.x * h.y + d.y * h.x)
}

function seam(id: string, parts: readonly Path[], allowance = ALLOWANCE): Seam {
  return { id, parts, allowance }
}

function bodiceHalf(side: 'front' | 'back'): Piece {
  const id = `bodice ${side}`
  const width = side === 'front' ? 232 : 240
  const underarm = point(width, side === 'front' ? 212 : 208)
  const waistSide = point(width - 22, 0)
  const neck = side === 'front' ? point(70, 425) : point(72, 430)
  const shoulder = side === 'front' ? point(185, 378) : point(190, 392)
  const center = point(0, side === 'front' ? 345 : 412)
  const up = unit(subtract(underarm, waistSide))
  const shoulderSeam = unit(subtract(neck, shoulder))
  const armscye = hobbySpline([
    { at: underarm, direction: leftOf(up) },
    { at: point(side === 'front' ? 172 : 184, 285) },
    { at: shoulder, direction: { x: shoulderSeam.y, y: -shoulderSeam.x } },
  ])
  const neckline = hobbySpline([
    { at: neck, direction: leftOf(shoulderSeam) },
    { at: center, direction: point(-1, 0) },
  ])
  const waist = hobbySpline([
    { at: point(0, 0), direction: point(1, 0) },
    { at: waistSide, direction: point(up.y, -up.x) },
  ])
  const darted = withDarts(waist, [95], 22, 'waist', 120)
  // The dart turns the rest of the waist: the side seam goes on from where it now ends.
  const waistEnd = endOf(darted.parts[darted.parts.length - 1] as Path)
  const length = pathLength(armscye)
  const centerSeam = side === 'front' ? 'center front' : 'center back'
  return {
    id,
    name: id,
    side: side === 'front' ? 'fold' : 'pair',
    cut: side === 'front' ? 1 : 2,
    seams: [
      seam('waist', darted.parts),
      seam('side seam', [polyline([waistEnd, underarm])]),
      seam('armscye', [armscye]),
      seam('shoulder', [polyline([shoulder, neck])]),
      seam('neckline', [neckline], 12.7),
      seam(centerSeam, [polyline([center, point(0, 0)])], side === 'front' ? 0 : ALLOWANCE),
    ],
    darts: darted.darts.map((dart) => ({ ...dart, id: 'waist dart' })),
    notches: [
      {
        id: `${side} notch`,
        seam: 'armscye',
        along: 70,
        marks: side === 'front' ? 1 : 2,
        ...(side === 'back' ? { step: 12 } : {}),
      },
      { id: 'side notch', seam: 'side seam', along: 100, marks: 1 },
    ],
    lines: [
      { id: 'grain', path: [line(point(60, 60), point(60, 330))] },
      { id: 'underarm line', path: [line(point(0, underarm.y), underarm)] },
    ],
    landmarks: [
      { id: 'underarm', seam: 'armscye', along: 0 },
      { id: 'shoulder point', seam: 'armscye', along: length },
      { id: 'neck point', seam: 'shoulder', along: Math.hypot(neck.x - shoulder.x, neck.y - shoulder.y) },
      ...(side === 'front' ? [{ id: 'bust point', at: point(95, 250) }] : []),
    ],
  }
}
