import { textWidth } from './text-width.ts'

/** The text in lines no wider than `width` mm, broken at spaces; a word wider than that stands alone. */
export function wrapText(text: string, size: number, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && textWidth(longer, size) > width) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return line === '' ? lines : [...lines, line]
}
