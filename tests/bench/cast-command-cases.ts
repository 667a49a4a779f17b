import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { BenchCase } from './bench-case.ts'
import { CAST, castFiles } from './cast-files.ts'

const SCYE = fileURLToPath(new URL('../../bin/scye', import.meta.url))

/** The whole command with its workers on as many cores as there are, by the clock; two cores are what is promised for. */
export const castCommandCases: readonly BenchCase[] = [
  castCase('JSON alone', ['--as', 'json'], 2000, ['pattern.json']),
  castCase('SVG and PDF on a4', ['--as', 'svg,pdf', '--paper', 'a4'], 8000, ['pattern.svg', 'tiles-a4.pdf']),
]

function castCase(what: string, options: readonly string[], most: number, written: readonly string[]): BenchCase {
  return {
    name: `scye cast of ${CAST}: ${what}`,
    count: 1,
    ours: () => castOf(CAST, options).length,
    oneByOne: 1,
    elsewhere: true,
    wanted: { milliseconds: most },
    agree: () => {
      const names = castOf(2, options)
      const missing = written.filter((name) => names.filter((one) => one.endsWith(`/${name}`)).length !== 2)
      return { apart: missing.length, within: 0, what: 'kinds of files not written' }
    },
  }
}

/** Names of all files that the command writes for so many performers. */
function castOf(count: number, options: readonly string[]): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'scye-bench-'))
  try {
    for (const [k, text] of castFiles(count).entries()) writeFileSync(join(folder, `role-${k + 1}.yaml`), text)
    const out = join(folder, 'out')
    const { status, stderr } = spawnSync(process.execPath, [SCYE, 'cast', folder, ...options, '-q', '-o', out], {
      encoding: 'utf8',
    })
    if (status !== 0) throw new Error(stderr)
    return readdirSync(out, { recursive: true, encoding: 'utf8' })
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
