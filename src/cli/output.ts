import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Problem, Result, WrittenFile } from '../index.ts'

export interface Written {
  readonly folder: string
  readonly files: readonly string[]
  /** Names among them that stood there before. */
  readonly replaced: readonly string[]
  /** Names of earlier runs that this one did not write: they may show another pattern. */
  readonly left: readonly string[]
}

/** Names that a run may write. */
const OURS =
  /^(pattern\.(svg|json|dxf)|compare\.svg|view\.html|tiles-.+\.pdf|projector\.(svg|pdf)|report\.json|slip\.txt)$/

/**
 * Writes files into a folder, all or none: first beside their places under other names, then renamed, so that a
 * run that is cut off leaves what was there. Measurements are private: only the owner may read them.
 */
export function writeFiles(folder: string, files: readonly WrittenFile[]): Result<Written> {
  const waiting: { from: string; to: string }[] = []
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
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
        left: before.filter((name) => OURS.test(name) && !names.includes(name)),
      },
    }
  } catch (error) {
    for (const { from } of waiting) if (existsSync(from)) rmSync(from, { force: true })
    return { ok: false, problems: [unwritable(folder, error as NodeJS.ErrnoException)] }
  }
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
