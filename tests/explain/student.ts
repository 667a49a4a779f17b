// A student with a ruler, a set square and a curve: draws from the steps of explain/1 alone, from their rounded numbers,
// and shares no arithmetic with src/.

export type Xy = readonly [number, number]

type Direction =
  | { readonly square: readonly [string, string] }
  | { readonly along: readonly [string, string] }
  | { readonly across: number; readonly up: number }

interface Chord {
  readonly from: string
  readonly to: string
  readonly parts: number
  readonly offsets: readonly number[]
}

interface StepToDraw {
  readonly points: readonly {
    readonly name: string
    readonly placing:
      | { readonly how: 'start' }
      | { readonly how: 'square'; readonly from: string; readonly across: number; readonly up: number }
      | { readonly how: 'toward'; readonly from: string; readonly toward: string; readonly by: number }
  }[]
  readonly draw: readonly {
    readonly id: string
    readonly seam?: string
    readonly dart?: string
    readonly run:
      | { readonly kind: 'straight'; readonly from: string; readonly to: string }
      | {
          readonly kind: 'curve'
          readonly leaving: Direction
          readonly arriving: Direction
          readonly chords: readonly Chord[]
        }
  }[]
  readonly notches: readonly {
    readonly id: string
    readonly seam: string
    readonly from: string
    readonly along: number
    readonly marks: number
    readonly step?: number
  }[]
}

/** What is on the student's paper. */
export interface Drawing {
  readonly points: ReadonlyMap<string, Xy>
  /** Lines of each seam and of each dart, each as many points close together. */
  readonly seams: ReadonlyMap<string, readonly (readonly Xy[])[]>
  readonly darts: ReadonlyMap<string, readonly (readonly Xy[])[]>
  readonly notches: ReadonlyMap<string, readonly Xy[]>
}

/** Draws the steps of one section in their order. */
export function drawnByStudent(steps: readonly StepToDraw[]): Drawing {
  const points = new Map<string, Xy>()
  const seams = new Map<string, (readonly Xy[])[]>()
  const darts = new Map<string, (readonly Xy[])[]>()
  const notches = new Map<string, readonly Xy[]>()
  const at = (name: string): Xy => {
    const found = points.get(name)
    if (!found) throw new Error(`the steps use ${name} before it is marked`)
    return found
  }
  for (const step of steps) {
    for (const { name, placing } of step.points) {
      if (points.has(name)) throw new Error(`${name} is marked twice`)
      if (placing.how === 'start') points.set(name, [0, 0])
      else if (placing.how === 'square') {
        const [x, y] = at(placing.from)
        points.set(name, [x + placing.across, y + placing.up])
      } else points.set(name, onward(at(placing.from), at(placing.toward), placing.by))
    }
    for (const { seam, dart, run } of step.draw) {
      const line = run.kind === 'straight' ? [at(run.from), at(run.to)] : curve(run.chords, run, at)
      if (seam !== undefined) seams.set(seam, [...(seams.get(seam) ?? []), dense(line)])
      if (dart !== undefined) darts.set(dart, [...(darts.get(dart) ?? []), dense(line)])
    }
    for (const { id, seam, from, along, marks, step: apart } of step.notches) {
      const walked = walkFrom(seams.get(seam) ?? [], at(from))
      notches.set(
        id,
        Array.from({ length: marks }, (_, k) => walked(along + k * (apart ?? 0))),
      )
    }
  }
  return { points, seams, darts, notches }
}

function onward([x, y]: Xy, [tx, ty]: Xy, by: number): Xy {
  const length = Math.hypot(tx - x, ty - y)
  return [x + ((tx - x) / length) * by, y + ((ty - y) / length) * by]
}

/** A flexible curve laid through the marks, its ends turned as told: a cubic spline over the lengths of the chords. */
function curve(
  chords: readonly Chord[],
  ends: { readonly leaving: Direction; readonly arriving: Direction },
  at: (name: string) => Xy,
): Xy[] {
  const marks: Xy[] = []
  for (const { from, to, parts, offsets } of chords) {
    const [[ax, ay], [bx, by]] = [at(from), at(to)]
    const length = Math.hypot(bx - ax, by - ay)
    if (offsets.length !== parts - 1) throw new Error(`${from}–${to} has ${offsets.length} offsets for ${parts} parts`)
    if (marks.length === 0) marks.push([ax, ay])
    offsets.forEach((off, k) => {
      const share = (k + 1) / parts
      marks.push([
        ax + (bx - ax) * share - ((by - ay) / length) * off,
        ay + (by - ay) * share + ((bx - ax) / length) * off,
      ])
    })
    marks.push([bx, by])
  }
  const way = (direction: Direction, a: Xy, b: Xy): Xy => {
    const ahead: Xy = [b[0] - a[0], b[1] - a[1]]
    if ('across' in direction) return unit([direction.across, direction.up])
    const [p, q] = 'square' in direction ? direction.square : direction.along
    const line: Xy = [at(q)[0] - at(p)[0], at(q)[1] - at(p)[1]]
    if ('along' in direction) return unit(line)
    // Of the two ways square to a line the one that goes on along the curve.
    const square: Xy = [-line[1], line[0]]
    return unit(square[0] * ahead[0] + square[1] * ahead[1] > 0 ? square : [line[1], -line[0]])
  }
  const [first, second] = [marks[0] as Xy, marks[1] as Xy]
  const [before, last] = [marks[marks.length - 2] as Xy, marks[marks.length - 1] as Xy]
  return spline(marks, way(ends.leaving, first, second), way(ends.arriving, before, last))
}

