import { once } from 'node:events'
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { backup } from '../../server/commands/backup.ts'
import { exportShop } from '../../server/commands/export.ts'
import { importShop } from '../../server/commands/import.ts'
import { restore } from '../../server/commands/restore.ts'
import { openSalesTables } from '../../server/sales/sales-tables.ts'
import { workHere } from '../../server/work/work-desk.ts'
import type { BadRows, SalesFile, TillNames } from '../../shared-core/live/sales-import.ts'
import { CopiedShop } from './support/copied-shop.ts'
import { putIn, takenFile, untilTaken } from './support/sales-file.ts'
import type { TestServer } from './support/start-server.ts'
import { ask, startServer, stopServer } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

const HEADER = 'Date,Time,Receipt,Item,Qty\n'
const TEXT = `${HEADER}11/20/2015,7:05 am,1,Sesame,2\n11/20/2015,7:06 am,2,Half dozen,1\nTotal,,,,3\n`
const notes = (server: TestServer) =>
  [...server.journal.entriesAfter(0)].flatMap(({ events }) => events).filter(({ type }) => type === 'importNoted')
const filesOf = async (server: TestServer) => (await ask(server, '/api/v1/sales/files')).json as readonly SalesFile[]
const namesOf = async (server: TestServer) => ((await ask(server, '/api/v1/sales/names')).json as TillNames).names

/** A shop whose past sales outlive the server. */
async function shopInFolder(folder: string): Promise<TestServer> {
  const work = workHere({ salesFile: join(folder, 'sales.sqlite') })
  return await startServer({ file: join(folder, 'journal.sqlite'), work })
}

describe('past sales in a file', () => {
  it('[Q60] given a file, when put in and taken, then its rows are there and the journal knows of it once', async () => {
    const server = await startServer()
    const file = await takenFile(server, TEXT)
    expect(file).toMatchObject({
      name: 'november.csv',
      state: 'taken',
      rows: 3,
      taken: 2,
      bad: 1,
      from: '2015-11-20',
      to: '2015-11-20',
    })
    expect(
      (await namesOf(server)).map(({ name, sold, meaning, suggested }) => [name, sold, meaning?.kind, suggested]),
    ).toEqual([
      ['Sesame', 2, 'variety', null],
      ['Half dozen', 1, undefined, { kind: 'unnamed', pieces: 6, among: null }],
    ])
    await expect
      .poll(() => notes(server))
      .toMatchObject([{ name: 'november.csv', sha256: file.sha256, rows: 2, from: '2015-11-20' }])
    await takenFile(server, `${HEADER}11/21/2015,7:05,1,Sesame,1\n`)
    await expect.poll(() => notes(server).length).toBe(2)
  })

  it('[Q60] given a stop in the middle, when the server is there again, then the file is taken to its end, and noted once', async () => {
    const folder = tempFolder()
    const first = await shopInFolder(folder)
    const rows = Array.from({ length: 9_000 }, (_, n) => `11/20/2015,${7 + (n % 6)}:05,${n},Sesame,1\n`)
    const { file, mapping } = await putIn(first, HEADER + rows.join(''))
    await ask(first, `/api/v1/sales/files/${file.id}/take`, { body: { mapping } })
    await stopServer(first)
    const again = await shopInFolder(folder)
    expect(await untilTaken(again, file.id)).toMatchObject({ state: 'taken', taken: 9_000, doubled: 0, bad: 0 })
    await expect.poll(() => notes(again).length).toBe(1)
    await stopServer(again)
    const third = await shopInFolder(folder)
    await namesOf(third)
    expect(notes(third).length).toBe(1)
  })

  it('[Q64] given bad rows, when read and corrected over HTTP, then they are taken; a file that is out is gone', async () => {
    const server = await startServer()
    const { id } = await takenFile(server, TEXT)
    const { bad } = (await ask(server, `/api/v1/sales/files/${id}/bad`)).json as BadRows
    expect(bad).toMatchObject([{ line: 4, text: 'Total,,,,3', fault: { code: 'no-date' } }])
    const body = { rows: [{ line: 4, text: '11/20/2015,7:07 am,3,Sesame,3' }] }
    expect((await ask(server, `/api/v1/sales/files/${id}/bad`, { body })).json).toMatchObject({ taken: 1, bad: [] })
    expect((await namesOf(server))[0]).toMatchObject({ name: 'Sesame', sold: 5 })
    await ask(server, `/api/v1/sales/files/${id}`, { method: 'DELETE' })
    expect([await filesOf(server), await namesOf(server)]).toEqual([[], []])
  })

  const WRONG: readonly (readonly [
    what: string,
    method: string,
    path: string,
    body: unknown,
    status: number,
    words: string,
  ])[] = [
    ['nothing', 'POST', '', '', 422, 'empty'],
    ['a workbook', 'POST', '', 'PK\u0003\u0004xxxx', 422, 'save it as CSV'],
    ['a file that there is not', 'GET', '/77', undefined, 404, 'no file of that id'],
    ['an id that is none', 'GET', '/x', undefined, 404, 'no file of that id'],
    ['no mapping', 'POST', '/1/take', {}, 422, 'as the preview has it'],
    ['a mapping with a slip', 'POST', '/1/take', { mapping: { datum: 1 } }, 422, 'datum'],
    ['corrections of a file that waits', 'POST', '/1/bad', { rows: [{ line: 1, text: 'x' }] }, 409, 'when it is taken'],
    ['a line that is none', 'GET', '/1/bad?after=x', undefined, 400, 'whole number'],
  ]

  it('[Q63] given what cannot be done, when asked, then it is told what would be right, and nothing comes in', async () => {
    const server = await startServer()
    await putIn(server, TEXT)
    for (const [what, method, path, body, status, words] of WRONG) {
      const headers = typeof body === 'string' ? { 'content-type': 'text/csv' } : {}
      const sent = { method, headers, ...(body === undefined ? {} : { body }) }
      const asked = await ask(server, `/api/v1/sales/files${path}`, sent)
      expect([what, asked.status, asked.type]).toEqual([what, status, 'application/problem+json'])
      expect(asked.text).toContain(words)
    }
    expect((await filesOf(server)).length).toBe(1)
  })

  it('[Q63] given a file that would fill the disk, when sent, then it is refused before it is read', async () => {
    const server = await startServer()
    const headers = { 'content-length': String(2 ** 50), 'content-type': 'text/csv' }
    const sent = request(`${server.address}/api/v1/sales/files`, { method: 'POST', headers })
    sent.on('error', () => undefined)
    sent.write(HEADER)
    const [answer] = await once(sent, 'response')
    const text = await new Response(answer).text()
    sent.destroy()
    expect([answer.statusCode, text]).toEqual([503, expect.stringContaining('Make room')])
    expect(await filesOf(server)).toEqual([])
  })

  it('[Q68] given a name that is said to be what the shop has not, or nothing that is known, when sent, then nothing is taken, and it is told what would be', async () => {
    const server = await startServer()
    const names = [{ name: 'Dozen', meaning: { kind: 'variety', varietyId: 'pumpernickel', pieces: 12 } }]
    const asked = await ask(server, '/api/v1/sales/names', { method: 'PUT', body: { names } })
    expect([asked.status, asked.json]).toMatchObject([422, { errors: [{ path: '/names/0/meaning' }] }])
    for (const meaning of [undefined, 12, { kind: 'dozen' }]) {
      const body = { names: [{ name: 'Dozen', meaning }] }
      const { status, text } = await ask(server, '/api/v1/sales/names', { method: 'PUT', body })
      expect([status, text.includes('null, or what the name means: of the')]).toEqual([422, true])
    }
  })
})

