import type { Command } from '../../shared-core/day/commands.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { OrderDetails } from '../../shared-core/orders/order-commands.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { DetailsBook } from './details-book.ts'

/** Where names and notes are put down while a command is taken. */
export type DetailsPlace = Pick<DetailsBook, 'write' | 'setDay'>

export interface PutDown {
  readonly place: DetailsPlace
  readonly command: Command
  readonly entry: Entry
  /** The shop's date at an instant, YYYY-MM-DD. */
  readonly localDate: (atMs: EpochMs) => string
}

/**
 * Puts down what a command says of whom an order is for, before anything of it is in the journal: what cannot be written
 * is not taken. Where the journal then cannot be written, what was put down stands under a number that no order has, and
 * goes with its day.
 * @throws when it could not be written
 */
export function putDown({ place, command, entry, localDate }: PutDown): void {
  const details = detailsIn(command)
  const { recordedAtMs: writtenAtMs } = entry
  for (const event of entry.events) {
    if (event.type === 'standingSet' && details !== null && isOf(command, event.standing.id)) {
      const { id, details: version } = event.standing
      place.write({ ...details, id, version, day: null, writtenAtMs })
    } else if (event.type === 'standingEnded') {
      place.setDay(event.standingId, localDate(writtenAtMs))
    } else if (event.type === 'orderTaken' || event.type === 'orderChanged') {
      const { id, details: version, dueAtMs } = event.order
      const day = localDate(dueAtMs)
      if (details !== null && isOf(command, id)) place.write({ ...details, id, version, day, writtenAtMs })
      else if (event.type === 'orderChanged') place.setDay(id, day)
    }
  }
}

/** Whether it is what the command is about: with it a day may open, of whose standing orders others are made. */
function isOf(command: Command, id: string): boolean {
  if (command.type === 'changeOrder') return command.orderId === id
  if (command.type === 'setStanding' && command.standingId !== null) return command.standingId === id
  return id.startsWith(`${command.id}.`)
}

/** Null: the command says nothing of it. */
export function detailsIn(command: Command): OrderDetails | null {
  return 'details' in command ? (command.details ?? null) : null
}

/** A command as it may be logged: with nothing of whom an order is for. */
export function withoutDetails(command: Command): object {
  if (!('details' in command)) return command
  const { details: _details, ...rest } = command
  return rest
}
