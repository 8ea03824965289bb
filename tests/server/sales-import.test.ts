import { describe, expect, it } from 'vitest'
import type { Preview, SalesFile, TillNames } from '../../shared-core/live/sales-import.ts'
import type { TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const CSV = { 'content-type': 'text/csv' }
const put = async (server: TestServer, text: string, name = 'november.csv') =>
  await ask(server, `/api/v1/sales/files?name=${encodeURIComponent(name)}`, { body: text, headers: CSV })

async function takenFile(server: TestServer, text: string): Promise<SalesFile> {
  const preview = (await put(server, text)).json as Preview
  const { id } = preview.file
  const begun = await ask(server, `/api/v1/sales/files/${id}/take`, { body: { mapping: preview.mapping } })
  expect([begun.status, begun.text]).toEqual([200, begun.text])
  return await settled(server, id)
}

async function settled(server: TestServer, id: number): Promise<SalesFile> {
  for (;;) {
    const file = (await ask(server, `/api/v1/sales/files/${id}`)).json as SalesFile
    if (file.state !== 'taking') return file
  }
}

describe('past sales in a file', () => {
  it('[Q60] given a file, when it is put in and taken, then its rows are there and the journal knows of it once', async () => {
    const server = await startServer()
    const text = 'Date,Time,Receipt,Item,Qty\n11/20/2026,7:05 am,1,Sesame,2\n11/20/2026,7:06 am,2,Half dozen,1\nTotal,,,,3\n'
    const file = await takenFile(server, text)
    expect(file).toMatchObject({ state: 'taken', rows: 3, taken: 2, bad: 1, doubled: 0, from: '2026-11-20', to: '2026-11-20' })
    const { names } = (await ask(server, '/api/v1/sales/names')).json as TillNames
    console.log(JSON.stringify(names), JSON.stringify((await ask(server, `/api/v1/sales/files/${file.id}/bad`)).json))
    console.log([...server.journal.entriesAfter(0)].flatMap((e) => e.events).filter((e) => e.type === 'importNoted'))
  })
})
