import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { parse } from 'csv-parse/sync'
import express from 'express'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { exportShop } from '../../server/commands/export.ts'
import { importShop } from '../../server/commands/import.ts'
import { NO_COPIES } from '../../server/copies/copies.ts'
import { copiesRoutes } from '../../server/http/copies.ts'
import { readSetUp } from '../../server/shop/set-up-file.ts'
import { wake } from '../../server/shop/wake.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { CopiedShop, MORNING } from './support/copied-shop.ts'
import { refusedAt } from './support/made-entries.ts'
import { ask, startServer } from './support/start-server.ts'

let shop: CopiedShop
let to: string
const said: string[] = []

const REFUSED = [refusedAt('refused00001', '6:00'), refusedAt('refused00002', '6:10')]

beforeEach(async () => {
  said.length = 0
  shop = await CopiedShop.made()
  to = join(dirname(shop.folder), 'export')
  await shop.append(MORNING.length, REFUSED)
})

/** One export serves all tests that only read it, or spoil a copy of it. */
let whole: string | null = null
async function copyOfExport(): Promise<void> {
  if (whole === null) {
    await exported()
    whole = mkdtempSync(join(tmpdir(), 'boilboard-export-test-'))
    cpSync(to, whole, { recursive: true })
  } else cpSync(whole, to, { recursive: true })
}
afterAll(() => {
  if (whole !== null) rmSync(whole, { recursive: true })
})

const exported = () => exportShop(['--shop', shop.folder, '--to', to], (line) => said.push(line))
const newFolder = () => join(dirname(shop.folder), 'new')
const imported = () => importShop(['--from', to, '--shop', newFolder()], (line) => said.push(line))
const linesOf = (name: string) => readFileSync(join(to, name), 'utf8').trimEnd().split('\n')

/** Replaces text in a file of the export, which must be there. */
function change(name: string, from: string | RegExp, by: string): void {
  const before = readFileSync(join(to, name), 'utf8')
  const after = before.replace(from, by)
  expect(after).not.toBe(before)
  writeFileSync(join(to, name), after)
}

describe('an export', () => {
  it('[A20] given a shop that is open, when exported, then all of it is there in open formats', async () => {
    await exported()
    expect(readdirSync(to).sort()).toEqual(['about.json', 'days.csv', 'entries.jsonl', 'refusals.jsonl', 'set-up.json'])
    expect(linesOf('entries.jsonl').map((line) => JSON.parse(line))).toEqual(MORNING)
    expect(linesOf('refusals.jsonl').map((line) => JSON.parse(line))).toEqual(REFUSED)
    const setUp = readSetUp(join(to, 'set-up.json'))
    expect(setUp.ok && setUp.shop.profile.name).toBe('Test Bagels')
    const state = await wake(shop.journal, () => undefined)
    const about = JSON.parse(readFileSync(join(to, 'about.json'), 'utf8'))
    expect(about).toMatchObject({ seq: MORNING.length, refusals: 2, hash: hashState(state) })
    await expect(exported(), 'never into a folder that has something').rejects.toThrow('is not empty')
  })

  it('[A21] given its days, when read as a table, then each row adds up as the account does', async () => {
    await copyOfExport()
    const rows: Record<string, string>[] = parse(readFileSync(join(to, 'days.csv')), { columns: true })
    expect(rows.length).toBeGreaterThan(0)
    for (const row of rows) {
      const n = (column: string) => Number(row[column])
      const gone = ['sold', 'kitchen', 'wasted', 'given', 'day_old', 'unexplained'].map(n).reduce((a, b) => a + b)
      expect(n('shaped') + n('carried_in')).toBe(gone + n('still_there'))
      expect(row.day).toMatch(/^\d{4}-\d{2}-\d{2}$/)
      expect(row.opened).toMatch(/Z$/)
    }
    expect(rows.some(({ sold, carried_in }) => Number(sold) > 0 && Number(carried_in) > 0)).toBe(true)
  })
})

