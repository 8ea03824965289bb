import { agreementOf, byDay, mean } from '../core/stock-truth/figures.ts'
import type { Played, ShopKind } from '../core/stock-truth/shop-days.ts'
import { playShop } from '../core/stock-truth/shop-days.ts'

/**
 * What is left against simulated truth: how far a rod's number is from what is there, in shops that tell the board all,
 * some or none of their sales. Beside it the floor: the books alone, in the same days with the same counts.
 */
const SHOPS = Number(process.env.SHOPS ?? 24)
const DAYS = Number(process.env.DAYS ?? 8)
/** Days until counts have taught what can be learnt; the first day is told apart. */
const LEARNT_AFTER = 2

const KINDS: readonly (readonly [string, Omit<ShopKind, 'seed' | 'days' | 'sweeps'>])[] = [
  ['0 % tapped', { tapped: 0, others: 'unseen' }],
  ['25 % tapped', { tapped: 0.25, others: 'unseen' }],
  ['50 % tapped', { tapped: 0.5, others: 'unseen' }],
  ['75 % tapped', { tapped: 0.75, others: 'unseen' }],
  ['90 % tapped', { tapped: 0.9, others: 'unseen' }],
  ['100 % tapped', { tapped: 1, others: 'unseen' }],
  ['0 % named, rest without', { tapped: 0, others: 'unnamed' }],
  ['25 % named, rest without', { tapped: 0.25, others: 'unnamed' }],
  ['50 % named, rest without', { tapped: 0.5, others: 'unnamed' }],
  ['75 % named, rest without', { tapped: 0.75, others: 'unnamed' }],
  ['90 % named, rest without', { tapped: 0.9, others: 'unnamed' }],
]

process.stdout.write(
  `\nWhat is left, against simulated truth: ${SHOPS} shops, 28 varieties, days ${LEARNT_AFTER + 1} to ${DAYS} of each.\n` +
    'Pieces a rod. Swept: right after it was swept. Between: every 20 min, all rods with pieces. Books: the same without\n' +
    'the estimate. Bias: mean of likely − truth ± its standard error. Cover: truth within what the rod says (aim 80 %).\n\n',
)
row([
  'sales',
  'swept ≤3',
  'mean',
  'between',
  '9 in 10',
  'bias',
  'cover',
  'day 1',
  'books',
  'bias',
  'sweeps',
  'rods',
  'at close',
])
for (const [name, kind] of KINDS) {
  const played: Played[] = []
  for (let seed = 1; seed <= SHOPS; seed += 1) played.push(playShop({ ...kind, seed, days: DAYS, sweeps: true }))
  const isLearnt = (day: number) => day >= LEARNT_AFTER
  const swept = agreementOf(byDay(played, 'sweep', isLearnt))
  const looks = byDay(played, 'between', isLearnt)
  const between = agreementOf(looks)
  const first = agreementOf(byDay(played, 'between', (day) => day === 0))
  const books = agreementOf(looks, (look) => look.books)
  const aDay = (of: (one: Played) => readonly number[]) => mean(played.flatMap((one) => of(one).slice(LEARNT_AFTER)))
  row([
    name,
    percent(swept.within3),
    swept.off.toFixed(1),
    between.off.toFixed(1),
    String(between.offNine),
    `${signed(between.bias)} ± ${between.biasError.toFixed(2)}`,
    percent(between.covered),
    first.off.toFixed(1),
    books.off.toFixed(1),
    signed(books.bias),
    aDay((one) => one.sweeps).toFixed(1),
    aDay((one) => one.sweptRods).toFixed(1),
    aDay((one) => one.closeRods).toFixed(1),
  ])
}

function row(cells: readonly string[]): void {
  const widths = [26, 9, 6, 8, 8, 15, 7, 7, 7, 8, 8, 6, 9]
  process.stdout.write(
    `${cells.map((cell, n) => (n === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[n] ?? 0))).join(' ')}\n`,
  )
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}

function signed(value: number): string {
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(2)}`
}
