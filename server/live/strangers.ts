import type { Socket } from 'node:net'

/** A shop's tablets that were all shown out knock one after the other; nobody else has business here. */
const STRANGERS_MAX = 50
/** A hello and its refusal take a moment, even on a bad network. */
const STAY_MS_MAX = 10_000

/**
 * Links of those who are not let in: they are kept just long enough to be told why. Few and short, so that they never
 * take the room of the shop's own screens.
 */
export class Strangers {
  readonly #sockets = new Set<Socket>()

  /** @returns false when there are too many already */
  letWait(socket: Socket): boolean {
    if (this.#sockets.size >= STRANGERS_MAX) return false
    this.#sockets.add(socket)
    const timer = setTimeout(() => socket.destroy(), STAY_MS_MAX)
    socket.once('close', () => {
      clearTimeout(timer)
      this.#sockets.delete(socket)
    })
    return true
  }
}
