import { formatLength } from '../../../base/format-length.ts'
import type { LengthUnit } from '../../../base/units.ts'
import { fitted, moved, type Viewport, zoomed } from './viewport.ts'

/** Height of the pieces' names, and the least width of the scale's bar, CSS pixels. */
const NAME = 15
const BAR = 90

/** Clear of the drawing when all of it is seen, for names above and buttons below, CSS pixels. */
const CLEAR = { side: 12, top: 30, bottom: 60 }

export const ZOOM_STEP = 1.25
/** One millimetre may be as many pixels as this, and the whole drawing as small as this share of the window. */
const NEAREST = 60
const SMALLEST = 0.25

/** The drawing's window: what of it is seen, and what must keep its size whatever is seen. */
export interface Stage {
  readonly svg: SVGSVGElement
  /** CSS pixels of a millimetre. */
  readonly scale: () => number
  readonly show: (view: Viewport) => void
  readonly whole: () => void
  readonly zoom: (factor: number, at?: { readonly x: number; readonly y: number }) => void
  readonly move: (pixelsX: number, pixelsY: number) => void
  /** The place on the drawing under a place in the window. */
  readonly placeOf: (event: { readonly clientX: number; readonly clientY: number }) => { x: number; y: number }
  /** Fits a part of the drawing. */
  readonly fit: (box: Viewport) => void
  /** Called whenever what is seen has changed. */
  readonly onChange: (listener: () => void) => void
}

export function makeStage(svg: SVGSVGElement, bar: HTMLElement, units: LengthUnit): Stage {
  const sheet = { x: 0, y: 0, width: Number(svg.dataset.width), height: Number(svg.dataset.height) }
  const names = [...svg.querySelectorAll<SVGTextElement>('.name')]
  const listeners: (() => void)[] = []
  const window = () => svg.getBoundingClientRect()
  let view: Viewport = sheet
  const scale = () => window().width / view.width
  const show = (next: Viewport) => {
    const { width, height } = window()
    if (width === 0 || height === 0) return
    view = limited(fitted(next, width, height), width, sheet)
    svg.setAttribute('viewBox', `${view.x} ${view.y} ${view.width} ${view.height}`)
    for (const name of names) fitName(name, NAME / scale())
    showBar(bar, scale(), units)
    for (const listener of listeners) listener()
  }
  const middle = () => ({ x: view.x + view.width / 2, y: view.y + view.height / 2 })
  const whole = () => {
    const { width, height } = window()
    const across = Math.max(1, width - 2 * CLEAR.side)
    const down = Math.max(1, height - CLEAR.top - CLEAR.bottom)
    const mm = Math.max(sheet.width / across, sheet.height / down)
    const x = sheet.width / 2 - (mm * width) / 2
    const y = sheet.height / 2 - mm * (CLEAR.top + down / 2)
    show({ x, y, width: mm * width, height: mm * height })
  }
  new ResizeObserver(() => show(view)).observe(svg)
  whole()
  return {
    svg,
    scale,
    show,
    whole,
    zoom: (factor, at = middle()) => {
      const next = zoomed(view, factor, at)
      const size = window().width / next.width
      if (size < NEAREST && next.width < Math.max(sheet.width, sheet.height * 2) / SMALLEST) show(next)
    },
    move: (x, y) => show(moved(view, x / scale(), y / scale())),
    placeOf: ({ clientX, clientY }) => {
      const { left, top } = window()
      return { x: view.x + (clientX - left) / scale(), y: view.y + (clientY - top) / scale() }
    },
    fit: (box) => show(box),
    onChange: (listener) => listeners.push(listener),
  }
}

/** A piece's name at this size, or as much smaller as keeps it over its own piece. */
function fitName(name: SVGTextElement, size: number): void {
  name.setAttribute('font-size', String(size))
  const room = Number(name.dataset.room)
  const length = name.getComputedTextLength()
  if (length > room) name.setAttribute('font-size', String((size * room) / length))
}

/** Some of the drawing stays in sight. */
function limited(view: Viewport, pixels: number, sheet: Viewport): Viewport {
  const margin = (40 * view.width) / pixels
  const clamp = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high)
  return {
    ...view,
    x: clamp(view.x, margin - view.width, sheet.width - margin),
    y: clamp(view.y, margin - view.height, sheet.height - margin),
  }
}

/** A bar of a round length in the file's unit. */
function showBar(bar: HTMLElement, scale: number, units: LengthUnit): void {
  const steps =
    units === 'in'
      ? [1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16, 32].map((inches) => inches * 25.4)
      : [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]
  const mm = steps.find((step) => step * scale >= BAR) ?? (steps.at(-1) as number)
  bar.innerHTML = '<span></span>'
  bar.prepend(formatLength(mm, units))
  const line = bar.querySelector('span')
  if (line) line.style.width = `${mm * scale}px`
}
