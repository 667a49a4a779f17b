import type { VersionComparison } from '../src/fitting/compare-versions.ts'
import { bounds } from '../src/geometry/bounds.ts'
import type { Path } from '../src/geometry/path.ts'
import { distance, type Point } from '../src/geometry/point.ts'
import type { Piece } from '../src/pattern/piece.ts'
import { notchPoints } from '../src/pattern/seam.ts'

/** Pixels of a millimeter, and clear room round a piece, mm. */
const SCALE = 0.62
const ROOM = 50

/** The pieces named, side by side: before thin and dashed, after solid, arrows with amounts in mm where lines moved. An SVG for a page. */
export function overlay(comparison: VersionComparison, pieces: readonly string[], title: string): string {
  const { before, after, seams } = comparison
  let left = 0
  let height = 0
  const groups: string[] = []
  const shown = after.pieces.filter((piece) => pieces.length === 0 || pieces.includes(piece.id))
  for (const piece of shown) {
    const old = before.pieces.find((p) => p.id === piece.id)
    if (!old) continue
    const box = bounds([...outline(old), ...outline(piece)])
    const place = ({ x, y }: Point): [number, number] => [
      (x - box.left + ROOM + left) * SCALE,
      (box.top - y + ROOM) * SCALE,
    ]
    const peaks = seams.filter((row) => row.piece === piece.id).flatMap((row) => row.peaks)
    const arrows = peaks
      .filter((peak) => peak.move > 0.5)
      // Both seams of a corner moved with it: one arrow says so.
      .filter((peak, i, all) => !all.slice(0, i).some((other) => distance(other.to, peak.to) < 6))
      .map((peak) => arrow(place(peak.from), place(peak.to), String(Number(peak.move.toFixed(1)))))
    groups.push(
      `<g fill="none" stroke="#000"><g stroke-width=".6" stroke-dasharray="3.5 2.5">${drawn(old, place, '')}</g>` +
        `<g stroke-width="1.2">${drawn(piece, place, ' fill="#000"')}</g></g>${arrows.join('')}`,
    )
    left += box.right - box.left + 2 * ROOM
    height = Math.max(height, box.top - box.bottom + 2 * ROOM)
  }
  const [w, h] = [(left * SCALE).toFixed(0), (height * SCALE).toFixed(0)]
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}"><title>${title}</title>${groups.join('')}</svg>`
}

function outline(piece: Piece): Path {
  return piece.seams.flatMap((seam) => seam.parts.flat())
}

type Place = (p: Point) => [number, number]

function drawn(piece: Piece, place: Place, notch: string): string {
  const at = (p: Point) =>
    place(p)
      .map((v) => v.toFixed(2))
      .join(' ')
  const path = (part: Path) =>
    `M${at(part[0]?.p0 as Point)}${part.map((c) => `C${at(c.p1)} ${at(c.p2)} ${at(c.p3)}`).join('')}`
  const seams = piece.seams.flatMap((seam) => seam.parts.map(path)).join('')
  const darts = piece.darts.map((dart) => `M${at(dart.mouth[0])}L${at(dart.point)}L${at(dart.mouth[1])}`).join('')
  const marks = piece.notches
    .flatMap((mark) => notchPoints(piece, mark))
    .map((p) => `<circle cx="${place(p)[0].toFixed(2)}" cy="${place(p)[1].toFixed(2)}" r="2"${notch}/>`)
    .join('')
  const lines = piece.lines
    .filter((line) => !line.id.startsWith('grain'))
    .map((line) => path(line.path))
    .join('')
  return `<path d="${seams}${darts}"/><path d="${lines}" stroke-width=".3" stroke="#555"/>${marks}`
}

/** An arrow of at least 14 pixels whose head is where the line is now, and at its tail how far the line moved. */
function arrow([x0, y0]: [number, number], [x1, y1]: [number, number], amount: string): string {
  const size = Math.hypot(x1 - x0, y1 - y0) || 1
  const [ux, uy] = [(x1 - x0) / size, (y1 - y0) / size]
  const tail = Math.max(14, size)
  const point = (along: number, across: number) =>
    `${(x1 - along * ux - across * uy).toFixed(2)},${(y1 - along * uy + across * ux).toFixed(2)}`
  return (
    `<polyline points="${point(tail, 0)} ${point(4, 0)}" fill="none" stroke="#b00" stroke-width="1"/>` +
    `<polygon points="${point(0, 0)} ${point(5, 2)} ${point(5, -2)}" fill="#b00"/>` +
    `<text x="${(x1 - (tail + 8) * ux).toFixed(2)}" y="${(y1 - (tail + 8) * uy + 3).toFixed(2)}" font-size="9" text-anchor="middle" fill="#b00" stroke="none">${amount}</text>`
  )
}
