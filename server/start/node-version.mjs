// @ts-check

/** The oldest Node that works, as in package.json's `engines`: the build tools need 20.19. */
export const LEAST_NODE = '20.19.0'

/**
 * What to tell someone whose Node is too old.
 * @param {string} version as in `process.versions.node`
 * @returns {string | null} a sentence, or null when this Node is new enough
 */
export function nodeComplaint(version) {
  if (isAtLeast(version, LEAST_NODE)) return null
  return `Boilboard needs Node ${LEAST_NODE} or newer; this is Node ${version}. Install a newer Node and start again.`
}

/**
 * @param {string} version
 * @param {string} least
 */
function isAtLeast(version, least) {
  const have = version.split('.').map((part) => Number.parseInt(part, 10))
  const need = least.split('.').map((part) => Number.parseInt(part, 10))
  const at = need.findIndex((part, index) => have[index] !== part)
  return at === -1 || (have[at] ?? 0) > (need[at] ?? 0)
}
