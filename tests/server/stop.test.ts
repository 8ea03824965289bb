import { Agent, get, request } from 'node:http'
import { expect, it, vi } from 'vitest'
import { startServer, stopServer } from './support/start-server.ts'

it('given a request under way when the server is told to stop, and a page that asks on with the same connection, then it stops', async () => {
  const server = await startServer()
  const agent = new Agent({ keepAlive: true, maxSockets: 1 })
  const json = { 'content-type': 'application/json', 'content-length': 2 }
  const half = request(`${server.address}/api/v1/sales`, { agent, method: 'POST', headers: json })
  half.write('{')
  await new Promise((resolve) => half.on('socket', resolve))
  await ask(`${server.address}/api/health`)

  const stopped = stopServer(server)
  // Nobody new is let in: it has begun to close.
  await expect.poll(() => ask(`${server.address}/api/health`).catch(() => 'refused')).toBe('refused')
  const answered = new Promise((resolve) => half.on('response', (response) => response.resume().on('end', resolve)))
  half.end('}')
  await answered
  const asking = (async () => {
    for (;;) await ask(`${server.address}/api/health`, agent)
  })()
  const [ended] = await Promise.allSettled([asking, stopped])
  expect(ended.status).toBe('rejected')
})

it('given a disk that takes no snapshot when the server is told to stop, then all that comes after is still closed', async () => {
  const server = await startServer()
  const closed: string[] = []
  const { journal } = server
  vi.spyOn(journal, 'saveSnapshot').mockImplementation(() => {
    closed.push('no snapshot')
    throw new Error('database or disk is full')
  })
  const close = journal.close.bind(journal)
  vi.spyOn(journal, 'close').mockImplementation(() => {
    closed.push('journal')
    close()
  })
  await stopServer(server)
  expect(closed).toEqual(['no snapshot', 'journal'])
})

/** @param agent keeps the connection; without it each has one of its own */
function ask(address: string, agent?: Agent): Promise<string> {
  return new Promise((resolve, reject) => {
    const options = agent === undefined ? { headers: { connection: 'close' } } : { agent }
    get(address, options, (response) => response.resume().on('end', () => resolve('answered'))).on('error', reject)
  })
}
