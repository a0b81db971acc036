/** How the page is built: two pages, the board and the location sheet, with every asset a file of its own. */
import { defineConfig } from 'vite'

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
    // Gathered by the build with those of the other parts.
    license: { fileName: 'licences-bundled.json' },
    rolldownOptions: { checks: { pluginTimings: false }, input: ['renderer/index.html', 'renderer/sheet.html'] },
  },
})
