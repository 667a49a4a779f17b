import type { LengthUnit } from '../base/units.ts'
import { movePath, type Path, polyline } from '../geometry/path.ts'
import { add, along, distance, type Point, point, scale, subtract, unit } from '../geometry/point.ts'
import { chordOf, isStraight } from './chord.ts'
import { chordWords, directionWords, namesIn } from './curve-words.ts'
import { onRuler, openSpeaker, type Speaker } from './said.ts'
import type { Direction, DrawnLine, Placing, Step, StepLine, StepNotch, StepPoint } from './step.ts'

/** Letters for points; I and O look like figures. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** The length of the vector that says a direction, mm: half a millimetre at its end is a third of a degree. */
const DIRECTION = 100

export interface PaperOptions {
  readonly units: LengthUnit
  /** Draws the mirror image: left is right. */
  readonly mirrored: boolean
  /** Put behind the names of seams, darts and notches. */
  readonly suffix: string
}

/** What a direction is given by, in the frame of the draft. */
export type DirectionPlan =
  | { readonly square: readonly [string, string] }
  | { readonly along: readonly [string, string] }
  | { readonly toward: Point }

export interface StepWriter {
  readonly say: Speaker
  /** The nearest length that the ruler shows, mm. */
  readonly ruled: (mm: number) => number
  /** The first point of a paper. */
  start(at: Point, what: string, words: string): string
  /** A point measured square from another one. */
  place(from: string, at: Point, what: string, why?: string): string
  /** A point on the straight line from one point to another. */
  toward(from: string, to: string, at: Point, what: string, why?: string): string
  /** A straight line between two points. */
  straight(from: string, to: string, of?: LineOf): void
  /** A curve through points that lie on it, along the path. */
  curve(knots: readonly string[], path: Path, leaving: DirectionPlan, arriving: DirectionPlan, of: LineOf): void
  notch(notch: Omit<StepNotch, 'at'>, at: readonly Point[], words: string): void
  /** A line that only helps, between two places of the draft. */
  guide(from: Point, to: Point): void
  note(text: string, why?: string): void
}

export interface LineOf {
  readonly id: string
  readonly seam?: string
  readonly dart?: string
}

export interface Paper {
  /** The edge on which the center of a bodice half lies. */
  readonly center: 'left' | 'right'
  /** Toward the front of a sleeve. */
  readonly forward: 'left' | 'right'
  step(title: string, write: (step: StepWriter) => void): void
  readonly steps: Step[]
}

/**
 * A sheet on which a draft is drawn again with a ruler. Every point is kept where the reader will have it, and the next
 * number is measured from there, so that roundings do not add up.
 */
