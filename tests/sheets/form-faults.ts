import type { Form } from '../../src/sheets/form-pages.ts'
import type { Mark } from '../../src/sheets/scene.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { samplesOf } from './fixture.ts'

type Pt = readonly [number, number]

/** Corners of a text from descenders to capitals, its widths those of the embedded font. */
function cornersOf(mark: Mark & { type: 'text' }): Pt[] {
  const half = textWidth(mark.text, mark.size) / 2
  const [c, s] = [Math.cos(mark.angle), Math.sin(mark.angle)]
  return [
    [-half, -0.22],
    [half, -0.22],
    [half, 0.75],
    [-half, 0.75],
  ].map(([x = 0, y = 0]): Pt => {
    const up = y * mark.size
    return [mark.at.x + x * c - up * s, mark.at.y + x * s + up * c]
  })
}

/** Whether a line can be laid between two convex shapes: along a side of either. */
function apart(a: readonly Pt[], b: readonly Pt[]): boolean {
  return [
    [a, b],
    [b, a],
  ].some(([one = [], other = []]) =>
    one.some(([x, y], k) => {
      const [u, v] = one[(k + 1) % one.length] as Pt
      const away = ([p, q]: Pt) => (u - x) * (q - y) - (v - y) * (p - x)
      // Anticlockwise: what is to the right of a side is outside.
      return other.every((point) => away(point) <= 1e-9)
    }),
  )
}

/** Ink of a mark and half its pen. */
function inkOf(mark: Mark): { points: Pt[]; half: number } {
  if (mark.type === 'text') return { points: cornersOf(mark), half: 0 }
  const half = mark.type === 'stroke' ? (mark.weight ?? 0) / 2 : 0
  return { points: samplesOf(mark, 12).map(({ x, y }): Pt => [x, y]), half }
}

/** Chords of a mark's paths, each so short that its middle stands for it. */
function middles(mark: Mark): Pt[] {
  if (mark.type === 'text') return []
  const paths = mark.type === 'fill' ? [mark.outline] : mark.paths
  return paths.flatMap((path) =>
    path.flatMap(({ p0, p1, p2, p3 }) =>
      Array.from({ length: 61 }, (_, k): Pt => {
        const t = k / 60
        const u = 1 - t
        const [a, b, c, d] = [u ** 3, 3 * u * u * t, 3 * u * t * t, t ** 3]
        return [a * p0.x + b * p1.x + c * p2.x + d * p3.x, a * p0.y + b * p1.y + c * p2.y + d * p3.y]
      }),
    ),
  )
}

function isInside(box: readonly Pt[], [p, q]: Pt): boolean {
  return box.every(([x, y], k) => {
    const [u, v] = box[(k + 1) % box.length] as Pt
    return (u - x) * (q - y) - (v - y) * (p - x) > 0
  })
}

type Reach = readonly [left: number, bottom: number, right: number, top: number]

function reachOf(points: readonly Pt[]): Reach {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    left = Math.min(left, x)
    right = Math.max(right, x)
    bottom = Math.min(bottom, y)
    top = Math.max(top, y)
  }
  return [left, bottom, right, top]
}

function meet(a: Reach, b: Reach): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3]
}

/** Everything on a form that a reader would stumble over: ink in the margin, text on text, text on a line. */
export function formFaults({ pages, width, height }: Form): string[] {
  return pages.flatMap((marks, k) => {
    const texts = marks.flatMap((mark) => (mark.type === 'text' ? [{ mark, box: cornersOf(mark) }] : []))
    const beyond = marks.flatMap((mark) => {
      const { points, half } = inkOf(mark)
      const near = Math.min(...points.flatMap(([x, y]) => [x, y, width - x, height - y])) - half
      return near < 10 ? [`${mark.id} is ${near.toFixed(2)} mm from the edge`] : []
    })
    const over = texts.flatMap(({ mark, box }, n) =>
      texts
        .slice(n + 1)
        .flatMap((other) =>
          !meet(reachOf(box), reachOf(other.box)) || apart(box, other.box)
            ? []
            : [`"${mark.text}" on "${other.mark.text}"`],
        ),
    )
    const lines = marks
      .map((mark) => ({ id: mark.id, points: middles(mark) }))
      .filter(({ points }) => points.length > 0)
    const reaches = lines.map(({ points }) => reachOf(points))
    const crossed = texts.flatMap(({ mark, box }) => {
      const own = reachOf(box)
      const hit = lines.find(
        ({ points }, n) => meet(own, reaches[n] as Reach) && points.some((point) => isInside(box, point)),
      )
      return hit ? [`"${mark.text}" on ${hit.id}`] : []
    })
    return [...beyond, ...over, ...crossed].map((fault) => `page ${k + 1}: ${fault}`)
  })
}

/** All text of a form, a page after the other, in reading order as it was set. */
export function textOf({ pages }: Form): string {
  return pages.flatMap((marks) => marks.flatMap((mark) => (mark.type === 'text' ? [mark.text] : []))).join('\n')
}
