/** What of the page's drawing is seen, mm, y down. */
export interface Viewport {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** All of a rectangle, as large as it goes in a window of this shape. */
export function fitted(box: Viewport, windowWidth: number, windowHeight: number): Viewport {
  const scale = Math.max(box.width / windowWidth, box.height / windowHeight)
  const width = windowWidth * scale
  const height = windowHeight * scale
  return { x: box.x + (box.width - width) / 2, y: box.y + (box.height - height) / 2, width, height }
}

/** Nearer with a factor above 1, farther below; the point `at` stays where it is. */
export function zoomed(view: Viewport, factor: number, at: { readonly x: number; readonly y: number }): Viewport {
  return {
    x: at.x - (at.x - view.x) / factor,
    y: at.y - (at.y - view.y) / factor,
    width: view.width / factor,
    height: view.height / factor,
  }
}

export function moved(view: Viewport, x: number, y: number): Viewport {
  return { ...view, x: view.x + x, y: view.y + y }
}

/** A rectangle with so much more on every side. */
export function widened({ x, y, width, height }: Viewport, by: number): Viewport {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by }
}
