/** How the page is built: two pages, the board and the location sheet, with every asset a file of its own. */
import { defineConfig } from 'vite'
import { chunkOf } from './chunk-of.ts'

export default defineConfig({
  root: 'renderer',
  base: './',
  publicDir: false,
  worker: { format: 'es' },
  build: {
    outDir: '../out/page',
    emptyOutDir: true,
    target: 'esnext',
    modulePreload: { polyfill: false },
    // The content policy allows no inline script or style; an inlined font or picture would only swell the code.
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    // What the board fetches at the start is counted by the bench, compressed and all of it.
    chunkSizeWarningLimit: 1_000,
    // Gathered by the build with those of the other parts.
    license: { fileName: 'licences-bundled.json' },
    rolldownOptions: {
      checks: { pluginTimings: false },
      input: ['renderer/index.html', 'renderer/sheet.html'],
      // Each of the two has with a module all that the module imports: there is nothing to bring in besides.
      output: { codeSplitting: { includeDependenciesRecursively: false, groups: [{ name: chunkOf }] } },
    },
  },
})
