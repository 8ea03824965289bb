import type { ReporterDescription } from '@playwright/test'
import { defineConfig } from '@playwright/test'
import { chromiumPath } from './tests/run/chromium.mjs'
import { CHROMIUM_ARGS } from './tests/screens/support/browser-args.ts'

const report = process.env.BOILBOARD_SCREENS_REPORT
const reporters: ReporterDescription[] = [['list']]
if (report !== undefined) reporters.push(['json', { outputFile: report }])

const executablePath = chromiumPath()

export default defineConfig({
  testDir: 'tests/screens',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results',
  // Screens mostly wait, for seconds to pass and for paint: two tests fill two cores.
  workers: 2,
  fullyParallel: false,
  retries: 0,
  forbidOnly: true,
  timeout: 150_000,
  globalTimeout: 1_200_000,
  expect: { timeout: 15_000 },
  reporter: reporters,
  projects: [
    { name: 'screens', grepInvert: /@look/ },
    { name: 'looks', grep: /@look/ },
  ],
  use: {
    // Filming every step costs more than the steps; the page as it was and a picture tell what failed.
    trace: { mode: 'retain-on-failure', screenshots: false, snapshots: false },
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      args: CHROMIUM_ARGS,
    },
  },
})
