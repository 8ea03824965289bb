import type { Chance } from '../days/chance.ts'

/** When the server is killed. */
export type Moment =
  /** From outside, while people tap: so long after the screens were right again. */
  | { readonly kind: 'load'; readonly afterMs: number }
  /** From outside: so long after the process was made. */
  | { readonly kind: 'start'; readonly afterMs: number }
  /** From outside: so long after it was asked to stop, while it writes its snapshot and puts the file in order. */
  | { readonly kind: 'stop'; readonly afterMs: number }
  /** By itself, at a statement: the `count`th that matches. */
  | {
      readonly kind: StatementKind
      readonly at: string
      readonly count: number
      readonly when: 'before' | 'after'
      /** Asked to stop, as this statement comes at a stop. */
      readonly isAtStop: boolean
    }

type StatementKind = 'opening' | 'migration' | 'write' | 'snapshot' | 'copy'

/** Longest wait for a moment that may not come; then the kill comes from outside. */
export const MOMENT_MS_MAX = 1_500

const MAKERS: readonly { readonly share: number; readonly make: (chance: Chance) => Moment }[] = [
  { share: 34, make: (chance) => ({ kind: 'load', afterMs: chance.between(0, 350) }) },
  { share: 16, make: (chance) => ({ kind: 'start', afterMs: chance.between(60, 700) }) },
  { share: 10, make: (chance) => ({ kind: 'stop', afterMs: chance.between(0, 130) }) },
  { share: 8, make: (chance) => atStatement(chance, 'opening', '.', 20) },
  { share: 8, make: (chance) => atStatement(chance, 'migration', 'user_version|CREATE|ALTER|UPDATE', 12) },
  { share: 12, make: (chance) => atStatement(chance, 'write', 'INSERT INTO entries|^COMMIT', 40) },
  {
    share: 6,
    make: (chance) => ({ ...atStatement(chance, 'snapshot', 'snapshots|wal_checkpoint', 3), isAtStop: true }),
  },
  { share: 6, make: (chance) => atStatement(chance, 'copy', 'BACKUP|INSERT|COMMIT|DELETE', 12) },
]

export function drawMoment(chance: Chance): Moment {
  let left = chance.between(0, MAKERS.reduce((sum, { share }) => sum + share, 0) - 1)
  for (const { share, make } of MAKERS) {
    if (left < share) return make(chance)
    left -= share
  }
  throw new Error('the shares do not add up')
}

/** What tells the server's own preload of it; empty when the kill comes from outside. */
export function envOf(moment: Moment): Record<string, string> {
  return 'at' in moment
    ? {
        KILL_AT: moment.at,
        KILL_COUNT: String(moment.count),
        KILL_WHEN: moment.when,
        KILL_IN: moment.kind === 'copy' ? 'thread' : 'main',
      }
    : {}
}

function atStatement(chance: Chance, kind: StatementKind, at: string, countMax: number) {
  return {
    kind,
    at,
    count: chance.between(1, countMax),
    when: chance.oneOf(['before', 'after'] as const),
    isAtStop: false,
  }
}
