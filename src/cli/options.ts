import { FORMATS, type Format, nearestName, type Paper, type Problem, parsePaper, type Result } from '../index.ts'

/** A problem with what was typed: `option` as typed, with its dashes. */
export function optionProblem(option: string, rest: Omit<Problem, 'where'>): Problem {
  return { ...rest, where: { field: option } }
}

/** The names in a list such as `svg,pdf`, in lower case, each once, in the order given. */
function listed(text: string): string[] {
  const names = text.split(',').map((name) =>
    name
      .trim()
      .toLowerCase()
      .replace(/[\s_]+/g, ' '),
  )
  return [...new Set(names.filter((name) => name !== ''))]
}

/** What is written when --as is absent: paper, screen and other programs; a cutter's file is asked for by name. */
const USUAL_FORMATS: readonly Format[] = ['svg', 'pdf', 'json']

/** The formats asked for with --as; the usual ones when it is absent. */
export function readFormats(text: string | undefined): Result<Format[]> {
  return readFormatsOf(text, FORMATS, USUAL_FORMATS)
}

/** The formats of --as among those that a command knows; its usual ones when it is absent. */
export function readFormatsOf<T extends string>(
  text: string | undefined,
  known: readonly T[],
  usual: readonly T[],
): Result<T[]> {
  if (text === undefined) return { ok: true, value: [...usual] }
  return readNames(text, '--as', (name) => {
    const format = known.find((one) => one === name)
    if (format) return { ok: true, value: format }
    const expected = `one or more of ${known.join(', ')}`
    const hint = didYouMean(name, known) ?? `write --as ${known.join(',')}`
    return {
      ok: false,
      problems: [optionProblem('--as', { code: 'unknown-format', actual: `"${name}"`, expected, hint })],
    }
  })
}

/** The papers asked for with --paper, each once; undefined when it is absent: the file's units decide. */
export function readPapers(text: string | undefined): Result<Paper[] | undefined> {
  if (text === undefined) return { ok: true, value: undefined }
  return readNames(text, '--paper', (name) => {
    const paper = parsePaper(name)
    return paper.ok
      ? paper
      : { ok: false, problems: paper.problems.map((p) => ({ ...p, where: { field: '--paper' } })) }
  })
}

/** The pieces asked for with --pieces; undefined for all. Whether they are in the pattern is the pattern's to say. */
export function readPieces(text: string | undefined): Result<string[] | undefined> {
  if (text === undefined) return { ok: true, value: undefined }
  return readNames(text, '--pieces', (name) => ({ ok: true, value: name.replace(/-/g, ' ') }))
}

/** A command that takes one file alone. */
export function oneFile(files: readonly string[], expected: string, hint: string): Problem {
  return { code: 'one-file', where: {}, actual: `${files.length} files`, expected, hint }
}

/** What was most likely meant, as a hint. */
export function didYouMean(name: string, known: readonly string[]): string | undefined {
  const near = nearestName(name, known)
  return near === undefined ? undefined : `did you mean ${near}?`
}

/** What a list such as `svg,pdf` names, each read by itself; all problems at once. */
function readNames<T>(text: string, option: string, read: (name: string) => Result<T>): Result<T[]> {
  const names = listed(text)
  if (names.length === 0) {
    const expected = 'a list of names, such as a,b'
    return {
      ok: false,
      problems: [
        optionProblem(option, {
          code: 'empty-option',
          actual: 'nothing',
          expected,
          hint: `name at least one, or leave ${option} out`,
        }),
      ],
    }
  }
  const results = names.map(read)
  const problems = results.flatMap((result) => (result.ok ? [] : result.problems))
  if (problems.length > 0) return { ok: false, problems }
  return { ok: true, value: results.flatMap((result) => (result.ok ? [result.value] : [])) }
}
