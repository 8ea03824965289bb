import type { FromScreen, ToScreen } from '../../shared-core/live/protocol.ts'

/** An ordered way to the server that may break at any time and comes back by itself. */
export interface Link {
  /** Sends when there is contact; otherwise the message is dropped, never kept for later. */
  send(message: FromScreen): void
  /** Drops the contact, which is suspected dead, and makes a new one. */
  restart(): void
  /** Drops the contact and makes none until `restart`. */
  rest(): void
  close(): void
}

export interface LinkEvents {
  /** A new contact: nothing said on an earlier one counts any more. */
  up(): void
  message(message: ToScreen): void
  down(): void
}

/** Starts connecting. None of the events is called before this has returned. */
export type OpenLink = (events: LinkEvents) => Link
