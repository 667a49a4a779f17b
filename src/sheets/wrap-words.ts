import { textWidth } from './text-width.ts'

/** The text broken at spaces into lines no wider than `width` mm; a word that is wider has a line of its own. */
export function wrapWords(text: string, size: number, width: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= width) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}
