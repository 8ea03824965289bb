import type { State } from '../day/state.ts'
import type { Order } from '../orders/order.ts'
import type { AskedItem } from '../orders/order-commands.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import { durationMs } from '../units.ts'
import { askedOrder, withOrder } from './asked-order.ts'
import { drawsOf } from './draws.ts'
import { isOverloaded } from './load-of-late.ts'
import type { Kitchen } from './model.ts'
import { kitchenOf, simGivenOf } from './model.ts'
import { simulate } from './simulate.ts'
import type { NotMadeWhy } from './still-made.ts'
import { whyNotMade } from './still-made.ts'

/**
 * How long somebody waits for a new order: as many wait longer as shorter (`medianMs`), and one in ten waits longer
 * (`carefulMs`). Or why nobody can say.
 */
export type Quote = { readonly medianMs: DurationMs; readonly carefulMs: DurationMs } | { readonly cannot: QuoteCannot }

/** `queueGrows`: more is ordered than can be made, and the wait would be beyond an hour. */
export type QuoteCannot = NotMadeWhy | 'queueGrows'

/** Simulated so often: nine in ten of them are still some to count. */
const RUNS = 64
const CAREFUL = 0.9
/** A longer wait is quoted only while the queue does not grow. Common practice, no source. */
const LONGEST_MS = 3_600_000

/**
 * The wait for a new order, by letting the kitchen run from now on, many times: what is begun goes on, what waits comes
 * in its order, hands and places of the oven are as many as there are, and each part takes as long as such parts really
 * took (`step-times.ts`), bakes as much longer as the oven is slower now (`oven-pace.ts`). The new order is due as the
 * shop promises and waits behind all that is due before it.
 *
 * Each part draws its times by its own name, so that two quotes differ by what is asked, not by chance, and that a quote
 * stands still while nothing happens.
 */
export function quoteFor(state: State, nowMs: EpochMs, items: readonly AskedItem[]): Quote {
  const now = kitchenOf(state, nowMs)
  if (now === null) return { cannot: 'noSuchItem' }
  const why = whyNotMade(state, nowMs, now, items)
  if (why !== null) return { cannot: why }
  const asked = askedOrder(now, items)
  const kitchen = withOrder(now, asked)
  const waits = simulatedWaits(state, kitchen, asked)
  const medianMs = waits[Math.floor((RUNS - 1) / 2)] ?? 0
  const carefulMs = waits[Math.ceil(CAREFUL * RUNS) - 1] ?? 0
  if (!Number.isFinite(medianMs)) return { cannot: 'noPlace' }
  const { closesAtMs } = now.hours
  if (closesAtMs !== null && nowMs + medianMs > closesAtMs) return { cannot: hasOven(asked) ? 'ovenCloses' : 'closed' }
  if (carefulMs > LONGEST_MS && isOverloaded(kitchen)) return { cannot: 'queueGrows' }
  return {
    medianMs: durationMs(medianMs),
    carefulMs: durationMs(Math.max(medianMs, Number.isFinite(carefulMs) ? carefulMs : 0)),
  }
}

/** In order, the shortest first. */
function simulatedWaits(state: State, kitchen: Kitchen, asked: Order): readonly number[] {
  const draws = drawsOf(state, kitchen, RUNS)
  const mine = kitchen.items.flatMap(({ order }, at) => (order === asked ? [at] : []))
  return Array.from({ length: RUNS }, (_, run) => {
    const { endMs } = simulate(simGivenOf(kitchen, draws(run)))
    return mine.reduce((last, at) => Math.max(last, endMs[at] ?? 0), kitchen.nowMs) - kitchen.nowMs
  }).sort((one, other) => one - other)
}

function hasOven({ items }: Order): boolean {
  return items.some(({ steps }) => steps.some(({ oven }) => oven !== null))
}
