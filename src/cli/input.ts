import { readFileSync, statSync } from 'node:fs'
import type { Problem, Result } from '../index.ts'

/** A performer file weighs a few thousand bytes; something far larger is not even read. */
const LARGEST = 5_000_000

/** A performer file's text under the name that problems and outputs use. */
export interface Input {
  readonly name: string
  readonly text: string
  /** The same as it was read, to tell whether the file has been changed since. */
  readonly bytes: Buffer
}

/**
 * Reads a file, or standard input for `-`, as UTF-8. Problems: not there, a folder, not readable, too large. Whether
 * it is a text at all is the reader's to say, with line and column.
 */
export function readInput(name: string): Result<Input> {
  const called = name === '-' ? 'standard input' : name
  try {
    const large = name !== '-' && statSync(name).size > LARGEST
    const bytes = large ? Buffer.alloc(0) : readFileSync(name === '-' ? 0 : name)
    const text = bytes.toString('utf8')
    if (large || text.length > LARGEST)
      return refused(called, 'too-large', 'more than 5 MB', 'give the performer file, a text in YAML')
    return { ok: true, value: { name: called, text, bytes } }
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException
    if (code === 'ENOENT')
      return refused(called, 'no-such-file', 'no such file', 'check the spelling, and the folder that you are in')
    if (code === 'EISDIR') return refused(called, 'not-a-file', 'a folder', 'name the performer file in it')
    return refused(called, 'not-readable', message, 'check that you may read it')
  }
}

function refused(file: string, code: string, actual: string, hint: string): Result<never> {
  const problem: Problem = { code, where: { file }, actual, expected: 'a performer file', hint }
  return { ok: false, problems: [problem] }
}
