import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { decide } from '../../shared-core/day/decide.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { commandId, deviceId } from '../../shared-core/ids.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { startingPoint } from '../../shared-core/shop/starting-points.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

const FIRST_MORNING_MS = Date.UTC(2026, 0, 1, 10)
const DAY_MS = 86_400_000
const LOADS_A_DAY = 60
const PIECES_A_LOAD = 36
/** Between two loads: enough to make some 4,100 events a day, 1.5 million a year. */
const SALES_A_LOAD = 62

/** A shop's history, day after day, through the real rules: dough, loads by three touches, sales, a close. */
export function* history(eventsMost: number): Iterable<Entry> {
  const year = new Year()
  let events = 0
  for (let day = 0; ; day += 1) {
    for (const entry of year.day(day)) {
      events += entry.events.length
      yield entry
      if (events >= eventsMost) return
    }
  }
}

class Year {
  readonly state: State = emptyState()
  #commands = 0
  #nowMs: EpochMs = epochMs(FIRST_MORNING_MS);

  *day(day: number): Iterable<Entry> {
    this.#nowMs = epochMs(FIRST_MORNING_MS + day * DAY_MS)
    if (day === 0)
      yield* this.#do({
        type: 'changeSetUp',
        changes: setUpChanges(null, startingPoint('shelves', { name: 'Bench', zone: 'UTC', language: 'en' })),
      })
    const { shop } = this.state
    if (shop === null) throw new Error('no set-up')
    const [doughId] = shop.doughs.keys()
    const varieties = [...shop.varieties.values()].filter((one) => one.doughId === doughId).map((one) => one.id)
    const shelves = [...shop.shelves.keys()]
    if (doughId === undefined) throw new Error('no dough')
    yield* this.#do({
      type: 'carryIn',
      doughId,
      varietyId: null,
      pieces: LOADS_A_DAY * PIECES_A_LOAD,
      stage: 'chill',
      sinceMs: null,
    })
    for (let load = 0; load < LOADS_A_DAY; load += 1) {
      const shelfId = shelves[load % shelves.length]
      const varietyId = varieties[load % varieties.length]
      if (shelfId === undefined || varietyId === undefined) throw new Error('no shelf')
      yield* this.#load(shelfId, varietyId)
    }
    yield* this.#do({ type: 'closeDay' })
  }

  *#load(shelfId: Extract<Act, { type: 'load' }>['shelfId'], varietyId: VarietyId): Iterable<Entry> {
    yield* this.#do({ type: 'load', shelfId, plannedId: null, lines: [{ varietyId, pieces: PIECES_A_LOAD }] })
    const [loadId] = this.state.loads.keys()
    if (loadId === undefined) throw new Error('nothing loaded')
    yield* this.#do({ type: 'flip', loadId }, 210_000)
    for (let sale = 0; sale < SALES_A_LOAD; sale += 1) {
      yield* this.#do({ type: 'sell', lines: [{ varietyId, pieces: sale % 12 === 0 ? 6 : 1 }] }, 8_000)
    }
    yield* this.#do({ type: 'out', loadId, from: 'second-side', lines: null }, 60_000)
  }

  *#do(act: Act, afterMs = 1_000): Iterable<Entry> {
    this.#nowMs = epochMs(this.#nowMs + afterMs)
    this.#commands += 1
    const id = commandId(`year${this.#commands.toString(36).padStart(12, '0')}`)
    const command = {
      id,
      deviceSeq: this.#commands,
      tappedAtMs: this.#nowMs,
      confirmed: ['line-not-empty', 'far-count', 'orders-open'] as const,
      ...act,
    }
    const localDate = new Date(this.#nowMs).toISOString().slice(0, 10)
    const decision = decide(this.state, command, { nowMs: this.#nowMs, deviceId: deviceId('bench'), localDate })
    if (decision.kind !== 'taken') throw new Error(`${act.type}: ${JSON.stringify(decision)}`)
    const entry: Entry = {
      seq: this.state.seq + 1,
      commandId: id,
      deviceId: deviceId('bench'),
      recordedAtMs: this.#nowMs,
      told: decision.told,
      events: decision.events,
    }
    applyEntry(this.state, entry)
    yield entry
  }
}
