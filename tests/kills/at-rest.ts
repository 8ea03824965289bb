import { hashState } from '../../shared-core/day/hash.ts'
import type { Chance } from '../days/chance.ts'
import type { Ledger } from './ledger.ts'
import type { KillsScreen } from './screen.ts'
import type { Till } from './till.ts'

/** Answers that are asked for once more after each start. */
const REPEATED = 6

export interface AtRest {
  readonly port: number
  readonly screens: readonly KillsScreen[]
  readonly till: Till
  readonly ledger: Ledger
  readonly chance: Chance
}

/**
 * When nothing is unanswered: the server's state is the fold of its journal, every screen shows it, every tap has come to
 * something, and what was answered is answered the same again.
 * @param isOver the server was killed meanwhile: what it no longer says is not asked about
 */
export async function compareAtRest(parts: AtRest, isOver: () => Promise<boolean>): Promise<void> {
  const { ledger, screens, port } = parts
  try {
    for (;;) {
      const page = await get(port, `/api/v1/events?after=${ledger.entries}`)
      const { entries } = page as { entries: readonly object[] }
      if (entries.length === 0) break
      ledger.read(
        entries.map((entry) => JSON.stringify(entry)),
        ledger.entries + 1,
        'the server',
      )
    }
    const { hash, state } = (await get(port, '/api/v1/state')) as { hash: string; state: { seq: number } }
    if (hash !== ledger.hash)
      ledger.fail(`the server at ${state.seq} is ${hash}, its journal at ${ledger.entries} folds to ${ledger.hash}`)
    for (const screen of screens) {
      const { shown, who } = screen
      if (shown === null || hashState(shown) !== hash)
        ledger.fail(`${who} at ${shown?.seq} is not the server at ${state.seq}`)
      for (const id of screen.tapped) if (!ledger.has(id)) ledger.fail(`the tap ${id} of ${who} is lost`)
      for (const { kind } of screen.notices)
        if (kind !== 'ask' && kind !== 'refused') ledger.fail(`${who} is told ${kind}`)
    }
    await askAgain(parts)
  } catch (error) {
    if (!(await isOver())) throw error
  }
}

async function askAgain({ till, ledger, chance }: AtRest): Promise<void> {
  const all = [...till.sent.values()].filter(({ id }) =>
    ['taken', 'refused'].includes(ledger.answered.get(id)?.kind ?? ''),
  )
  if (all.length === 0) return
  const again = Array.from({ length: REPEATED }, () => chance.oneOf(all))
  for (const answer of (await till.ask([...new Set(again)])) ?? []) ledger.told(answer, 'the till, again')
}

async function get(port: number, path: string): Promise<unknown> {
  const answer = await fetch(`http://127.0.0.1:${port}${path}`, { headers: { connection: 'close' } })
  if (!answer.ok) throw new Error(`${path} is answered with ${answer.status}: ${await answer.text()}`)
  return await answer.json()
}
