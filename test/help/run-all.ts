/** What `npm test` runs: build, format, lint, types, dead code, a browser, and last all tests, whose count ends the output. */
import { spawnSync } from 'node:child_process'
import { resolve } from 'node:path'
import { findHost, findPoppler } from './browser.ts'

const ROOT = resolve(import.meta.dirname, '../..')

interface Step {
  readonly name: string
  readonly run: () => boolean
  readonly advice: string
}

/** A tool of node_modules by its own script, so that it runs under this Node on every system. */
function tool(path: string, ...words: readonly string[]): boolean {
  const script = resolve(ROOT, path)
  return spawnSync(process.execPath, [script, ...words], { cwd: ROOT, stdio: 'inherit' }).status === 0
}

const STEPS: readonly Step[] = [
  { name: 'build', run: () => tool('app/build.ts'), advice: 'The build above failed.' },
  {
    name: 'format',
    run: () => tool('node_modules/oxfmt/bin/oxfmt', '--check', '.'),
    advice: 'Run: npm run format',
  },
  {
    name: 'lint',
    run: () => tool('node_modules/oxlint/bin/oxlint', '--type-aware', '--deny-warnings'),
    advice: 'Correct what the lines above name.',
  },
  {
    name: 'types',
    run: () => tool('node_modules/typescript/bin/tsc', '-b'),
    advice: 'Correct what the lines above name.',
  },
  {
    name: 'dead code',
    run: () => tool('node_modules/knip/bin/knip.js'),
    advice: 'Remove what the lines above name, or use it.',
  },
  {
    name: 'browser',
    run: () => {
      const host = findHost()
      process.stdout.write(`End-to-end tests run on ${host.path}\n`)
      findPoppler('pdftoppm')
      findPoppler('pdftotext')
      return true
    },
    advice: 'See the sentence above.',
  },
]

function succeeds(step: Step): boolean {
  try {
    return step.run()
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`)
    return false
  }
}

process.chdir(ROOT)
for (const step of STEPS) {
  const began = performance.now()
  if (!succeeds(step)) {
    process.stderr.write(`\n${step.name} failed, so no test was run. ${step.advice}\n`)
    process.exit(1)
  }
  process.stdout.write(`${step.name}: good (${((performance.now() - began) / 1000).toFixed(1)} s)\n`)
}
process.exit(tool('node_modules/vitest/vitest.mjs', 'run', '--config', 'test/vitest.config.ts') ? 0 : 1)
