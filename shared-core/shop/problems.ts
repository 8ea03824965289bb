import type { z } from 'zod'
import type { Problem } from './problem.ts'

/** Nobody reads more at once, and a hostile file must not make a huge answer. */
export const PROBLEMS_MAX = 100

/**
 * Zod's findings as sentences for people: what is wrong from the value itself, what would be right from the field's
 * message (see `set-up-fields.ts`). One problem for a place: the first.
 * @param raw what was read, the same that zod saw
 */
export function problemsOf(issues: readonly z.core.$ZodIssue[], raw: unknown): Problem[] {
  const found = new Map<string, Problem>()
  for (const issue of issues) {
    for (const problem of problemsOfIssue(issue, raw)) if (!found.has(problem.path)) found.set(problem.path, problem)
  }
  return [...found.values()].slice(0, PROBLEMS_MAX)
}

/** A JSON Pointer (RFC 6901). @example pointer(['varieties', 3, 'a/b']) // '/varieties/3/a~1b' */
export function pointer(path: readonly PropertyKey[]): string {
  return path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')
}

function problemsOfIssue(issue: z.core.$ZodIssue, raw: unknown): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    const rights = issue.message.split('\n')
    return issue.keys.map((key, at) => ({
      path: pointer([...issue.path, key]),
      wrong: `"${shortened(key)}" is not a key that is known here.`,
      right: rights[at] ?? '',
    }))
  }
  return [{ path: pointer(issue.path), wrong: wrongOf(issue, raw), right: issue.message }]
}

function wrongOf(issue: z.core.$ZodIssue, raw: unknown): string {
  const value = valueAt(raw, issue.path)
  const last = issue.path[issue.path.length - 1]
  const subject =
    typeof last === 'string' ? `"${shortened(last)}"` : typeof last === 'number' ? `Entry ${last + 1}` : 'This'
  if (issue.code === 'custom' && typeof issue.params?.wrong === 'string') return issue.params.wrong
  if (value === undefined) return `${subject} is missing.`
  if (issue.code === 'too_big' || issue.code === 'too_small') {
    if (typeof value === 'string') return `${subject} has ${value.length} characters.`
    if (Array.isArray(value)) return `${subject} has ${value.length} entries.`
  }
  return `${subject} is ${described(value)}.`
}

function described(value: unknown): string {
  if (typeof value === 'string') return `the text "${shortened(value)}"`
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object' && value !== null) return 'an object'
  return String(value)
}

function shortened(text: string): string {
  return text.length > SHOWN_MAX ? `${text.slice(0, SHOWN_MAX)}…` : text
}
const SHOWN_MAX = 40

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.prototype.propertyIsEnumerable.call(value, key))
      return undefined
    value = Reflect.get(value, key)
  }
  return value
}
