import { type Stage, ZOOM_STEP } from './stage.ts'

/** A pointer that has moved less than this was a tap, CSS pixels. */
const TAP = 6
/** How far an arrow key moves, CSS pixels. */
const STEP = 60

type Spot = { readonly clientX: number; readonly clientY: number }

/** Pan and zoom with mouse, touch and keys; `tapped` is told of taps and clicks. */
export function moveBy(stage: Stage, tapped: (event: PointerEvent) => void): void {
  const { svg } = stage
  const down = new Map<number, Spot>()
  let travelled = 0
  svg.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return
    if (down.size === 0) travelled = 0
    down.set(event.pointerId, event)
    svg.setPointerCapture(event.pointerId)
  })
  svg.addEventListener('pointermove', (event) => {
    const last = down.get(event.pointerId)
    if (!last) return
    const [x, y] = [event.clientX - last.clientX, event.clientY - last.clientY]
    travelled += Math.hypot(x, y)
    if (travelled > TAP) svg.classList.add('dragging')
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1]
    if (other) pinch(stage, last, event, other)
    else if (travelled > TAP) stage.move(-x, -y)
    down.set(event.pointerId, event)
  })
  const up = (event: PointerEvent) => {
    if (!down.delete(event.pointerId)) return
    svg.classList.remove('dragging')
    if (event.type === 'pointerup' && down.size === 0 && travelled <= TAP) tapped(event)
  }
  svg.addEventListener('pointerup', up)
  svg.addEventListener('pointercancel', up)
  svg.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault()
      stage.zoom(1.0015 ** -(event.deltaY * (event.deltaMode === 1 ? 16 : 1)), stage.placeOf(event))
    },
    { passive: false },
  )
  svg.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const does = keys(stage)[event.key]
    if (!does) return
    event.preventDefault()
    does()
  })
}

function keys(stage: Stage): Readonly<Record<string, (() => void) | undefined>> {
  return {
    ArrowLeft: () => stage.move(-STEP, 0),
    ArrowRight: () => stage.move(STEP, 0),
    ArrowUp: () => stage.move(0, -STEP),
    ArrowDown: () => stage.move(0, STEP),
    '+': () => stage.zoom(ZOOM_STEP),
    '=': () => stage.zoom(ZOOM_STEP),
    '-': () => stage.zoom(1 / ZOOM_STEP),
    '0': stage.whole,
  }
}

/** Two fingers: the drawing under them stays under them. */
function pinch(stage: Stage, last: Spot, now: Spot, other: Spot): void {
  const apart = (p: Spot) => Math.hypot(p.clientX - other.clientX, p.clientY - other.clientY)
  const middle = (p: Spot) => ({ clientX: (p.clientX + other.clientX) / 2, clientY: (p.clientY + other.clientY) / 2 })
  const [before, after] = [middle(last), middle(now)]
  stage.move(before.clientX - after.clientX, before.clientY - after.clientY)
  if (apart(last) > 0) stage.zoom(apart(now) / apart(last), stage.placeOf(after))
}
