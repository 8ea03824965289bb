import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { addUp, closingLine, countScreens, countVitest } from '../run/counts.mjs'

const folder = mkdtempSync(join(tmpdir(), 'boilboard-counts-'))
afterAll(() => rmSync(folder, { recursive: true }))

const GOOD_FILE = { status: 'passed', assertionResults: [{}, {}] }
const UNLOADED_FILE = { status: 'failed', assertionResults: [] }

describe('counts of the node-side tests', () => {
  it.each([
    ['all passed', { numPassedTests: 2, testResults: [GOOD_FILE] }, 0, '2 passed, 0 failed'],
    ['one failed', { numPassedTests: 1, numFailedTests: 1, testResults: [GOOD_FILE] }, 1, '1 passed, 1 failed'],
    [
      'a file that did not load',
      { numPassedTests: 2, testResults: [GOOD_FILE, UNLOADED_FILE] },
      1,
      '2 passed, 1 failed',
    ],
    ['both', { numFailedTests: 1, testResults: [GOOD_FILE, UNLOADED_FILE] }, 1, '0 passed, 2 failed'],
    ['an error outside any test', { numPassedTests: 2, testResults: [GOOD_FILE] }, 1, '2 passed, 1 failed'],
    ['no test found', {}, 1, '0 passed, 1 failed'],
    [
      'one left out',
      { numPassedTests: 1, numTodoTests: 1, testResults: [GOOD_FILE] },
      0,
      '1 passed, 0 failed, 1 skipped',
    ],
  ])('%s', (_what, report, code, line) => {
    const none = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] }
    expect(closingLine(countVitest(written({ ...none, ...report }), code))).toBe(line)
  })

  it('without a report are a failure, whatever the exit code says', () => {
    expect(countVitest(join(folder, 'absent.json'), 0).failed).toBe(1)
    expect(countScreens(join(folder, 'absent.json'), 0).failed).toBe(1)
  })
})

describe('counts of the screen tests', () => {
  it.each([
    ['all passed', { expected: 3 }, 0, '3 passed, 0 failed'],
    ['passed at the second try only', { expected: 2, flaky: 1 }, 0, '2 passed, 1 failed'],
    ['no test found', {}, 1, '0 passed, 1 failed'],
  ])('%s', (_what, stats, code, line) => {
    const none = { expected: 0, unexpected: 0, flaky: 0, skipped: 0 }
    expect(closingLine(countScreens(written({ stats: { ...none, ...stats } }), code))).toBe(line)
  })

  it('are added to the others', () => {
    const sum = addUp([
      { passed: 2, failed: 0, skipped: 1 },
      { passed: 3, failed: 1, skipped: 0 },
    ])
    expect(sum).toEqual({ passed: 5, failed: 1, skipped: 1 })
  })
})

function written(report: object) {
  const file = join(folder, 'report.json')
  writeFileSync(file, JSON.stringify(report))
  return file
}
