import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { onTestFinished } from 'vitest'
import type { Terminal } from '../src/cli/terminal.ts'

const root = fileURLToPath(new URL('..', import.meta.url))

/** The example that the demo drafts. */
export const lamplighter = join(root, 'examples', 'lamplighter.yaml')

export interface ScyeRun {
  readonly status: number | null
  readonly stdout: string
  readonly stderr: string
}

export interface ScyeOptions {
  readonly cwd?: string
  readonly input?: string | Buffer
  readonly env?: Readonly<Record<string, string>>
}

/** Runs the built command as a process of its own, not in a terminal. */
export function scye(args: readonly string[], options: ScyeOptions = {}): ScyeRun {
  if (!existsSync(join(root, 'dist', 'cli.cjs'))) throw new Error('dist/cli.cjs is missing: npm run build')
  const env = { ...process.env, FORCE_COLOR: '', ...options.env }
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [join(root, 'bin', 'scye'), ...args], {
    cwd: options.cwd ?? tmpdir(),
    input: options.input ?? '',
    env,
    encoding: 'utf8',
  })
  if (error) throw error
  return { status, stdout, stderr }
}

/**
 * The same built command in this process, for tables of many cases: a process of its own costs half a second. Paths
 * count from the folder of the tests' process.
 */
export async function scyeHere(args: readonly string[], more: Partial<Terminal> = {}): Promise<ScyeRun> {
  const plain = (text: string) => text
  const style = { strong: plain, quiet: plain, bad: plain, doubtful: plain, good: plain }
  let stdout = ''
  let stderr = ''
  const terminal = {
    out: (text: string) => {
      stdout += text
    },
    err: (text: string) => {
      stderr += text
    },
    styleOut: style,
    styleErr: style,
    ...more,
  }
  const { run } = await import(/* @vite-ignore */ pathToFileURL(join(root, 'dist', 'cli.cjs')).href)
  return { status: await run(args, terminal), stdout, stderr }
}

/** A new empty folder, gone when the test is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'scye-test-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}
