import { connect } from 'node:net'

/** A request as bytes, so that it can be broken anywhere. */
export interface RawAnswer {
  /** 0: ended without an answer. */
  readonly status: number
  readonly type: string
  readonly body: string
}

/** Beyond this nothing comes any more: hung. A loaded machine takes long for anything. */
const HUNG_MS = 20_000
/** How long the rest of a request may be missing. */
const WAITS_MS = 400

/**
 * Sends bytes and hears the answer to its end.
 * @param from an address of this machine's loopback network: each has its own count of requests a minute
 * @throws Error when nothing came for long
 */
export function sendRaw(port: number, bytes: Uint8Array, from = '127.0.0.1'): Promise<RawAnswer> {
  return new Promise((resolve, reject) => {
    const heard: Buffer[] = []
    const socket = connect({ port, host: '127.0.0.1', localAddress: from })
    socket.setTimeout(WAITS_MS, () => {
      // Whoever hangs up gets no answer, so a request that is cut short waits for its rest only so long.
      if (socket.writable) socket.setTimeout(HUNG_MS).end()
      else {
        socket.destroy()
        reject(new Error('no answer, and no end of the link'))
      }
    })
    socket.on('data', (chunk) => heard.push(chunk))
    // A server that has said no ends the link in the middle of a body: what it said counts.
    socket.on('error', () => undefined)
    socket.on('close', () => resolve(read(Buffer.concat(heard))))
    socket.write(bytes)
  })
}

function read(bytes: Buffer): RawAnswer {
  // "100 Continue" comes before the answer.
  const text = bytes.toString('utf8').replace(/^(HTTP\/1\.1 1\d\d [^\r]*\r\n\r\n)+/, '')
  const [head = '', ...rest] = text.split('\r\n\r\n')
  const status = Number(/^HTTP\/1\.1 (\d{3}) /.exec(head)?.[1] ?? 0)
  const type = /^content-type: *([^;\r\n]*)/im.exec(head)?.[1] ?? ''
  const body = rest.join('\r\n\r\n')
  // A second answer on the same link, to what came after a whole request, is not looked at.
  const length = Number(/^content-length: *(\d+)/im.exec(head)?.[1] ?? Number.NaN)
  const all = Buffer.from(body)
  return { status, type, body: Number.isNaN(length) ? body : all.subarray(0, length).toString('utf8') }
}
