import type { State } from '../day/state.ts'
import type { Order } from '../orders/order.ts'
import type { AskedItem } from '../orders/order-commands.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import { durationMs } from '../units.ts'
import { askedOrder, withOrder } from './asked-order.ts'
import { drawsOf } from './draws.ts'
import { isOverloaded } from './load-of-late.ts'
import type { Kitchen, Taking } from './model.ts'
import { itemsOf, kitchenOf, simGivenOf, takingAsSetUp } from './model.ts'
import { simulate } from './simulate.ts'
import type { NotMadeWhy } from './still-made.ts'
import { whyNotMade } from './still-made.ts'
import { toCome } from './to-come.ts'

/**
 * How long somebody waits for a new order: as many wait longer as shorter (`medianMs`), and one in ten waits longer
 * (`carefulMs`). Or why nobody can say.
 */
export type Quote = { readonly medianMs: DurationMs; readonly carefulMs: DurationMs } | { readonly cannot: QuoteCannot }

/** `queueGrows`: more is ordered than can be made, and the wait would be beyond an hour. */
export type QuoteCannot = NotMadeWhy | 'queueGrows'

/** Simulated so often: nine in ten of them are still some to count. */
const RUNS = 48
const CAREFUL = 0.9
/**
 * The careful figure leaves room for being overtaken: the oven's plan lets a quick order go first where that makes all of
 * them less late. Measured on worked afternoons (tests/core/kitchen/worked-afternoon.ts).
 */
const OVERTAKEN = 0.5
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
  const inQueueMs = Math.max(0, medianMs - aloneMs(now, asked))
  const carefulMs = Math.max(waits[Math.ceil(CAREFUL * RUNS) - 1] ?? 0, medianMs + OVERTAKEN * inQueueMs)
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
  const mine = kitchen.items.flatMap(({ order }, at) => (order === asked ? [at] : []))
  const watched = new Set(mine)
  const waitOf = (some: Kitchen, taking: Taking) => {
    const { endMs } = simulate({ ...simGivenOf(some, taking), watched })
    return mine.reduce((last, at) => Math.max(last, endMs[at] ?? 0), kitchen.nowMs) - kitchen.nowMs
  }
  const aboutMs = waitOf(kitchen, takingAsSetUp(kitchen.nowMs))
  const untilMs = kitchen.nowMs + Math.min(LONGEST_MS, LONGER * aboutMs)
  const goingOn = { ...kitchen, items: [...kitchen.items, ...toCome(kitchen, untilMs)] }
  const draws = drawsOf(state, goingOn, RUNS)
  return Array.from({ length: RUNS }, (_, run) => waitOf(goingOn, draws(run))).sort((one, other) => one - other)
}

/** What the order would take with the kitchen to itself. */
function aloneMs(kitchen: Kitchen, asked: Order): number {
  const alone = { ...kitchen, orders: [asked], items: itemsOf(asked) }
  const { endMs } = simulate(simGivenOf(alone, takingAsSetUp(kitchen.nowMs)))
  return Math.max(...endMs, kitchen.nowMs) - kitchen.nowMs
}

/** So far beyond what the wait is about more is looked for that may come. */
const LONGER = 1.5

function hasOven({ items }: Order): boolean {
  return items.some(({ steps }) => steps.some(({ oven }) => oven !== null))
}
