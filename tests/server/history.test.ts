import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { DayStore } from '../../server/history/day-store.ts'
import { History } from '../../server/history/history.ts'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { localInstant } from '../../server/live/shop-clock.ts'
import { ASK_CODES } from '../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { dayFigures } from '../../shared-core/day/figures.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { fromJson } from '../../shared-core/day/state-json.ts'
import { dayOfText } from '../../shared-core/demand/day-text.ts'
import { doughId } from '../../shared-core/ids.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { epochMs } from '../../shared-core/units.ts'
import { anyAct } from '../core/support/any-act.ts'
import { at, lines } from '../core/support/make.ts'
import { decided } from '../core/support/play.ts'
import { record } from '../core/support/record.ts'
import { ALL_STATIONS, shopWith, table } from '../core/support/shop.ts'
import { someEntries } from './support/made-entries.ts'
import { tempFolder } from './support/temp-folder.ts'

const sqlite = await loadSqlite()

async function journalOf(entries: readonly Entry[], disk = new MemoryDisk('history-test')): Promise<MemoryJournal> {
  const journal = new MemoryJournal(disk)
  await journal.append({ entries, refusals: [] })
  return journal
}

function historyOf(journal: MemoryJournal, file = ':memory:'): History {
  return new History({ journal, sqlite, file, breathe: () => setImmediate() })
}

async function madeOf(entries: readonly Entry[], file = ':memory:') {
  const journal = await journalOf(entries)
  const history = historyOf(journal, file)
  await history.catchUp()
  return { journal, history }
}

/** A shop's set-up and a day of drawn acts that nobody closes. */
function openMorning(count: number, seed: number) {
  const day = record(emptyState())
  const changes = setUpChanges(null, shopWith({ stations: table(ALL_STATIONS) }))
  day.at('4:00', { type: 'changeSetUp', changes })
  day.at('4:05', {
    type: 'carryIn',
    doughId: doughId('plain'),
    varietyId: null,
    pieces: 90,
    stage: 'chill',
    sinceMs: null,
  })
  for (let drawn = 0; day.entries.length < count; drawn += 1) {
    const act = anyAct(day.state, seed * 1_000 + drawn)
    const when = { nowMs: epochMs(at('5:00') + drawn * 60_000), confirmed: ASK_CODES }
    const isOfADay = act.type !== 'closeDay' && act.type !== 'reopenDay'
    if (isOfADay && decided(day.state, act, when).kind === 'taken') day.at('5:00', act, when)
  }
  return day
}

const CLOSE = { type: 'closeDay', crewMinutes: 600 } as const
const YES = { confirmed: ASK_CODES }

/** That day with its close, and what a shop does after it. */
function closedMorning(seed: number): Entry[] {
  const day = openMorning(90, seed)
  day.at('15:00', CLOSE, YES)
  day.at('15:10', { type: 'writeNote', text: 'rye slow' })
  return day.entries
}

/** https://sqlite.org/pragma.html#pragma_page_size: 4,096 where nobody says otherwise. */
const SQLITE_PAGE_BYTES = 4_096

const lastOf = (entries: readonly Entry[]) => entries.at(-1)?.seq ?? 0

