import {
  accessSync,
  chmodSync,
  constants,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { Problem, Result, WrittenFile } from '../index.ts'

export interface Written {
  readonly folder: string
  readonly files: readonly string[]
  /** Names among them that stood there before. */
  readonly replaced: readonly string[]
  /** Names of earlier runs that this one did not write: they may show another pattern. */
  readonly left: readonly string[]
}

/** Names of files that show or tell of a pattern, whichever command wrote them. */
const OF_A_PATTERN = [
  /^pattern\.(svg|json|dxf)$/,
  /^tiles-.+\.pdf$/,
  /^projector\.(svg|pdf)$/,
  /^report\.json$/,
  /^slip\.txt$/,
  /^compare\.svg$/,
  /^preview\.svg$/,
  /^view\.html$/,
  /^explain\.(html|pdf)$/,
  /^fitting-sheet-.+\.(pdf|svg)$/,
]

/**
 * Writes files into a folder, all or none: first beside their places under other names, then renamed, so that a
 * run that is cut off leaves what was there. Measurements are private: only the owner may read them.
 */
export function writeFiles(folder: string, files: readonly WrittenFile[]): Result<Written> {
  const waiting: { from: string; to: string }[] = []
  try {
    makeFolder(folder)
    const before = readdirSync(folder)
    for (const { name, content } of files) {
      const from = join(folder, `.${name}.${process.pid}.part`)
      waiting.push({ from, to: join(folder, name) })
      writeFileSync(from, content, { mode: 0o600, flush: true })
    }
    for (const { from, to } of waiting) renameSync(from, to)
    const names = files.map((file) => file.name)
    return {
      ok: true,
      value: {
        folder,
        files: names,
        replaced: names.filter((name) => before.includes(name)),
        left: before.filter((name) => OF_A_PATTERN.some((own) => own.test(name)) && !names.includes(name)),
      },
    }
  } catch (error) {
    for (const { from } of waiting) if (existsSync(from)) rmSync(from, { force: true })
    return { ok: false, problems: [unwritable(folder, error as NodeJS.ErrnoException)] }
  }
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
  } catch (error) {
    // On a disk that may only be read Node says that there is no such folder; the nearest one there is says why.
    let nearest = dirname(folder)
    while (!existsSync(nearest) && nearest !== dirname(nearest)) nearest = dirname(nearest)
    accessSync(nearest, constants.W_OK)
    throw error
  }
}

/**
 * Writes one new file, whole or not at all, for its owner only. Problem: there is a file already, even one made
 * meanwhile (a link, unlike a rename, takes nobody's place).
 */
export function writeNewFile(path: string, text: string): Result<undefined> {
  const from = join(dirname(path), `.${basename(path)}.${process.pid}.part`)
  try {
    writeFileSync(from, text, { mode: 0o600, flush: true, flag: 'wx' })
    try {
      linkSync(from, path)
    } catch (error) {
      // Some disks know no links: there the file is made where nothing is yet.
      if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'].includes((error as NodeJS.ErrnoException).code ?? ''))
        throw error
      writeFileSync(path, text, { mode: 0o600, flush: true, flag: 'wx' })
    }
    return { ok: true, value: undefined }
  } catch (error) {
    const fault = error as NodeJS.ErrnoException
    return { ok: false, problems: [fault.code === 'EEXIST' ? taken(path) : noPlace(path, fault)] }
  } finally {
    rmSync(from, { force: true })
  }
}

/**
 * Replaces a file's text, whole or not at all, and keeps its mode; a link stays a link. Problem: it is no longer what
 * it was when it was read.
 */
export function replaceFile(path: string, before: Buffer, text: string): Result<undefined> {
  let from: string | undefined
  try {
    const place = realpathSync(path)
    from = join(dirname(place), `.${basename(place)}.${process.pid}.part`)
    const mode = statSync(place).mode & 0o777
    writeFileSync(from, text, { mode: 0o600, flush: true, flag: 'wx' })
    chmodSync(from, mode)
    if (!readFileSync(place).equals(before)) return { ok: false, problems: [changedMeanwhile(path)] }
    renameSync(from, place)
    return { ok: true, value: undefined }
  } catch (error) {
    return { ok: false, problems: [noPlace(path, error as NodeJS.ErrnoException)] }
  } finally {
    if (from !== undefined) rmSync(from, { force: true })
  }
}

function changedMeanwhile(file: string): Problem {
  return {
    code: 'file-changed',
    where: { file },
    actual: 'a file that somebody changed after it was read',
    expected: 'the file as it was read',
    hint: 'nothing was recorded: save and close it elsewhere, then record once more',
  }
}

function taken(file: string): Problem {
  return {
    code: 'file-exists',
    where: { file },
    actual: 'a file of that name, which is left as it is',
    expected: 'a name that no file has yet',
    hint: 'write another name, or put that file away first',
  }
}

function noPlace(file: string, error: NodeJS.ErrnoException): Problem {
  const gone = error.code === 'ENOENT' ? { actual: 'a folder that is not there', hint: 'make the folder first' } : {}
  return { ...unwritable(file, error), expected: 'a place that can be written to', hint: 'name another place', ...gone }
}

function unwritable(folder: string, { code, message }: NodeJS.ErrnoException): Problem {
  const reasons: Record<string, string> = {
    EEXIST: 'a file of that name is in the way',
    ENOTDIR: 'a file is in the way',
    EISDIR: 'a folder is in the way of a file',
    EACCES: 'no permission to write there',
    EROFS: 'the disk cannot be written to',
    ENOSPC: 'the disk is full',
  }
  return {
    code: 'cannot-write',
    where: { file: folder },
    actual: reasons[code ?? ''] ?? message,
    expected: 'a folder that can be written to',
    hint: 'name another folder with -o DIR',
  }
}
