import type { MixTask, OrderRules } from '../../shared-core/dough/order.ts'
import { mixingOrder, orderCost } from '../../shared-core/dough/order.ts'
import type { DayKind } from '../core/dough/order-maker.ts'
import { dayOf, drawnDay, plainDay } from '../core/dough/order-maker.ts'
import { median, ms, quantile } from './figures.ts'

/**
 * Processor time of the mixing order after warm-up, beside the floor: the same orders reckoned once, without a search; and
 * what it costs beside a plain rule, the soonest latest start first. Aims: twelve mixes exact in under 100 ms, thirty in
 * under 300 ms.
 */
const DAYS = Number(process.env.DAYS ?? 40)
const MINUTE_MS = 60_000
const KINDS: readonly (readonly [string, DayKind & { readonly spread?: number }])[] = [
  ['12 of 6, in time', { mixes: 12, formulas: 6, isEven: false, proofTrays: null, due: 420 }],
  ['12 of 6, tight', { mixes: 12, formulas: 6, isEven: false, proofTrays: null, due: 330 }],
  ['12 of 6, little room', { mixes: 12, formulas: 6, isEven: false, proofTrays: 48, due: 420 }],
  ['12 of 12, in time', { mixes: 12, formulas: 12, isEven: false, proofTrays: null, due: 420 }],
  ['12 of 12, tight', { mixes: 12, formulas: 12, isEven: false, proofTrays: null, due: 330 }],
  ['12 of 12, little room', { mixes: 12, formulas: 12, isEven: false, proofTrays: 48, due: 420 }],
  ['12 plain, late', { mixes: 12, formulas: 12, isEven: true, proofTrays: null, due: 240, spread: 120 }],
  ['12 plain, hours late', { mixes: 12, formulas: 12, isEven: true, proofTrays: null, due: 120, spread: 60 }],
  ['12 plain, some bulks', { mixes: 12, formulas: 12, isEven: false, proofTrays: null, due: 260, spread: 120 }],
  ['12 plain, little room', { mixes: 12, formulas: 12, isEven: true, proofTrays: 36, due: 260, spread: 60 }],
  ['30 of 8, in time', { mixes: 30, formulas: 8, isEven: false, proofTrays: null, due: 720 }],
  ['30 of 12, tight', { mixes: 30, formulas: 12, isEven: false, proofTrays: null, due: 600 }],
  ['30 of 12, little room', { mixes: 30, formulas: 12, isEven: false, proofTrays: 100, due: 720 }],
]

process.stdout.write(`\nMixing order, ${DAYS} drawn days of each kind. Processor time; floor: one order reckoned.\n\n`)
row(['mixes of formulas', 'median', '9 in 10', 'most', 'floor', 'exact', 'washes', 'by rule', 'late min', 'by rule'])
for (const [name, kind] of KINDS) {
  const days = Array.from({ length: DAYS }, (_, seed) => dayOf(drawn(seed + 1, kind)))
  for (const { tasks, rules } of days.slice(0, 5)) mixingOrder(tasks, rules)
  const found = days.map(({ tasks, rules }) => timed(() => mixingOrder(tasks, rules)))
  const ruled = days.map(({ tasks, rules }) => timed(() => bySoonest(tasks, rules)))
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const times = found.map(({ cpuMs }) => cpuMs)
  row([
    name,
    ms(median(times)),
    ms(quantile(times, 0.9)),
    ms(Math.max(...times)),
    ms(median(ruled.map(({ cpuMs }) => cpuMs))),
    `${found.filter(({ value }) => value.how === 'exact').length}/${DAYS}`,
    mean(found.map(({ value }) => value.washes)).toFixed(1),
    mean(ruled.map(({ value }) => value.washes)).toFixed(1),
    mean(found.map(({ value }) => value.latenessMs / MINUTE_MS)).toFixed(0),
    mean(ruled.map(({ value }) => value.latenessMs / MINUTE_MS)).toFixed(0),
  ])
}

/** With a spread of due times: without anything that allergens or flavours decide. */
function drawn(seed: number, { spread, ...kind }: DayKind & { readonly spread?: number }) {
  return spread === undefined ? drawnDay(seed, kind) : plainDay(seed, kind, spread)
}

/** No order given: the mixes come by their latest comfortable start. */
function bySoonest(tasks: readonly MixTask[], rules: OrderRules) {
  return orderCost(tasks, [], rules)
}

function timed<Value>(run: () => Value): { readonly value: Value; readonly cpuMs: number } {
  const before = process.cpuUsage()
  const value = run()
  const { user, system } = process.cpuUsage(before)
  return { value, cpuMs: (user + system) / 1_000 }
}

function row(cells: readonly string[]): void {
  process.stdout.write(`${cells.map((cell, place) => cell.padEnd(place === 0 ? 24 : 11)).join('')}\n`)
}
