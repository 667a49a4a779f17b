import { rounded } from '../../base/rounded.ts'
import type { LengthUnit } from '../../base/units.ts'
import { distance, type Point } from '../../geometry/point.ts'
import type { Piece } from '../../pattern/piece.ts'
import { landmarkPoint, notchPoints, seamStart } from '../../pattern/seam.ts'

/** What the page's script is given beside the drawing; mm on the page, y down. */
export interface ViewData {
  readonly units: LengthUnit
  readonly versions: readonly { readonly label: string; readonly marks: readonly ViewedMark[] }[]
}

/** A named point that can be measured from and to. */
export interface ViewedMark {
  readonly piece: string
  readonly name: string
  readonly x: number
  readonly y: number
  /** Where it lies on a seam, mm of sewn length; absent inside a piece. */
  readonly seam?: string
  readonly along?: number
}

/** As in `pattern/1`: engines differ in the last bits of a sine. */
const DECIMALS = 6

/** A corner nearer than this to a mark has its name, mm. */
const SAME_MARK = 0.5

interface Named {
  readonly name: string
  readonly at: Point
  readonly seam?: string
  readonly along?: number
}

/** Every point of a piece that has a name: notches, landmarks, points of darts, corners; `place` puts it on the page. */
export function marksOf(piece: Piece, place: (p: Point) => Point): ViewedMark[] {
  const own = [
    ...notchesOf(piece),
    ...landmarksOf(piece),
    ...piece.darts.map(({ id, point: at }) => ({ name: `${id} point`, at })),
  ]
  const corners = cornersOf(piece).filter((corner) => !own.some(({ at }) => distance(at, corner.at) < SAME_MARK))
  const all: readonly Named[] = [...own, ...corners]
  return all.map(({ name, at, ...on }) => {
    const twice = all.filter((other) => other.name === name).length > 1
    const { x, y } = place(at)
    return {
      piece: piece.id,
      name: twice && on.seam !== undefined ? `${name}, ${on.seam}` : name,
      x: rounded(x, DECIMALS),
      y: rounded(y, DECIMALS),
      ...(on.seam === undefined || on.along === undefined ? {} : { seam: on.seam, along: rounded(on.along, DECIMALS) }),
    }
  })
}

function notchesOf(piece: Piece): Named[] {
  return piece.notches.flatMap((notch) =>
    notchPoints(piece, notch).map((at, k) => ({
      name: k === 0 ? notch.id : `${notch.id}, mark ${k + 1}`,
      at,
      seam: notch.seam,
      along: notch.along + k * (notch.step ?? 0),
    })),
  )
}

function landmarksOf(piece: Piece): Named[] {
  return piece.landmarks.map((landmark) => {
    const at = landmarkPoint(piece, landmark)
    return 'at' in landmark
      ? { name: landmark.id, at }
      : { name: landmark.id, at, seam: landmark.seam, along: landmark.along }
  })
}

function cornersOf(piece: Piece): Named[] {
  return piece.seams.map((seam, k) => {
    const before = piece.seams.at(k - 1)?.id ?? ''
    return { name: `corner of ${before} and ${seam.id}`, at: seamStart(seam), seam: seam.id, along: 0 }
  })
}
