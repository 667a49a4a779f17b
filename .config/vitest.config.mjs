import { defineConfig } from 'vitest/config'
import { ClosingLine } from './closing-line.mjs'

// The same in every run, so that a change decides and not luck; SCYE_SEED=random looks further.
const asked = process.env.SCYE_SEED ?? '20261125'
const seed = asked === 'random' ? String(Math.floor(Math.random() * 2 ** 31)) : asked

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['.config/seed.mjs'],
    env: { SCYE_SEED: seed },
    reporters: ['default', new ClosingLine(seed)],
    // The command line's tests start processes of their own; on two cores the default five seconds can be short.
    testTimeout: 30_000,
    // On two cores the default is a single worker.
    maxWorkers: '100%',
    // Files of a worker share what they have loaded and compiled: half the time. No test changes what another one sees.
    isolate: false,
    coverage: { include: ['src/**'] },
  },
})
