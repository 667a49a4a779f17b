import { type Dirent, readdirSync, statSync } from 'node:fs'
import { basename, extname, join, resolve } from 'node:path'
import type { Problem, Result } from '../index.ts'

/** A performer file of a folder and where its pattern goes, or why it goes nowhere. */
export interface CastFile {
  readonly file: string
  readonly folder: string
  readonly problem?: Problem
}

/**
 * The performer files of a folder, by name: `.yaml` and `.yml` directly in it. Folders in it are not looked into, as patterns
 * lie there; hidden files are left alone. Problem: no folder, not readable, no such file in it.
 */
export function castFiles(dir: string, output: string | undefined): Result<CastFile[]> {
  let entries: Dirent[]
  try {
    entries = readdirSync(dir, { withFileTypes: true })
  } catch (error) {
    return { ok: false, problems: [unreadable(dir, error as NodeJS.ErrnoException)] }
  }
  const names = entries
    .filter((entry) => /^[^.].*\.ya?ml$/i.test(entry.name) && !isFolder(dir, entry))
    .map((entry) => entry.name)
    .sort()
  if (names.length === 0) return { ok: false, problems: [noFiles(dir)] }
  const taken = new Map<string, string>()
  const files = names.map((name): CastFile => {
    const stem = basename(name, extname(name))
    const file = join(dir, name)
    const folder = output === undefined ? join(resolve(dir), `${stem}-pattern`) : join(resolve(output), stem)
    // Some disks take Pilot and pilot for one name.
    const key = stem.toLowerCase()
    const first = taken.get(key)
    if (first === undefined) taken.set(key, name)
    return first === undefined ? { file, folder } : { file, folder, problem: sameStem(file, first) }
  })
  return { ok: true, value: files }
}

/** A link is what it leads to; one that leads nowhere is kept, and said to be unreadable where it is read. */
function isFolder(dir: string, entry: Dirent): boolean {
  if (!entry.isSymbolicLink()) return entry.isDirectory()
  try {
    return statSync(join(dir, entry.name)).isDirectory()
  } catch {
    return false
  }
}

function sameStem(file: string, first: string): Problem {
  return {
    code: 'same-folder',
    where: { file },
    actual: `${first} has the same name and is written to its folder already`,
    expected: 'a name of its own for each performer file',
    hint: 'rename one of the two, or move it out of the folder',
  }
}

function noFiles(dir: string): Problem {
  return {
    code: 'no-performer-files',
    where: { file: dir },
    actual: 'no .yaml or .yml file directly in it',
    expected: 'a folder with a performer file for each performer',
    hint: 'name the folder that the performer files are in; folders in it are not looked into',
  }
}

function unreadable(dir: string, { code, message }: NodeJS.ErrnoException): Problem {
  const missing = code === 'ENOENT'
  const file = code === 'ENOTDIR'
  return {
    code: missing ? 'no-such-folder' : file ? 'not-a-folder' : 'not-readable',
    where: { file: dir },
    actual: missing ? 'no such folder' : file ? 'a file' : message,
    expected: 'a folder of performer files',
    hint: file
      ? 'for one file use scye draft; cast takes the folder it is in'
      : 'check the spelling, and that you may read it',
  }
}
