import { dateAfter } from '../../shared-core/day/label.ts'
import { Learner } from '../../shared-core/demand/learner.ts'
import type { SalesDay } from '../../shared-core/demand/sales-day.ts'
import { madeDays } from '../core/demand/made-days.ts'
import { median, ms, quantile } from './figures.ts'

/**
 * Processor time of demand, after warm-up: two years of 28 varieties learnt, and what is left of a day for all of them as
 * after each sale. Aims: under 1 s, and under 2 ms. Floor of the first: the same purchases summed by variety and quarter of
 * an hour, which any profile needs.
 */
const VARIETIES = 28
const DAYS = 730
const FROM = '2024-01-01'
const UPDATES = 500

const customers = Object.fromEntries(Array.from({ length: VARIETIES }, (_, at) => [`variety-${at}`, 6 + 2 * at]))
const days = madeDays({ from: FROM, days: DAYS, customers, stock: 90 })
const guesses = Object.keys(customers).map((id) => ({ id, group: 'plain', usual: 40 }))
const purchases = days.reduce(
  (sum, { items }) => sum + [...items.values()].reduce((all, { sold }) => all + sold.length, 0),
  0,
)

for (let warm = 0; warm < 2; warm += 1) learnt()
const fits = Array.from({ length: 5 }, () => cpuMs(learnt))
const floors = Array.from({ length: 5 }, () => cpuMs(() => summed(days)))
say(`\nDemand, ${VARIETIES} varieties, ${DAYS} days, ${purchases} purchases. Processor time.\n`)
say(`fit            ${ms(median(fits))}   floor ${ms(median(floors))}   aim 1000 ms`)

const learner = learnt()
const date = dateAfter(FROM, DAYS)
const [today] = madeDays({ from: date, days: 1, seed: 2, customers })
if (today !== undefined) {
  const ahead = learner.ahead(today)
  const update = (at: number) => learner.rest(ahead, upTo(today, 360 + at), 360 + at)
  for (let at = 0; at < UPDATES; at += 1) update(at % 480)
  const each = Array.from({ length: UPDATES }, (_, at) => wallMs(() => update(at % 480)))
  say(
    `rest of day    ${ms(median(each))}   9 in 10 ${ms(quantile(each, 0.9))}   most ${ms(Math.max(...each))}   aim 2 ms`,
  )
}

function learnt(): Learner {
  const made = new Learner(guesses)
  for (const day of days) made.learn(day)
  return made
}

function summed(all: readonly SalesDay[]): Map<string, Float64Array> {
  const sums = new Map<string, Float64Array>()
  for (const { items } of all) {
    for (const [id, { sold }] of items) {
      const bins = sums.get(id) ?? new Float64Array(96)
      sums.set(id, bins)
      for (const { minute, pieces } of sold)
        bins[Math.floor(minute / 15)] = (bins[Math.floor(minute / 15)] ?? 0) + pieces
    }
  }
  return sums
}

function upTo(day: SalesDay, minute: number): SalesDay {
  const items = [...day.items].map(
    ([id, item]) => [id, { ...item, sold: item.sold.filter((p) => p.minute < minute) }] as const,
  )
  return { ...day, items: new Map(items) }
}

function cpuMs(work: () => unknown): number {
  const start = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1_000
}

/** Processor time is counted in steps too coarse for one update. */
function wallMs(work: () => unknown): number {
  const start = performance.now()
  work()
  return performance.now() - start
}

function say(line: string): void {
  process.stdout.write(`${line}\n`)
}
