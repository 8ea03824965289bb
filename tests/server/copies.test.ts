import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { dirname } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { copiesReasons, NO_COPIES } from '../../server/copies/copies.ts'
import { copiesFolderOf, isSameDrive, noteCopiesFolder, noteOwnDrive } from '../../server/copies/copy-folder.ts'
import { copyTrouble } from '../../server/copies/copy-words.ts'
import { giveNewCourse } from '../../server/journal/give-new-course.ts'
import { epochMs } from '../../shared-core/units.ts'
import { CopiedShop } from './support/copied-shop.ts'
import { refusedAt } from './support/made-entries.ts'

const MINUTE_MS = 60_000
const DAY_MS = 86_400_000

let shop: CopiedShop
const opened: CopiedShop[] = []
afterEach(async () => {
  for (const one of opened.splice(0)) await one.stop().catch(() => undefined)
})

async function shopWith(untilSeq: number): Promise<CopiedShop> {
  shop = await CopiedShop.made()
  opened.push(shop)
  await shop.append(untilSeq)
  return shop
}

/** What is in the running copy, as a reader of its own finds it. */
async function inCopy() {
  const verified = await shop.verify(shop.inCopies('journal.sqlite'))
  return verified.ok ? { seq: verified.seq, hash: verified.hash } : verified.why
}

const inJournal = async () => {
  const verified = await shop.verify(shop.file)
  return verified.ok ? { seq: verified.seq, hash: verified.hash } : verified.why
}

