import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { accountGaps } from '../../../shared-core/day/account.ts'
import { applyEntry, emptyState, TRACES_MAX } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import { undoAll } from '../../../shared-core/day/recorder.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { forkState, fromJson, toJson } from '../../../shared-core/day/state-json.ts'
import { changedSince, NEVER_TAKEN_BACK } from '../../../shared-core/day/take-back.ts'
import { upcastEntry } from '../../../shared-core/day/upcast.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { ACT_TYPES, anyAct, startedShop } from '../support/any-act.ts'
import { at, lines } from '../support/make.ts'
import { context, entryOf, tap } from '../support/play.ts'

/** Runs acts as the room does and tells each one's entry and the state before it. */
function morning(acts: readonly Act[], each: (entry: Entry, before: State, after: State) => void): State {
  const state = startedShop()
  acts.forEach((act, n) => {
    const when = { nowMs: epochMs(at('5:00') + n * 45_000), id: `act${String(n).padStart(8, '0')}` }
    const command = tap(act, {
      ...when,
      confirmed: ['far-count', 'line-not-empty', 'orders-open', 'retires-in-use', 'old-tap'],
    })
    const decision = decide(state, command, context(when))
    if (decision.kind !== 'taken') return
    const before = forkState(state)
    const entry = entryOf(state, command, decision, when)
    applyEntry(state, entry)
    each(entry, before, state)
  })
  return state
}

const acts = (most: number) => fc.array(fc.nat({ max: 2 ** 31 - 1 }), { minLength: 5, maxLength: most })

/** Acts drawn one by one from what the shop then shows, so that most of them make sense. */
function drawn(seeds: readonly number[], each: (entry: Entry, before: State, after: State) => void): State {
  const state = startedShop()
  seeds.forEach((seed, n) => {
    const when = { nowMs: epochMs(at('5:00') + n * 45_000), id: `act${String(n).padStart(8, '0')}` }
    const command = tap(anyAct(state, seed), { ...when, confirmed: ['far-count', 'line-not-empty', 'orders-open'] })
    const decision = decide(state, command, context(when))
    if (decision.kind !== 'taken') return
    const before = forkState(state)
    const entry = entryOf(state, command, decision, when)
    applyEntry(state, entry)
    each(entry, before, state)
  })
  return state
}

describe('any morning', () => {
  it('[T1] given any acts, then every piece is accounted for after each, and no count is negative', () => {
    const kinds = new Set<string>()
    fc.assert(
      fc.property(acts(60), (seeds) => {
        drawn(seeds, (entry, _before, after) => {
          kinds.add(entry.told.type)
          expect([...accountGaps(after)]).toEqual([])
          for (const batch of after.batches.values()) expect(batch.pieces).toBeGreaterThan(0)
          for (const stock of after.stock.values()) {
            expect(stock.kept).toBeGreaterThanOrEqual(0)
            for (const lot of stock.lots) expect(lot.pieces).toBeGreaterThan(0)
          }
          for (const batch of after.batches.values()) {
            if (batch.loadId !== null) expect(after.loads.has(batch.loadId)).toBe(true)
          }
        })
      }),
      { numRuns: 600 },
    )
    // The draw must reach every act, or the property says little.
    expect(ACT_TYPES.filter((type) => !kinds.has(type))).toEqual([])
  })

  it('[P1] given any acts, then the fold of the entries, through JSON and upcasting, gives the same hash', () => {
    fc.assert(
      fc.property(acts(50), (seeds) => {
        const entries: Entry[] = []
        const live = drawn(seeds, (entry) => entries.push(entry))
        const replayed = startedShop()
        for (const entry of entries) applyEntry(replayed, upcastEntry(JSON.parse(JSON.stringify(entry))))
        expect(hashState(replayed)).toBe(hashState(live))
      }),
      { numRuns: 60 },
    )
  })

  it('[P2, P3] given any act, then deciding leaves the state alone and undoing puts it back exactly', () => {
    fc.assert(
      fc.property(acts(40), fc.nat(), (seeds, last) => {
        const state = drawn(seeds, () => undefined)
        const before = hashState(state)
        const command = tap(anyAct(state, last), {
          nowMs: at('9:00'),
          confirmed: ['far-count', 'line-not-empty', 'orders-open'],
        })
        const decision = decide(state, command, context({ nowMs: at('9:00') }))
        expect(hashState(state)).toBe(before)
        if (decision.kind !== 'taken') return
        undoAll(state, applyEntry(state, entryOf(state, command, decision, { nowMs: at('9:00') })))
        expect(hashState(state)).toBe(before)
      }),
      { numRuns: 100 },
    )
  })

  it('[T5] given any act, when taken back at once, then the tables and the account are exactly as before', () => {
    fc.assert(
      fc.property(acts(40), (seeds) => {
        drawn(seeds, (entry, before, after) => {
          if (NEVER_TAKEN_BACK.has(entry.told.type)) return
          const copy = forkState(after)
          const command = tap(
            { type: 'takeBack', commandId: entry.commandId },
            { nowMs: at('12:00'), id: 'back000001' },
          )
          const decision = decide(copy, command, context({ nowMs: at('12:00') }))
          if (decision.kind !== 'taken') throw new Error(`not taken back: ${JSON.stringify(decision)}`)
          applyEntry(copy, entryOf(copy, command, decision, { nowMs: at('12:00') }))
          // The day that a first act opens stays open; an account of zeros is no account.
          const left = ({ seq, recordedAtMs, lastActAtMs, day, traces, lastDay, ...rest }: State) => ({
            ...rest,
            lastDay: lastDay === null ? null : { ...lastDay, before: null },
            account: nonZero(rest.account),
          })
          expect(left(copy)).toEqual(left(before))
        })
      }),
      { numRuns: 60 },
    )
  })

  it('[T5, T6] given any morning, then each trace can be taken back exactly when nothing touched it since', () => {
    fc.assert(
      fc.property(acts(50), (seeds) => {
        const state = drawn(seeds, () => undefined)
        for (const trace of state.traces) {
          const command = tap({ type: 'takeBack', commandId: trace.commandId }, { nowMs: at('12:00') })
          const decision = decide(state, command, context({ nowMs: at('12:00') }))
          const may = !NEVER_TAKEN_BACK.has(trace.told.type) && changedSince(state, trace) === null
          expect(decision.kind).toBe(may ? 'taken' : 'refused')
          if (decision.kind !== 'taken') continue
          const copy = forkState(state)
          applyEntry(copy, entryOf(copy, command, decision, { nowMs: at('12:00') }))
          expect([...accountGaps(copy)]).toEqual([])
        }
      }),
      { numRuns: 60 },
    )
  })

  it('[L7] given any load, when it holds more than its shelf, then the event says so', () => {
    fc.assert(
      fc.property(acts(60), (seeds) => {
        drawn(seeds, (entry, before) => {
          for (const event of entry.events) {
            if (event.type !== 'loaded') continue
            const pieces = event.puts.reduce((sum, one) => sum + one.pieces, 0)
            const most = before.shop?.shelves.get(event.load.shelfId)?.pieces ?? 0
            expect(event.over.includes('shelf')).toBe(pieces > most)
          }
        })
      }),
      { numRuns: 60 },
    )
  })
})