describe('past days', () => {
  it('[F1] given a shop of two days, when a day is replayed, then each entry leads to the state of that moment', async () => {
    const entries = closedMorning(3)
    const { history } = await madeOf(entries)
    const [row] = history.days(Number.MAX_SAFE_INTEGER, 9)
    expect(row).toMatchObject({ label: '2026-11-24', closedAtMs: expect.any(Number) })
    if (row === undefined) return
    const { start, entries: own } = history.record(row)
    const replayed = fromJson(start)
    const truth = emptyState()
    for (const entry of entries.slice(0, row.firstSeq - 1)) applyEntry(truth, entry)
    for (const entry of own) {
      expect(hashState(replayed)).toBe(hashState(truth))
      applyEntry(replayed, entry)
      applyEntry(truth, entry)
    }
    expect([truth.day, lastOf(own)]).toEqual([null, lastOf(entries) - 1])
    expect(hashState(replayed)).toBe(hashState(truth))
  })

  it('[F1] given a day that nobody closed, when the next morning closes it, then that entry is the last of one and the first of the other', async () => {
    const day = openMorning(40, 5)
    const next = { nowMs: at('5:00', 1), localDate: '2026-11-25' }
    day.at('5:00', { type: 'sell', lines: lines('sesame', 1) }, next)
    const { history } = await madeOf(day.entries)
    const [today, yesterday] = history.days(Number.MAX_SAFE_INTEGER, 9)
    expect([yesterday?.label, today?.label]).toEqual(['2026-11-24', '2026-11-25'])
    expect([yesterday?.lastSeq, today?.firstSeq]).toEqual([41, 41])
    expect([yesterday?.figures?.left?.dayOld.pieces, today?.figures]).toEqual([expect.any(Number), null])
    expect(history.find('today', null)?.label).toBe('2026-11-25')
  })

  it('[F1] given no day that is open, when today is asked for, then there is none', async () => {
    const { history } = await madeOf(closedMorning(3))
    expect(history.find('today', null)).toBeNull()
    expect(history.find('2026-11-24', null)?.label).toBe('2026-11-24')
    expect(history.find('2026-11-23', null)).toBeNull()
  })

  it('[F1] given two days of one label, when asked by its opening, then that one; else the newer', async () => {
    const { history } = await madeOf(someEntries(9))
    const [newest, before] = history.days(Number.MAX_SAFE_INTEGER, 9).filter(({ label }) => label === '2026-11-25')
    expect(history.find('2026-11-25', null)).toEqual(newest)
    expect(before).toBeDefined()
    expect(history.find('2026-11-25', before?.openedAtMs ?? 0)).toEqual(before)
  })

  it('[F1] given many days, when paged by their openings, then each comes once, newest first', async () => {
    const { history } = await madeOf(someEntries(21))
    const all = history.days(Number.MAX_SAFE_INTEGER, 99)
    const paged = [...history.days(Number.MAX_SAFE_INTEGER, 4)]
    for (let more = paged; more.length > 0; ) {
      more = [...history.days(more.at(-1)?.openedAtMs ?? 0, 4)]
      paged.push(...more)
    }
    expect(all).toHaveLength(10)
    expect(paged).toEqual(all)
    expect(all.map(({ number }) => number)).toEqual([10, 9, 8, 7, 6, 5, 4, 3, 2, 1])
  })

  it('[F2] given a day, when its figures are kept, then they are those of its record', async () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const { history } = await madeOf(closedMorning(seed))
      const [row] = history.days(Number.MAX_SAFE_INTEGER, 1)
      if (row === undefined) throw new Error('there is a day')
      const { start, entries, label } = history.record(row)
      const minuteToMs = (minute: number) => localInstant('America/Chicago', label, minute)
      const nowMs = row.closedAtMs ?? row.openedAtMs
      expect(row.figures).toEqual(dayFigures(fromJson(start), entries, { minuteToMs, nowMs }))
    }
  })
})

