import type { Socket } from 'socket.io-client'
import { io } from 'socket.io-client'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Command } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../../shared-core/day/state.ts'
import { fromJson } from '../../../shared-core/day/state-json.ts'
import type { CommandAnswer, ToScreen } from '../../../shared-core/live/protocol.ts'
import { PROTOCOL_VERSION } from '../../../shared-core/live/protocol.ts'

/** A screen at the end of a real socket, as plain as can be: it folds what it hears and sends what it is told to. */
export class ScreenSocket {
  readonly messages: ToScreen[] = []
  readonly answers: CommandAnswer[] = []
  state: State = emptyState()
  isClosed = false
  readonly #socket: Socket
  readonly #waiting = new Set<() => void>()

  constructor(address: string, headers: Record<string, string> = {}) {
    this.#socket = io(address, {
      transports: ['websocket'],
      reconnection: false,
      forceNew: true,
      extraHeaders: headers,
    })
    this.#socket.on('m', (message: ToScreen) => {
      this.messages.push(message)
      this.#hear(message)
      this.#wake()
    })
    this.#socket.on('disconnect', () => {
      this.isClosed = true
      this.#wake()
    })
  }

  linked(): Promise<boolean> {
    return new Promise((resolve) => {
      this.#socket.once('connect', () => resolve(true))
      this.#socket.once('connect_error', () => resolve(false))
    })
  }

  sendRaw(message: unknown): void {
    this.#socket.emit('m', message)
  }

  tap(...commands: readonly Command[]): void {
    this.sendRaw({ type: 'commands', commands })
  }

  /** Resolves as soon as something that was heard makes it true. */
  until(isSo: () => boolean): Promise<void> {
    return new Promise((resolve) => {
      const look = () => {
        if (!isSo()) return
        this.#waiting.delete(look)
        resolve()
      }
      this.#waiting.add(look)
      look()
    })
  }

  async close(): Promise<void> {
    this.#socket.close()
    await this.until(() => this.isClosed || !this.#socket.connected)
  }

  #hear(message: ToScreen): void {
    if (message.type === 'welcome' && message.state !== null) this.state = fromJson(message.state)
    if (message.type !== 'turn') return
    for (const entry of message.entries) if (entry.seq === this.state.seq + 1) applyEntry(this.state, entry)
    this.answers.push(...message.answers)
  }

  #wake(): void {
    for (const look of [...this.#waiting]) look()
  }
}

/** A screen that has said hello and was answered. `change` replaces parts of the hello, `headers` go with the handshake. */
export async function connect(
  { port }: { readonly port: number },
  name: string,
  change: object = {},
  answer: ToScreen['type'] = 'welcome',
  headers: Record<string, string> = {},
): Promise<ScreenSocket> {
  const screen = new ScreenSocket(`http://127.0.0.1:${port}`, { origin: `http://127.0.0.1:${port}`, ...headers })
  if (!(await screen.linked())) throw new Error(`${name} got no link`)
  const device = { deviceId: name, name, role: 'bench', stationId: null }
  const hello = {
    type: 'hello',
    protocol: PROTOCOL_VERSION,
    foldVersion: FOLD_VERSION,
    buildId: 'test',
    device,
    isRenamed: false,
    afterSeq: null,
    journalId: null,
    course: null,
  }
  screen.sendRaw({ ...hello, ...change })
  await screen.until(() => screen.messages.some(({ type }) => type === answer))
  return screen
}

/** Whether a knock with these headers was turned away. */
export async function refusedBy(
  { port }: { readonly port: number },
  headers: Record<string, string>,
): Promise<boolean> {
  const screen = new ScreenSocket(`http://127.0.0.1:${port}`, headers)
  const isLinked = await screen.linked()
  await screen.close()
  return !isLinked
}
