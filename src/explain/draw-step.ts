import { atan2 } from '../base/trig.ts'
import { type Box, bounds, joinBoxes } from '../geometry/bounds.ts'
import { flatten } from '../geometry/flatten.ts'
import { type Path, polyline } from '../geometry/path.ts'
import { add, along, between, heading, leftOf, type Point, point, subtract, unit } from '../geometry/point.ts'
import type { Picture } from '../sheets/booklet.ts'
import { inkOf } from '../sheets/ink.ts'
import { centeredText } from '../sheets/place-text.ts'
import { openRoom } from '../sheets/room.ts'
import type { FillMark, Mark, MarkKind, TextMark } from '../sheets/scene.ts'
import { ASCENT, DESCENT, textWidth } from '../sheets/text-width.ts'
import { clipLine } from './clip-line.ts'
import type { Step, StepPoint } from './step.ts'

/** The largest picture, mm. */
const MOST = { width: 68, height: 72 } as const
/** Free room round what is drawn, for letters, mm on the picture. */
const BORDER = 6
/** At least so much of the paper is shown, mm of the draft. */
const LEAST_SHOWN = 130
/** A curve is drawn within this, mm on the picture. */
const TOLERANCE = 0.03

const LETTER = { new: 3.6, earlier: 3 } as const
const DOT = { new: 0.7, earlier: 0.45 } as const
/** How far a letter stands from its point, mm, the nearest first. */
const AWAY = [1.1, 1.8, 2.6, 3.6, 5, 7]
/** Clear room round a letter, mm. */
const CLEARANCE = 0.35

const EIGHTHS = Array.from({ length: 8 }, (_, k) => (k * Math.PI) / 4)

/** What a step adds, heavy, over what was there, thin, near the new lines; undefined where nothing is drawn. */
export function drawStep(steps: readonly Step[], index: number): Picture | undefined {
  const step = steps[index] as Step
  const before = steps.slice(0, index)
  const shown = [...step.points, ...usedPoints(before, step)]
  const paths = [
    ...step.drawn.map((line) => line.path),
    ...step.notches.flatMap(({ at }) => at.map((p) => polyline([p, p]))),
  ]
  if (shown.length === 0) return undefined
  const view = viewOf([...shown.map(({ at }) => polyline([at, at])), ...paths])
  const guides = steps.slice(0, index + 1).flatMap((one) => one.guides)
  const lines: Mark[] = [
    ...strokes(view, 'help line', 'guides', guides),
    ...helpLines(steps.slice(0, index + 1), step).flatMap((path, k) => strokes(view, 'help line', `help ${k}`, [path])),
    ...before.flatMap((earlier) =>
      earlier.drawn.flatMap((line) => strokes(view, 'earlier line', `${earlier.number} ${line.id}`, [line.path])),
    ),
    ...step.drawn.flatMap((line) => strokes(view, 'new line', line.id, [line.path])),
    ...step.notches.flatMap(({ id, at }) => at.map((p, k) => dot(view, `${id} ${k}`, p, DOT.new))),
    ...shown.map(({ name, at }, k) => dot(view, name, at, k < step.points.length ? DOT.new : DOT.earlier)),
  ]
  const letters = letterMarks(view, lines, shown, step.points.length)
  const description = `${step.title}: ${step.points.map(({ name, what }) => `${name}, ${what}`).join('; ') || 'lines'}`
  return { width: view.width, height: view.height, marks: [...lines, ...letters], description }
}

function usedPoints(before: readonly Step[], step: Step): StepPoint[] {
  const all = before.flatMap(({ points }) => points)
  return step.uses.flatMap((name) => all.filter((p) => p.name === name))
}

/** From the paper to the picture. */
interface View {
  readonly width: number
  readonly height: number
  readonly scale: number
  readonly place: (p: Point) => Point
}

