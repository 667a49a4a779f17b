// Independent implementations used as references by these tests; their own type files are absent or lag behind.
declare module 'bezier-js' {
  interface XY {
    x: number
    y: number
  }
  export class Bezier {
    constructor(points: readonly XY[])
    length(): number
    derivative(t: number): XY
    offset(distance: number): Bezier[]
    points: XY[]
  }
}

declare module 'paper/dist/paper-core.js' {
  import paper from 'paper'
  // biome-ignore lint/style/noDefaultExport: that is how the package exports it
  export default paper
}
