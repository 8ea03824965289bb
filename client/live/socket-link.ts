import { io } from 'socket.io-client'
import type { FromScreen, ToScreen } from '../../shared-core/live/protocol.ts'
import type { Link, LinkEvents } from './link.ts'

/** The one event that messages travel under, both ways. */
const MESSAGE = 'm'

/**
 * The link over socket.io, websocket only, to the server that the page came from (or the address given). A lost contact
 * is tried again after a quarter to half a second, spread by chance each time, so that fifty screens do not knock at
 * once: of socket.io's own waits only the first is spread, as its longest wait cuts off what chance adds to the others.
 */
export function socketLink(events: LinkEvents, address?: string): Link {
  const options = {
    transports: ['websocket'],
    reconnection: false,
    // An attempt into a dead network would otherwise hold up the next for twenty seconds.
    timeout: 3_000,
  }
  const socket = address === undefined ? io(options) : io(address, options)
  let knocking: ReturnType<typeof setTimeout> | undefined
  const knock = () => {
    clearTimeout(knocking)
    knocking = setTimeout(() => socket.connect(), knockAfterMs())
  }
  socket.on('connect', events.up)
  socket.on('connect_error', knock)
  socket.on(MESSAGE, (message: ToScreen) => events.message(message))
  socket.on('disconnect', (reason) => {
    events.down()
    if (reason !== 'io client disconnect') knock()
  })
  const end = () => {
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

/** A server that is back is found within half a second, and one that hangs up on everybody is not stormed. */
function knockAfterMs(): number {
  return 250 + Math.random() * 250
}