describe('the file of past days', () => {
  it('[F7] given half a journal, when the rest comes after a restart, then the days are those of the whole', async () => {
    const entries = [...closedMorning(7)]
    const file = join(tempFolder(), 'history.sqlite')
    for (const cut of [1, 5, 40, entries.length - 2, entries.length]) {
      const disk = new MemoryDisk('history-test')
      const first = historyOf(await journalOf(entries.slice(0, cut), disk), file)
      await first.catchUp()
      await first.close()
      const journal = new MemoryJournal(disk)
      await journal.append({ entries: entries.slice(cut), refusals: [] })
      const second = historyOf(journal, file)
      await second.catchUp()
      const whole = (await madeOf(entries)).history
      expect(second.days(Number.MAX_SAFE_INTEGER, 9)).toEqual(whole.days(Number.MAX_SAFE_INTEGER, 9))
      await second.close()
    }
  })

  it.each([
    ['another fold', { foldVersion: -1 }],
    ['a course of the journal that was left by a restore', { course: 'before' }],
    ['another journal', { journalId: 'elsewhere' }],
  ])('[F7] given days of %s, when opened, then they are not read and made anew', async (_what, other) => {
    const file = join(tempFolder(), 'history.sqlite')
    const madeBy = { journalId: 'history-test', course: '', foldVersion: FOLD_VERSION }
    const old = new DayStore(sqlite, file, { ...madeBy, ...other })
    const wrong = { number: 1, label: '1999-01-01', firstSeq: 1, openedAtMs: 0 as never }
    old.add(wrong, {} as never)
    old.shut()
    const { history } = await madeOf(closedMorning(3), file)
    expect(history.days(Number.MAX_SAFE_INTEGER, 9).map(({ label }) => label)).toEqual(['2026-11-24'])
    await history.close()
  })

  it.each([
    ['no database', (file: string) => writeFileSync(file, 'not a database, only text'.repeat(100))],
    ['cut off', (file: string) => writeFileSync(file, readFileSync(file).subarray(0, 3_000))],
    [
      'damaged behind its first page',
      (file: string) => writeFileSync(file, readFileSync(file).fill(0xab, SQLITE_PAGE_BYTES)),
    ],
    ['a folder that cannot be written', (file: string) => mkdirSync(join(file, 'in-the-way'), { recursive: true })],
  ])('[F7] given a file that is %s, when opened, then the days are made anew', async (what, spoil) => {
    const file = join(tempFolder(), 'history.sqlite')
    if (what === 'cut off' || what.startsWith('damaged')) await (await madeOf(closedMorning(3), file)).history.close()
    spoil(file)
    const { history } = await madeOf(closedMorning(3), file)
    expect(history.days(Number.MAX_SAFE_INTEGER, 9).map(({ label }) => label)).toEqual(['2026-11-24'])
    await history.close()
  })

  it('[F8] given a closed day that is reopened, when it is closed again, then it is one day with one record', async () => {
    const day = openMorning(60, 11)
    day.at('14:00', { ...CLOSE, crewMinutes: 120 }, YES)
    const once = (await madeOf(day.entries)).history
    expect(once.days(Number.MAX_SAFE_INTEGER, 9)[0]?.figures?.baked.crewMinutes).toBe(120)
    day.at('14:05', { type: 'reopenDay', label: '2026-11-24' })
    const again = (await madeOf(day.entries)).history
    expect(again.find('today', null)).toMatchObject({ label: '2026-11-24', closedAtMs: null, figures: null })
    day.at('14:10', { type: 'sell', lines: lines('sesame', 6) })
    day.at('15:00', { ...CLOSE, crewMinutes: 240 }, YES)
    const { history } = await madeOf(day.entries)
    const rows = history.days(Number.MAX_SAFE_INTEGER, 9)
    expect(rows.map(({ lastSeq, closedAtMs }) => [lastSeq, closedAtMs])).toEqual([[lastOf(day.entries), at('15:00')]])
    expect(rows[0]?.figures?.baked.crewMinutes).toBe(240)
  })

  it('[Q103] given a day that closes, reopens and closes again, when its sales are asked for, then each time as it is then', async () => {
    const day = record(emptyState())
    const sale = (pieces: number) => ({ type: 'sell', lines: lines('sesame', pieces) }) as const
    day.at('4:00', { type: 'changeSetUp', changes: setUpChanges(null, shopWith()) })
    day.at('6:30', sale(6))
    day.at('9:00', CLOSE, YES)
    const { journal, history } = await madeOf(day.entries)
    const goOn = async (clock: string, act: Parameters<typeof day.at>[1]) => {
      const before = day.entries.length
      day.at(clock, act, YES)
      await journal.append({ entries: day.entries.slice(before), refusals: [] })
      await history.catchUp()
    }
    const soldOf = (text: string | null | undefined) =>
      text == null ? null : dayOfText(text).items.map(({ id, sold }) => [id, ...sold.map(({ pieces }) => pieces)])
    expect(history.takeChanged().map(({ number, texts }) => [number, soldOf(texts?.sales)])).toEqual([
      [1, [['sesame', 6]]],
    ])
    expect(history.today(() => true)).toBeNull()
    await goOn('9:10', { type: 'reopenDay', label: '2026-11-24' })
    expect(history.takeChanged()).toEqual([{ number: 1, texts: null }])
    expect(history.textsAfter(0, 9)).toEqual([])
    expect(history.today((state, sales) => [state.seq, sales.date])).toEqual([day.state.seq, '2026-11-24'])
    await goOn('9:20', sale(2))
    await goOn('10:00', CLOSE)
    const [only] = history.textsAfter(0, 9)
    expect(soldOf(only?.texts?.sales)).toEqual([['sesame', 6, 2]])
    expect(history.takeChanged()).toEqual([only])
    expect(history.takeChanged()).toEqual([])
  })
})
