// @ts-check
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { runChild } from '../../server/start/child.mjs'
import { ROOT, StartError } from '../../server/start/project.mjs'

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

/** A bare Debian has no font at all; Chromium's package only recommends some. */
const DEBIAN_PACKAGES = ['chromium', 'fonts-dejavu-core']

/**
 * What of the machine is asked and done here, so that a test can say what it is like.
 * @typedef {object} Machine
 * @property {NodeJS.ProcessEnv} env
 * @property {boolean} isRoot
 * @property {(path: string) => boolean} exists
 * @property {(path: string) => Promise<boolean>} starts whether it really is a browser that runs here
 * @property {(command: string, args: readonly string[]) => Promise<boolean>} run true when it succeeded
 * @property {() => Promise<string>} playwrightPath where Playwright's own download lies, or would lie
 */

/**
 * The Chromium for the screen tests: the one named by BOILBOARD_CHROMIUM, else the system's, else Debian's package
 * (as root), else Playwright's download.
 * @param {Machine} machine
 * @returns {Promise<string>} its path
 * @throws {StartError} with a sentence that says how to get one
 */
export async function ensureChromium(machine) {
  const named = machine.env.BOILBOARD_CHROMIUM
  if (named !== undefined && named !== '') {
    if (await machine.starts(named)) return named
    throw new StartError(`BOILBOARD_CHROMIUM names ${named}, and no browser starts there. Correct it or leave it out.`)
  }
  return (
    (await firstThatStarts(machine, chromiumPaths(machine))) ??
    (await fromDebian(machine)) ??
    (await fromPlaywright(machine)) ??
    complain()
  )
}

/**
 * Where a system's Chromium may lie, likeliest first.
 * @param {Pick<Machine, 'env' | 'exists'>} machine
 * @returns {string[]} those that exist
 */
export function chromiumPaths({ env, exists }) {
  const folders = ['/usr/bin', ...(env.PATH ?? '').split(delimiter).filter((folder) => folder !== '')]
  const paths = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)))
  return [...new Set(paths)].filter(exists)
}

/**
 * For a test file or configuration that was started by hand, without `npm test`.
 * @returns {string | undefined} undefined: Playwright's own download, if there is one
 */
export function chromiumPath() {
  return process.env.BOILBOARD_CHROMIUM || chromiumPaths({ env: process.env, exists: existsSync })[0]
}

/** @returns {Machine} */
export function thisMachine() {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  return {
    env,
    isRoot: process.getuid?.() === 0,
    exists: existsSync,
    starts: async (path) => (await runChild(path, ['--version'], { cwd: ROOT, quiet: true })).code === 0,
    run: async (command, args) => (await runChild(command, args, { cwd: ROOT, env, quiet: true })).code === 0,
    playwrightPath: async () => (await import('@playwright/test')).chromium.executablePath(),
  }
}

/**
 * @param {Machine} machine
 * @param {readonly string[]} paths
 */
async function firstThatStarts(machine, paths) {
  // Some systems have a script of that name that only says how to install one.
  for (const path of paths) if (await machine.starts(path)) return path
  return null
}

/** @param {Machine} machine */
async function fromDebian(machine) {
  if (!machine.isRoot || !machine.exists('/etc/debian_version')) return null
  console.log('Installing Chromium (Debian package).')
  // A list that is not fresh may still do, so that a failed update is no reason to stop.
  await machine.run('apt-get', ['update'])
  await machine.run('apt-get', ['install', '-y', '--no-install-recommends', ...DEBIAN_PACKAGES])
  return firstThatStarts(machine, chromiumPaths(machine))
}

/** @param {Machine} machine */
async function fromPlaywright(machine) {
  const path = await machine.playwrightPath()
  if (machine.exists(path) && (await machine.starts(path))) return path
  console.log('Fetching Chromium (Playwright’s download).')
  await machine.run(process.execPath, [join(ROOT, 'node_modules/@playwright/test/cli.js'), 'install', 'chromium'])
  return firstThatStarts(machine, [path].filter(machine.exists))
}

/** @returns {never} */
function complain() {
  throw new StartError(
    'The screen tests need a Chromium, and none was found or could be installed. Install Chromium or Chrome with ' +
      'this system’s packages, or set BOILBOARD_CHROMIUM to the path of one, and run npm test again.',
  )
}
