import { ordersAtRisk } from '../../shared-core/orders/at-risk.ts'
import { openToday } from '../../shared-core/orders/book.ts'
import { pickOf } from '../../shared-core/orders/picks.ts'
import type { SupplyAsked } from '../../shared-core/orders/promise.ts'
import { promiseFor } from '../../shared-core/orders/promise.ts'
import { spokenFor } from '../../shared-core/orders/spoken-for.ts'
import { busyDay } from '../core/orders/busy-day.ts'
import { orderLine } from '../core/orders/promise-makers.ts'
import { median, ms, quantile } from './figures.ts'

const DAYS = 20
const TIMES = 5
const LINES = [orderLine('v3', 24), orderLine(null, 12), orderLine('v7', 6, { sliced: true })]

/**
 * Processor time of a promise, of orders at risk and of a pick among 500 open orders of 28 varieties, beside the floor: what
 * these orders still need, summed up once. `busy`: more is ordered than there will ever be; `usual`: a third of it.
 * Aim: a promise in under 20 ms.
 */
export function promiseBench(): void {
  process.stdout.write(
    `\nPromises, ${DAYS} drawn mornings of each kind, 500 open orders, 28 varieties. Processor time.\n\n`,
  )
  row(['', 'median', '9 in 10', 'most'])
  for (const [name, pieces] of [
    ['usual', 24],
    ['busy', 72],
  ] as const) {
    const days = Array.from({ length: DAYS }, (_, seed) =>
      busyDay(seed + 1, { varieties: 28, orders: 500, loads: 40, pieces, rules: { walkInPercent: 100 }, sliced: true }),
    )
    told(`${name}: promise`, days, (day) => promiseFor({ ...day, lines: LINES }))
    told(`${name}: at risk`, days, (day) => ordersAtRisk(day))
    told(`${name}: pick`, days, (day) => {
      const last = [...day.state.orders.values()].at(-1)
      return last === undefined ? null : pickOf(day.state, last, day.nowMs, day)
    })
    told(`${name}: floor`, days, (day) => spokenFor(day.state, openToday(day)))
  }
}

function told(name: string, days: readonly SupplyAsked[], act: (day: SupplyAsked) => unknown): void {
  for (const day of days) act(day)
  const times = days.flatMap((day) => Array.from({ length: TIMES }, () => timed(() => act(day))))
  row([name, ms(median(times)), ms(quantile(times, 0.9)), ms(Math.max(...times))])
}

function timed(act: () => unknown): number {
  const before = process.cpuUsage()
  act()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1_000
}

function row(cells: readonly string[]): void {
  process.stdout.write(`${cells.map((cell, at) => (at === 0 ? cell.padEnd(18) : cell.padStart(11))).join('')}\n`)
}
