import { createServer } from 'node:http'
import { Server } from 'socket.io'
import { loadSqlite } from '../../server/journal/sqlite.ts'

/**
 * The floor of latency: a bare socket.io server that writes each message with the same synchronous append to disk and
 * broadcasts it, and does nothing else. The same transport settings as ours.
 */
const [file] = process.argv.slice(2)
if (file === undefined) throw new Error('floor-server: FILE')
const { DatabaseSync } = await loadSqlite()
const db = new DatabaseSync(file)
db.exec(
  'PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE entries (seq INTEGER PRIMARY KEY, command_id TEXT UNIQUE, entry TEXT)',
)
const insert = db.prepare('INSERT INTO entries (command_id, entry) VALUES (?, ?)')

const http = createServer((_request, response) => response.end('{"status":"ok"}'))
const io = new Server(http, {
  transports: ['websocket'],
  perMessageDeflate: false,
  httpCompression: false,
  serveClient: false,
})
io.on('connection', (socket) => {
  socket.on('m', (message: { entries: [{ commandId: string }] }) => {
    db.exec('BEGIN IMMEDIATE')
    insert.run(message.entries[0].commandId, JSON.stringify(message.entries[0]))
    db.exec('COMMIT')
    io.local.emit('m', message)
  })
})
http.listen(Number(process.env.PORT ?? 0), '127.0.0.1', () => {
  const address = http.address()
  process.stdout.write(`http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}\n`)
})
process.once('SIGTERM', () => process.exit(0))
