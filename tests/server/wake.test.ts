import { describe, expect, it } from 'vitest'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { saveSnapshot, wake } from '../../server/shop/wake.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { drawnMorning } from './support/made-entries.ts'

const MORNING = drawnMorning(400, 5)

/** A journal that says how many rows a start has read. */
class ReadJournal extends MemoryJournal {
  rowsRead = 0

  override *entriesAfter(seq: number, most?: number): Iterable<Entry> {
    for (const entry of super.entriesAfter(seq, most)) {
      this.rowsRead += 1
      yield entry
    }
  }
}

async function journalOf(entries: readonly Entry[], snapshotsAt: readonly number[] = []) {
  const disk = new MemoryDisk('wake')
  const journal = new ReadJournal(disk)
  const state = emptyState()
  for (const entry of entries) {
    await journal.append({ entries: [entry], refusals: [] })
    applyEntry(state, entry)
    if (snapshotsAt.includes(entry.seq)) saveSnapshot(journal, state)
  }
  return { disk, journal, hash: hashState(state) }
}

describe('waking up', () => {
  it('[W1] given a snapshot and a tail, when woken, then the state is that of the whole fold and only the tail was read', async () => {
    const { journal, hash } = await journalOf(MORNING, [100, 390])
    const state = await wake(journal, () => {})
    expect(hashState(state)).toBe(hash)
    expect(journal.rowsRead).toBe(MORNING.length - 390)
  })

  it('[W1] given a new shop, when woken, then it is empty', async () => {
    const { journal } = await journalOf([])
    expect(await wake(journal, () => {})).toEqual(emptyState())
  })

  it.each([
    ['is no JSON', (disk: MemoryDisk) => spoil(disk, 390, { json: '{"seq":390' })],
    ['has another hash', (disk: MemoryDisk) => spoil(disk, 390, { hash: 'other' })],
  ])(
    '[W2] given a newest snapshot that %s, when woken, then the older one leads to the same state',
    async (_what, harm) => {
      const { disk, journal, hash } = await journalOf(MORNING, [100, 390])
      harm(disk)
      expect(hashState(await wake(journal, () => {}))).toBe(hash)
      expect(journal.rowsRead).toBe(MORNING.length - 100)
    },
  )

  it('[W2] given snapshots of another fold, when woken, then everything is folded anew and the share done is told', async () => {
    const { disk, journal, hash } = await journalOf(MORNING, [100, 390])
    disk.snapshots = disk.snapshots.map((one) => ({ ...one, foldVersion: one.foldVersion - 1 }))
    const shares: number[] = []
    expect(hashState(await wake(journal, (share) => shares.push(share), 100))).toBe(hash)
    expect(journal.rowsRead).toBe(MORNING.length)
    expect(shares).toEqual([0.25, 0.5, 0.75, 1])
  })

  it('[W3] given an entry that does not fit, when woken, then it is named and the start is given up', async () => {
    const outs = MORNING.findIndex((entry) => entry.told.type === 'out')
    const load = MORNING.findIndex((entry) => entry.told.type === 'load')
    expect(load).toBeLessThan(outs)
    const broken = MORNING.map((entry, index) => (index === load ? { ...entry, events: [] } : entry))
    const disk = new MemoryDisk('wake')
    const journal = new MemoryJournal(disk)
    await journal.append({ entries: broken, refusals: [] })
    await expect(wake(journal, () => {})).rejects.toThrow(/^Entry \d+ of the journal \(\w+, command \w+\) does not fit/)
  })

  it('[W3] given a snapshot from beyond the journal, when woken, then it is not believed', async () => {
    const { disk, journal } = await journalOf(MORNING, [100, 390])
    disk.entries.splice(200)
    expect((await wake(journal, () => {})).seq).toBe(200)
    expect(journal.rowsRead).toBe(100)
  })
})

function spoil(disk: MemoryDisk, seq: number, change: object): void {
  disk.snapshots = disk.snapshots.map((one) => (one.seq === seq ? { ...one, ...change } : one))
}
