import { io } from 'socket.io-client'
import type { FromScreen, ToScreen } from '../../shared-core/live/protocol.ts'
import type { Link, LinkEvents } from './link.ts'

/** The one event that messages travel under, both ways. */
const MESSAGE = 'm'

/**
 * The link over socket.io, websocket only, to the server that the page came from (or the address given). A lost contact
 * is tried again after a quarter to half a second, spread by chance, so that fifty screens do not knock at once.
 */
export function socketLink(events: LinkEvents, address?: string): Link {
  const options = {
    transports: ['websocket'],
    reconnectionDelay: 350,
    reconnectionDelayMax: 500,
    randomizationFactor: 0.3,
    // An attempt into a dead network would otherwise hold up the next for twenty seconds.
    timeout: 3_000,
  }
  const socket = address === undefined ? io(options) : io(address, options)
  let knocking: ReturnType<typeof setTimeout> | undefined
  socket.on('connect', events.up)
  socket.on(MESSAGE, (message: ToScreen) => events.message(message))
  socket.on('disconnect', (reason) => {
    events.down()
    // The server hung up on purpose, to be rid of this contact: socket.io would leave it at that.
    if (reason === 'io server disconnect') knocking = setTimeout(() => socket.connect(), knockAfterMs())
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

/** As long as socket.io waits by itself: a server that hangs up on everybody must not be stormed. */
function knockAfterMs(): number {
  return 250 + Math.random() * 250
}
