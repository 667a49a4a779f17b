/**
 * Letters that act on a terminal or a page instead of standing there: control characters, halves of letters, turns of
 * the writing direction, line separators, and the byte order mark.
 */
const ACTING = /[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069\u2028\u2029\ufeff]/u

const NAMES: Readonly<Record<string, string>> = { '\t': 'tab', '\n': 'new line', '\r': 'new line' }

/** The name of the first letter of a text that cannot be printed; undefined when all can. */
export function unprintable(text: string): string | undefined {
  const letter = ACTING.exec(text)?.[0]
  return letter === undefined ? undefined : nameOf(letter)
}

/** The text with every letter that cannot be printed replaced by its name in brackets: `[tab]`, `[U+202E]`. */
export function printable(text: string): string {
  return text.replace(new RegExp(ACTING, 'gu'), (letter) => `[${nameOf(letter)}]`)
}

function nameOf(letter: string): string {
  return NAMES[letter] ?? `U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`
}
