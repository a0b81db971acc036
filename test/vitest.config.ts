/** Test projects: unit (pure and Node), pack (packaging), e2e (a real browser). One run, one report. */
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const noElectron = fileURLToPath(new URL('./help/no-electron.ts', import.meta.url))

/** Paths below are from the top of the house. */
const root = fileURLToPath(new URL('..', import.meta.url))

export default defineConfig({
  root,
  test: {
    reporters: ['default', '#test/help/count-reporter.ts'],
    projects: [
      {
        resolve: { alias: { electron: noElectron } },
        test: {
          name: 'unit',
          include: ['test/{core,app,main,renderer,reference,house}/**/*.test.ts'],
          testTimeout: 30_000,
        },
      },
      { test: { name: 'pack', include: ['test/pack/**/*.test.ts'], testTimeout: 180_000, hookTimeout: 180_000 } },
      {
        test: {
          name: 'e2e',
          include: ['test/e2e/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // Each file has a host, a browser and a library of its own, and mostly waits: two go side by side.
          maxWorkers: 2,
        },
      },
    ],
  },
})