describe('the fold', () => {
  it('[P2] given entries out of order, unknown or taking what is not there, then refused whole', () => {
    const state = startedShop()
    const before = hashState(state)
    const good = tap({ type: 'sell', lines: lines('sesame', 1) })
    const decision = decide(state, good, context())
    if (decision.kind !== 'taken') throw new Error('not taken')
    const entry = entryOf(state, good, decision)
    const nothing = { batchId: entry.commandId as never, pieces: 1 }
    const bad: Entry[] = [
      { ...entry, seq: entry.seq + 1 },
      { ...entry, seq: entry.seq - 1 },
      { ...entry, recordedAtMs: epochMs(state.recordedAtMs - 1) },
      { ...entry, events: [...entry.events, { v: 1, atMs: at('6:47'), type: 'unheardOf' } as never] },
      {
        ...entry,
        events: [
          ...entry.events,
          { v: 1, atMs: at('6:47'), type: 'batchWasted', take: nothing, doughId: 'plain' as never },
        ],
      },
    ]
    for (const one of bad) expect(() => applyEntry(state, one)).toThrow()
    expect(hashState(state)).toBe(before)
  })

  it('[P4] given the same command decided on a screen and on the server, then the same events', () => {
    const command = tap({
      type: 'dip',
      doughId: startedShop().batches.values().next().value?.doughId ?? ('plain' as never),
      varietyId: null,
      pieces: 36,
    })
    expect(decide(startedShop(), command, context())).toEqual(decide(forkState(startedShop()), command, context()))
  })

  it('[P5] given a shop in mid-morning, then it survives JSON', () => {
    const state = drawn(
      [...Array(80).keys()].map((n) => n * 7_919),
      () => undefined,
    )
    expect(hashState(fromJson(JSON.parse(JSON.stringify(toJson(state)))))).toBe(hashState(state))
    expect(hashState(emptyState())).not.toBe(hashState(state))
  })

  it('[P5] given a state read back from JSON before each entry, then every entry folds to the same hash', () => {
    fc.assert(
      fc.property(acts(40), (seeds) => {
        drawn(seeds, (entry, before, after) => {
          const read = fromJson(JSON.parse(JSON.stringify(toJson(before))))
          applyEntry(read, entry)
          expect(hashState(read)).toBe(hashState(after))
        })
      }),
      { numRuns: 30 },
    )
  })

  it('[P5] given a list of twelve loads that another replaces, then a state read back from JSON remembers it the same', () => {
    // Ids end in .1 to .12: in the table as they came, in JSON .10 before .2.
    const load = { shelfId: null, inAtMs: null, lines: lines('sesame', 12) }
    const list: Act = { type: 'setLoadList', loads: Array.from({ length: 12 }, () => load) }
    morning([list, list], (entry, before, after) => {
      const read = fromJson(JSON.parse(JSON.stringify(toJson(before))))
      applyEntry(read, entry)
      expect(hashState(read)).toBe(hashState(after))
    })
  })

  it('[P6] given an event of a newer version, then replay names it', () => {
    const entry = { seq: 1, events: [{ v: 99, type: 'sold', atMs: 0 }] } as never
    expect(() => upcastEntry(entry)).toThrow('sold version 99')
  })

  it('[T5] given more commands than are remembered, then the oldest are forgotten and the state stays small', () => {
    const many: Act[] = Array.from({ length: TRACES_MAX + 40 }, () => ({ type: 'sell', lines: lines('sesame', 1) }))
    const state = morning(many, () => undefined)
    expect(state.traces).toHaveLength(TRACES_MAX)
    expect(state.traces[0]?.commandId).toBe('act00000040')
  })
})

function nonZero(account: State['account']): unknown {
  return [...account].filter(([, row]) => Object.values(row).some((pieces) => pieces !== 0)).sort()
}
