/** svgdom ships without types; this is all of it that is used. */
declare module 'svgdom' {
  export function createSVGWindow(): never
}
