import type { Finding, SourceFile } from './source-files.ts'
import { isCode, isTest, withoutComments } from './source-files.ts'

// Joined from pieces, so that this file does not hold what it looks for.
const UNFINISHED = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'X' + 'XX', 'HA' + 'CK'].join('|')})\\b`)
const MACHINE_PATH = new RegExp(`(?<![\\w.)}*])/(${['work', 'root', 'home', 'tmp', 'Users'].join('|')})/`)
const REGISTRY_HOST = new RegExp(['registry\\.' + 'npmjs', 'deb\\.' + 'debian\\.org'].join('|'))
const SILENCED = new RegExp(['@ts-' + 'ignore', '@ts-' + 'nocheck', 'eslint-' + 'disable'].join('|'))
const EXPECTED_ERROR = '@ts-' + 'expect-error'
const LEFT_OUT = /\b(it|test|describe)(\.\w+)*\.(skip|skipIf|only|todo|fails|fixme|runIf)\b/
const RE_EXPORT_ALL = /^\s*export\s+\*\s+from\b/m

/** Marks of unfinished work, and traces of the machine that something was written on. */
export function checkLeftovers(files: readonly SourceFile[]): Finding[] {
  return files.flatMap(({ path, text }) => [
    ...find(path, text, UNFINISHED, 'has a mark of unfinished work'),
    ...find(path, text, MACHINE_PATH, 'names a folder of one machine'),
    ...find(path, text, REGISTRY_HOST, 'names the host of a registry'),
  ])
}

/** Code that quiets the compiler or leaves tests out. */
export function checkShortcuts(files: readonly SourceFile[]): Finding[] {
  return files
    .filter(({ path }) => isCode(path))
    .flatMap(({ path, text }) => [
      ...find(path, text, SILENCED, 'quiets the compiler'),
      ...(path.startsWith('tests/types/') ? [] : find(path, text, new RegExp(EXPECTED_ERROR), 'expects an error')),
      ...(isTest(path) ? find(path, withoutComments(text, 'blank'), LEFT_OUT, 'leaves tests out') : []),
      ...find(path, text, RE_EXPORT_ALL, 're-exports a whole file'),
    ])
}

function find(path: string, text: string, pattern: RegExp, what: string): Finding[] {
  const found = pattern.exec(text)
  if (found === null) return []
  const line = text.slice(0, found.index).split('\n').length
  return [{ path, what: `${what}: '${found[0].trim()}' in line ${line}` }]
}
