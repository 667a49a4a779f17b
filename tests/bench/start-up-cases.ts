import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { BenchCase } from './bench-case.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

const scye = (...args: readonly string[]) => [join(root, 'bin', 'scye'), ...args]
const demo = join(root, 'examples', 'lamplighter.yaml')

/** Node alone, which every command has to wait for: what is measured is how many times as long a command takes. */
const NODE = { library: 'node -e 0', work: () => started(['-e', '0']) }

export const startUpCases: readonly BenchCase[] = [
  {
    name: 'scye --version, a process of its own',
    count: 1,
    ours: () => started(scye('--version')),
    theirs: NODE,
    elsewhere: true,
    wanted: { ratio: 1.8 },
    agree: () => {
      const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
      const { stdout } = spawnSync(process.execPath, scye('--version'), { encoding: 'utf8' })
      return { apart: stdout.trim() === version ? 0 : 1, within: 0, what: 'version' }
    },
  },
  {
    name: 'scye draft --as svg, a process of its own',
    count: 1,
    ours: () => inFolder((folder) => started(scye('draft', demo, '--as', 'svg', '-o', folder))),
    theirs: NODE,
    elsewhere: true,
    wanted: { ratio: 3.5 },
    agree: () => {
      const files = inFolder((folder) => {
        started(scye('draft', demo, '--as', 'svg', '-o', folder))
        return readdirSync(folder).length
      })
      return { apart: Math.abs(files - 3), within: 0, what: 'files' }
    },
  },
]

function inFolder(work: (folder: string) => number): number {
  const folder = mkdtempSync(join(tmpdir(), 'scye-bench-'))
  try {
    return work(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function started(args: readonly string[]): number {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(stderr)
  return 1
}
