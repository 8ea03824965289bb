import type { Command } from '../../shared-core/day/commands.ts'
import { derivedId } from '../../shared-core/ids.ts'
import type { DetailsAnswer } from '../../shared-core/live/order-details.ts'
import { DETAILS_IDS_MAX } from '../../shared-core/live/order-details.ts'
import type { OrderDetails } from '../../shared-core/orders/order-commands.ts'

/**
 * Who ordered, beside the state: names, phone numbers and notes are no part of what screens fold, so those that show
 * them ask the shop's server, by order (or standing order), and once for each time that they were written. What this
 * device typed and the server has not answered yet is known from its own taps. Nothing is kept beyond the page.
 */
export interface DetailsBook {
  /** @returns null: nothing was said, or it is not here yet */
  of(one: Detailed): OrderDetails | null
  /** Fetches what is missing of these, or was written again since; what fails is asked for at the next call. */
  want(all: readonly Detailed[]): void
  /** What this device typed that is not answered yet. */
  typed(commands: readonly Command[]): void
  /** @returns stops listening */
  subscribe(listener: () => void): () => void
}

/** An order or a standing order: `details` counts how often its details were written. */
export interface Detailed {
  readonly id: string
  readonly details: number
}

/** Asks the server. @returns by id; one that is left out has none any more; null: no contact */
export type FetchDetails = (ids: readonly string[]) => Promise<ReadonlyMap<string, OrderDetails> | null>

interface Known {
  /** The count that was asked for: another one is fetched anew. */
  readonly details: number
  readonly what: OrderDetails | null
}

export function createDetailsBook(fetchDetails: FetchDetails): DetailsBook {
  const known = new Map<string, Known>()
  const asked = new Map<string, number>()
  const listeners = new Set<() => void>()
  let own: ReadonlyMap<string, OrderDetails> = new Map()
  const tell = () => {
    for (const listener of listeners) listener()
  }
  const ask = async (some: readonly Detailed[]) => {
    for (const { id, details } of some) asked.set(id, details)
    const got = await fetchDetails(some.map(({ id }) => id))
    for (const { id, details } of some) {
      // Written again meanwhile, or taken back: the later question's answer counts.
      if (asked.get(id) !== details) continue
      asked.delete(id)
      if (got !== null) known.set(id, { details, what: got.get(id) ?? null })
    }
    if (got !== null) tell()
  }
  return {
    of: ({ id, details }) => own.get(id) ?? (details === 0 ? null : (known.get(id)?.what ?? null)),
    want: (all) => {
      forgetOthers(known, all)
      const missing = all.filter(
        ({ id, details }) => details > 0 && known.get(id)?.details !== details && asked.get(id) !== details,
      )
      for (let from = 0; from < missing.length; from += DETAILS_IDS_MAX)
        void ask(missing.slice(from, from + DETAILS_IDS_MAX))
    },
    typed: (commands) => {
      const before = own
      own = typedBy(commands)
      if (before.size !== own.size || [...own].some(([id, what]) => before.get(id) !== what)) tell()
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

/** Orders that are handed over take their names with them. */
function forgetOthers(known: Map<string, Known>, all: readonly Detailed[]): void {
  if (known.size <= all.length) return
  const open = new Set(all.map(({ id }) => id))
  for (const id of known.keys()) if (!open.has(id)) known.delete(id)
}

function typedBy(commands: readonly Command[]): ReadonlyMap<string, OrderDetails> {
  const typed = new Map<string, OrderDetails>()
  for (const command of commands) {
    const id = idOf(command)
    if (id !== null && 'details' in command && command.details !== undefined) typed.set(id, command.details)
  }
  return typed
}

/** What a command's order is called: a new one by its command. */
function idOf(command: Command): string | null {
  if (command.type === 'changeOrder') return command.orderId
  if (command.type === 'setStanding') return command.standingId ?? derivedId(command.id, 1)
  return command.type === 'takeOrder' ? derivedId(command.id, 1) : null
}

/** A book that asks the shop's own server. */
export function openDetailsBook(): DetailsBook {
  return createDetailsBook(fetchDetails)
}

async function fetchDetails(ids: readonly string[]): Promise<ReadonlyMap<string, OrderDetails> | null> {
  try {
    const response = await fetch(`/api/v1/orders/details?ids=${ids.join(',')}`, { cache: 'no-store' })
    if (!response.ok) return null
    const { details }: DetailsAnswer = await response.json()
    return new Map(details.map(({ id, name, phone, note }) => [id, { name, phone, note }]))
  } catch {
    return null
  }
}
