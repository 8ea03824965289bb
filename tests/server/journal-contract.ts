import { afterEach, describe, expect, it } from 'vitest'
import type { Journal, Snapshot } from '../../server/journal/journal.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { commandId } from '../../shared-core/ids.ts'
import { at } from '../core/support/make.ts'
import { refusedAt, setUpEntries, someEntries } from './support/made-entries.ts'

/** A disk that outlives its journals. */
export interface JournalDisk {
  open(): Promise<Journal>
}

/** What every journal must do, whatever it is kept on. */
export function journalContract(name: string, makeDisk: () => JournalDisk): void {
  describe(`the contract of journals: ${name}`, () => {
    const opened: Journal[] = []
    afterEach(() => {
      for (const journal of opened.splice(0)) journal.close()
    })
    const open = async (disk: JournalDisk) => {
      const journal = await disk.open()
      opened.push(journal)
      return journal
    }
    /** Closed and opened again, as by a restart. */
    const reopen = async (disk: JournalDisk) => {
      for (const journal of opened.splice(0)) journal.close()
      return open(disk)
    }
    /** The journal that is open, then the same one after a restart. */
    async function* nowAndAfterRestart(disk: JournalDisk) {
      const [now] = opened
      if (now === undefined) throw new Error('no journal is open')
      yield now
      yield await reopen(disk)
    }

    it('[J1] given a new disk, when opened, then the journal is empty and has an id that stays', async () => {
      const disk = makeDisk()
      const journal = await open(disk)
      const { journalId } = journal
      expect([...journal.entriesAfter(0)]).toEqual([])
      expect(journal.lastSeq()).toBe(0)
      expect(journal.newestSnapshot(FOLD_VERSION)).toBeNull()
      expect(journalId.length).toBeGreaterThanOrEqual(8)
      expect((await reopen(disk)).journalId).toBe(journalId)
      expect((await open(makeDisk())).journalId).not.toBe(journalId)
    })

    it('[J2] given groups appended, when opened again, then every entry is there as it was, in order', async () => {
      const disk = makeDisk()
      const journal = await open(disk)
      const entries = someEntries(7)
      await journal.append({ entries: entries.slice(0, 3), refusals: [] })
      await journal.append({ entries: entries.slice(3), refusals: [] })
      for await (const one of nowAndAfterRestart(disk)) {
        expect(one.lastSeq()).toBe(7)
        expect([...one.entriesAfter(0)]).toEqual(entries)
        expect([...one.entriesAfter(5)]).toEqual(entries.slice(5))
        expect([...one.entriesAfter(1, 2)]).toEqual(entries.slice(1, 3))
        expect([...one.entriesAfter(7)]).toEqual([])
      }
    })

    it.each([
      ['leaves out a seq', () => someEntries(5).slice(4)],
      ['repeats a seq', () => [...someEntries(3, 'again').slice(2), ...someEntries(5).slice(3)]],
      [
        'takes a known command again',
        () => [
          ...someEntries(4).slice(3),
          ...someEntries(5, 'entry')
            .slice(4)
            .map((entry) => ({ ...entry, commandId: commandId('entry000002') })),
        ],
      ],
      [
        'takes one command twice',
        () =>
          someEntries(5)
            .slice(3)
            .map((entry) => ({ ...entry, commandId: commandId('twice000001') })),
      ],
    ])(
      '[J3] given three entries, when a group %s, then it is thrown out and nothing of it is kept',
      async (_what, made) => {
        const disk = makeDisk()
        const journal = await open(disk)
        await journal.append({ entries: someEntries(3), refusals: [] })
        await expect(
          journal.append({ entries: made(), refusals: [refusedAt('refused0001', '6:00')] }),
        ).rejects.toThrow()
        for await (const one of nowAndAfterRestart(disk)) {
          expect(one.lastSeq()).toBe(3)
          expect([...one.entriesAfter(0)]).toEqual(someEntries(3))
          expect(one.answerOf(commandId('refused0001'))).toBeNull()
        }
        await opened[0]?.append({ entries: someEntries(5).slice(3), refusals: [] })
        expect(opened[0]?.lastSeq()).toBe(5)
      },
    )

    it('[J4] given a command taken and one refused, when asked, then the first answers are known, after a restart too', async () => {
      const disk = makeDisk()
      const journal = await open(disk)
      await journal.append({ entries: someEntries(2), refusals: [refusedAt('refused0001', '6:00')] })
      await journal.append({ entries: [], refusals: [refusedAt('refused0002', '6:01')] })
      for await (const one of nowAndAfterRestart(disk)) {
        expect(one.answerOf(commandId('entry000002'))).toEqual({ kind: 'taken', seq: 2 })
        expect(one.answerOf(commandId('refused0001'))).toEqual(refusedAt('refused0001', '6:00').answer)
        expect(one.answerOf(commandId('refused0002'))).toEqual(refusedAt('refused0002', '6:01').answer)
        expect(one.answerOf(commandId('never000001'))).toBeNull()
      }
    })

    it('[J4] given a command refused, when it is refused once more, then the group is thrown out', async () => {
      const journal = await open(makeDisk())
      await journal.append({ entries: [], refusals: [refusedAt('refused0001', '6:00')] })
      const again = { entries: someEntries(1), refusals: [refusedAt('refused0001', '6:05')] }
      await expect(journal.append(again)).rejects.toThrow()
      expect(journal.lastSeq()).toBe(0)
    })

    it('[J5] given old refusals, when pruned, then only those go; what was taken is known for ever', async () => {
      const journal = await open(makeDisk())
      const refusals = [refusedAt('refused0001', '6:00'), refusedAt('refused0002', '6:01')]
      await journal.append({ entries: someEntries(1), refusals })
      expect(journal.pruneRefusals(at('6:01'))).toBe(1)
      expect(journal.pruneRefusals(at('6:01'))).toBe(0)
      expect(journal.answerOf(commandId('refused0001'))).toBeNull()
      expect(journal.answerOf(commandId('refused0002'))).not.toBeNull()
      expect(journal.pruneRefusals(at('23:59'))).toBe(1)
      expect(journal.answerOf(commandId('entry000001'))).toEqual({ kind: 'taken', seq: 1 })
    })

    it('[U10] given entries of all kinds, when those of the set-up are asked for, then these alone come, in order', async () => {
      const disk = makeDisk()
      const journal = await open(disk)
      const entries = setUpEntries()
      await journal.append({ entries, refusals: [] })
      for await (const one of nowAndAfterRestart(disk)) {
        const found = [...one.setUpEntries()]
        expect(found).toEqual(entries.filter(({ events }) => events.some(({ type }) => type.startsWith('setUp'))))
        expect(found.map(({ told }) => told.type)).toEqual([
          'changeSetUp',
          'changeSetUp',
          'sell',
          'changeSetUp',
          'dropSetUp',
        ])
      }
    })

    it('[J6] given three snapshots, when opened again, then the newest two are kept, each for its fold only', async () => {
      const disk = makeDisk()
      const journal = await open(disk)
      await journal.append({ entries: someEntries(5), refusals: [] })
      const snapshots = [2, 4, 5].map(
        (seq, n): Snapshot => ({ seq, foldVersion: n === 2 ? 2 : 1, json: `{"seq":${seq}}`, hash: `hash ${seq}` }),
      )
      for (const snapshot of snapshots) journal.saveSnapshot(snapshot)
      for await (const one of nowAndAfterRestart(disk)) {
        expect(one.newestSnapshot(1)).toEqual(snapshots[1])
        expect(one.newestSnapshot(2)).toEqual(snapshots[2])
        expect(one.newestSnapshot(3)).toBeNull()
      }
      opened[0]?.saveSnapshot({ seq: 6, foldVersion: 2, json: '{}', hash: 'hash 6' })
      expect(opened[0]?.newestSnapshot(1)).toBeNull()
      expect(opened[0]?.newestSnapshot(2)?.seq).toBe(6)
    })
  })
}
