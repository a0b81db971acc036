/** Prints the one line CI reads: `vitest: N passed, N failed, N skipped`; files that failed to load count as failed. */
import type { Reporter, TestModule } from 'vitest/node'

export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    let passed = 0
    let failed = unhandled.length
    let skipped = 0
    for (const module of modules) {
      const tests = [...module.children.allTests()]
      if (module.errors().length > 0 || tests.length === 0) failed += 1
      for (const test of tests) {
        const state = test.result().state
        if (state === 'passed') passed += 1
        else if (state === 'skipped') skipped += 1
        else failed += 1
      }
    }
    process.stdout.write(`\nvitest: ${passed} passed, ${failed} failed, ${skipped} skipped\n`)
  }
}
