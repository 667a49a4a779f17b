// What the bench calls beyond tests/geometry/references.d.ts.
declare module 'bezier-js' {
  interface Bezier {
    /** Pairs of parameters as text, `t/t`, to five decimals. */
    intersects(other: Bezier, threshold?: number): string[]
    get(t: number): { x: number; y: number }
    normal(t: number): { x: number; y: number }
  }
}
