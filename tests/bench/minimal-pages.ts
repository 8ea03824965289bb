/**
 * The least that a page can do: a button that sends, a text that changes when it hears. They stand beside our screens in
 * the same browser, so that what the browser itself costs is on both sides.
 */
export const SENDER_PAGE = `<!doctype html><meta charset="utf-8"><title>sender</title>
<button style="width:300px;height:150px">tap</button><script src="/socket.io.js"></script><script>
const socket = io({ transports: ['websocket'] })
let n = 0
document.querySelector('button').addEventListener('pointerdown', () => {
  n += 1
  const events = [{ v: 1, atMs: Date.now(), type: 'flipped', loadId: 'k7.1', presumed: false, boardsWetAtMs: 0, over: [] }]
  const told = { type: 'flip', shelfId: '1' }
  const entry = { seq: n, commandId: 'bench' + n, deviceId: 'bench', recordedAtMs: Date.now(), told, events }
  socket.emit('m', { type: 'turn', entries: [entry], answers: [] })
})
</script>`

export const HEARER_PAGE = `<!doctype html><meta charset="utf-8"><title>hearer</title>
<p><strong>nothing yet</strong></p><script src="/socket.io.js"></script><script>
const text = document.querySelector('strong')
io({ transports: ['websocket'] }).on('m', (message) => { text.textContent = 'heard ' + message.entries[0].seq })
</script>`

/** A page whose texts change once a second, as many as the one beside it. */
export function tickingPage(texts: number): string {
  return `<!doctype html><meta charset="utf-8"><title>ticking</title><style>body{font:28px sans-serif}span{margin:8px}</style>
${Array.from({ length: texts }, (_, n) => `<span>${n}</span>`).join('')}<script>
let n = 0
setInterval(() => { n += 1; for (const one of document.querySelectorAll('span')) one.textContent = String(n) }, 1000)
</script>`
}
