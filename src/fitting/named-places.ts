import { SAME_POINT } from '../geometry/defaults.ts'
import { endOf, startOf } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'
import { centerName } from '../pattern/close-fold.ts'
import { landmarkPoint, pointOnSeam, seamOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { nextSeam, previousSeam, type SeamRun, type Stretch } from './seam-run.ts'

/** A place on a run that has a name. */
export interface NamedPlace {
  readonly name: string
  readonly at: number
}

/** Corners of the pieces by the two seams that meet there, besides the landmarks that the draft marks. */
const CORNERS: readonly { readonly seams: readonly [string, string]; readonly name: string }[] = [
  { seams: ['front cap', 'back cap'], name: 'crown' },
  { seams: ['front cap', 'front underarm seam'], name: 'underarm' },
  { seams: ['back cap', 'back underarm seam'], name: 'underarm' },
  { seams: ['side seam', 'armscye'], name: 'underarm' },
  { seams: ['armscye', 'shoulder'], name: 'shoulder point' },
  { seams: ['armscye', 'shoulder'], name: 'shoulder notch' },
  { seams: ['shoulder', 'neckline'], name: 'neck point' },
]

/** Marks nearer than this to a corner are at the corner, mm. */
const AT_CORNER = 0.01

/**
 * Everything on a run that a draper can name: notches and landmarks on its seams, those of the neighbours that lie
 * in its corners, the corners themselves by their trade names, and the end where a neighbour begins by the
 * neighbour's name (`wrist`, `waist`). In order; one name may occur twice (`underarm` on a whole cap).
 */
export function namedPlaces(run: SeamRun): NamedPlace[] {
  const { piece } = run
  const places: (NamedPlace & { readonly rank: number })[] = []
  const add = (name: string, at: number) => {
    const here = places.filter((p) => Math.abs(p.at - at) < AT_CORNER)
    // Names of one place stay in this order, whatever rounding makes of their positions.
    if (!here.some((p) => p.name === name)) places.push({ name, at, rank: here[0]?.rank ?? at })
  }
  const corners = runCorners(run)
  const addMark = (id: string, seam: string, along: number, at: () => Point) => {
    const start = run.seamStarts.get(seam)
    if (start !== undefined) {
      add(baseName(id), start + along)
      return
    }
    const corner = corners.find((c) => c.neighbours.includes(seam) && distance(c.point, at()) < AT_CORNER)
    if (corner) add(baseName(id), corner.at)
  }
  for (const notch of piece.notches) {
    // On a turned sleeve the mark that meets the side seam is elsewhere; the place of this name stays the corner.
    if (baseName(notch.id) === 'underarm') continue
    addMark(notch.id, notch.seam, notch.along, () => pointOnSeam(seamOf(piece, notch.seam), notch.along))
  }
  for (const landmark of piece.landmarks) {
    if ('seam' in landmark) addMark(landmark.id, landmark.seam, landmark.along, () => landmarkPoint(piece, landmark))
  }
  for (const corner of corners) {
    const [one, other] = corner.neighbours.map(baseName)
    // Left and right of one seam meet on the center of a piece that was opened.
    if (one === other) {
      add(centerName(piece), corner.at)
      continue
    }
    for (const { seams, name } of CORNERS)
      if (seams.includes(one ?? '') && seams.includes(other ?? '')) add(name, corner.at)
    for (const id of corner.neighbours) if (!run.seamStarts.has(id)) add(baseName(id), corner.at)
  }
  return places.sort((a, b) => a.rank - b.rank).map(({ name, at }) => ({ name, at }))
}

/** The places of the notches on a run: where a correction tapers to unless told otherwise. */
export function notchPlaces(run: SeamRun): number[] {
  return run.piece.notches
    .flatMap((notch) => {
      const start = run.seamStarts.get(notch.seam)
      return start === undefined ? [] : [start + notch.along]
    })
    .filter((at) => at > SAME_POINT && at < run.length - SAME_POINT)
    .sort((a, b) => a - b)
}

interface Corner {
  readonly at: number
  readonly point: Point
  /** The seams that meet there. */
  readonly neighbours: readonly string[]
}

/** The ends of the run and the corners between its seams. */
function runCorners(run: SeamRun): Corner[] {
  const first = run.stretches[0] as Stretch
  const last = run.stretches[run.stretches.length - 1] as Stretch
  const inside = run.seams.slice(1).map((seam, i): Corner => {
    const at = run.seamStarts.get(seam.id) as number
    const stretch = run.stretches.find((s) => s.seam === seam.id) as Stretch
    return { at, point: startOf(stretch.path), neighbours: [run.seams[i]?.id as string, seam.id] }
  })
  return [
    { at: 0, point: startOf(first.path), neighbours: [previousSeam(run.piece, first.seam).id, first.seam] },
    ...inside,
    { at: run.length, point: endOf(last.path), neighbours: [last.seam, nextSeam(run.piece, last.seam).id] },
  ]
}
