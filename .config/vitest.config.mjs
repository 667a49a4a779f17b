import { defineConfig } from 'vitest/config'
import { ClosingLine } from './closing-line.mjs'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', new ClosingLine()],
    // The command line's tests start processes of their own; on two cores the default five seconds can be short.
    testTimeout: 30_000,
    coverage: { include: ['src/**'] },
  },
})