function unit([x, y]: Xy): Xy {
  const length = Math.hypot(x, y)
  return [x / length, y / length]
}

/** The cubic spline through the marks with these unit tangents at its ends, as points close together. */
function spline(marks: readonly Xy[], start: Xy, end: Xy): Xy[] {
  const h = marks.slice(1).map(([x, y], k) => Math.hypot(x - (marks[k] as Xy)[0], y - (marks[k] as Xy)[1]))
  const slopes = [0, 1].map((axis) => {
    const p = marks.map((mark) => mark[axis] as number)
    const n = p.length
    const [low, diagonal, high, right] = [0, 1, 2, 3].map(() => new Array<number>(n).fill(0)) as [
      number[],
      number[],
      number[],
      number[],
    ]
    diagonal[0] = 1
    right[0] = start[axis] as number
    diagonal[n - 1] = 1
    right[n - 1] = end[axis] as number
    for (let k = 1; k < n - 1; k++) {
      const [a, b] = [h[k - 1] as number, h[k] as number]
      low[k] = b
      diagonal[k] = 2 * (a + b)
      high[k] = a
      right[k] =
        3 * ((b * ((p[k] as number) - (p[k - 1] as number))) / a + (a * ((p[k + 1] as number) - (p[k] as number))) / b)
    }
    for (let k = 1; k < n; k++) {
      const factor = (low[k] as number) / (diagonal[k - 1] as number)
      diagonal[k] = (diagonal[k] as number) - factor * (high[k - 1] as number)
      right[k] = (right[k] as number) - factor * (right[k - 1] as number)
    }
    const slope = new Array<number>(n).fill(0)
    for (let k = n - 1; k >= 0; k--)
      slope[k] = ((right[k] as number) - (high[k] as number) * (slope[k + 1] ?? 0)) / (diagonal[k] as number)
    return slope
  })
  const points: Xy[] = [marks[0] as Xy]
  h.forEach((length, k) => {
    for (let i = 1; i <= 6; i++) {
      const t = i / 6
      const value = (axis: 0 | 1) => {
        const [p, q] = [(marks[k] as Xy)[axis], (marks[k + 1] as Xy)[axis]]
        const [m, n] = [slopes[axis]?.[k] as number, slopes[axis]?.[k + 1] as number]
        const u = 1 - t
        return u * u * (1 + 2 * t) * p + t * t * (3 - 2 * t) * q + u * u * t * length * m - t * t * u * length * n
      }
      points.push([value(0), value(1)])
    }
  })
  return points
}

/** The line with points at most 4 mm apart. */
function dense(line: readonly Xy[]): Xy[] {
  const points: Xy[] = [line[0] as Xy]
  line.slice(1).forEach((to, k) => {
    const from = line[k] as Xy
    const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 4))
    for (let i = 1; i <= count; i++)
      points.push([from[0] + ((to[0] - from[0]) * i) / count, from[1] + ((to[1] - from[1]) * i) / count])
  })
  return points
}

/** Walks along the drawn lines of a seam, over the darts between them, away from one of their ends or joints. */
function walkFrom(lines: readonly (readonly Xy[])[], from: Xy): (along: number) => Xy {
  const near = (p: Xy) => Math.hypot(p[0] - from[0], p[1] - from[1])
  const [first, last] = [lines[0]?.[0] as Xy, lines.at(-1)?.at(-1) as Xy]
  const forward = near(first) <= near(last) || near(last) > 1e-9
  const order = forward ? lines : lines.toReversed().map((line) => line.toReversed())
  const flat = order.flat()
  const start = flat.reduce((best, p, k) => (near(p) < near(flat[best] as Xy) ? k : best), 0)
  const jumps = new Set<number>()
  let count = 0
  for (const line of order) {
    jumps.add(count)
    count += line.length
  }
  return (along) => {
    let rest = along
    for (let k = start + 1; k < flat.length; k++) {
      if (jumps.has(k)) continue
      const [a, b] = [flat[k - 1] as Xy, flat[k] as Xy]
      const length = Math.hypot(b[0] - a[0], b[1] - a[1])
      if (rest <= length) return [a[0] + ((b[0] - a[0]) * rest) / length, a[1] + ((b[1] - a[1]) * rest) / length]
      rest -= length
    }
    return flat[flat.length - 1] as Xy
  }
}
