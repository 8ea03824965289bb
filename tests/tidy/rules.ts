import type { Finding, SourceFile } from './source-files.ts'
import { isTest } from './source-files.ts'

const RULES_PATH = 'shared-core/rules.md'
const RULE = /^- \*\*([A-Z]+\d+)\*\*/gm
/** A string of a test file that begins with rule ids in brackets is a title: `'[L4] given …'`, `'[L4, S2] …'`. */
const CITED = /['"`]\[([A-Z]+\d+(?:, ?[A-Z]+\d+)*)\]/g

/** Every rule has a test that cites it, and every cited rule exists; no id is given twice. */
export function checkRules(files: readonly SourceFile[]): Finding[] {
  const rules = matches(files.find(({ path }) => path === RULES_PATH)?.text ?? '', RULE)
  if (rules.length === 0) return [{ path: RULES_PATH, what: 'has no rule (a line such as "- **L4** …")' }]
  const cited = new Map<string, string>()
  for (const { path, text } of files.filter((file) => isTest(file.path) && !file.path.startsWith('tests/tidy'))) {
    for (const ids of matches(text, CITED)) for (const id of ids.split(/, ?/)) cited.set(id, path)
  }
  const twice = rules.filter((id, at) => rules.indexOf(id) !== at)
  const untested = rules.filter((id) => !cited.has(id))
  const unknown = [...cited].filter(([id]) => !rules.includes(id))
  return [
    ...twice.map((id) => ({ path: RULES_PATH, what: `gives ${id} twice` })),
    ...untested.map((id) => ({ path: RULES_PATH, what: `has ${id}, which no test cites` })),
    ...unknown.map(([id, path]) => ({ path, what: `cites ${id}, which is no rule` })),
  ]
}

function matches(text: string, pattern: RegExp): string[] {
  return [...text.matchAll(pattern)].map((found) => found[1] ?? '')
}
