import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type MadePattern, writePattern } from '../../src/index.ts'

const FONT = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')

/** What is wrong with the files of a pattern: not written, not XML, not JSON, or numbers that are none. */
export async function writingFaults(made: MadePattern, write: 'pdf' | 'svg'): Promise<string[]> {
  const written = await writePattern(made, {
    formats: write === 'pdf' ? ['svg', 'pdf', 'dxf', 'json'] : ['svg', 'dxf', 'json'],
    date: '2026-11-25',
    font: () => readFileSync(FONT),
  })
  if (!written.ok) return [`not written: ${JSON.stringify(written.problems)}`]
  return written.value.files.flatMap(({ name, content }) => {
    if (typeof content !== 'string') return content.length > 1000 ? [] : [`${name} is empty`]
    return [
      ...(/\b(?:NaN|Infinity|undefined|\[object)\b/.test(content.replace(/"(?:NaN|Infinity)[^"]*"/g, ''))
        ? [`${name} has a number that is none`]
        : []),
      ...(name.endsWith('.svg') && !isXmlText(content) ? [`${name} has letters that XML has not`] : []),
      ...(/[\p{Cs}]/u.test(content) ? [`${name} has half a letter`] : []),
      ...(name === 'slip.txt' && /[^\P{Cc}\n]/u.test(content) ? [`${name} has control characters`] : []),
      ...(name.endsWith('.json') && typeof JSON.parse(content) !== 'object' ? [`${name} is no JSON`] : []),
    ]
  })
}

function isXmlText(text: string): boolean {
  return /^[\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u.test(text)
}