describe('the running copy', () => {
  it('[A1] given a shop with entries, when its copy is begun, then it is whole, and follows what comes', async () => {
    await shopWith(20)
    await shop.keeper.tick()
    expect(shop.keeper.standing()).toMatchObject({ copy: { seq: 20, atMs: shop.nowMs }, trouble: null })
    expect(await inCopy()).toEqual(await inJournal())
    await shop.append(50, [refusedAt('refused00001', '6:00'), refusedAt('refused00002', '6:00')])
    await shop.keeper.tick()
    expect(shop.keeper.standing().copy?.seq).toBe(50)
    expect(await inCopy()).toEqual(await inJournal())
    // Refusals are copied and forgotten with the journal's own.
    await shop.append(50, [refusedAt('refused00003', '6:30')])
    shop.journal.pruneRefusals(epochMs(refusedAt('refused00001', '6:00').recordedAtMs + 1))
    await shop.keeper.tick()
    expect(await inCopy()).toEqual(await inJournal())
    expect((await inCopy()) as object).toMatchObject({ seq: 50 })
  })

  it('[A1] given a copy that stands still, when a server starts again, then it goes on from there in the same file', async () => {
    await shopWith(20)
    await shop.stop()
    const { ino } = statSync(shop.inCopies('journal.sqlite'))
    shop.openJournal()
    await shop.append(30)
    await shop.makeKeeper().tick()
    expect(statSync(shop.inCopies('journal.sqlite')).ino).toBe(ino)
    expect(await inCopy()).toEqual(await inJournal())
  })

  it('[A2] given a copy of another journal, when a copy is begun, then it is moved aside and kept as it was', async () => {
    await shopWith(20)
    await shop.stop()
    const other = shop
    const bytes = readFileSync(other.inCopies('journal.sqlite'))
    await shopWith(10)
    rmSync(shop.copies, { recursive: true, force: true })
    renameSync(other.copies, shop.copies)
    await shop.keeper.tick()
    expect(await inCopy()).toEqual(await inJournal())
    const [aside = ''] = readdirSync(shop.copies).filter((name) => name.startsWith('set-aside-'))
    expect(readFileSync(shop.inCopies(aside))).toEqual(bytes)
  })

  it('[A2] given a copy with entries that the journal lost, when a server starts, then these are kept', async () => {
    await shopWith(20)
    await shop.stop()
    const older = readFileSync(shop.file)
    shop.openJournal()
    await shop.append(25)
    await shop.makeKeeper().tick()
    await shop.stop()
    for (const end of ['-wal', '-shm', '-end']) rmSync(`${shop.file}${end}`, { force: true })
    writeFileSync(shop.file, older)
    shop.openJournal()
    await shop.makeKeeper().tick()
    expect(await inCopy()).toMatchObject({ seq: 20 })
    const [aside = ''] = readdirSync(shop.copies).filter((name) => name.startsWith('set-aside-'))
    expect(await shop.verify(shop.inCopies(aside))).toMatchObject({ ok: true, seq: 25 })
  })

  it('[A2] given a journal that was put back from its copy, when its new course begins, then nothing is kept twice', async () => {
    await shopWith(20)
    await shop.stop()
    giveNewCourse(shop.sqlite, shop.file)
    shop.openJournal()
    await shop.makeKeeper().tick()
    expect(shop.keeper.standing().trouble).toBeNull()
    expect(await inCopy()).toEqual(await inJournal())
    expect(readdirSync(shop.copies).filter((name) => name.startsWith('set-aside-'))).toEqual([])
  })

  it('[A3] given a folder that takes nothing, when it is back, then the shop went on and the copy catches up', async () => {
    await shopWith(20)
    await shop.keeper.tick()
    renameSync(shop.copies, `${shop.copies}-gone`)
    await shop.append(30)
    await shop.keeper.tick()
    expect(shop.keeper.standing()).toMatchObject({ copy: { seq: 20 }, trouble: expect.stringContaining('is gone') })
    // Not every second: the drive may hang at each.
    renameSync(`${shop.copies}-gone`, shop.copies)
    await shop.keeper.tick()
    expect(shop.keeper.standing().trouble).not.toBeNull()
    shop.nowMs += MINUTE_MS
    await shop.keeper.tick()
    expect(shop.keeper.standing()).toMatchObject({ copy: { seq: 30 }, trouble: null })
    expect(await inCopy()).toEqual(await inJournal())
  })

  it('[A3] given a drive that is not plugged in, when a copy is begun, then no folder is made in its place', async () => {
    await shopWith(5)
    renameSync(dirname(shop.folder), `${dirname(shop.folder)}-elsewhere`)
    const elsewhere = `${dirname(shop.folder)}-elsewhere`
    await shop.keeper.tick()
    expect(shop.keeper.standing().trouble).toMatch(/is not there\. Is its drive plugged in\?/)
    expect(existsSync(shop.copies)).toBe(false)
    renameSync(elsewhere, dirname(shop.folder))
  })

  it('[A28] given copies on a drive of their own, when it is missing after a restart, then nothing is written in its place and it is told', async () => {
    await shopWith(10)
    const { folder, copies } = shop
    // Linux has a drive of its own there, in memory; elsewhere it is only said of a folder that it was on one.
    const isReal = existsSync('/dev/shm') && !isSameDrive('/dev/shm', folder)
    const drive = mkdtempSync(isReal ? '/dev/shm/boilboard-copies-' : `${copies}-drive-`)
    try {
      // A link stands for the place where a drive is mounted.
      symlinkSync(drive, copies)
      noteCopiesFolder(folder, copies)
      await shop.keeper.tick()
      expect(shop.keeper.standing()).toMatchObject({ isSameDrive: !isReal, trouble: null })
      if (!isReal) noteOwnDrive(folder, copies)
      await shop.stop()
      rmSync(copies)
      for (const left of [() => undefined, () => mkdirSync(copies)]) {
        left()
        shop.openJournal()
        noteCopiesFolder(folder, copies)
        await shop.makeKeeper().tick()
        expect(shop.keeper.standing().trouble).toContain('was on a drive of its own. Is that plugged in?')
        await shop.stop()
      }
      expect([copiesFolderOf(folder, null), readdirSync(copies)]).toEqual([copies, []])
      // Another folder is the owner's own choice.
      shop.openJournal()
      noteCopiesFolder(folder, `${copies}-here`)
      Object.assign(shop, { copies: `${copies}-here` })
      await shop.makeKeeper().tick()
      expect(shop.keeper.standing()).toMatchObject({ isSameDrive: true, trouble: null })
    } finally {
      rmSync(drive, { recursive: true })
    }
  })

  it('[A29] given a shop’s folder for the copies, its own or another’s, when a copy is begun, then nothing in it is touched', async () => {
    await shopWith(20)
    const other = shop
    await other.append(22)
    await shopWith(10)
    for (const folder of [other.folder, shop.folder]) {
      Object.assign(shop, { copies: folder })
      const before = readdirSync(folder).sort()
      await shop.makeKeeper().tick()
      expect(shop.keeper.standing().trouble).toContain("is a shop's own folder. Give the copies one of their own")
      expect(readdirSync(folder).sort()).toEqual(before)
    }
  })

  it.each([
    [Object.assign(new Error('x'), { code: 'ENOSPC' }), 'the disk of /copies is full'],
    [new Error('database or disk is full'), 'the disk of /copies is full'],
    [new Error('attempt to write a readonly database'), 'may not write to /copies'],
    [Object.assign(new Error('x'), { code: 'EROFS' }), 'may not write to /copies'],
    [new Error('disk I/O error'), 'the disk of /copies does not write'],
    [new Error('unable to open database file'), '/copies cannot be opened'],
  ])('[A3] given %s, when it is told, then in words', (error, words) => {
    expect(copyTrouble(error, '/copies')).toContain(words)
  })

  it('[A4] given an entry that was damaged on the disk, when it is copied, then the copy stays good and it is told', async () => {
    await shopWith(20)
    await shop.keeper.tick()
    await shop.append(22)
    const db = new shop.sqlite.DatabaseSync(shop.file)
    db.exec(`UPDATE entries SET entry = replace(entry, '"seq":21', '"seq":91') WHERE seq = 21`)
    db.close()
    await shop.keeper.tick()
    expect(shop.keeper.standing().trouble).toContain('entry 21 of the journal is not as it was written')
    expect(await inCopy()).toMatchObject({ seq: 20 })
  })

  it('[A5] given a list of devices, when it changes, then it is copied within a minute', async () => {
    await shopWith(5)
    const list = new shop.sqlite.DatabaseSync(`${shop.folder}/devices.sqlite`)
    list.exec("PRAGMA journal_mode = WAL; CREATE TABLE devices (id TEXT); INSERT INTO devices VALUES ('one')")
    const copied = () => {
      const db = new shop.sqlite.DatabaseSync(shop.inCopies('devices.sqlite'), { readOnly: true })
      const ids = db.prepare('SELECT id FROM devices').all()
      db.close()
      return ids.map(({ id }) => id)
    }
    await shop.keeper.tick()
    expect(copied()).toEqual(['one'])
    list.exec("INSERT INTO devices VALUES ('two')")
    shop.nowMs += MINUTE_MS
    await shop.keeper.tick()
    expect(copied()).toEqual(['one', 'two'])
    list.close()
  })

  it.each([
    ['in the middle', (bytes: Buffer) => bytes.fill(0x5a, 20 * 4096, 40 * 4096)],
    ['from its beginning', (bytes: Buffer) => bytes.fill(0x5a)],
  ])(
    '[Q72] given past sales spoilt %s, when copied, then their good copy stays, and the journal’s goes on',
    async (_where, spoil) => {
      await shopWith(5)
      const file = `${shop.folder}/sales.sqlite`
      const sales = new shop.sqlite.DatabaseSync(file)
      sales.exec(`CREATE TABLE rows (id INTEGER PRIMARY KEY, text TEXT);
      WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 5000)
      INSERT INTO rows SELECT i, printf('%100d', i) FROM n`)
      sales.close()
      await shop.keeper.tick()
      await shop.keeper.close()
      const good = readFileSync(shop.inCopies('sales.sqlite'))
      writeFileSync(file, spoil(readFileSync(file)))
      shop.makeKeeper()
      await shop.append(20)
      await shop.keeper.tick()
      expect(shop.keeper.standing()).toMatchObject({ copy: { seq: 20 }, trouble: null })
      await shop.keeper.archive('2026-11-26')
      expect(shop.keeper.standing().archives).toHaveLength(1)
      expect(readFileSync(shop.inCopies('sales.sqlite')).equals(good)).toBe(true)
    },
  )

  it('[A6] given a folder where another server keeps its copies, when a copy is begun, then it is left alone', async () => {
    await shopWith(20)
    await shop.keeper.tick()
    const first = shop
    await shopWith(10)
    Object.assign(shop, { copies: first.copies })
    await shop.makeKeeper().tick()
    expect(shop.keeper.standing().trouble).toContain('Another server is running on')
    await first.append(30)
    await first.keeper.tick()
    expect(first.keeper.standing()).toMatchObject({ copy: { seq: 30 }, trouble: null })
  })
})

