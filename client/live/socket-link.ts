import { io } from 'socket.io-client'
import type { FromScreen, ToScreen } from '../../shared-core/live/protocol.ts'
import type { Link, LinkEvents } from './link.ts'

/** The one event that messages travel under, both ways. */
const MESSAGE = 'm'

/**
 * The link over socket.io, websocket only, to the server that the page came from (or the address given). A lost contact
 * is tried again after a quarter to half a second, spread by chance each time, so that fifty screens do not knock at
 * once: of socket.io's own waits only the first is spread, as its longest wait cuts off what chance adds to the others.
 * A knock is a plain request, and only a server that answers it is asked for a socket: Chromium makes a page whose sockets
 * failed again and again wait up to five seconds with each new one, so that a server that is back would not be found.
 */
export function socketLink(events: LinkEvents, address?: string): Link {
  const options = {
    transports: ['websocket'],
    reconnection: false,
    // An attempt into a dead network would otherwise hold up the next for twenty seconds.
    timeout: ATTEMPT_MS,
  }
  const socket = address === undefined ? io(options) : io(address, options)
  let knocking: ReturnType<typeof setTimeout> | undefined
  /** An answer to a knock from before an `end` opens nothing. */
  let ends = 0
  const knock = () => {
    clearTimeout(knocking)
    const before = ends
    knocking = setTimeout(async () => {
      const isThere = await isServing(address ?? '')
      if (before !== ends) return
      if (isThere) socket.connect()
      else knock()
    }, knockAfterMs())
  }
  socket.on('connect', events.up)
  socket.on('connect_error', knock)
  socket.on(MESSAGE, (message: ToScreen) => events.message(message))
  socket.on('disconnect', (reason) => {
    events.down()
    if (reason !== 'io client disconnect') knock()
  })
  const end = () => {
    ends += 1
    clearTimeout(knocking)
    socket.disconnect()
  }
  return {
    // A message kept for later would arrive before the hello of its contact.
    send: (message: FromScreen) => {
      if (socket.connected) socket.emit(MESSAGE, message)
    },
    restart: () => {
      end()
      socket.connect()
    },
    rest: end,
    close: end,
  }
}

const ATTEMPT_MS = 3_000
/** What every server has, and answers with "unavailable" (503) while it still reads its journal. */
const SMALL_FILE = '/icon.svg'

async function isServing(address: string): Promise<boolean> {
  const given = new AbortController()
  const giveUp = setTimeout(() => given.abort(), ATTEMPT_MS)
  try {
    const { status } = await fetch(`${address}${SMALL_FILE}`, {
      method: 'HEAD',
      cache: 'no-store',
      signal: given.signal,
    })
    return status !== 503
  } catch {
    return false
  } finally {
    clearTimeout(giveUp)
  }
}

/** A server that is back is found within half a second, and one that hangs up on everybody is not stormed. */
function knockAfterMs(): number {
  return 250 + Math.random() * 250
}
