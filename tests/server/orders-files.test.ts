import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { backup } from '../../server/commands/backup.ts'
import { exportShop } from '../../server/commands/export.ts'
import { importShop } from '../../server/commands/import.ts'
import { putBack } from '../../server/commands/restore.ts'
import { bringDetails } from '../../server/copies/details-file.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { DetailsBook } from '../../server/orders/details-book.ts'
import { epochMs } from '../../shared-core/units.ts'
import { askedLine, takeOrder } from '../core/orders/order-makers.ts'
import { CopiedShop } from './support/copied-shop.ts'
import { ask, startServer, stopServer } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

const NAME = 'Zilla Quandary'
const WRITTEN = {
  id: 'order00000001.1',
  version: 1,
  name: NAME,
  phone: '555 0100 73',
  note: 'rings at the back door',
  day: '2026-11-24',
  writtenAtMs: epochMs(Date.parse('2026-11-24T12:00:00Z')),
}

/** Files below a folder in whose bytes a text stands. */
function filesWith(folder: string, text: string): readonly string[] {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  return names
    .filter((name) => statSync(join(folder, name)).isFile() && readFileSync(join(folder, name)).includes(text))
    .sort()
}

describe('in the shop’s folder', () => {
  it('[M100, M105] given an order with a name, when looked for in all files, then it is in its own alone; deleted at the desk, in none', async () => {
    const folder = tempFolder()
    const inFolder = (name: string) => join(folder, name)
    const files = { file: inFolder('journal.sqlite'), historyFile: inFolder('history.sqlite') }
    const server = await startServer({ ...files, detailsFile: inFolder('details.sqlite') })
    const order = takeOrder({ lines: [askedLine('sesame')], dueAtMs: null, way: 'here', details: WRITTEN_DETAILS })
    const head = { id: 'order00000001', deviceSeq: 1, tappedAtMs: null }
    const posted = await ask(server, '/api/v1/commands', { body: { ...head, ...order } })
    expect(posted.status, posted.text).toBe(200)
    const lines = [askedLine('unheard-of')]
    const refused = await ask(server, '/api/v1/commands', { body: { ...head, id: 'refused00001', ...order, lines } })
    expect([refused.status, refused.text.includes(NAME)]).toEqual([409, false])
    expect(filesWith(folder, 'refused00001'), 'a refusal is written').not.toEqual([])
    expect(filesWith(folder, 'order00000001'), 'the journal was looked at').toContain('journal.sqlite-wal')
    for (const name of filesWith(folder, NAME)) expect(name).toMatch(/^details\.sqlite/)
    const read = await ask(server, '/api/v1/orders/details?ids=order00000001.1')
    expect(read.json).toEqual({ details: [{ id: 'order00000001.1', version: 1, ...WRITTEN_DETAILS }] })
    const deleted = await ask(server, '/api/v1/orders/details/order00000001.1', { method: 'DELETE' })
    expect([deleted.json, filesWith(folder, NAME)]).toEqual([{ deleted: 1 }, []])
    const { orders } = server.room.state
    expect([...orders.values()], 'screens read it anew').toMatchObject([
      { details: 2, lines: [{ pieces: 6, dozens: 0 }] },
    ])
    expect((await ask(server, '/api/v1/orders/details?ids=order00000001.1')).json).toEqual({ details: [] })
    await stopServer(server)
    expect(filesWith(folder, NAME)).toEqual([])
    expect(filesWith(folder, '"orderTaken"').length, 'the order itself stays').toBeGreaterThan(0)
  })

  it('[M105] given somebody who reads the file while a name is deleted, when they are done, then no byte of it is left', async () => {
    const sqlite = await loadSqlite()
    const folder = tempFolder()
    const book = new DetailsBook(sqlite, join(folder, 'details.sqlite'))
    book.write(WRITTEN)
    const reader = new sqlite.DatabaseSync(join(folder, 'details.sqlite'), { readOnly: true })
    reader.exec('BEGIN')
    reader.prepare('SELECT * FROM details').all()
    book.forget([WRITTEN.id])
    expect([book.tidyLog(), filesWith(folder, NAME)]).toEqual([false, ['details.sqlite-wal']])
    reader.exec('COMMIT')
    expect([book.tidyLog(), filesWith(folder, NAME)]).toEqual([true, []])
    reader.close()
    book.write(WRITTEN)
    expect(book.purge('2026-12-24', 29), 'whose days are over').toBe(1)
    expect(filesWith(folder, NAME)).toEqual([])
    book.close()
  })
})

