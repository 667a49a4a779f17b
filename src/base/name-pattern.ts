/** What may stand between the words of a name and round them, as in `normaliseName`. */
const GAP = String.raw`[\s_\u2010-\u2015\-]`

/**
 * A regular expression, as text for JSON Schema, that is met by every spelling of the names that `normaliseName` makes
 * one of them, and by nothing else. A name may hold any characters.
 */
export function namePattern(names: readonly string[]): string {
  const each = names.map((name) => name.split(' ').map(wordPattern).join(`${GAP}+`))
  return aroundGaps(`(?:${each.join('|')})`)
}

/** The pattern with any gaps before and after it. */
export function aroundGaps(pattern: string): string {
  return `^${GAP}*${pattern}${GAP}*$`
}

/** A pattern for the words alone, in capitals or not, with blanks round them. */
export function wordsPattern(words: readonly string[]): string {
  return String.raw`^\s*(?:${words.map(wordPattern).join('|')})\s*$`
}

function wordPattern(word: string): string {
  return [...word].map(letterPattern).join('')
}

/** Every character that is this one in lower case. */
function letterPattern(letter: string): string {
  const upper = letter.toUpperCase()
  // The sign of the kelvin is a k in lower case, and the only character beside the capitals that becomes a letter of English.
  const spellings = new Set([
    letter,
    ...(upper.toLowerCase() === letter ? [upper] : []),
    ...(letter === 'k' ? ['\u212a'] : []),
  ])
  const each = [...spellings].map((one) => one.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&'))
  return each.length === 1 ? (each[0] as string) : `[${each.join('')}]`
}