describe('an import', () => {
  it('[A22] given an export, when imported, then the new journal comes to the same fingerprint, answers and id', async () => {
    await exported()
    await imported()
    const [was, is] = [await shop.verify(shop.file), await shop.verify(join(newFolder(), 'journal.sqlite'))]
    if (!was.ok || !is.ok) throw new Error('one of them does not verify')
    expect(is).toMatchObject({ seq: was.seq, hash: was.hash, journalId: was.journalId })
    expect(is.course, 'screens look at it afresh').not.toBe(was.course)
    expect(said.join('\n')).toContain(
      `They come to the same state as where they were exported: fingerprint ${was.hash}`,
    )
    const journal = Object.assign(shop, { folder: newFolder() }).openJournal()
    for (const { commandId, answer } of REFUSED) expect(journal.answerOf(commandId)).toEqual(answer)
    for (const { commandId, seq } of MORNING) expect(journal.answerOf(commandId)).toEqual({ kind: 'taken', seq })
    journal.close()
    await expect(imported(), 'never over a shop').rejects.toThrow('has a journal already')
  })

  it.each<readonly [string, () => void, RegExp]>([
    ['a line that is no JSON', () => change('entries.jsonl', '{', '<'), /Line 1 of entries\.jsonl cannot be taken: /],
    [
      'a line that is missing',
      () => change('entries.jsonl', /.*\n/, ''),
      /Line 1 of entries\.jsonl .* has seq 2; here 1 belongs/,
    ],
    [
      'an end that is missing',
      () => change('entries.jsonl', /\n.*\n$/, '\n'),
      /has 59 entries; the export says that it has 60/,
    ],
    [
      'a number that was changed',
      () => change('entries.jsonl', '"pieces":60', '"pieces":61'),
      /entries\.jsonl is not as it was exported/,
    ],
    [
      'an event of no kind',
      () => change('entries.jsonl', /("events":\[\{[^}]*"type":)"\w+"/, '$1"nothing"'),
      /entries\.jsonl cannot be taken: /,
    ],
    [
      'a refusal that is none',
      () => change('refusals.jsonl', '"refused"', '"taken"'),
      /Line 1 of refusals\.jsonl cannot be taken: /,
    ],
    ['no entries at all', () => rmSync(join(to, 'entries.jsonl')), /entries\.jsonl is missing/],
    [
      'another fingerprint',
      () => change('about.json', /"hash": "\w/, '"hash": "x'),
      /come to the fingerprint \w+; the export says x/,
    ],
    ['another form', () => change('about.json', '"form": 1', '"form": 2'), /use the release that wrote it/],
    ['an export that was cut short', () => rmSync(join(to, 'about.json')), /no whole export/],
  ])(
    '[A23] given %s, when imported, then it is refused in words and nothing is left behind',
    async (_what, spoil, words) => {
      await copyOfExport()
      spoil()
      await expect(imported()).rejects.toThrow(words)
      expect(existsSync(newFolder())).toBe(false)
      mkdirSync(newFolder())
      await expect(imported()).rejects.toThrow(/^Nothing was imported\./)
      expect(readdirSync(newFolder())).toEqual([])
    },
  )
})

it('[A23] given a folder that is there already, when an import is refused, then the folder is left as it was', async () => {
  mkdirSync(newFolder())
  await expect(imported()).rejects.toThrow(/^Nothing was imported\./)
  expect(readdirSync(newFolder())).toEqual([])
})

describe('all entries over HTTP', () => {
  it('[A24] given a server, when asked for them, then they are those of the journal, a JSON on each line', async () => {
    shop.journal.close()
    const server = await startServer({ file: shop.file, shop: null })
    const asked = await ask(server, '/api/v1/export/entries.jsonl')
    expect([asked.status, asked.type]).toEqual([200, 'application/jsonl'])
    expect(asked.headers['content-disposition']).toContain('entries.jsonl')
    expect(
      asked.text
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line)),
    ).toEqual(MORNING)
    expect((await ask(server, '/api/v1/copies')).json).toEqual(NO_COPIES)
  })

  it('[A24] given one who reads slowly, when a large journal is sent, then it is read from the disk no faster', async () => {
    const PAGES = 60
    let read = 0
    const entry = { text: 'x'.repeat(1_000) } as unknown as Entry
    const journal = {
      lastSeq: () => PAGES * 1_000,
      entriesAfter: (_seq: number, most = 0) => {
        read += 1
        return Array.from({ length: most }, () => entry)
      },
    }
    const app = express()
    copiesRoutes(app, { journal, copies: () => NO_COPIES })
    const server = app.listen(0, '127.0.0.1')
    await new Promise((resolve) => server.once('listening', resolve))
    const { port } = server.address() as { port: number }
    const socket = connect(port, '127.0.0.1')
    socket.write('GET /api/v1/export/entries.jsonl HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n')
    // The first bytes are there, and nobody takes them.
    await new Promise((resolve) => socket.once('readable', resolve))
    await until(() => read > 0 && isStill(() => read))
    expect(read, 'pages in the buffers of the machine').toBeLessThan(PAGES / 2)
    let received = 0
    for await (const chunk of socket) received += (chunk as Buffer).length
    expect(received).toBeGreaterThan(PAGES * 1_000_000)
    expect(read).toBe(PAGES)
    await new Promise((resolve) => server.close(resolve))
  })
})

/** Whether a count stands still over many turns of the event loop. */
async function isStill(count: () => number): Promise<boolean> {
  const before = count()
  for (let turn = 0; turn < 200; turn += 1) await new Promise((resolve) => setImmediate(resolve))
  return count() === before
}

async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await isSo())) await new Promise((resolve) => setImmediate(resolve))
}
