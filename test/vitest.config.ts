/** Test projects: unit (pure and Node), alone (what needs a worker of its own), pack (packaging), e2e (a real browser). One run, one report. */
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { filesAlone } from '#test/help/files-alone.ts'

const noElectron = fileURLToPath(new URL('./help/no-electron.ts', import.meta.url))
const UNIT = ['test/{core,app,main,renderer,reference,house}/**/*.test.ts']
const alone = filesAlone()
/** A busy machine takes its time; what comes is seen at once, and a wait ends before its test, to say what did not come. */
const PATIENT = { testTimeout: 60_000, hookTimeout: 60_000, expect: { poll: { timeout: 30_000, interval: 50 } } }

/** Paths below are from the top of the house. */
const root = fileURLToPath(new URL('..', import.meta.url))

export default defineConfig({
  root,
  test: {
    reporters: ['default', '#test/help/count-reporter.ts'],
    // The same for all projects, so that they share one queue: files of the browser mostly wait, and the others fill the time.
    maxWorkers: 2,
    projects: [
      {
        resolve: { alias: { electron: noElectron } },
        // Modules are read once per worker, not once per file.
        test: { name: 'unit', include: UNIT, exclude: alone, isolate: false, ...PATIENT },
      },
      {
        resolve: { alias: { electron: noElectron } },
        test: { name: 'alone', include: alone, ...PATIENT },
      },
      { test: { name: 'pack', include: ['test/pack/**/*.test.ts'], testTimeout: 180_000, hookTimeout: 180_000 } },
      {
        test: {
          name: 'e2e',
          include: ['test/e2e/**/*.test.ts'],
          globalSetup: ['test/e2e/one-browser.ts'],
          isolate: false,
          ...PATIENT,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
})
