import type { LengthUnit } from '../../base/units.ts'
import type { Point } from '../../geometry/point.ts'
import type { Piece } from '../../pattern/piece.ts'
import { landmarkPoint, notchPoints, pointOnSeam, seamOf, seamStart } from '../../pattern/seam.ts'

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

/** Every point of a piece that has a name: notches, landmarks, corners; `place` puts it on the page. */
export function marksOf(piece: Piece, place: (p: Point) => Point): ViewedMark[] {
  const marks: ViewedMark[] = []
  const add = (name: string, at: Point, seam?: string, along?: number) => {
    if (marks.some((mark) => mark.name === name)) return
    const on = seam === undefined || along === undefined ? {} : { seam, along }
    marks.push({ piece: piece.id, name, ...place(at), ...on })
  }
  for (const notch of piece.notches) {
    notchPoints(piece, notch).forEach((at, k) => {
      const name = k === 0 ? notch.id : `${notch.id}, mark ${k + 1}`
      add(name, at, notch.seam, notch.along + k * (notch.step ?? 0))
    })
  }
  for (const landmark of piece.landmarks) {
    const at = landmarkPoint(piece, landmark)
    if ('at' in landmark) add(landmark.id, at)
    else add(landmark.id, pointOnSeam(seamOf(piece, landmark.seam), landmark.along), landmark.seam, landmark.along)
  }
  for (const dart of piece.darts) add(`${dart.id} point`, dart.point)
  piece.seams.forEach((seam, k) => {
    const before = piece.seams[(k + piece.seams.length - 1) % piece.seams.length]?.id ?? ''
    add(`corner of ${before} and ${seam.id}`, seamStart(seam), seam.id, 0)
  })
  return marks
}