const WRITTEN_DETAILS = { name: WRITTEN.name, phone: WRITTEN.phone, note: WRITTEN.note }

describe('in copies and exports', () => {
  let shop: CopiedShop
  let book: DetailsBook
  const said: string[] = []
  const say = (line: string) => said.push(line)
  const detailsFile = () => join(shop.folder, 'details.sqlite')

  beforeEach(async () => {
    shop = await CopiedShop.made()
    await shop.append(5)
    book = new DetailsBook(shop.sqlite, detailsFile())
    book.write(WRITTEN)
    said.length = 0
    return async () => {
      book.close()
      await shop.stop()
    }
  })

  it('[M105, M107] given copies, when made, then the running one has the name and the archive of the day has not; deleted, neither has', async () => {
    await shop.keeper.tick()
    await shop.keeper.archive('2026-11-26')
    expect(shop.keeper.standing().trouble).toBeNull()
    expect(readdirSync(shop.copies)).toContain('2026-11-26.sqlite')
    expect(filesWith(shop.copies, NAME)).toEqual(['details.sqlite'])
    book.forget([WRITTEN.id])
    shop.nowMs += 60_000
    await shop.keeper.tick()
    expect(filesWith(shop.copies, NAME)).toEqual([])
  })

  it('[M107] given a shop whose file of names is broken, when restored, then it is put back from the copy; without one, that is said', async () => {
    const parts = { sqlite: shop.sqlite, folder: shop.folder, nowMs: shop.nowMs }
    const breakIt = () => {
      book.close()
      writeFileSync(detailsFile(), 'no database any more')
      expect(() => new DetailsBook(shop.sqlite, detailsFile())).toThrow('npm run restore')
    }
    await shop.keeper.tick()
    breakIt()
    expect(await bringDetails({ ...parts, place: shop.copies })).toContain('are put back from')
    book = new DetailsBook(shop.sqlite, detailsFile())
    expect(book.find(WRITTEN.id, 1)).toEqual(WRITTEN)
    breakIt()
    await putBack(parts, { from: null, isOnly: false, say })
    expect(said.join('\n')).toMatch(/The journal in .* is good[\s\S]*Names and notes of orders are lost/)
    book = new DetailsBook(shop.sqlite, detailsFile())
    expect(book.find(WRITTEN.id, 1), 'the shop goes on').toBeNull()
  })

  it('[M107] given an export, when imported, then the names have come with it; a backup has none, and says so', async () => {
    book.close()
    const to = join(tempFolder(), 'export')
    await exportShop(['--shop', shop.folder, '--to', to], say)
    expect(filesWith(to, NAME)).toEqual(['order-details.json'])
    const kept = tempFolder()
    await backup(['--shop', shop.folder, '--to', join(kept, 'kept.sqlite')], say)
    expect([readdirSync(kept), filesWith(kept, NAME)]).toEqual([['kept.sqlite'], []])
    expect(said.at(-1)).toContain('are not in it')
    const fresh = join(tempFolder(), 'shop')
    await importShop(['--from', to, '--shop', fresh], say)
    book = new DetailsBook(shop.sqlite, join(fresh, 'details.sqlite'))
    expect(book.find(WRITTEN.id, 1)).toEqual(WRITTEN)
    const spoilt = join(to, 'order-details.json')
    writeFileSync(spoilt, readFileSync(spoilt, 'utf8').replace('"2026-11-24"', '"yesterday"'))
    const other = join(tempFolder(), 'other')
    mkdirSync(other)
    await expect(importShop(['--from', to, '--shop', other], say)).rejects.toThrow('Nothing was imported')
    expect(readdirSync(other)).toEqual([])
    expect(existsSync(to)).toBe(true)
  })
})
