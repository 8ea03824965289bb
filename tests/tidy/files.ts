import type { Finding, SourceFile } from './source-files.ts'
import { isCode, isTest } from './source-files.ts'

const SOURCE_LINES_MAX = 300
const TEST_LINES_MAX = 400

/** No code file longer than a person reads in one go. */
export function checkSizes(files: readonly SourceFile[]): Finding[] {
  return files
    .filter(({ path }) => isCode(path) || path.endsWith('.css'))
    .flatMap(({ path, text }) => {
      const lines = text.trimEnd().split('\n').length
      const most = isTest(path) ? TEST_LINES_MAX : SOURCE_LINES_MAX
      return lines > most ? [{ path, what: `has ${lines} lines; at most ${most}` }] : []
    })
}

/** Kebab-case names that say what is inside. */
export function checkNames(files: readonly SourceFile[]): Finding[] {
  return files
    .filter(({ path }) => /^(client|server|shared-core|tests)\//.test(path))
    .flatMap(({ path }) => {
      const parts = path.split('/')
      const shouting = parts.filter((part) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)*$/.test(part))
      const vague = parts.filter((part) => /^(utils?|helpers?|common|misc|shared|lib)(\.|$)/.test(part))
      const barrel = parts.filter((part) => /^index\.(tsx?|mjs)$/.test(part))
      return [
        ...shouting.map((part) => ({ path, what: `'${part}' is not kebab-case` })),
        ...vague.map((part) => ({ path, what: `'${part}' does not say what is inside` })),
        ...barrel.map(() => ({ path, what: 'is a barrel; import from the file that has the thing' })),
      ]
    })
}
