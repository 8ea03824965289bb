import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** A file of the project: its path from the project's folder, with `/`, and its text. */
export interface SourceFile {
  readonly path: string
  readonly text: string
}

/** What a check has found: where, and what is wrong, in one sentence. */
export interface Finding {
  readonly path: string
  readonly what: string
}

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const NOT_OURS = new Set(['node_modules', 'dist', '.git', 'test-results', 'playwright-report', '.shop-demo'])
const TEXT = /\.(tsx?|mjs|css|html|json|md|svg|sql)$|^\.ci\/run$|^\.gitignore$/

/** Every text file of the project, sorted by path; the lock, which no person writes, is left out. */
export function projectFiles(): readonly SourceFile[] {
  return pathsUnder('')
    .filter((path) => TEXT.test(path) && path !== 'package-lock.json')
    .map((path) => ({ path, text: readFileSync(ROOT + path, 'utf8') }))
}

export function isCode(path: string): boolean {
  return /\.(tsx?|mjs)$/.test(path)
}

export function isTest(path: string): boolean {
  return path.startsWith('tests/')
}

/**
 * The text with comments blanked out, and plain strings too where `strings` says so; line breaks stay where they are.
 * Template strings stay: there is code in them.
 */
export function withoutComments(text: string, strings: 'keep' | 'blank'): string {
  return text.replace(COMMENT_OR_STRING, (found) => {
    if (found.startsWith('/')) return blanked(found)
    return strings === 'keep' || found.startsWith('`') ? found : `''${blanked(found.slice(2))}`
  })
}

// Regular expressions are not told apart from divisions: one that holds a quote or // must be written around it.
const COMMENT_OR_STRING = /\/\/[^\n]*|\/\*[\s\S]*?\*\/|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g

function blanked(text: string): string {
  return text.replace(/[^\n]/g, ' ')
}

function pathsUnder(folder: string): string[] {
  return readdirSync(ROOT + folder, { withFileTypes: true })
    .filter((entry) => !NOT_OURS.has(entry.name))
    .flatMap((entry) => (entry.isDirectory() ? pathsUnder(`${folder}${entry.name}/`) : [folder + entry.name]))
    .sort()
}
