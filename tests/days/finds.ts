import type { WorldOptions } from './options.ts'

/** Days on which something was found. They run first, for ever; a find that cannot be told by a seed has a unit test. */
export interface Find {
  readonly seed: number
  readonly dayMinutes: number
  readonly change: Partial<WorldOptions>
  readonly found: string
}

export const FINDS: readonly Find[] = [
  {
    seed: 4,
    dayMinutes: 70,
    change: {},
    found: 'half of one piece too many was −0 on the screens that folded it and 0 on those that read the state whole',
  },
]
