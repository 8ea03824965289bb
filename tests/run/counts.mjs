// @ts-check
import { readFileSync } from 'node:fs'

/**
 * @typedef {{ passed: number, failed: number, skipped: number }} Counts
 * @typedef {{ numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number,
 *   testResults: { status: string, assertionResults: unknown[] }[] }} VitestReport
 * @typedef {{ stats: { expected: number, unexpected: number, flaky: number, skipped: number } }} ScreensReport
 */

/** @type {Readonly<Counts>} */
export const noTests = Object.freeze({ passed: 0, failed: 0, skipped: 0 })

/**
 * @param {string} file vitest's JSON report
 * @param {number} code vitest's exit code
 * @returns {Counts}
 */
export function countVitest(file, code) {
  const report = /** @type {VitestReport | null} */ (readReport(file))
  if (report === null) return withExitCode(noTests, 1)
  // A file that could not be loaded has no tests that could have failed.
  const unloaded = report.testResults.filter((f) => f.status === 'failed' && f.assertionResults.length === 0).length
  const counts = {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloaded,
    skipped: report.numPendingTests + report.numTodoTests,
  }
  return withExitCode(counts, code)
}

/**
 * @param {string} file Playwright's JSON report
 * @param {number} code Playwright's exit code
 * @returns {Counts}
 */
export function countScreens(file, code) {
  const report = /** @type {ScreensReport | null} */ (readReport(file))
  if (report === null) return withExitCode(noTests, 1)
  const { expected, unexpected, flaky, skipped } = report.stats
  return withExitCode({ passed: expected, failed: unexpected + flaky, skipped }, code)
}

/**
 * @param {readonly Counts[]} parts
 * @returns {Counts}
 */
export function addUp(parts) {
  return parts.reduce(
    (sum, part) => ({
      passed: sum.passed + part.passed,
      failed: sum.failed + part.failed,
      skipped: sum.skipped + part.skipped,
    }),
    noTests,
  )
}

/**
 * @param {Counts} counts
 * @returns {string} such as "12 passed, 0 failed"
 */
export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`
}

/**
 * A runner that says "failed" without a failed test (an error outside any test, no test found) counts as one.
 * @param {Counts} counts
 * @param {number} code
 * @returns {Counts}
 */
function withExitCode(counts, code) {
  return code !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts
}

/** @param {string} file */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return null
  }
}
