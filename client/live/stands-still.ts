import type { Connection } from './shop-store.ts'

/** Whether what is shown may not be acted on: it is of another form than the server's, or this screen is not let in. */
export function standsStill({ phase }: Pick<Connection, 'phase'>): boolean {
  return phase === 'stale' || phase === 'outside'
}
