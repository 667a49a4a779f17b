/**
 * Says at the start which seed the properties of the run have, and ends the run with one plain line of counts,
 * `N passed, N failed`, for readers that do not know the runner.
 */
export class ClosingLine {
  constructor(seed) {
    this.seed = seed
  }

  onInit() {
    console.log(`properties from seed ${this.seed} (SCYE_SEED=${this.seed} repeats them)`)
  }

  onTestRunEnd(modules, unhandledErrors) {
    const count = { passed: 0, failed: unhandledErrors.length, skipped: 0 }
    for (const module of modules) {
      let failed = 0
      for (const test of module.children.allTests()) {
        const { state } = test.result()
        if (state === 'passed') count.passed++
        else if (state === 'failed') failed++
        else count.skipped++
      }
      // A file that cannot even be loaded holds no test that could fail.
      count.failed += failed === 0 && module.state() === 'failed' ? 1 : failed
    }
    const skipped = count.skipped > 0 ? `, ${count.skipped} skipped` : ''
    console.log(`${count.passed} passed, ${count.failed} failed${skipped}`)
  }
}
