import { existsSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { backup } from '../../server/commands/backup.ts'
import { putBack, restore } from '../../server/commands/restore.ts'
import { upTo } from '../../server/copies/copy-list.ts'
import type { PutBackStep } from '../../server/copies/put-back.ts'
import { refuseHalfPutBack } from '../../server/copies/put-back.ts'
import { takeFolder } from '../../server/shop/folder.ts'
import { CopiedShop } from './support/copied-shop.ts'
import { refusedAt } from './support/made-entries.ts'

let shop: CopiedShop
const said: string[] = []
afterEach(() => {
  said.length = 0
})

/** A shop whose copy stands at one entry and whose journal went on to another, both stopped. */
async function shopAt({ copied, journal }: { copied: number; journal: number }): Promise<CopiedShop> {
  shop = await CopiedShop.made()
  await shop.append(copied)
  await shop.stop()
  shop.openJournal()
  await shop.append(journal, [refusedAt('refused00001', '6:00')])
  shop.journal.close()
  return shop
}

const whole = async (file = shop.file) => {
  const verified = await shop.verify(file)
  if (!verified.ok) throw new Error(verified.why)
  return verified
}

async function restored(change: { from?: string; isOnly?: boolean; onStep?: (step: PutBackStep) => void } = {}) {
  const { sqlite, folder, nowMs } = shop
  const { from = shop.copies, isOnly = false, onStep = () => undefined } = change
  await putBack({ sqlite, folder, nowMs, onStep }, { from, isOnly, say: (line) => said.push(line) })
  return whole()
}

/** Rows of the journal's file as it is; damage that leaves the rest readable. */
function spoil(sql: string): void {
  const db = new shop.sqlite.DatabaseSync(shop.file)
  db.exec(sql)
  db.close()
}

const DAMAGES: readonly (readonly [string, (file: string) => void])[] = [
  [
    'cut off in the middle',
    (file) => truncateSync(file, Math.floor(readFileSync(file).length / 2 / 4096) * 4096 + 100),
  ],
  ['deleted', (file) => rmSync(file)],
  ['with its first page overwritten', (file) => writeFileSync(file, overwritten(readFileSync(file), 0))],
  ['with a page in the middle overwritten', (file) => writeFileSync(file, overwritten(readFileSync(file), 8192))],
]

function overwritten(bytes: Buffer, from: number): Buffer {
  return bytes.fill(0x5a, from, from + 4096)
}

describe('a restore', () => {
  it.each(DAMAGES)(
    '[A8] given a journal %s, when restored, then the copy is in its place, proved, with a new course',
    async (_what, damage) => {
      await shopAt({ copied: 30, journal: 30 })
      const before = await whole()
      damage(shop.file)
      const after = await restored()
      expect(after).toMatchObject({ seq: 30, hash: before.hash, journalId: before.journalId })
      expect(after.course).not.toBe(before.course)
      // What was there is kept, and the shop opens.
      if (existsSync(`${shop.file}-end`)) throw new Error('the mark of the broken file stayed behind')
      expect(shop.openJournal().lastSeq()).toBe(30)
      shop.journal.close()
    },
  )

  it('[A9] given a broken journal with good entries after the copy’s last, when restored, then they are carried over and it is said', async () => {
    await shopAt({ copied: 30, journal: 40 })
    const before = await whole()
    spoil(`UPDATE entries SET entry = 'x' WHERE seq = 10`)
    const bytes = readFileSync(shop.file)
    const after = await restored()
    expect(after).toMatchObject({ seq: 40, hash: before.hash })
    expect(said.join('\n')).toMatch(/up to entry 30 of 2026-11-\d\d, \d+:\d\d [ap]m/)
    expect(said.join('\n')).toContain('has 10 entries after that which are good: they are carried over')
    expect(said.join('\n')).toContain('nothing is missing')
    shop.openJournal()
    expect(shop.journal.answerOf(refusedAt('refused00001', '6:00').commandId)).toMatchObject({ kind: 'refused' })
    shop.journal.close()
    const [aside = ''] = readdirSync(shop.folder).filter((name) => name.startsWith('set-aside-'))
    expect(readFileSync(join(shop.folder, aside, 'journal.sqlite')), 'the broken file is kept as it was').toEqual(bytes)
  })

  it('[A9] given an entry that is not good among them, when restored, then it ends there and the rest is told as missing', async () => {
    await shopAt({ copied: 30, journal: 40 })
    spoil(`UPDATE entries SET entry = replace(entry, '"recordedAtMs":1', '"recordedAtMs":2') WHERE seq = 36`)
    expect(await restored()).toMatchObject({ seq: 35 })
    expect(said.join('\n')).toContain('has 5 entries after that')
    expect(said.join('\n')).toContain('had 5 entries more that cannot be read')
  })

  it('[A9] given --only, when restored, then nothing is carried over', async () => {
    await shopAt({ copied: 30, journal: 40 })
    expect(await restored({ isOnly: true })).toMatchObject({ seq: 30 })
  })

  it('[A10] given copies of which the newest are bad, when restored, then the newest good one is taken and each bad one told', async () => {
    await shopAt({ copied: 30, journal: 30 })
    await backup(['--shop', shop.folder, '--to', shop.inCopies('2026-11-20.sqlite')], () => undefined)
    await backup(['--shop', shop.folder, '--to', shop.inCopies('2026-11-25.sqlite')], () => undefined)
    for (const name of ['journal.sqlite', '2026-11-25.sqlite'])
      writeFileSync(shop.inCopies(name), overwritten(readFileSync(shop.inCopies(name)), 8192))
    rmSync(shop.file)
    expect(await restored()).toMatchObject({ seq: 30 })
    expect(said[0]).toContain('journal.sqlite will not do: ')
    expect(said[1]).toContain('2026-11-25.sqlite will not do: ')
    expect(said[2]).toContain('2026-11-20.sqlite is good')
  })

  it('[A10] given no good copy, when restored, then nothing is touched', async () => {
    await shopAt({ copied: 30, journal: 30 })
    for (const file of [shop.inCopies('journal.sqlite'), shop.file])
      writeFileSync(file, overwritten(readFileSync(file), 4096))
    const bytes = readFileSync(shop.file)
    await expect(restored()).rejects.toThrow(/There is no good copy in .*; nothing was changed/)
    expect(readFileSync(shop.file)).toEqual(bytes)
    expect(readdirSync(shop.folder).filter((name) => name.includes('set-aside'))).toEqual([])
  })

  it('[A11] given a stop at any step, when run again, then all is well', async () => {
    const steps: PutBackStep[] = ['copied', 'carried', 'verified', 'ready', 'log aside', 'aside', 'in place']
    for (const stopAt of steps) {
      await shopAt({ copied: 10, journal: 12 })
      const before = await whole()
      spoil(`UPDATE entries SET entry = 'x' WHERE seq = 5`)
      const stopped = (step: PutBackStep) => {
        if (step === stopAt) throw new Error('the plug was pulled')
      }
      await expect(restored({ onStep: stopped }), stopAt).rejects.toThrow('the plug was pulled')
      const isReady = steps.indexOf(stopAt) >= 3 && stopAt !== 'in place'
      const start = () => refuseHalfPutBack(shop.folder, shop.copies)
      if (isReady) expect(start, stopAt).toThrow(/was cut short\. Run it again/)
      else expect(start, stopAt).not.toThrow()
      expect(await restored(), stopAt).toMatchObject({ seq: 12, hash: before.hash })
      expect(start).not.toThrow()
      const left = readdirSync(shop.folder).filter((name) => /restor|carrying/.test(name))
      expect(left, stopAt).toEqual([])
    }
  })

  it('[A12] given a server that runs on the folder, when restored, then it is refused; a good journal stays as it is', async () => {
    await shopAt({ copied: 10, journal: 10 })
    const bytes = readFileSync(shop.file)
    const taken = takeFolder(shop.sqlite, shop.folder)
    await expect(restore(['--shop', shop.folder], () => undefined)).rejects.toThrow('Another server is running on')
    taken.release()
    await restore(['--shop', shop.folder], (line) => said.push(line))
    expect(said.join()).toContain('is good, from end to end. Nothing was changed')
    expect(readFileSync(shop.file)).toEqual(bytes)
  })

  it('[A13] given copies and no journal, when a server starts, then no new shop is begun in its place', async () => {
    await shopAt({ copied: 10, journal: 10 })
    rmSync(shop.file)
    expect(() => refuseHalfPutBack(shop.folder, shop.copies)).toThrow(
      /holds a copy of one\. Put it back: npm run restore/,
    )
    rmSync(shop.copies, { recursive: true })
    expect(() => refuseHalfPutBack(shop.folder, shop.copies)).not.toThrow()
  })

  it('[A14] given a list of devices that is lost, when restored, then the copy of it is put back; a whole one stays', async () => {
    await shopAt({ copied: 10, journal: 10 })
    const list = (file: string, id: string) => {
      const db = new shop.sqlite.DatabaseSync(file)
      db.exec(`CREATE TABLE IF NOT EXISTS devices (id TEXT); INSERT INTO devices VALUES ('${id}')`)
      db.close()
    }
    const ids = () => {
      const db = new shop.sqlite.DatabaseSync(join(shop.folder, 'devices.sqlite'), { readOnly: true })
      return db
        .prepare('SELECT id FROM devices')
        .all()
        .map(({ id }) => id)
    }
    list(shop.inCopies('devices.sqlite'), 'copied')
    list(join(shop.folder, 'devices.sqlite'), 'newer')
    rmSync(shop.file)
    await restored()
    expect(ids()).toEqual(['newer'])
    writeFileSync(join(shop.folder, 'devices.sqlite'), 'nothing')
    rmSync(shop.file)
    await restored()
    expect(ids()).toEqual(['copied'])
  })
})

describe('a backup', () => {
  it('[A15] given a shop that is open, when backed up, then the file is whole, of its own, and never over another', async () => {
    await shopAt({ copied: 10, journal: 20 })
    shop.openJournal()
    const file = join(shop.copies, 'mine.sqlite')
    await backup(['--shop', shop.folder, '--to', file], (line) => said.push(line))
    expect(await whole(file)).toMatchObject({ seq: 20, hash: (await whole()).hash })
    expect(said[0]).toContain('up to entry 20')
    await expect(backup(['--shop', shop.folder, '--to', file], () => undefined)).rejects.toThrow('is there already')
    await expect(backup(['--shop', join(shop.folder, 'none')], () => undefined)).rejects.toThrow(
      'There is no journal in',
    )
    shop.journal.close()
  })

  it('[A15] given a shop whose journal is damaged, when backed up, then nothing is kept and it is told', async () => {
    await shopAt({ copied: 10, journal: 20 })
    spoil(`UPDATE entries SET entry = 'x' WHERE seq = 15`)
    const file = join(shop.copies, 'mine.sqlite')
    await expect(backup(['--shop', shop.folder, '--to', file], () => undefined)).rejects.toThrow(
      /is not good and was not kept: Entry 15/,
    )
    expect(readdirSync(shop.copies).filter((name) => name.startsWith('mine'))).toEqual([])
  })

  it.each([
    [
      { seq: 12345, lastAtMs: Date.parse('2026-11-26T12:42:00Z'), zone: 'America/Chicago' },
      'entry 12,345 of 2026-11-26, 6:42 am',
    ],
    [
      { seq: 7, lastAtMs: Date.parse('2026-07-01T03:05:00Z'), zone: 'America/Chicago' },
      'entry 7 of 2026-06-30, 10:05 pm',
    ],
    [{ seq: 0, lastAtMs: null, zone: 'UTC' }, 'its beginning, without an entry'],
  ])('[A15] given %o, when told, then in the shop’s time', (copy, told) => {
    expect(upTo(copy)).toBe(told)
  })
})
