// Builds the bench as the product is built and runs it. (Run through tsx every closure made would cost an extra call.)
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { build } from 'tsdown'

// As deep in the project as tests/bench, so that paths relative to a module hold.
const outDir = 'node_modules/.bench'

await build({
  config: false,
  entry: 'tests/bench/bench.ts',
  outDir,
  platform: 'node',
  target: 'node20',
  dts: false,
  logLevel: 'error',
  // The libraries as they are published.
  deps: { neverBundle: ['clipper2-ts', 'bezier-js', /^paper/] },
})
// In a process of its own: what the build leaves behind would be timed as well.
const file = fileURLToPath(new URL(`../../${outDir}/bench.mjs`, import.meta.url))
const { status } = spawnSync(process.execPath, [file, ...process.argv.slice(2)], { stdio: 'inherit' })
process.exitCode = status ?? 1
