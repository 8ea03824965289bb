import { defineConfig } from 'vitest/config'

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  define: { __BUILD_ID__: JSON.stringify('test') },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/screens/**', 'tests/bench/**', 'node_modules/**'],
    environment: 'node',
    setupFiles: ['tests/fixed-seed.ts'],
    pool: 'forks',
    maxWorkers: 2,
    allowOnly: false,
    // A loaded two-core machine is normal; a test waits for conditions, so that time only says "hung".
    testTimeout: 120_000,
    hookTimeout: 120_000,
    teardownTimeout: 10_000,
    expect: { poll: { timeout: 30_000 } },
  },
})
