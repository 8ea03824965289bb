// @ts-check
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { runChild } from './child.mjs'
import { StartError } from './project.mjs'

/** Shorter than npm's own waits: with those it takes over a minute to say that there is no network. */
export const SHORT_WAITS = ['--fetch-retry-mintimeout=2000', '--fetch-retry-maxtimeout=8000']

/**
 * `--include=dev`: the build tools are needed under NODE_ENV=production too. `--ignore-scripts`: nothing that we
 * use needs one.
 */
const INSTALL_ARGS = [
  'ci',
  '--include=dev',
  '--ignore-scripts',
  '--no-audit',
  '--no-fund',
  '--prefer-offline',
  ...SHORT_WAITS,
]

const NO_NETWORK =
  /\b(EAI_AGAIN|ENOTFOUND|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|ERR_SOCKET_TIMEOUT)\b/

/**
 * Installs what is missing, by the lock.
 * @param {string} root
 * @throws {StartError} with a sentence that says what is needed
 */
export async function installIfNeeded(root) {
  const missing = whatIsMissing(readInstallFacts(root))
  if (missing === null) return
  console.log(`Installing packages (${missing}).`)
  const npm = npmCommand(process.env, process.platform)
  const ended = await runChild(npm.command, [...npm.args, ...INSTALL_ARGS], {
    cwd: root,
    quiet: true,
    shell: npm.shell,
  })
  if (ended.code !== 0) throw new StartError(installComplaint(ended.tail))
}

/**
 * @typedef {{ version?: string, link?: boolean, optional?: boolean, os?: string[], cpu?: string[], libc?: string[] }} Package
 * @typedef {Record<string, Package>} Packages keyed by folder, as in a lock file of version 3
 * @typedef {{ lock: Packages, installed: Packages | null, platform: string, arch: string }} InstallFacts
 */

/**
 * Compares the lock with npm's own record of what it installed. That record is believed rather than a mark of our
 * own: it follows every `npm install` and `npm prune` made by hand as well.
 * @param {InstallFacts} facts
 * @returns {string | null} what is missing, in a few words, or null
 */
export function whatIsMissing({ lock, installed, platform, arch }) {
  if (installed === null) return 'none are installed yet'
  const missing = Object.entries(lock)
    .filter(([folder, wanted]) => folder !== '' && isWantedHere(wanted, platform, arch))
    .filter(([folder, wanted]) => installed[folder]?.version !== wanted.version)
    .map(([folder]) => folder.replace(/^.*node_modules\//, ''))
  if (missing.length === 0) return null
  return missing.length === 1 ? `missing: ${missing[0]}` : `missing: ${missing[0]} and ${missing.length - 1} more`
}

/**
 * Optional packages are wanted where they name this platform. Those that also name a C library are left out: which
 * of the two is right is npm's business.
 * @param {Package} wanted
 * @param {string} platform
 * @param {string} arch
 */
function isWantedHere(wanted, platform, arch) {
  if (!wanted.optional) return true
  if (wanted.os === undefined || wanted.libc !== undefined) return false
  return wanted.os.includes(platform) && (wanted.cpu?.includes(arch) ?? true)
}

/**
 * @param {string} root
 * @returns {InstallFacts}
 */
function readInstallFacts(root) {
  const lock = readPackages(join(root, 'package-lock.json'))
  if (lock === null) throw new StartError('package-lock.json is missing or unreadable: fetch the project again.')
  const installed = readPackages(join(root, 'node_modules', '.package-lock.json'))
  return { lock, installed, platform: process.platform, arch: process.arch }
}

/**
 * @param {string} file
 * @returns {Packages | null}
 */
function readPackages(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages ?? null
  } catch {
    return null
  }
}

/**
 * The npm that started this process, else the one on the path.
 * @param {NodeJS.ProcessEnv} env
 * @param {string} platform
 */
export function npmCommand(env, platform) {
  const own = env.npm_execpath
  if (own !== undefined && /npm-cli\.c?js$/.test(own)) return { command: process.execPath, args: [own], shell: false }
  return { command: 'npm', args: [], shell: platform === 'win32' }
}

/**
 * @param {string} tail the end of what npm printed
 * @returns {string}
 */
export function installComplaint(tail) {
  if (NO_NETWORK.test(tail)) {
    return (
      'The packages could not be fetched: the npm registry was not reached. ' +
      'Connect this machine to the internet for this one start; later starts need no network.'
    )
  }
  return `npm could not install the packages. Its last words:\n${tail.trim()}`
}