function viewOf(paths: readonly Path[]): View {
  const box = paths.map((path) => bounds(path)).reduce(joinBoxes)
  const [w, h] = [Math.max(box.right - box.left, LEAST_SHOWN), Math.max(box.top - box.bottom, LEAST_SHOWN * 0.7)]
  const center = point((box.left + box.right) / 2, (box.bottom + box.top) / 2)
  const scale = Math.min((MOST.width - 2 * BORDER) / w, (MOST.height - 2 * BORDER) / h)
  const [width, height] = [MOST.width, h * scale + 2 * BORDER]
  const place = (p: Point) => point(width / 2 + (p.x - center.x) * scale, height / 2 + (p.y - center.y) * scale)
  return { width, height, scale, place }
}

/** The way from a point to the next, across and up; chords, and on each the marks square to the curve. */
function helpLines(steps: readonly Step[], step: Step): Path[] {
  const all = steps.flatMap(({ points }) => points)
  const at = (name: string) => (all.find((p) => p.name === name) as StepPoint).at
  const ways = step.points.flatMap(({ placing, at: to }) => {
    if (placing.how !== 'square') return []
    const from = at(placing.from)
    return [polyline([from, point(to.x, from.y), to])]
  })
  const chords = step.drawn.flatMap(({ run }) =>
    run.kind === 'straight'
      ? []
      : run.chords
          .filter(({ offsets }) => offsets.some((offset) => offset !== 0))
          .flatMap(({ from, to, parts, offsets }) => {
            const [a, b] = [at(from), at(to)]
            const left = leftOf(unit(subtract(b, a)))
            const marks = offsets.map((offset, k) => {
              const mark = between(a, b, (k + 1) / parts)
              return polyline([mark, along(mark, left, offset)])
            })
            return [polyline([a, b]), ...marks]
          }),
  )
  return [...ways, ...chords]
}

function strokes(view: View, kind: MarkKind, id: string, paths: readonly Path[]): Mark[] {
  const frame: Box = { left: 0.5, bottom: 0.5, right: view.width - 0.5, top: view.height - 0.5 }
  const parts = paths.flatMap((path) =>
    clipLine(flatten(path, { tolerance: TOLERANCE / view.scale }).map(view.place), frame),
  )
  return parts.length === 0 ? [] : [{ type: 'stroke', kind, id, paths: parts.map(polyline) }]
}

function dot(view: View, id: string, p: Point, radius: number): FillMark {
  const center = view.place(p)
  const corners = EIGHTHS.map((angle) => along(center, heading(angle), radius))
  return { type: 'fill', kind: 'landmark', id: `${id} dot`, outline: polyline([...corners, corners[0] as Point]) }
}

/** Letters beside their points, clear of lines and of each other; new ones first, the farther out the better. */
function letterMarks(view: View, lines: readonly Mark[], shown: readonly StepPoint[], fresh: number): TextMark[] {
  const frame = polyline([
    point(0, 0),
    point(view.width, 0),
    point(view.width, view.height),
    point(0, view.height),
    point(0, 0),
  ])
  const border: Mark = { type: 'stroke', kind: 'help line', id: 'border', paths: [frame], weight: 0 }
  const room = openRoom(inkOf([...lines, border]), frame)
  const middle = shown.reduce((sum, { at }) => add(sum, view.place(at)), point(0, 0))
  const center = point(middle.x / shown.length, middle.y / shown.length)
  return shown.flatMap(({ name, at: where }, k) => {
    const at = view.place(where)
    const off = subtract(at, center)
    const out = atan2(off.y, off.x)
    const size = k < fresh ? LETTER.new : LETTER.earlier
    const halfWidth = textWidth(name, size) / 2
    const halfHeight = ((ASCENT + DESCENT) / 2) * size
    for (const away of AWAY) {
      for (const turn of [0, 1, -1, 2, -2, 3, -3, 4]) {
        const toward = heading(out + (turn * Math.PI) / 4)
        const support = halfWidth * Math.abs(toward.x) + halfHeight * Math.abs(toward.y)
        const box = { center: along(at, toward, away + support), along: point(1, 0), halfWidth, halfHeight }
        if (!room.fits(box, CLEARANCE)) continue
        room.take(box)
        return [centeredText('label', `letter ${name}`, name, size, box.center, 0)]
      }
    }
    return []
  })
}
