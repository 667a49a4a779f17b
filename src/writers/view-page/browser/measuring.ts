import { formatLength } from '../../../base/format-length.ts'
import { distance } from '../../../geometry/point.ts'
import { pathText } from '../../path-text.ts'
import type { ViewData, ViewedMark } from '../view-data.ts'
import { byId } from './by-id.ts'
import { parsePaths } from './parse-path.ts'
import { type Measured, measureBetween, nearestSpot, type SewnOutline, type Spot, sewnOutline } from './sewn-outline.ts'
import type { Stage } from './stage.ts'
import type { Versions } from './versions.ts'

/** A tap this near to a mark means the mark, and this near to a stitching line the line, CSS pixels. */
const NEAR_MARK = 10
const NEAR_LINE = 30
const DOT = 5

/** Measuring between two points, tapped or named; returns what a tap in the drawing does. */
export function makeMeasuring(stage: Stage, versions: Versions, data: ViewData): (event: PointerEvent) => void {
  const [from, to] = [byId<HTMLSelectElement>('from'), byId<HTMLSelectElement>('to')]
  const modes = [...document.querySelectorAll<HTMLInputElement>('input[name=mode]')]
  const outlines = new Map<number, readonly SewnOutline[]>()
  let spots: readonly Spot[] = []
  let shown = -1
  const mode = () => modes.find((radio) => radio.checked)?.value ?? ''
  const marks = () => data.versions[versions.current()]?.marks ?? []
  const here = () => {
    const version = versions.current()
    const known = outlines.get(version) ?? outlinesOf(stage.svg, version)
    outlines.set(version, known)
    return known
  }
  const spotOf = (mark: ViewedMark): Spot => {
    const outline = here().find(({ piece }) => piece === mark.piece)
    const start = outline?.seams.find(({ seam }) => seam === mark.seam)?.start
    const round = start === undefined || mark.along === undefined ? {} : { round: start + mark.along }
    return { at: { x: mark.x, y: mark.y }, name: mark.name, piece: mark.piece, ...round }
  }
  const show = () => {
    const [a, b] = spots
    const measured = a && b ? measureBetween(here(), a, b) : undefined
    draw(stage, spots, measured, mode())
    say(spots, measured, mode(), data)
  }
  const named = () => {
    spots = [from, to].flatMap((select) => {
      const mark = marks()[Number(select.value)]
      return select.value === '' || !mark ? [] : [spotOf(mark)]
    })
    const along = modes.find((radio) => radio.value === 'along')
    if (spots.length > 0 && mode() === '' && along) along.checked = true
    show()
  }
  const cleared = () => {
    spots = []
    for (const select of [from, to]) select.value = ''
    show()
  }
  for (const select of [from, to]) select.addEventListener('change', named)
  for (const radio of modes) radio.addEventListener('change', () => (mode() === '' ? cleared() : show()))
  document.addEventListener('keydown', ({ key }) => key === 'Escape' && cleared())
  stage.onChange(show)
  versions.onChange(() => {
    if (versions.current() === shown) return
    shown = versions.current()
    for (const select of [from, to]) fill(select, marks())
    cleared()
  })
  shown = versions.current()
  for (const select of [from, to]) fill(select, marks())
  return (event) => {
    if (mode() === '') return
    const p = stage.placeOf(event)
    const near = (pixels: number) => pixels / stage.scale()
    const mark = marks()
      .filter((one) => mode() === 'straight' || one.seam !== undefined)
      .map((one) => ({ one, distance: distance(one, p) }))
      .sort((a, b) => a.distance - b.distance)[0]
    const line = nearestSpot(here(), p)
    const spot =
      mark && mark.distance <= near(NEAR_MARK)
        ? spotOf(mark.one)
        : line && line.distance <= near(NEAR_LINE)
          ? line
          : undefined
    if (!spot) return
    spots = spots.length === 1 ? [...spots, spot] : [spot]
    for (const select of [from, to]) select.value = ''
    show()
  }
}

function outlinesOf(svg: SVGSVGElement, version: number): SewnOutline[] {
  const seams = [...svg.querySelectorAll<SVGPathElement>(`.version[data-version="${version}"] .seam`)]
  const pieces = [...new Set(seams.map((seam) => seam.dataset.piece ?? ''))]
  return pieces.map((piece) =>
    sewnOutline(
      piece,
      seams
        .filter((seam) => seam.dataset.piece === piece)
        .map((seam) => [seam.dataset.seam ?? '', parsePaths(seam.getAttribute('d') ?? '')] as const),
    ),
  )
}

/** Lists the marks by their pieces. */
function fill(select: HTMLSelectElement, marks: readonly ViewedMark[]): void {
  select.replaceChildren(new Option('', ''))
  for (const piece of new Set(marks.map((mark) => mark.piece))) {
    const group = document.createElement('optgroup')
    group.label = piece
    for (const [k, mark] of marks.entries())
      if (mark.piece === piece) group.append(new Option(`${piece}, ${mark.name}`, String(k)))
    select.append(group)
  }
}

function draw(stage: Stage, spots: readonly Spot[], measured: Measured | undefined, mode: string): void {
  const layer = byId<SVGGElement>('measured')
  const [a, b] = spots
  const shapes: string[] = []
  if (a && b && mode === 'along')
    shapes.push(...(measured?.along?.paths ?? []).map((path) => `<path d="${pathText(path, { decimals: 4 })}"/>`))
  if (a && b && mode === 'straight')
    shapes.push(`<path class="straight" d="M ${a.at.x} ${a.at.y} L ${b.at.x} ${b.at.y}"/>`)
  for (const { at } of spots) shapes.push(`<circle cx="${at.x}" cy="${at.y}" r="${DOT / stage.scale()}"/>`)
  layer.innerHTML = shapes.join('')
  stage.svg.classList.toggle('measuring', mode !== '')
}

function say(spots: readonly Spot[], measured: Measured | undefined, mode: string, { units }: ViewData): void {
  const result = byId<HTMLOutputElement>('result')
  const more = byId('more')
  const words = (mm: number) =>
    units === 'mm' ? formatLength(mm, 'mm') : `${formatLength(mm, units)} (${formatLength(mm, 'mm')})`
  delete result.dataset.mm
  more.textContent = ''
  const [a, b] = spots
  if (!measured || !a || !b) {
    const text = a ? `from ${a.piece}, ${a.name}; now the other point` : ''
    if (result.textContent !== text) result.textContent = text
    return
  }
  const places = `${a.piece}, ${a.name} – ${a.piece === b.piece ? '' : `${b.piece}, `}${b.name}`
  const { along, straight } = measured
  if (mode === 'along' && !along) {
    result.textContent = 'these two are not on the stitching lines of one piece'
    more.textContent = `${places}; straight they can be measured`
    return
  }
  const mm = mode === 'along' && along ? along.mm : straight
  result.dataset.mm = String(mm)
  result.textContent =
    mode === 'along' && along ? `${words(mm)} along ${along.seams.join(', ')}` : `${words(mm)} straight`
  more.textContent =
    mode === 'along' && along
      ? `${places}; darts closed; straight ${words(straight)}; round the other way ${words(along.other)}`
      : `${places}${along ? `; along the seam ${words(along.mm)}` : ''}`
}
