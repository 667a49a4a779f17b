// Builds the bench as the product is built and runs it. (Run through tsx every closure made would cost an extra call.)
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
await import(new URL(`../../${outDir}/bench.mjs`, import.meta.url).href)
