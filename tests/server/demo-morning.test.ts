import { DateTime } from 'luxon'
import { beforeAll, describe, expect, it } from 'vitest'
import { DEMO_DEVICES } from '../../server/demo/demo-shop.ts'
import type { LivingMorning } from '../../server/demo/living-morning.ts'
import { livingMorning } from '../../server/demo/living-morning.ts'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { wake } from '../../server/shop/wake.ts'
import { accountGaps } from '../../shared-core/day/account.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import { roomActs } from '../../shared-core/dough/room-acts.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

/** Starts all around the clock and in all parts of the hour: a wave stands at another minute in each. */
const STARTS = ['00:00:00', '03:07:31', '08:24:05', '17:33:40', '21:52:59'].map((time) => ({
  time,
  nowMs: epochMs(Date.parse(`2026-11-24T${time}Z`)),
}))
const NOON = epochMs(Date.parse('2026-11-24T12:15:00Z'))

/** What a person would see on the line and the rods, as words. */
function onShow(state: State, nowMs: number): ReadonlySet<string> {
  const ready = [...state.stock.values()].map(({ lots }) => piecesOf(lots.filter((lot) => lot.readyAtMs <= nowMs)))
  const lots = [...state.stock.values()].flatMap((stock) => stock.lots)
  const accounts = [...state.account.values()]
  const planned = [...state.planned.values()]
  const mixes = [...state.mixes.values()]
  return new Set([
    ...[...state.batches.values()].map(({ stage }) => stage),
    ...[...state.loads.values()].map(({ phase }) => phase),
    ...lots.map(({ readyAtMs }) => (readyAtMs > nowMs ? 'cooling' : 'for sale')),
    ...ready.map((pieces) => (pieces <= 8 ? 'low' : pieces >= 24 ? 'plenty' : 'some')),
    ...planned.map(({ done }) => (done ? 'loaded' : 'to load')),
    ...(accounts.some(({ wasted }) => wasted > 0) ? ['waste'] : []),
    ...(accounts.some(({ sold }) => sold > 0) ? ['sales'] : []),
    ...mixes.map(({ stage }) => (stage === 'planned' ? 'a mix planned' : `a mix ${stage}`)),
    ...mixes.flatMap(({ stage }) => (['mixing', 'rest', 'bench'].includes(stage) ? ['a mix under way'] : [])),
    ...(state.keeps.size > 0 ? ['a keep'] : []),
    ...(state.unsure.size > 0 ? ['something unsure'] : []),
  ])
}

/** What should have been made, mixed or chilled more than an hour ago; trays to use first are the line's. */
function lateActs(state: State, nowMs: EpochMs): string[] {
  const { shop, day } = state
  if (shop === null || day === null) throw new Error('the demo has an open day')
  const zone = { zone: shop.profile.zone }
  const noonOf = (date: string) => epochMs(DateTime.fromISO(`${date}T12:00`, zone).toMillis())
  const acts = roomActs(state, shop, nowMs, day.label, noonOf)
  return acts
    .filter(({ atMs, kind }) => nowMs - atMs > 3_600_000 && kind !== 'use')
    .map(({ kind, key }) => `${kind} ${key}`)
}

const EVERYTHING = [
  ...['a mix planned', 'a mix under way'],
  ...['proof', 'chill', 'rack', 'kettle', 'boards', 'oven', 'first-side', 'second-side', 'cooling', 'for sale'],
  ...['low', 'plenty', 'loaded', 'to load', 'waste', 'sales', 'a keep', 'something unsure'],
]

let noon: LivingMorning
beforeAll(() => {
  noon = livingMorning({ nowMs: NOON, seed: 1 })
})

describe('the living morning', () => {
  it.each(STARTS)('given a start at $time, then all is there to see, and every piece is accounted for', ({ nowMs }) => {
    const { state } = livingMorning({ nowMs, seed: 1 })
    const shown = onShow(state, nowMs)
    expect(EVERYTHING.filter((thing) => !shown.has(thing))).toEqual([])
    expect(accountGaps(state)).toEqual(new Map())
    const wasted = [...state.account.values()].reduce((sum, account) => sum + account.wasted, 0)
    expect(wasted).toBeLessThan(30)
    expect(lateActs(state, nowMs)).toEqual([])
  })

  it('[P1] given its journal, when it is replayed by itself or out of the disk, then the state has the same hash', async () => {
    const { entries, state } = noon
    const replayed = emptyState()
    for (const entry of entries) applyEntry(replayed, entry)
    expect(hashState(replayed)).toBe(hashState(state))
    const journal = new MemoryJournal(new MemoryDisk('demo'))
    await journal.append({ entries, refusals: [] })
    expect(hashState(await wake(journal, () => undefined))).toBe(hashState(state))
  })

  it('given its journal, then it is a true history: in order, from before the oven until now, by the demo’s devices', () => {
    const { entries } = noon
    const times = entries.map((entry) => entry.recordedAtMs)
    expect(times).toEqual([...times].sort((one, other) => one - other))
    expect(times[0]).toBeLessThan(NOON - 2.5 * 3_600_000)
    expect(times.at(-1)).toBeGreaterThan(NOON - 120_000)
    expect(times.at(-1)).toBeLessThanOrEqual(NOON)
    expect(entries.flatMap(({ events }) => events).filter(({ atMs }) => atMs > NOON)).toEqual([])
    expect(entries.map(({ seq }) => seq)).toEqual(entries.map((_, index) => index + 1))
    const devices = new Set<string>(entries.map(({ deviceId }) => deviceId))
    expect([...devices].sort()).toEqual(
      Object.values(DEMO_DEVICES)
        .map(({ deviceId }) => deviceId as string)
        .sort(),
    )
    expect(new Set(entries.map(({ commandId }) => commandId)).size).toBe(entries.length)
  })

  it('given its journal, then every act of the line is there, and both sides of forgetting', () => {
    const { entries } = noon
    const acts = new Set(entries.map(({ told }) => told.type))
    const wanted = ['pull', 'dip', 'lift', 'board', 'load', 'flip', 'out', 'sell', 'count', 'keep', 'remove', 'shape']
    expect(wanted.filter((act) => !acts.has(act))).toEqual([])
    const begun = entries.filter(({ events }) =>
      events.some((event) => event.type === 'mixMoved' && event.begun !== null),
    )
    const mixesAt = begun.map(({ recordedAtMs }) => recordedAtMs)
    const tooSoon = mixesAt.filter((at, index) => at - (mixesAt[index - 1] ?? 0) < 20 * 60_000)
    expect(tooSoon, 'a mix takes its time').toEqual([])
    const events = entries.flatMap((entry) => entry.events)
    expect(events.some((event) => event.type === 'unsureRaised')).toBe(true)
    expect(events.some((event) => event.type === 'unsureSettled')).toBe(true)
  })

  it('given the same seed and instant, then the journal is the same; another seed makes another', () => {
    expect(livingMorning({ nowMs: NOON, seed: 1 }).entries).toEqual(noon.entries)
    expect(livingMorning({ nowMs: NOON, seed: 2 }).entries).not.toEqual(noon.entries)
  })
})
