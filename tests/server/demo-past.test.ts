import { setImmediate } from 'node:timers/promises'
import { beforeAll, describe, expect, it } from 'vitest'
import { demoShop } from '../../server/demo/demo-shop.ts'
import { livingMorning } from '../../server/demo/living-morning.ts'
import type { PastDays } from '../../server/demo/past-days.ts'
import { pastDays } from '../../server/demo/past-days.ts'
import { tillHistory } from '../../server/demo/till-history.ts'
import type { DayRow } from '../../server/history/day-store.ts'
import { History } from '../../server/history/history.ts'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { accountGaps } from '../../shared-core/day/account.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import { dayOfText } from '../../shared-core/demand/day-text.ts'
import { wentOf } from '../../shared-core/demand/merge-days.ts'
import { epochMs } from '../../shared-core/units.ts'

const NOON = epochMs(Date.parse('2026-11-24T12:15:00Z'))

async function historyOf(entries: readonly Entry[]): Promise<History> {
  const journal = new MemoryJournal(new MemoryDisk('demo-past'))
  await journal.append({ entries, refusals: [] })
  const history = new History({ journal, sqlite: await loadSqlite(), file: ':memory:', breathe: () => setImmediate() })
  await history.catchUp()
  return history
}

async function daysOf(entries: readonly Entry[]): Promise<readonly DayRow[]> {
  return (await historyOf(entries)).days(Number.MAX_SAFE_INTEGER, 99)
}

/** Pieces in the till's file, boxes by their names. */
function soldInCsv(text: string): number {
  const rows = text
    .split('\n')
    .slice(1, -1)
    .map((row) => row.split(','))
  return rows.reduce((sum, [, , , name = '', pieces, , status]) => {
    return sum + (IN_ONE.get(name) ?? 1) * Number(pieces) * (status === 'VOID' ? -1 : 1)
  }, 0)
}
const IN_ONE: ReadonlyMap<string, number> = new Map([
  ['HALF DOZEN', 6],
  ['DOZEN BAGELS', 12],
  ['BAKERS DOZEN', 13],
  ['COFFEE', 0],
])

let sales: readonly { readonly text: string | null }[]
let past: PastDays
let days: readonly DayRow[]
beforeAll(async () => {
  past = pastDays({ nowMs: NOON, seed: 1 })
  const history = await historyOf(past.entries)
  days = history.days(Number.MAX_SAFE_INTEGER, 99)
  sales = history.textsAfter(0, 99).map(({ texts }) => ({ text: texts?.sales ?? null }))
})

