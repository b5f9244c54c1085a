import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Left to itself it keeps a core free, which on two cores is half of them.
    // Files share the modules of a worker: nothing of the house keeps what one file could leave for another.
    isolate: false,
    maxWorkers: process.env['VITEST_MAX_WORKERS'] ?? Math.max(2, availableParallelism() - 1),
    reporters: process.env['CI'] ? ['default'] : ['dot'],
  },
})