describe('why somebody should look at the copies', () => {
  const now = { nowMs: 10 * DAY_MS, startedAtMs: 10 * DAY_MS - 5 * MINUTE_MS, freeMb: 10_000 }
  const archive = { file: 'a', atMs: epochMs(now.nowMs - DAY_MS), bytes: 1, seq: 1, hash: '' }
  const well = { ...NO_COPIES, copy: { seq: 1, atMs: epochMs(now.nowMs - 1_000) }, archives: [archive] }
  it.each([
    ['all well', well, {}, []],
    ['just begun', NO_COPIES, {}, []],
    ['none after ten minutes', NO_COPIES, { startedAtMs: now.nowMs - 11 * MINUTE_MS }, ['no-copy']],
    [
      'a copy of eleven minutes ago',
      { ...well, copy: { seq: 1, atMs: epochMs(now.nowMs - 11 * MINUTE_MS) } },
      {},
      ['copy-old'],
    ],
    ['trouble', { ...well, trouble: 'the disk is full.' }, {}, ['copy-trouble']],
    [
      'an archive of two days ago',
      { ...well, archives: [{ ...archive, atMs: epochMs(now.nowMs - 2 * DAY_MS) }] },
      {},
      ['no-archive'],
    ],
    ['no archive in two days', { ...well, archives: [] }, { startedAtMs: now.nowMs - 2 * DAY_MS }, ['no-archive']],
    ['a nearly full disk', well, { freeMb: 499 }, ['copies-disk-nearly-full']],
    ['a disk of its own that cannot be asked', well, { freeMb: null }, []],
  ])('[A7] given %s, when asked, then a warning says so', (_what, standing, change, codes) => {
    const reasons = copiesReasons(standing, { ...now, ...change })
    expect(reasons.map(({ code }) => code)).toEqual(codes)
    expect(reasons.every(({ level }) => level === 'warning')).toBe(true)
  })
})
