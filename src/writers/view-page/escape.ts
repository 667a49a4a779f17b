const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Text as it stands in HTML and SVG, between tags and in attributes. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => ENTITIES[letter] as string)
}

/** A document as it stands in a script element: what could end the element is written otherwise. */
export function embedded(value: unknown): string {
  return JSON.stringify(value)
    .replace(/</g, '\\u003c')
    .replace(/\u2028/g, '\\u2028')
    .replace(/\u2029/g, '\\u2029')
}
