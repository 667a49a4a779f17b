const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Text as it stands in HTML and SVG, between tags or in an attribute between double quotes. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => ENTITIES[letter] as string)
}
