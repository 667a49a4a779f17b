import { execFile } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const SCYE = fileURLToPath(new URL('../../bin/scye', import.meta.url))
const AT_ONCE = 2
const LONGEST = 30_000

/** Drafts or checks each text as a process of its own; what is wrong with how one ends, in words. */
export async function processFaults(texts: readonly string[]): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'scye-fuzz-'))
  try {
    const lanes = Array.from({ length: AT_ONCE }, async (_, lane) => {
      const faults: string[] = []
      for (let k = lane; k < texts.length; k += AT_ONCE) faults.push(...(await faultsOf(texts[k] as string, folder, k)))
      return faults
    })
    return (await Promise.all(lanes)).flat()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function faultsOf(text: string, folder: string, k: number): Promise<string[]> {
  const file = join(folder, `${k}.yaml`)
  const output = `${k}-pattern`
  writeFileSync(file, text)
  const json = k % 3 < 2
  const drafts = k % 3 !== 1
  const args = drafts ? ['draft', file, '--as', 'json'] : ['check', file]
  const { status, stdout, stderr } = await ended([...args, ...(json ? ['--json'] : [])])
  const files = readdirSync(folder).includes(output) ? readdirSync(join(folder, output)) : []
  const say = (what: string) => [`file ${k}: ${what}\n${stderr.slice(0, 500)}`]
  return [
    ...(status === 0 || status === 1 || status === 2 ? [] : say(`ends with ${status}`)),
    ...(status === 2 && files.length > 0 ? say(`writes ${files} on status 2`) : []),
    ...(drafts && status !== 2 && !files.includes('report.json') ? say('writes no report') : []),
    ...(!drafts && files.length > 0 ? say(`writes ${files} where it only checks`) : []),
    ...(status === 2 && !json && stdout !== '' ? say('prints on stdout on status 2') : []),
    ...(status === 2 && !json && !/^ {2}do this/m.test(stderr) ? say('says nothing to do') : []),
    ...(json && stderr !== '' ? say('prints on stderr with --json') : []),
    ...(json && !isDocument(stdout) ? say('prints no JSON document') : []),
    ...(/^\s+at |node:internal|\.mjs:/m.test(stderr) ? say('shows its insides') : []),
  ]
}

function ended(args: readonly string[]): Promise<{ status: unknown; stdout: string; stderr: string }> {
  return new Promise((resolve) => {
    const options = { encoding: 'utf8', timeout: LONGEST, maxBuffer: 50_000_000 } as const
    execFile(process.execPath, [SCYE, ...args], options, (error, stdout, stderr) => {
      resolve({ status: error ? (error.killed ? 'no end' : (error.code ?? error.signal)) : 0, stdout, stderr })
    })
  })
}

function isDocument(text: string): boolean {
  try {
    return typeof JSON.parse(text).scyewright === 'string'
  } catch {
    return false
  }
}