describe('what a till posts by itself', () => {
  const say = (server: TestServer, name: string, meaning: object) =>
    ask(server, '/api/v1/sales/names', { method: 'PUT', body: { names: [{ name, meaning }] } })
  const post = async (server: TestServer, sales: readonly object[]) =>
    (await ask(server, '/api/v1/sales', { body: { sales } })).json as Record<string, unknown>

  it('[Q71] given names of the till, when posted, then they go by what the desk has said of them', async () => {
    const server = await startServer()
    await say(server, 'Half dozen sesame', { kind: 'variety', varietyId: 'sesame', pieces: 6 })
    await say(server, 'Mixed six', {
      kind: 'pack',
      lines: [
        { varietyId: 'sesame', pieces: 3 },
        { varietyId: 'poppy', pieces: 3 },
      ],
    })
    await say(server, 'Coffee', { kind: 'nothing' })
    const sales = [
      { variety: 'Half dozen sesame', pieces: 2 },
      { variety: 'Mixed six', pieces: 1 },
      { variety: 'Coffee', pieces: 1 },
    ]
    expect(await post(server, sales)).toMatchObject({ taken: 2, past: 0, ignored: 1 })
    const sold = [...server.journal.entriesAfter(0)]
      .flatMap(({ events }) => events)
      .filter(({ type }) => type === 'saleNoted' || type === 'stockTaken')
    expect(JSON.stringify(sold)).toContain('"sesame"')
    expect(await post(server, [{ variety: 'Twelve somethings', pieces: 1 }])).toMatchObject({
      errors: [{ path: '/sales/0/variety' }],
    })
    expect(await post(server, [{ variety: 'Half dozen sesame', pieces: 1_000 }])).toMatchObject({
      errors: [{ path: '/sales/0/pieces' }],
    })
  })

  it('[Q71] given sales of a day that is over, when posted, also twice, then they are past sales, once for an id', async () => {
    const server = await startServer()
    const sales = [
      { at: '2021-11-24T08:05:00-06:00', variety: 'Sesame', pieces: 3, id: 'r1' },
      { at: '2021-11-24T08:06:00-06:00', variety: null, pieces: 6, id: 'r2' },
      { variety: 'Sesame', pieces: 1, id: 'r3' },
    ]
    for (let n = 0; n < 2; n += 1) expect(await post(server, sales)).toMatchObject({ taken: 1, past: 2 })
    expect((await namesOf(server)).map(({ name, sold }) => [name, sold])).toEqual([
      ['?', 6],
      ['Sesame', 3],
    ])
    // A file of that day has the same sales under ids of its own.
    await takenFile(server, `${HEADER}11/24/2021,8:05,1,Sesame,3\n11/24/2021,8:06,2,Dozen,1\n`)
    const history = (await ask(server, '/api/v1/history/sales?of=all')).json as {
      days: { date: string; sold: number }[]
    }
    expect(history.days).toMatchObject([{ date: '2021-11-24', sold: 3 }])
  })
})

