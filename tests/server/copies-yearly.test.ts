import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { putBack } from '../../server/commands/restore.ts'
import { compact } from '../../server/journal/compact.ts'
import { CopiedShop, MORNING } from './support/copied-shop.ts'

const NAME = 'entries-to-2025.sqlite'
const DAY_MS = 86_400_000

let shop: CopiedShop
const said: string[] = []
afterEach(async () => {
  said.length = 0
  await shop.stop().catch(() => undefined)
})

function compactTo(lastSeq: number): void {
  compact(shop.sqlite, { file: shop.file, lastSeq, name: NAME, onStep: () => undefined })
}

/** Forty entries, those up to 20 in a yearly archive, and a copy of it all; the server goes on. */
async function shopWithYearly(): Promise<void> {
  shop = await CopiedShop.made()
  await shop.append(40)
  await shop.stop()
  compactTo(20)
  shop.openJournal()
  await shop.makeKeeper().tick()
}

async function restored(from = shop.copies) {
  const { sqlite, folder, nowMs } = shop
  await putBack({ sqlite, folder, nowMs }, { from, isOnly: false, say: (line) => said.push(line) })
  return whole()
}

async function whole(file = shop.file) {
  const verified = await shop.verify(file)
  if (!verified.ok) throw new Error(verified.why)
  return verified
}

/** A digit of the last entry in a file, as a drive would change it. */
function spoil(file: string): void {
  const bytes = readFileSync(file)
  const at = bytes.lastIndexOf('"recordedAtMs":') + 20
  bytes[at] = bytes[at] === 0x31 ? 0x32 : 0x31
  writeFileSync(file, bytes)
}

const asides = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('set-aside-'))

describe('copies of a journal with a yearly archive', () => {
  it('[A26] given a shop whose folder is gone, when restored, then all of it is there, the archived commands’ answers too', async () => {
    await shopWithYearly()
    expect(shop.keeper.standing()).toMatchObject({ trouble: null, copy: { seq: 40 } })
    const before = await whole()
    await shop.stop()
    for (const name of readdirSync(shop.folder)) rmSync(join(shop.folder, name))
    expect(await restored()).toMatchObject({ seq: 40, hash: before.hash })
    const journal = shop.openJournal()
    for (const { commandId, seq } of MORNING.slice(0, 40))
      expect(journal.answerOf(commandId)).toEqual({ kind: 'taken', seq })
  })

  it('[A26] given a yearly archive that is as the copy says, when restored, then it stays where it is', async () => {
    await shopWithYearly()
    await shop.stop()
    const bytes = readFileSync(join(shop.folder, NAME))
    rmSync(shop.file)
    await restored()
    expect(readFileSync(join(shop.folder, NAME))).toEqual(bytes)
    const kept = asides(shop.folder).flatMap((name) => readdirSync(join(shop.folder, name)))
    expect(kept).not.toContain(NAME)
    // One that is not goes aside, and the copy's takes its place.
    spoil(join(shop.folder, NAME))
    await restored()
    expect(asides(shop.folder).flatMap((name) => readdirSync(join(shop.folder, name)))).toContain(NAME)
  })

  it('[A26] given a copy from before entries were archived, when restored, then these are carried over from the archive', async () => {
    shop = await CopiedShop.made()
    await shop.append(10)
    await shop.stop()
    shop.openJournal()
    await shop.append(40)
    shop.journal.close()
    compactTo(20)
    const db = new shop.sqlite.DatabaseSync(shop.file)
    db.exec("UPDATE entries SET entry = 'x' WHERE seq = 40")
    db.close()
    expect(await restored()).toMatchObject({ seq: 39 })
    expect(said.join('\n')).toContain('has 29 entries after that which are good')
    expect(said.join('\n')).toContain('had 1 entry more that cannot be read')
  })

  it('[A27] given a copy of the archive that the drive has spoilt, when the day’s archive is made, then it is copied anew', async () => {
    await shopWithYearly()
    await shop.keeper.archive('2026-11-26')
    spoil(shop.inCopies(NAME))
    shop.nowMs += DAY_MS
    await shop.keeper.archive('2026-11-27')
    expect(shop.keeper.standing()).toMatchObject({ trouble: null, archives: [{ seq: 40 }, { seq: 40 }] })
    expect(await whole(shop.inCopies('journal.sqlite'))).toMatchObject({ seq: 40 })
    expect(asides(shop.copies)).toEqual([expect.stringContaining(NAME)])
  })

  it('[A27] given the journal’s own archive spoilt, when the day’s archive is made, then it is told and the copy of it stays', async () => {
    await shopWithYearly()
    const bytes = readFileSync(shop.inCopies(NAME))
    spoil(join(shop.folder, NAME))
    await shop.keeper.archive('2026-11-26')
    expect(shop.keeper.standing()).toMatchObject({ trouble: null })
    expect(readFileSync(shop.inCopies(NAME))).toEqual(bytes)
    rmSync(shop.inCopies(NAME))
    await shop.keeper.archive('2026-11-27')
    expect(shop.keeper.standing().trouble).toMatch(/the archive .*entries-to-2025\.sqlite is not as it was written/)
  })

  it('[A27] given an archive of the same name that ends elsewhere, when a copy is begun, then it is moved aside and the copy is good', async () => {
    shop = await CopiedShop.made()
    await shop.append(40)
    await shop.stop()
    const older = readFileSync(shop.file)
    compactTo(20)
    shop.openJournal()
    await shop.makeKeeper().tick()
    await shop.stop()
    // Put back from before, then compacted by another day.
    for (const end of ['', '-wal', '-shm', '-end']) rmSync(`${shop.file}${end}`, { force: true })
    writeFileSync(shop.file, older)
    compactTo(25)
    shop.openJournal()
    await shop.makeKeeper().tick()
    expect(shop.keeper.standing()).toMatchObject({ trouble: null, copy: { seq: 40 } })
    expect(await whole(shop.inCopies('journal.sqlite'))).toMatchObject({ seq: 40 })
  })
})
