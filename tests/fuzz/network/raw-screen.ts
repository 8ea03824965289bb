import { randomBytes } from 'node:crypto'
import type { Socket } from 'node:net'
import { connect } from 'node:net'

/** A link that stands and says nothing: it has left the room, as one that says `41` does. A loaded machine is slow. */
const SILENT_MS = 10_000

/** A websocket made by hand (RFC 6455, section 5.2), to say what no library would. */
export class RawScreen {
  readonly #socket: Socket
  #heard = Buffer.alloc(0)
  #texts: string[] = []
  #isClosed = false
  #isUpgraded = false
  #wake: () => void = () => undefined

  private constructor(socket: Socket) {
    this.#socket = socket
    socket.on('data', (chunk: Buffer) => this.#hear(chunk))
    socket.on('error', () => undefined)
    socket.on('close', () => {
      this.#isClosed = true
      this.#wake()
    })
  }

  /** @param from an address of the loopback network */
  static async open(port: number, from: string): Promise<RawScreen> {
    const socket = connect({ port, host: '127.0.0.1', localAddress: from })
    const screen = new RawScreen(socket)
    socket.write(
      [
        'GET /socket.io/?EIO=4&transport=websocket HTTP/1.1',
        `host: 127.0.0.1:${port}`,
        'connection: upgrade',
        'upgrade: websocket',
        'sec-websocket-version: 13',
        `sec-websocket-key: ${randomBytes(16).toString('base64')}`,
        '\r\n',
      ].join('\r\n'),
    )
    await screen.until((text) => text.startsWith('0{'))
    screen.say('40')
    await screen.until((text) => text.startsWith('40{'))
    return screen
  }

  get isClosed(): boolean {
    return this.#isClosed
  }

  /** Every text that came since this was last asked. */
  take(): readonly string[] {
    return this.#texts.splice(0)
  }

  say(text: string): void {
    this.frame(0x81, Buffer.from(text))
  }

  frame(first: number, payload: Buffer): void {
    const { length } = payload
    const size = length < 126 ? Buffer.from([0x80 | length]) : length < 65_536 ? Buffer.alloc(3) : Buffer.alloc(9)
    if (size.length === 3) size.writeUInt16BE(length, 1)
    if (size.length === 9) size.writeBigUInt64BE(BigInt(length), 1)
    if (size.length === 3) size[0] = 0x80 | 126
    if (size.length === 9) size[0] = 0x80 | 127
    // A mask of zeros leaves the payload as it is.
    this.bytes(Buffer.concat([Buffer.from([first]), size, Buffer.alloc(4), payload]))
  }

  bytes(bytes: Uint8Array): void {
    if (!this.#isClosed) this.#socket.write(bytes)
  }

  /** Whether such a text came before the link was lost. */
  async until(isIt: (text: string) => boolean): Promise<boolean> {
    for (;;) {
      if (this.#texts.some(isIt)) return true
      if (this.#isClosed) return false
      const isWoken = await new Promise<boolean>((resolve) => {
        const timer = setTimeout(() => resolve(false), SILENT_MS)
        this.#wake = () => {
          clearTimeout(timer)
          resolve(true)
        }
      })
      if (!isWoken) return false
    }
  }

  close(): void {
    this.#socket.destroy()
  }

  #hear(chunk: Buffer): void {
    this.#heard = Buffer.concat([this.#heard, chunk])
    if (!this.#isUpgraded) {
      const end = this.#heard.indexOf('\r\n\r\n')
      if (end < 0) return
      this.#isUpgraded = true
      this.#heard = this.#heard.subarray(end + 4)
    }
    for (let frame = this.#next(); frame !== null; frame = this.#next()) this.#texts.push(frame)
    this.#wake()
  }

  /** The next whole frame's payload as text; servers do not mask. */
  #next(): string | null {
    const bytes = this.#heard
    if (bytes.length < 2) return null
    const short = (bytes[1] ?? 0) & 0x7f
    const from = short === 126 ? 4 : short === 127 ? 10 : 2
    if (bytes.length < from) return null
    // A close frame: the link ends once both sides have said so (RFC 6455, section 5.5.1).
    if (((bytes[0] ?? 0) & 0x0f) === 8) {
      this.#isClosed = true
      this.#socket.destroy()
      return null
    }
    const length = short === 126 ? bytes.readUInt16BE(2) : short === 127 ? Number(bytes.readBigUInt64BE(2)) : short
    if (bytes.length < from + length) return null
    this.#heard = bytes.subarray(from + length)
    const text = bytes.subarray(from, from + length).toString('utf8')
    // Asked whether it is still there, as engine.io does every ten seconds.
    if (text === '2') this.say('3')
    return text
  }
}
