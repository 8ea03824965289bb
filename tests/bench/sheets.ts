import { dateAfter } from '../../shared-core/day/label.ts'
import type { State } from '../../shared-core/day/state.ts'
import { doughCalendar } from '../../shared-core/dough/calendar.ts'
import { dayPlan } from '../../shared-core/dough/day-plan.ts'
import type { WantedLine } from '../../shared-core/dough/mix.ts'
import { preparationsDue } from '../../shared-core/dough/preparations-due.ts'
import { sheetLines } from '../../shared-core/dough/scale.ts'
import { shortages } from '../../shared-core/dough/shortages.ts'
import { must } from '../../shared-core/support.ts'
import { bigShop, bigState, FIRST, FORMULAS, noonOf, VARIETIES } from './big-dough-room.ts'
import { median, quantile } from './figures.ts'

/**
 * A day's sheets after an edit: processor time of what a desk reckons anew when somebody types one number, in a shop of 28
 * varieties and 12 formulas with a full cooler and two weeks typed ahead. Beside it the floor: each line of the same sheets
 * as one product of flour and percent, without need, rounding or splitting, in the same run.
 */
const EDITS = 300
const WARM_UP = 60
const MOST_MS = 16

const shop = bigShop()
const tomorrow = dateAfter(FIRST, 1)

/** One number typed in the table of a day. */
function edited(state: State, n: number): State {
  const wanted = must(state.wanted, tomorrow)
  const lines = wanted.lines.map((line: WantedLine, at) =>
    at === n % wanted.lines.length ? { ...line, pieces: 24 + n } : line,
  )
  return { ...state, wanted: new Map(state.wanted).set(tomorrow, { date: tomorrow, lines }) }
}

function sheets(state: State): number {
  const { mixes } = dayPlan(state, shop, tomorrow, noonOf)
  return mixes.reduce((sum, { formulaId, flourMilligrams }) => {
    return sum + sheetLines(shop, must(shop.formulas, formulaId), flourMilligrams).length
  }, 0)
}

/** Too quick for the clock: a thousand times over, told as one. */
const FLOORS = 1_000
function floor(): number {
  let sum = 0
  for (let n = 0; n < FLOORS; n += 1)
    for (const { lines } of shop.formulas.values())
      for (const { percent } of lines) sum += ((12_345_678 + n) * percent) / 100_000
  return sum
}

const PARTS: readonly (readonly [string, (state: State) => unknown])[] = [
  ['floor: products only', floor],
  ['sheets of a day', sheets],
  ['calendar of 14 days', (state) => doughCalendar(state, shop, FIRST, 14, noonOf)],
  ['preparations due', (state) => preparationsDue(state, shop, state.recordedAtMs, FIRST, noonOf)],
  ['short over 7 days', (state) => shortages(state, shop, FIRST, 7, noonOf)],
]

process.stdout.write(
  `\nA day's sheets after an edit: ${VARIETIES} varieties, ${FORMULAS} formulas. Processor time of each of ${EDITS} edits, ` +
    `${sheets(bigState(shop))} lines on its sheets.\n\n`,
)
for (const [name, reckon] of PARTS) {
  const times = timed(reckon).map((time) => (reckon === floor ? time / FLOORS : time))
  process.stdout.write(`${name.padEnd(22)} median ${told(median(times))}   99 % ${told(quantile(times, 0.99))}\n`)
  if (name === 'sheets of a day' && median(times) > MOST_MS) {
    process.stdout.write(`${name} took more than ${MOST_MS} ms\n`)
    process.exitCode = 1
  }
}

function timed(reckon: (state: State) => unknown): number[] {
  let state = bigState(shop)
  const times: number[] = []
  for (let n = 0; n < WARM_UP + EDITS; n += 1) {
    state = edited(state, n)
    const before = process.cpuUsage()
    reckon(state)
    const { user, system } = process.cpuUsage(before)
    if (n >= WARM_UP) times.push((user + system) / 1_000)
  }
  return times
}

function told(milliseconds: number): string {
  return `${milliseconds.toFixed(4)} ms`.padStart(11)
}
