// @ts-check
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** All that can change what is built. Tests and documents are not among it. */
const SOURCE_FOLDERS = ['client', 'server', 'shared-core']
const SOURCE_FILES = ['package.json', 'package-lock.json', 'tsconfig.json', 'vite.config.ts']

/**
 * A hash over the names and contents of everything that is built, as hex. Contents rather than times: a checkout or
 * a copy changes times only.
 * @param {string} root
 * @returns {string}
 */
export function hashSources(root) {
  const hash = createHash('sha256')
  for (const path of [...SOURCE_FILES, ...SOURCE_FOLDERS.flatMap((folder) => filesUnder(root, folder))]) {
    const content = readFileSync(join(root, path))
    hash.update(`${path}\0${content.length}\0`)
    hash.update(content)
  }
  return hash.digest('hex')
}

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]} sorted, with `/` on every platform
 */
function filesUnder(root, folder) {
  return readdirSync(join(root, folder), { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = `${folder}/${entry.name}`
      if (entry.isDirectory()) return filesUnder(root, path)
      return entry.isFile() && !entry.name.endsWith('.md') ? [path] : []
    })
}
