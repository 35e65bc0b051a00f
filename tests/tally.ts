import type {Reporter, SerializedError, TestModule, TestRunEndReason} from "vitest/node"

/**
 * Ends a run with one plain line over all projects: `212 passed, 0 failed`. A file that could not be
 * read, a hook that failed and an error outside every test count as one failure each.
 */
export default class Tally implements Reporter {
  onTestRunEnd(
    modules: readonly TestModule[],
    outside: readonly SerializedError[],
    reason: TestRunEndReason,
  ) {
    const count = {passed: 0, failed: outside.length, skipped: 0, pending: 0}
    for (const module of modules) {
      count.failed += module.errors().length
      for (const suite of module.children.allSuites()) count.failed += suite.errors().length
      for (const test of module.children.allTests()) count[test.result().state]++
    }
    if (reason === "failed" && count.failed === 0) count.failed = 1 // before the first test: a build, a setup
    const skipped = count.skipped + count.pending
    console.log(`\n${count.passed} passed, ${count.failed} failed${skipped ? `, ${skipped} skipped` : ""}`)
  }
}
