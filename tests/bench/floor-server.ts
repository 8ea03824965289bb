import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { Server } from 'socket.io'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { HEARER_PAGE, SENDER_PAGE } from './minimal-pages.ts'

/**
 * The floor of latency: a bare socket.io server that writes each message with the same synchronous append to disk and
 * broadcasts it, and does nothing else; with the least pages that can tap and show. The same transport settings as ours.
 */
const [file, grouped] = process.argv.slice(2)
if (file === undefined) throw new Error('floor-server: FILE [grouped]')
const { DatabaseSync } = await loadSqlite()
const db = new DatabaseSync(file)
db.exec(
  'PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE entries (seq INTEGER PRIMARY KEY, command_id TEXT UNIQUE, entry TEXT)',
)
const insert = db.prepare('INSERT INTO entries (command_id, entry) VALUES (?, ?)')

// The package exports no path to its client file.
const CLIENT = join(dirname(createRequire(import.meta.url).resolve('socket.io')), '../client-dist/socket.io.min.js')
const PAGES: { readonly [path: string]: () => string | Buffer } = {
  '/sender': () => SENDER_PAGE,
  '/hearer': () => HEARER_PAGE,
  '/socket.io.js': () => readFileSync(CLIENT),
}
const http = createServer(({ url = '' }, response) => response.end(PAGES[url]?.() ?? '{"status":"ok"}'))
const io = new Server(http, {
  transports: ['websocket'],
  perMessageDeflate: false,
  httpCompression: false,
  serveClient: false,
})
/** Grouped: all that arrives in one turn of the event loop is one commit and one message a screen. */
const waiting: Message[] = []
io.on('connection', (socket) => {
  socket.on('m', (message: Message) => {
    if (grouped === undefined) return take([message])
    if (waiting.length === 0) setImmediate(() => take(waiting.splice(0)))
    waiting.push(message)
  })
})
interface Message {
  readonly entries: readonly { readonly commandId: string }[]
}

function take(messages: readonly Message[]): void {
  const entries = messages.flatMap((message) => message.entries)
  db.exec('BEGIN IMMEDIATE')
  for (const entry of entries) insert.run(entry.commandId, JSON.stringify(entry))
  db.exec('COMMIT')
  io.local.emit('m', { ...messages[0], entries })
}

http.listen(Number(process.env.PORT ?? 0), '127.0.0.1', () => {
  const address = http.address()
  process.stdout.write(`http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}\n`)
})
process.once('SIGTERM', () => process.exit(0))
