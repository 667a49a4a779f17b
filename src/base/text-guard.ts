import type { Problem } from './problem.ts'

/** A performer file with fifty fittings has some 50,000 characters. */
const MOST_CHARACTERS = 250_000
/** Deeper nesting than any performer file has; a parser that recurses must be spared far more (it may abort). */
const MOST_BRACKETS = 20
const MOST_INDENT = 80
const MOST_KEYS_IN_A_LINE = 50
const MOST_MARKS_IN_A_LINE = 10

/**
 * The problem that keeps a text from being read as YAML at all, or undefined: empty, not text (a picture, a
 * spreadsheet, UTF-16), too long, or nested so deep that a parser could run out of stack.
 */
export function guardText(text: string, file: string): Problem | undefined {
  if (text.length > MOST_CHARACTERS) {
    return {
      code: 'file-too-long',
      where: { file, line: 1, column: 1 },
      actual: `${text.length} characters`,
      expected: `at most ${MOST_CHARACTERS} characters`,
      hint: 'give a performer file; this is something else',
    }
  }
  return notText(text, file) ?? emptyText(text, file) ?? tooDeep(text, file)
}

function notText(text: string, file: string): Problem | undefined {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what a file that is not text holds
  const index = text.search(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffd]/)
  if (index < 0) return undefined
  const before = text.slice(0, index).split(/\r\n|\r|\n/)
  const letter = text.charCodeAt(index)
  const name = letter === 0xfffd ? 'a letter that is not UTF-8' : `a control character (${letter})`
  return {
    code: 'not-text',
    where: { file, line: before.length, column: (before.at(-1) ?? '').length + 1 },
    actual: name,
    expected: 'a text file in UTF-8',
    hint: 'give the performer file itself (.yaml), saved as UTF-8 text',
  }
}

function emptyText(text: string, file: string): Problem | undefined {
  if (!text.split(/\r\n|\r|\n/).every((line) => /^\s*(?:#.*|---|\.\.\.)?\s*$/.test(line))) return undefined
  return {
    code: 'empty-file',
    where: { file, line: 1, column: 1 },
    actual: 'nothing but blanks and comments',
    expected: 'a performer file',
    hint: 'scye begin FILE writes one to fill in',
  }
}

function tooDeep(text: string, file: string): Problem | undefined {
  let brackets = 0
  for (const [index, line] of text.split(/\r\n|\r|\n/).entries()) {
    const body = line.replace(/(?:^|\s)#.*$/, '')
    let deepest = brackets
    for (const letter of body.match(/[[\]{}]/g) ?? []) {
      brackets = letter === '[' || letter === '{' ? brackets + 1 : Math.max(0, brackets - 1)
      deepest = Math.max(deepest, brackets)
    }
    const indent = body.trim() === '' ? 0 : body.search(/\S/)
    const marks = (/^(?:\s*[-?:](?=\s))*/.exec(body)?.[0] ?? '').replace(/\s/g, '').length
    const keys = (body.match(/(?:[:?]|(?<!\S)-)(?=\s|$)/g) ?? []).length
    const deep =
      deepest > MOST_BRACKETS || indent > MOST_INDENT || marks > MOST_MARKS_IN_A_LINE || keys > MOST_KEYS_IN_A_LINE
    if (!deep) continue
    return nestedAt(file, index + 1, Math.max(indent, 0) + 1)
  }
  return undefined
}

/** The problem of a text that only the parser found too deep, at the line with the most brackets. */
export function tooDeepAt(text: string, file: string): Problem {
  const brackets = text.split('\n').map((line) => (line.match(/[[{]|[-?:](?=\s)/g) ?? []).length)
  return nestedAt(file, brackets.indexOf(brackets.reduce((a, b) => Math.max(a, b))) + 1, 1)
}

function nestedAt(file: string, line: number, column: number): Problem {
  return {
    code: 'nested-too-deep',
    where: { file, line, column },
    actual: 'entries nested far deeper than a performer file',
    expected: 'the sections of a performer file',
    hint: 'close the brackets and quotes before this line, or give the right file',
  }
}
