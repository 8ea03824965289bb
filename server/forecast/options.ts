import { parseArgs } from 'node:util'

/** The command cannot be read: an option that does not exist, one that is missing. */
export class UsageError extends Error {
  override name = 'UsageError'
}

/** What was asked for: the task, and the values of its options. */
export interface Options {
  readonly task: string
  /** @throws UsageError unless it stands exactly once */
  one(name: string): string
  /** All values, in order. @throws UsageError where there is none and one is needed */
  many(name: string, needed: 'needed' | 'optional'): readonly string[]
}

/** The options of each task. */
const TASKS: Readonly<Record<string, readonly string[]>> = {
  days: ['sales', 'items', 'from', 'to', 'asof'],
  soldout: ['sales', 'soldout', 'mechanism'],
  runout: ['sales', 'cases'],
}

/** Options that take several values in a row: `--sales a.csv b.csv`. */
const IN_A_ROW: readonly string[] = ['sales', 'asof']

/** @returns null where help is asked for */
export function readOptions(args: readonly string[]): Options | null {
  if (args.length === 0 || args.includes('--help') || args.includes('-h')) return null
  const [task = '', ...rest] = args
  const known = TASKS[task]
  if (known === undefined) throw new UsageError(`'${task}' is no task; there are ${Object.keys(TASKS).join(', ')}`)
  const values = valuesOf(rest, task, known)
  const many = (name: string, needed: 'needed' | 'optional') => {
    const found = values.get(name) ?? []
    if (found.length === 0 && needed === 'needed') throw new UsageError(`${task} needs --${name}`)
    return found
  }
  const one = (name: string) => {
    const [value = '', ...others] = many(name, 'needed')
    if (others.length > 0) throw new UsageError(`--${name} stands ${others.length + 1} times; once would be right`)
    return value
  }
  return { task, one, many }
}

function valuesOf(args: readonly string[], task: string, known: readonly string[]): Map<string, string[]> {
  const options = Object.fromEntries(known.map((name) => [name, { type: 'string', multiple: true } as const]))
  const { tokens } = parseArgs({ args: [...args], options, allowPositionals: true, strict: false, tokens: true })
  const values = new Map<string, string[]>()
  let last = ''
  for (const token of tokens) {
    if (token.kind === 'option') {
      if (!known.includes(token.name)) {
        const there = known.map((name) => `--${name}`).join(', ')
        throw new UsageError(`${token.rawName} is no option of ${task}; there are ${there}`)
      }
      if (token.value === undefined || token.value === '') throw new UsageError(`--${token.name} has no value`)
      values.set(token.name, [...(values.get(token.name) ?? []), token.value])
      last = token.name
    } else if (token.kind === 'positional') {
      if (!IN_A_ROW.includes(last)) throw new UsageError(`'${token.value}' belongs to no option`)
      values.get(last)?.push(token.value)
    }
  }
  return values
}