export function openPaper({ units, mirrored, suffix }: PaperOptions): Paper {
  const steps: Step[] = []
  const ruled = new Map<string, Point>()
  const onPaper = (p: Point) => (mirrored ? point(-p.x, p.y) : p)
  const at = (name: string): Point => {
    const found = ruled.get(name)
    if (!found) throw new RangeError(`no point ${name} on the paper`)
    return found
  }
  const nextName = () => {
    const round = Math.floor(ruled.size / LETTERS.length)
    return `${LETTERS[ruled.size % LETTERS.length]}${round === 0 ? '' : round + 1}`
  }
  const named = (of: LineOf): LineOf => ({
    id: of.id + suffix,
    ...(of.seam === undefined ? {} : { seam: of.seam + suffix }),
    ...(of.dart === undefined ? {} : { dart: of.dart + suffix }),
  })

  const step = (title: string, write: (step: StepWriter) => void) => {
    const say = openSpeaker(units)
    const lines: StepLine[] = []
    const points: StepPoint[] = []
    const uses = new Set<string>()
    const drawn: DrawnLine[] = []
    const notches: StepNotch[] = []
    const guides: Path[] = []
    const use = (name: string) => {
      if (!points.some((p) => p.name === name)) uses.add(name)
      return name
    }
    const note = (text: string, why?: string) => {
      lines.push(why === undefined ? { text } : { text, why: why.charAt(0).toUpperCase() + why.slice(1) })
    }
    const keep = (where: Point, placed: Point, what: string, placing: Placing) => {
      const name = nextName()
      ruled.set(name, placed)
      points.push({ name, what, placing, at: onPaper(where) })
      return name
    }
    const directionOf = (plan: DirectionPlan): Direction => {
      if (!('toward' in plan)) return plan
      const { x, y } = scale(unit(onPaper(plan.toward)), DIRECTION)
      return { across: onRuler(x, units), up: onRuler(y, units) }
    }

    write({
      say,
      ruled: (mm) => onRuler(mm, units),
      guide(from, to) {
        guides.push(polyline([onPaper(from), onPaper(to)]))
      },
      note,
      start(where, what, words) {
        const name = keep(where, onPaper(where), what, { how: 'start' })
        note(`${name}, ${what}: ${words}`)
        return name
      },
      place(from, where, what, why) {
        const origin = at(use(from))
        const off = subtract(onPaper(where), origin)
        const across = onRuler(off.x, units)
        const up = onRuler(off.y, units)
        const name = keep(where, add(origin, point(across, up)), what, { how: 'square', from, across, up })
        const ways = [
          ...(across === 0 ? [] : [`${say.ruled(Math.abs(across))} ${across > 0 ? 'right' : 'left'}`]),
          ...(up === 0 ? [] : [`${say.ruled(Math.abs(up))} ${up > 0 ? 'up' : 'down'}`]),
        ]
        note(`${name}, ${what}: ${ways.length === 0 ? `at ${from}` : `from ${from} ${ways.join(' and ')}`}.`, why)
        return name
      },
      toward(from, to, where, what, why) {
        const origin = at(use(from))
        const by = onRuler(distance(origin, onPaper(where)), units)
        const placed = along(origin, unit(subtract(at(use(to)), origin)), by)
        const name = keep(where, placed, what, { how: 'toward', from, toward: to, by })
        note(`${name}, ${what}: from ${from} straight toward ${to}, ${say.ruled(by)}.`, why)
        return name
      },
      straight(from, to, of) {
        const path = polyline([from, to].map((name) => drawnAt(use(name))))
        drawn.push({ ...named(of ?? { id: `${from}–${to}` }), run: { kind: 'straight', from, to }, path })
      },
      curve(knots, path, leaving, arriving, of) {
        const onSheet = movePath(path, onPaper)
        const end = (name: string) => ({ name: use(name), ruled: at(name), drafted: drawnAt(name) })
        const chords = knots.slice(1).map((to, k) => chordOf(onSheet, end(knots[k] as string), end(to), units))
        const directions = { leaving: directionOf(leaving), arriving: directionOf(arriving) }
        drawn.push({ ...named(of), run: { kind: 'curve', ...directions, chords }, path: onSheet })
        const [first, last] = [knots[0] as string, knots[knots.length - 1] as string]
        if (chords.every(isStraight)) {
          note(`${knots.join('–')}: straight to the eye.`)
          return
        }
        for (const direction of Object.values(directions)) namesIn(direction).forEach(use)
        const leaves = directionWords(directions.leaving, 'from', say)
        const arrives = directionWords(directions.arriving, 'to', say)
        note(`Curve ${knots.join('–')}: it leaves ${first} ${leaves} and arrives at ${last} ${arrives}.`)
        for (const chord of chords) note(chordWords(chord, subtract(at(chord.to), at(chord.from)), say))
      },
      notch(notch, places, words) {
        use(notch.from)
        notches.push({ ...notch, id: notch.id + suffix, seam: notch.seam + suffix, at: places.map(onPaper) })
        note(words)
      },
    })
    steps.push({
      number: steps.length + 1,
      title,
      lines,
      numbers: say.said,
      points,
      uses: [...uses],
      drawn,
      notches,
      guides,
    })

    /** Where the draft has a point. */
    function drawnAt(name: string): Point {
      const all = [...steps.flatMap((s) => s.points), ...points]
      return (all.find((p) => p.name === name) as StepPoint).at
    }
  }
  return { step, steps, center: mirrored ? 'right' : 'left', forward: mirrored ? 'left' : 'right' }
}
