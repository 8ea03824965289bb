// @ts-check
// `npm test`: sets up what the tests need, runs everything, and ends with one line of counts. With words behind it
// (`npm test -- core journal`) only the node-side tests whose path holds one of them run.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildIfNeeded } from '../server/start/build-if-needed.mjs'
import { runChild } from '../server/start/child.mjs'
import { installIfNeeded, npmCommand } from '../server/start/install.mjs'
import { nodeComplaint } from '../server/start/node-version.mjs'
import { orComplain, ROOT, StartError } from '../server/start/project.mjs'
import { ensureChromium, thisMachine } from './run/chromium.mjs'
import { addUp, closingLine, countScreens, countVitest, noTests } from './run/counts.mjs'
import { checkNodeCurrent } from './run/node-current.mjs'

const filters = process.argv.slice(2)
const beganAtMs = Date.now()
const reports = mkdtempSync(join(tmpdir(), 'boilboard-test-'))

process.on('exit', () => rmSync(reports, { recursive: true, force: true }))

await orComplain(setUp)
const counts = addUp(filters.length > 0 ? [await runNodeSide(filters)] : await runAll())
console.log(`Took ${Math.round((Date.now() - beganAtMs) / 1000)} s.\n`)
console.log(closingLine(counts))
process.exitCode = counts.failed > 0 || counts.passed === 0 ? 1 : 0

async function setUp() {
  const complaint = nodeComplaint(process.versions.node)
  if (complaint !== null) throw new StartError(complaint)
  await installIfNeeded(ROOT)
  await buildIfNeeded(ROOT)
  process.env.BOILBOARD_CHROMIUM = await ensureChromium(thisMachine())
  console.log(`Chromium: ${process.env.BOILBOARD_CHROMIUM}`)
}

/** One after another: on two cores, two at once would only wait for each other. */
async function runAll() {
  return [await runCheck(), await runNodeSide([]), await runNewerNode(), await runScreens()]
}

async function runCheck() {
  console.log('\n— types, lint and format')
  const npm = npmCommand(process.env, process.platform)
  const { code } = await runChild(npm.command, [...npm.args, 'run', '--silent', 'check'], {
    cwd: ROOT,
    shell: npm.shell,
  })
  return { ...noTests, failed: code === 0 ? 0 : 1 }
}

/** @param {readonly string[]} words */
async function runNodeSide(words) {
  console.log('\n— core, server and screens without a browser')
  const report = join(reports, 'vitest.json')
  const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${report}`]
  const { code } = await runTool('vitest/vitest.mjs', ['run', ...reporters, ...words])
  return countVitest(report, code)
}

async function runNewerNode() {
  console.log('\n— the same on a newer Node, in short')
  return { ...noTests, failed: (await checkNodeCurrent({ all: false })) ? 0 : 1 }
}

async function runScreens() {
  console.log('\n— screens in Chromium')
  const report = join(reports, 'screens.json')
  const { code } = await runTool('@playwright/test/cli.js', ['test', '--project=screens'], {
    BOILBOARD_SCREENS_REPORT: report,
  })
  return countScreens(report, code)
}

/**
 * @param {string} tool its file under node_modules
 * @param {readonly string[]} args
 * @param {NodeJS.ProcessEnv} env on top of this process's
 */
function runTool(tool, args, env = {}) {
  return runChild(process.execPath, [join(ROOT, 'node_modules', tool), ...args], {
    cwd: ROOT,
    env: { ...process.env, ...env },
  })
}
