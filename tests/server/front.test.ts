import { afterEach, describe, expect, it } from 'vitest'
import { Front } from '../../server/http/front.ts'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { wake } from '../../server/shop/wake.ts'
import { drawnMorning } from './support/made-entries.ts'
import { ask } from './support/start-server.ts'

const fronts: Front[] = []
afterEach(() => {
  for (const front of fronts.splice(0)) front.http.close()
})

describe('a start that takes long', () => {
  it('[W8] given a journal being folded, when asked, then people and scripts hear how far it is; afterwards the shop answers', async () => {
    const front = new Front()
    fronts.push(front)
    const port = await front.listen(0, '127.0.0.1')
    const journal = new MemoryJournal(new MemoryDisk('front'))
    await journal.append({ entries: drawnMorning(40, 3), refusals: [] })
    const asked: Promise<unknown[]>[] = []
    await wake(
      journal,
      (share) => {
        front.progress(share)
        asked.push(Promise.all([ask({ port }, '/api/health'), ask({ port }, '/wall')]))
      },
      10,
    )
    const heard = await Promise.all(asked)
    expect(heard).toHaveLength(4)
    for (const [health, page] of heard) {
      expect(health).toMatchObject({ status: 503, headers: { 'retry-after': '2' }, json: { status: 'starting' } })
      expect(page).toMatchObject({ status: 503, type: 'text/html', text: expect.stringContaining('Getting ready') })
    }
    front.progress(0.256)
    expect((await ask({ port }, '/api/health')).json).toMatchObject({ percent: 25 })
    front.handOver((_request, response) => response.end('the shop'))
    expect((await ask({ port }, '/wall')).text).toBe('the shop')
  })

  it('[W7] given a port in use, when listened on, then it is thrown', async () => {
    const [first, second] = [new Front(), new Front()]
    fronts.push(first, second)
    const port = await first.listen(0, '127.0.0.1')
    await expect(second.listen(port, '127.0.0.1')).rejects.toThrow('EADDRINUSE')
  })
})