describe('the demo’s past days', () => {
  it('[Y2] given them, then eight days, each opened and closed on its own date, with every piece accounted for', () => {
    const dates = Array.from({ length: 8 }, (_, n) => new Date(NOON - (n + 1) * 86_400_000).toISOString().slice(0, 10))
    expect(days.map(({ label }) => label)).toEqual(dates)
    expect(days.every(({ closedAtMs }) => closedAtMs !== null)).toBe(true)
    expect(accountGaps(past.state)).toEqual(new Map())
    const times = past.entries.map(({ recordedAtMs }) => recordedAtMs)
    expect(times).toEqual([...times].sort((one, other) => one - other))
  })

  it('[Y2] given their figures, then each has something to say, and they differ as days do', () => {
    for (const { figures, label } of days) {
      expect(figures?.missed?.first, label).not.toBeNull()
      expect(figures?.missed?.pieces, label).toBeGreaterThan(0)
      expect(figures?.missed?.pieces, label).toBeLessThan(400)
      expect(figures?.left?.dayOld.pieces, label).toBeLessThan(450)
      expect(figures?.onTime.atOpen?.there, label).toBeGreaterThan(5)
      expect(Math.abs(figures?.onTime.ovenEmptyByMs ?? Number.NaN), label).toBeLessThan(60 * 60_000)
      expect(figures?.baked.dozensPerCrewHour, label).toBeGreaterThan(1)
      expect(figures?.unexplained.absolute, label).toBeGreaterThan(0)
    }
    expect(new Set(days.map(({ figures }) => JSON.stringify(figures))).size).toBe(days.length)
    // On a busy day all of it goes.
    const left = days.map(({ figures }) => figures?.left?.dayOld.pieces ?? 0).sort((one, other) => one - other)
    expect(left[Math.floor(left.length / 2)]).toBeGreaterThan(20)
  })

  it('[Q145] given what went on them by tap and count, then it is what the same crowd would have bought at the till', () => {
    // More was baked in the till’s weeks, so that less ran out; and pieces fall, are tasted and given away on these days.
    const wentOn = (text: string) => dayOfText(text).items.reduce((sum, item) => sum + wentOf(item), 0)
    const known = sales.map(({ text }) => ({ date: dayOfText(text ?? '').date, pieces: wentOn(text ?? '') }))
    const shop = demoShop(NOON)
    for (const { date, pieces } of known) {
      const atTill = soldInCsv([...tillHistory(shop, { seed: 1, dates: [date] }).text].join(''))
      expect(Math.abs(pieces / atTill - 1), date).toBeLessThan(0.12)
    }
    expect(known.length).toBe(8)
  })

  it('[Y2] given a day, then loads, steps by people, care, sweeps, notes and fates are in it', () => {
    const acts = new Set(past.entries.map(({ told }) => told.type))
    const wanted = ['load', 'flip', 'out', 'doStep', 'testFloat', 'care', 'sell', 'sweep', 'keep', 'handOver', 'remove']
    const more = ['shape', 'writeNote', 'clearNote', 'skipPlanned', 'confirmPresumed', 'closeDay']
    expect([...wanted, ...more].filter((act) => !acts.has(act))).toEqual([])
    const steps = past.entries.filter(({ told }) => told.type === 'doStep')
    expect(steps.every(({ told }) => told.personId !== undefined)).toBe(true)
    expect(new Set(steps.map(({ told }) => told.personId)).size).toBeGreaterThan(2)
  })

  it('[M128] given them, then orders stand and are placed for days to come, those of the past are fetched, and no entry names anybody', () => {
    const { state, entries, details } = past
    expect(state.standing.size).toBe(4)
    const lastMs = past.entries.at(-1)?.recordedAtMs ?? 0
    expect([...state.orders.values()].filter(({ dueAtMs }) => dueAtMs > lastMs).length).toBeGreaterThan(2)
    const ended = entries.flatMap(({ events }) => events.filter((event) => event.type === 'orderEnded'))
    expect(ended.filter(({ how }) => how === 'handedOver').length).toBeGreaterThan(15)
    expect(details.length).toBeGreaterThan(20)
    const text = JSON.stringify(entries)
    for (const { name, phone } of details) expect([text.includes(name), text.includes(phone)]).toEqual([false, false])
  })

  it('[Y2] given the same seed and day, then the past is the same; another seed makes another', () => {
    const short = (seed: number) => pastDays({ nowMs: NOON, seed, days: 1 }).entries
    expect(short(1)).toEqual(short(1))
    expect(short(2)).not.toEqual(short(1))
  })

  it('[Y2] given a running state after all of them, then it has not grown by more than a day', () => {
    const one = pastDays({ nowMs: NOON, seed: 1, days: 2 }).state
    const size = (state: State) => state.batches.size + state.stock.size + state.keeps.size + state.planned.size
    expect(size(past.state)).toBeLessThanOrEqual(2 * size(one))
  })
})

describe('the demo’s morning after them', () => {
  it('[Y2] given a start, then today’s steps were done by people before the first load, the kettle was cared for, and a note waits', async () => {
    const { entries, state } = livingMorning({ nowMs: NOON, seed: 1 })
    const [today] = await daysOf(entries)
    const own = entries.slice((today?.firstSeq ?? 1) - 1)
    const firstLoad = own.findIndex(({ told }) => told.type === 'load')
    const done = own.slice(0, firstLoad).filter(({ told }) => told.type === 'doStep')
    expect(done.length).toBeGreaterThanOrEqual(4)
    expect(done.every(({ told }) => told.personId !== undefined)).toBe(true)
    expect(own.slice(0, firstLoad).some(({ told }) => told.type === 'testFloat')).toBe(true)
    expect(state.cares.size).toBeGreaterThan(0)
    expect(state.notes.size).toBeGreaterThan(0)
    expect([today?.closedAtMs, state.day?.label]).toEqual([null, '2026-11-24'])
  })
})
