import { parseArgs } from 'node:util'

/** @param say prints a line for the person at the terminal */
export type Command = (args: readonly string[], say: (line: string) => void) => Promise<void>

/** Why a command was not done, in a sentence. */
export class CommandRefused extends Error {
  override name = 'CommandRefused'
  /** Whether it was not asked for rightly. */
  readonly isUsage: boolean

  constructor(message: string, isUsage = false) {
    super(message)
    this.isUsage = isUsage
  }
}

type Given<Names extends string, Flags extends string> = { readonly [Name in Names]: string | null } & {
  readonly [Flag in Flags]: boolean
}

/**
 * Reads a command line of options with a value each, and flags.
 * @param usage what would be right, shown where it is not
 * @throws CommandRefused for an option that is not known, or that lacks its value
 */
export function readArgs<Names extends string, Flags extends string = never>(
  args: readonly string[],
  usage: string,
  { names, flags = [] }: { readonly names: readonly Names[]; readonly flags?: readonly Flags[] },
): Given<Names, Flags> {
  const options = Object.fromEntries([
    ...names.map((name) => [name, { type: 'string' as const }] as const),
    ...flags.map((flag) => [flag, { type: 'boolean' as const }] as const),
  ])
  try {
    const values: { readonly [name: string]: unknown } = parseArgs({ args: [...args], options }).values
    const texts = names.map((name) => [name, values[name] ?? null])
    const marks = flags.map((flag) => [flag, values[flag] === true])
    return Object.fromEntries([...texts, ...marks]) as Given<Names, Flags>
  } catch (error) {
    throw new CommandRefused(`${error instanceof Error ? error.message : String(error)}\n\n${usage}`, true)
  }
}

/** @throws CommandRefused where it was not given */
export function needed(value: string | null, name: string, usage: string): string {
  if (value !== null && value !== '') return value
  throw new CommandRefused(`--${name} is missing.\n\n${usage}`, true)
}
