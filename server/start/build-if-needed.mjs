// @ts-check
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { runChild } from './child.mjs'
import { StartError } from './project.mjs'
import { hashSources } from './sources.mjs'

/** Where a build keeps the hash of what it was made from. */
const HASH_FILE = 'built-from'

/** Two builds that end at the same moment may each find the other's folder in place; three never did. */
const SWAP_TRIES = 5

/**
 * Builds client and server into `dist/` when the sources are not those of the last build. It is built beside and
 * then put in place whole, so that a failed build leaves the last good one, and a server that is running from it.
 * @param {string} root
 * @throws {StartError} when the build fails; its own words are printed before
 */
export async function buildIfNeeded(root) {
  const hash = hashSources(root)
  if (readHash(root) === hash) return
  console.log('Building.')
  const fresh = join(root, 'node_modules', '.cache', `boilboard-build-${process.pid}`)
  rmSync(fresh, { recursive: true, force: true })
  mkdirSync(fresh, { recursive: true })
  const buildId = hash.slice(0, 12)
  const ended = await runChild(process.execPath, [join(root, 'server/start/build.mjs'), fresh, buildId], { cwd: root })
  if (ended.code !== 0) {
    rmSync(fresh, { recursive: true, force: true })
    throw new StartError('The build failed; what is wrong stands above.')
  }
  writeFileSync(join(fresh, HASH_FILE), hash)
  putInPlace(fresh, join(root, 'dist'), `${fresh}-old`)
}

/**
 * @param {string} root
 * @returns {string | null} null when nothing is built
 */
function readHash(root) {
  try {
    return readFileSync(join(root, 'dist', HASH_FILE), 'utf8')
  } catch {
    return null
  }
}

/**
 * @param {string} fresh
 * @param {string} place
 * @param {string} old
 */
function putInPlace(fresh, place, old) {
  for (let tries = 1; ; tries += 1) {
    moveIfThere(place, old)
    rmSync(old, { recursive: true, force: true })
    try {
      renameSync(fresh, place)
      return
    } catch (error) {
      if (tries === SWAP_TRIES) throw error
    }
  }
}

/**
 * @param {string} from
 * @param {string} to
 */
function moveIfThere(from, to) {
  try {
    renameSync(from, to)
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error
  }
}
