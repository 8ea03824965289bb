import { eventsOfDay, opensDay } from '../day/day-record.ts'
import type { Entry, Event, EventOf } from '../day/events.ts'
import type { Load, State } from '../day/state.ts'
import type { CommandId, LoadId, ShelfId, VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/**
 * What a day's taps say of the line's times, as plain values that go through JSON. Spans are whole seconds; presumed acts
 * are not in it, as nobody saw when they happened.
 */
export interface LineDay {
  /** Local date of its opening, YYYY-MM-DD. */
  readonly date: string
  /** From dip to lift. */
  readonly boils: readonly number[]
  /** From one dip to the next, while the kettle was kept busy. */
  readonly cycles: readonly number[]
  /** From the lift to the load: topping, and waiting for a shelf. */
  readonly boardings: readonly number[]
  /** From an out to the next load on the same shelf, where that was waiting for it. */
  readonly between: readonly number[]
  readonly loads: readonly LoadDone[]
  /** Of the oven, in order of time. */
  readonly readings: readonly OvenRead[]
}

export interface LoadDone {
  readonly shelfId: ShelfId
  readonly loadedAtMs: EpochMs
  /** From the load to the flip, and to the out; null: nobody tapped it. */
  readonly firstSide: number | null
  readonly bake: number | null
  readonly varietyIds: readonly VarietyId[]
}

export interface OvenRead {
  readonly atMs: EpochMs
  /** Null: the oven as a whole. */
  readonly shelfId: ShelfId | null
  readonly milliCelsius: number
}

/** Longer than so many of the longest usual ones, people did something else in between. */
const CYCLE_MS_MAX = 10 * 60_000
const BETWEEN_MS_MAX = 15 * 60_000
const BOARDING_MS_MAX = 45 * 60_000

interface Spanned {
  readonly commandId: CommandId
  readonly kind: 'boils' | 'cycles' | 'boardings' | 'between'
  readonly ms: number
}

/** A load while it bakes and after. */
interface Baking {
  readonly commandId: CommandId
  readonly load: Load
  readonly varietyIds: ReadonlySet<VarietyId>
  flip: { readonly commandId: CommandId; readonly ms: number } | null
  out: { readonly commandId: CommandId; readonly ms: number } | null
}

/**
 * A business day's line as it comes about, entry by entry; `before` is to be called before each `applyEntry`, from the
 * entry that opens the day on. What a take-back undoes goes by the command that did it.
 */
export class LineTally {
  #date = ''
  #isFirst = true
  #spans: Spanned[] = []
  #loads = new Map<LoadId, Baking>()
  readonly #readings: OvenRead[] = []
  #dippedAtMs: EpochMs | null = null
  #emptied = new Map<ShelfId, EpochMs>()

  before(state: State, entry: Entry): void {
    const isFirst = this.#isFirst
    if (isFirst) this.#date = opensDay(entry)?.label ?? ''
    this.#isFirst = false
    for (const event of eventsOfDay(entry, isFirst)) this.#book(state, entry.commandId, event)
  }

  day(): LineDay {
    const of = (kind: Spanned['kind']) => this.#spans.filter((one) => one.kind === kind).map(({ ms }) => seconds(ms))
    return {
      date: this.#date,
      boils: of('boils'),
      cycles: of('cycles'),
      boardings: of('boardings'),
      between: of('between'),
      loads: [...this.#loads.values()].map(({ load, varietyIds, flip, out }) => ({
        shelfId: load.shelfId,
        loadedAtMs: load.loadedAtMs,
        firstSide: flip === null ? null : seconds(flip.ms),
        bake: out === null ? null : seconds(out.ms),
        varietyIds: [...varietyIds].sort(),
      })),
      readings: [...this.#readings],
    }
  }

  #book(state: State, commandId: CommandId, event: Event): void {
    if (event.type === 'takenBack') this.#forget(event.commandId)
    if (event.type === 'batchMoved') this.#moved(state, commandId, event)
    if (event.type === 'loaded') this.#loaded(state, commandId, event)
    if (event.type === 'loadChanged') this.#changed(event)
    if (event.type === 'loadUndone') this.#loads.delete(event.loadId)
    if (event.type === 'flipped') this.#flipped(commandId, event)
    if (event.type === 'out') this.#out(commandId, event)
    if (event.type === 'marked' && event.mark.kind === 'oven') {
      const { atMs, shelfId, milliCelsius } = event.mark
      this.#readings.push({ atMs, shelfId, milliCelsius })
    }
  }

  #moved(state: State, commandId: CommandId, { put, takes, presumed, atMs }: EventOf<'batchMoved'>): void {
    if (presumed.length > 0) return
    if (put.stage === 'kettle') {
      this.#span(commandId, 'cycles', this.#dippedAtMs, atMs, CYCLE_MS_MAX)
      this.#dippedAtMs = atMs
    }
    if (put.stage !== 'boards') return
    for (const { batchId } of takes) {
      const from = state.batches.get(batchId)
      if (from?.stage === 'kettle' && !from.presumed) this.#span(commandId, 'boils', from.sinceMs, atMs, CYCLE_MS_MAX)
    }
  }

  #loaded(state: State, commandId: CommandId, { load, takes, puts, presumed, atMs }: EventOf<'loaded'>): void {
    this.#loads.set(load.id, { commandId, load, varietyIds: varietiesIn(puts), flip: null, out: null })
    const emptiedAtMs = this.#emptied.get(load.shelfId) ?? null
    this.#emptied.delete(load.shelfId)
    // Which variety plain pieces became is said by the load itself; nothing else may be presumed.
    if (presumed.some(({ act }) => act !== 'board')) return
    const boarded = takes.flatMap(({ batchId }) => {
      const batch = state.batches.get(batchId)
      return batch?.stage === 'boards' && !batch.presumed ? [batch.sinceMs] : []
    })
    if (boarded.length === 0) return
    this.#span(commandId, 'boardings', epochMs(Math.min(...boarded)), atMs, BOARDING_MS_MAX)
    // Only where the pieces waited for the shelf: else the shelf waited for them.
    if (emptiedAtMs !== null && Math.max(...boarded) <= emptiedAtMs)
      this.#span(commandId, 'between', emptiedAtMs, atMs, BETWEEN_MS_MAX)
  }

  #changed({ load, puts }: EventOf<'loadChanged'>): void {
    const baking = this.#loads.get(load.id)
    const within = puts.filter(({ loadId }) => loadId === load.id)
    if (baking !== undefined) this.#loads.set(load.id, { ...baking, load, varietyIds: varietiesIn(within) })
  }

  #flipped(commandId: CommandId, { loadId, presumed, atMs }: EventOf<'flipped'>): void {
    const baking = this.#loads.get(loadId)
    if (baking !== undefined && !presumed) baking.flip = { commandId, ms: atMs - baking.load.loadedAtMs }
  }

  #out(commandId: CommandId, { loadId, last, atMs }: EventOf<'out'>): void {
    const baking = this.#loads.get(loadId)
    if (baking === undefined || !last) return
    baking.out = { commandId, ms: atMs - baking.load.loadedAtMs }
    this.#emptied.set(baking.load.shelfId, atMs)
  }

  #span(commandId: CommandId, kind: Spanned['kind'], fromMs: EpochMs | null, toMs: EpochMs, mostMs: number): void {
    const ms = fromMs === null ? -1 : toMs - fromMs
    if (ms > 0 && ms <= mostMs) this.#spans.push({ commandId, kind, ms })
  }

  #forget(taken: CommandId): void {
    this.#spans = this.#spans.filter(({ commandId }) => commandId !== taken)
    for (const [id, baking] of this.#loads) {
      if (baking.commandId === taken) this.#loads.delete(id)
      if (baking.flip?.commandId === taken) baking.flip = null
      if (baking.out?.commandId === taken) baking.out = null
    }
  }
}

function varietiesIn(puts: EventOf<'loaded'>['puts']): ReadonlySet<VarietyId> {
  return new Set(puts.flatMap(({ varietyId }) => varietyId ?? []))
}

function seconds(ms: number): number {
  return Math.round(ms / 1_000)
}
