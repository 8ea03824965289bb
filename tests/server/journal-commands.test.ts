import { readdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { compact } from '../../server/commands/compact.ts'
import { verify } from '../../server/commands/verify.ts'
import { STAYS_DAYS } from '../../server/journal/compact-policy.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { verifyJournal } from '../../server/journal/verify.ts'
import { takeFolder } from '../../server/shop/folder.ts'
import { saveSnapshot, wake } from '../../server/shop/wake.ts'
import { drawnMorning } from './support/made-entries.ts'
import { tempFolder } from './support/temp-folder.ts'

const sqlite = await loadSqlite()
const MORNING = drawnMorning(120, 6)
const LAST_MS = MORNING.at(-1)?.recordedAtMs ?? 0
const DAY_MS = 86_400_000

afterEach(() => {
  vi.useRealTimers()
})

async function shop(): Promise<string> {
  const file = join(tempFolder(), 'journal.sqlite')
  const journal = new SqliteJournal(sqlite, file, 'shop')
  await journal.append({ entries: MORNING, refusals: [] })
  saveSnapshot(journal, await wake(journal, () => undefined))
  journal.close()
  return file
}

/** What a command says at the terminal; rejects as it does. */
async function said(command: typeof verify, ...args: readonly string[]): Promise<string> {
  const lines: string[] = []
  await command(args, (line) => lines.push(line))
  return lines.join('\n')
}

const nextDay = new Date(LAST_MS + DAY_MS).toISOString().slice(0, 10)

describe('commands for the journal', () => {
  it('[J18] given a good journal and a bad one, when verified at the terminal, then it says so', async () => {
    const file = await shop()
    const verified = await verifyJournal(sqlite, file)
    expect(await said(verify, '--shop', dirname(file))).toContain('is good: 120 entries')
    expect(await said(verify, '--file', file)).toContain(verified.ok ? verified.hash : 'never')
    writeFileSync(file, 'text'.repeat(5_000))
    await expect(said(verify, '--shop', dirname(file))).rejects.toThrow('npm run restore')
    await expect(said(verify)).rejects.toThrow('Give --shop FOLDER or --file FILE')
  })

  it('[J22] given a journal whose entries are old, when compacted at the terminal, then the state stays and it says so', async () => {
    const file = await shop()
    const before = await verifyJournal(sqlite, file)
    vi.useFakeTimers({ toFake: ['Date'], now: LAST_MS + (STAYS_DAYS + 1) * DAY_MS })
    const words = await said(compact, '--shop', dirname(file), '--before', nextDay)
    expect(words).toMatch(/119 entries are in .*entries-to-.*\.sqlite/)
    expect(words).toContain('its state is the same')
    expect(await verifyJournal(sqlite, file)).toEqual(before)
    expect(await said(compact, '--shop', dirname(file), '--before', nextDay)).toContain('No entry is from before')
  })

  it('[J25] given entries younger than two months, or a server that runs, when compacted, then nothing is done', async () => {
    const file = await shop()
    vi.useFakeTimers({ toFake: ['Date'], now: LAST_MS + (STAYS_DAYS - 1) * DAY_MS })
    expect(await said(compact, '--shop', dirname(file), '--before', nextDay)).toContain('No entry is from before')
    expect(readdirSync(dirname(file)).filter((name) => name.startsWith('entries'))).toEqual([])
    const taken = takeFolder(sqlite, dirname(file))
    await expect(said(compact, '--shop', dirname(file), '--before', nextDay)).rejects.toThrow('Another server')
    taken.release()
    await expect(said(compact, '--shop', dirname(file), '--before', 'soon')).rejects.toThrow('--before is "soon"')
    await expect(said(compact, '--shop', tempFolder(), '--before', nextDay)).rejects.toThrow('no journal in')
  })
})
