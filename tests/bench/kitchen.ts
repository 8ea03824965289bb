import { menuItemId, orderId } from '../../shared-core/ids.ts'
import { kitchenActs } from '../../shared-core/kitchen/kitchen-acts.ts'
import { planSlots } from '../../shared-core/kitchen/plan-slots.ts'
import { kitchenQueue } from '../../shared-core/kitchen/queue.ts'
import { quoteFor } from '../../shared-core/kitchen/quote.ts'
import { stillMade } from '../../shared-core/kitchen/still-made.ts'
import type { AskedItem } from '../../shared-core/orders/order-commands.ts'
import { epochMs } from '../../shared-core/units.ts'
import { drawnSlots } from '../core/kitchen/slots-maker.ts'
import { Afternoon } from '../core/support/kitchen-play.ts'
import { at } from '../core/support/make.ts'
import { median, ms, quantile } from './figures.ts'

/**
 * The kitchen with 500 open orders on the board, sixty of them with something waiting to be made: a new order quoted, the
 * queue and its acts worked out; and the oven's plan for sixty things beside the earliest due date first in the same run.
 * Processor time, once the code is warm. Aims: a quote and a plan under 20 ms each, a plan within 1 % of ten times the
 * search.
 */
const NOW = at('12:40')
const TIMES = 30

export function benchKitchen(): void {
  const { state } = busyKitchen(500, 60)
  const asked: AskedItem[] = [item('flatbread', 2), item('coffee', 1)]
  process.stdout.write(`\nKitchen, ${state.orders.size} open orders, 60 things waiting. Processor time.\n\n`)
  report('quote', () => quoteFor(state, NOW, asked))
  report('queue', () => kitchenQueue(state, NOW))
  report('acts', () => kitchenActs(state, NOW, null))
  report('still made', () => stillMade(state, NOW, null))
  const rushes = Array.from({ length: 8 }, (_, seed) => drawnSlots(seed + 1, { parts: 60, dueOver: 20 }))
  for (const given of rushes) planSlots(given)
  const times = rushes.flatMap((given) => [1, 2, 3].map(() => cpuMs(() => planSlots(given))))
  const rules = rushes.map((given) => cpuMs(() => planSlots(given, 0)))
  const sum = (tries?: number) => rushes.reduce((all, given) => all + planSlots(given, tries).latenessMs, 0)
  const ours = sum()
  const byRule = rushes.reduce((all, given) => all + byDueDate(given), 0)
  process.stdout.write(
    `\noven plan      ${ms(median(times))}   worst ${ms(Math.max(...times))}   rules alone ${ms(median(rules))}   aim 20 ms\n` +
      `lateness       ${percent(ours / sum(50_000) - 1)} over ten times the search   ` +
      `${percent(byRule / ours - 1)} more by earliest due date first\n`,
  )
}

/** Earliest due date first, each to the place that is free first: what a kitchen does by habit. */
function byDueDate(given: ReturnType<typeof drawnSlots>): number {
  const due = new Map(given.orders.map(({ id, dueMs }) => [id, dueMs]))
  const parts = [...given.parts].sort((one, other) => (due.get(one.orderId) ?? 0) - (due.get(other.orderId) ?? 0))
  const shelves = given.shelves.map(({ freeMs }) => [...freeMs])
  const complete = new Map(given.orders.map(({ id, otherReadyMs }) => [id, otherReadyMs]))
  for (const { orderId: id, readyMs, bakeMs, slots, afterMs } of parts) {
    const [shelf] = shelves
      .filter((free) => free.length >= slots)
      .map((free) => ({ free: free.sort((one, other) => one - other), atMs: Math.max(readyMs, free[slots - 1] ?? 0) }))
      .sort((one, other) => one.atMs - other.atMs)
    if (shelf === undefined) continue
    for (let slot = 0; slot < slots; slot += 1) shelf.free[slot] = shelf.atMs + bakeMs + given.handlingMs
    complete.set(id, Math.max(complete.get(id) ?? 0, shelf.atMs + bakeMs + afterMs))
  }
  return given.orders.reduce((sum, { id, dueMs }) => sum + Math.max(0, (complete.get(id) ?? 0) - dueMs), 0)
}

/** So many open orders: slips with one to three things each until so many wait, the others fetched later or tomorrow. */
export function busyKitchen(orders: number, waiting: number): Afternoon {
  const kitchen = new Afternoon({ recordedAt: at('12:00') })
  const names = ['flatbread', 'flatbread', 'coffee', 'long', 'flatbread']
  let things = 0
  for (let no = 1; things < waiting; no += 1) {
    const some = names.slice(no % 3, (no % 3) + 1 + (no % 3)).slice(0, waiting - things)
    kitchen.slip(`12:${String(20 + Math.floor(no / 2)).padStart(2, '0')}`, String(no), ...some)
    things += some.length
  }
  const [first] = kitchen.state.orders.values()
  if (first === undefined) return kitchen
  for (let no = kitchen.state.orders.size; no < orders; no += 1) {
    const id = orderId(`later.${no}`)
    const dueAtMs = epochMs(at('13:30', no % 9) + no * 1_000)
    kitchen.state.orders.set(id, { ...first, id, mark: `L${no}`, way: 'pickUp', dueAtMs, items: [] })
  }
  return kitchen
}

export function item(name: string, times: number): AskedItem {
  return { itemId: menuItemId(name), varietyId: null, toasted: false, without: [], more: [], allergies: [], times }
}

function report(name: string, work: () => unknown): void {
  for (let warm = 0; warm < TIMES; warm += 1) work()
  const times = Array.from({ length: TIMES }, () => cpuMs(work))
  process.stdout.write(`${name.padEnd(14)} ${ms(median(times))}   9 in 10 ${ms(quantile(times, 0.9))}   aim 20 ms\n`)
}

function cpuMs(work: () => unknown): number {
  const before = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1_000
}

function percent(share: number): string {
  return `${(100 * share).toFixed(2)} %`
}