describe('past sales in copies', () => {
  const said: string[] = []
  const say = (line: string) => void said.push(line)

  it('[Q72] given past sales, when backed up and lost, then a restore puts them back; where no copy has them it names the files', async () => {
    const folder = tempFolder()
    const server = await shopInFolder(folder)
    await takenFile(server, TEXT)
    const before = await namesOf(server)
    await expect.poll(() => notes(server).length).toBe(1)
    await stopServer(server)
    const copy = join(folder, 'away', 'b.sqlite')
    await backup(['--shop', folder, '--to', made(copy)], say)
    writeFileSync(join(folder, 'sales.sqlite'), 'broken')
    await restore(['--shop', folder, '--from', copy], say)
    expect(said.join('\n')).toContain('Past sales are put back from')
    const again = await shopInFolder(folder)
    expect(await namesOf(again)).toEqual(before)
    await stopServer(again)
    for (const file of [join(folder, 'sales.sqlite'), join(folder, 'away', 'b-sales.sqlite')]) rmSync(file)
    await restore(['--shop', folder, '--from', copy], say)
    expect(said.at(-2)).toBe(
      'Past sales are lost: no copy has them. Put these files of the till in again: november.csv.',
    )
  })

  it('[Q72] given copies that follow the journal, then past sales come along, whole, when they have changed', async () => {
    const shop = await CopiedShop.made()
    const db = openSalesTables(shop.sqlite, join(shop.folder, 'sales.sqlite'))
    const add = (name: string) => db.prepare('INSERT INTO names (name) VALUES (?)').run(name)
    const copied = () => {
      const copy = new shop.sqlite.DatabaseSync(shop.inCopies('sales.sqlite'), { readOnly: true })
      const names = copy.prepare('SELECT name FROM names ORDER BY id').all()
      copy.close()
      return names.map(({ name }) => name)
    }
    add('Sesame')
    await shop.keeper.tick()
    expect(copied()).toEqual(['Sesame'])
    add('Poppy')
    shop.nowMs += 60_000
    await shop.keeper.tick()
    expect(copied(), 'not each minute').toEqual(['Sesame'])
    shop.nowMs += 600_000
    await shop.keeper.tick()
    expect(copied()).toEqual(['Sesame', 'Poppy'])
    await shop.stop()
    db.close()
  })

  it('[Q72] given past sales, when exported and imported, then all of them are there; a row that was changed is found', async () => {
    const folder = tempFolder()
    const server = await shopInFolder(folder)
    await takenFile(server, TEXT)
    const [before, files] = [await namesOf(server), await filesOf(server)]
    await expect.poll(() => notes(server).length).toBe(1)
    await stopServer(server)
    const to = join(folder, 'export')
    await exportShop(['--shop', folder, '--to', to], say)
    const other = join(folder, 'other')
    await importShop(['--from', to, '--shop', other], say)
    const again = await shopInFolder(other)
    expect([await namesOf(again), await filesOf(again)]).toEqual([before, files])
    await stopServer(again)
    writeFileSync(join(to, 'sales.csv'), 'day,second\n')
    await expect(importShop(['--from', to, '--shop', join(folder, 'third')], say)).rejects.toThrow(
      'its SHA-256 is another',
    )
  })
})

function made(file: string): string {
  mkdirSync(dirname(file), { recursive: true })
  return file
}
