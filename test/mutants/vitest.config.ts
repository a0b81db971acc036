/** The tests that judge mutants of core: core's own and the published figures, in one worker, nothing that starts another program. */
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))

export default defineConfig({
  root: ROOT,
  test: {
    include: ['test/{core,reference}/**/*.test.ts'],
    // These ask GDAL and GRASS, which takes seconds a run and judges core/ground alone.
    exclude: ['test/reference/{viewshed,contours,relief,grass-horizon}.test.ts'],
    isolate: false,
    testTimeout: 30_000,
  },
})
