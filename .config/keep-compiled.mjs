// Runs the built command once over what most runs need and keeps the code as V8 has compiled it, so that the next run
// need not: a process of its own, since the code is only taken under the same flags of V8.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../', import.meta.url))
mkdirSync(join(root, 'dist/compiled'))
const { keepCompiled, loadPart, run } = await import('../dist/cli.cjs')
const plain = (text) => text
const style = { strong: plain, quiet: plain, bad: plain, doubtful: plain, good: plain }
const terminal = { out: plain, err: plain, styleOut: style, styleErr: style }
const folder = mkdtempSync(join(tmpdir(), 'scye-build-'))
try {
  const file = join(root, 'examples/lamplighter.yaml')
  const statuses = [
    await run(['check', file], terminal),
    await run(['draft', file, '--as', 'svg,pdf,json', '-o', folder], terminal),
  ]
  if (statuses.includes(2)) throw new Error('the example cannot be drafted with the command just built')
  loadPart('cast-worker.cjs')
} finally {
  rmSync(folder, { recursive: true })
}
keepCompiled()
