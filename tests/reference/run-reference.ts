import { daysTask, readItems } from '../../server/forecast/days-task.ts'
import { minuteOf } from '../../server/forecast/fields.ts'
import { readCases, runOutTask } from '../../server/forecast/run-out-task.ts'
import { readSoldOut, soldOutTask } from '../../server/forecast/sold-out-task.ts'
import type { Till } from '../../server/forecast/till.ts'
import { REST, RUN_OUT, SOLD_OUT, WHOLE_DAY } from './forecast-bars.ts'
import { cameOut, FOLDER_NAME, hasData, pathOf, TRAINING_END, tillOf, truthsOf, VALIDATION } from './forecast-data.ts'
import type { DaysScore } from './forecast-score.ts'
import { bootstrapped, scoreDays, scoreRunOut, scoreSoldOut } from './forecast-score.ts'
import { weekdayMeans } from './forecast-simple.ts'
import { queueingReport, quotesReport } from './queueing-report.ts'

// `npm run reference`: the four tasks on the open data, our figures above those of the references, best first. Of these
// only the figures are published, not their days, so that intervals are against a simple way worked out here. Then the
// kitchen's simulator as a queue, which needs no data.

const DAYS = ['wape', 'mase', 'pin50', 'pin80', 'pin90', 'pinAvg', 'pinScaled', 'inside80', 'held80', 'held90'] as const

if (hasData()) await all()
else console.log(`Skipped: the open data are not there. They lie in ${FOLDER_NAME}, beside the checkout.`)

for (const line of queueingReport()) console.log(line)
for (const line of quotesReport()) console.log(line)

async function all(): Promise<void> {
  const till = await tillOf('sales_public.csv.gz')
  const items = await readItems(pathOf('items.csv'))
  const asOf = Object.keys(REST).map((time) => minuteOf(time) ?? 0)
  for (const window of [VALIDATION, TRAINING_END]) {
    const rows = [...daysTask(till, items, { ...window, asOf })]
    const isValidation = window === VALIDATION
    const ofKind = (minute: number | null) =>
      scoreDays(
        till,
        window.from,
        rows.filter((row) => row.asOf === minute),
      )
    const whole = ofKind(null)
    heading(`Whole day, one day ahead, ${window.from} to ${window.to}`)
    show(DAYS, { ours: whole, ...(isValidation ? WHOLE_DAY : {}) })
    paired(till, items, window, whole)
    for (const [time, references] of Object.entries(REST)) {
      heading(`Rest of the day from ${time}, ${window.from} to ${window.to}`)
      show(DAYS, { ours: ofKind(minuteOf(time)), ...(isValidation ? references : {}) })
    }
  }
  await soldOut()
  await runOuts(till)
}

/** Days paired with the mean of the last four same weekdays. */
function paired(till: Till, items: readonly string[], window: { from: string; to: string }, ours: DaysScore): void {
  const simple = scoreDays(till, window.from, weekdayMeans(till, items, window))
  const { ratio, low, high, daysBetter } = bootstrapped(ours.lossByDay, simple.lossByDay, drawn(1))
  console.log(
    `\nPinball loss against the mean of the last four same weekdays (${simple.pinAvg.toFixed(4)}, worked out here): ` +
      `${percent(ratio)}, 90 % interval ${percent(low)} to ${percent(high)}, better on ${daysBetter} of ${ours.lossByDay.size} days`,
  )
}

async function soldOut(): Promise<void> {
  for (const mechanism of ['A', 'B'] as const) {
    const till = await tillOf(`censored_public_sales_${mechanism}.csv.gz`)
    const cases = await readSoldOut(pathOf('censored_public_soldout.csv'), mechanism)
    const ours = scoreSoldOut(await truthsOf(mechanism), [...soldOutTask(till, cases)], 'cut')
    heading(`Sell-outs, mechanism ${mechanism}, days that were cut`)
    show(['bias', 'itemBias', 'mae', 'rmse'], { ours, ...SOLD_OUT[mechanism] })
  }
}

async function runOuts(till: Till): Promise<void> {
  const rows = [...runOutTask(till, await readCases(pathOf('runout_public_truth.csv')))]
  heading('Run-out times')
  const columns = ['hitRate', 'falseAlarm', 'maeMinutes', 'pinballMinutes', 'inside80'] as const
  show(columns, { ours: scoreRunOut(rows, await cameOut()), ...RUN_OUT })
}

function heading(text: string): void {
  console.log(`\n${text}\n`)
}

/** A table of figures by method; '-' where one is not published. */
function show(columns: readonly string[], methods: Readonly<Record<string, object>>): void {
  const lines = [
    ['method', ...columns],
    ...Object.entries(methods).map(([name, figures]) => {
      const known = new Map<string, unknown>(Object.entries(figures))
      return [name, ...columns.map((column) => figure(known.get(column)))]
    }),
  ]
  const widths = lines[0]?.map((_, at) => Math.max(...lines.map((line) => line[at]?.length ?? 0))) ?? []
  for (const line of lines) {
    console.log(
      line.map((cell, at) => (at === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[at] ?? 0))).join('  '),
    )
  }
}

function figure(value: unknown): string {
  if (typeof value === 'number') return value.toFixed(4)
  return Array.isArray(value) ? value.map((part: number) => part.toFixed(2)).join('-') : '-'
}

function percent(part: number): string {
  return `${part > 0 ? '+' : ''}${(100 * part).toFixed(1)} %`
}

/** Whole numbers below n, the same each time: a 32-bit linear congruential generator (Numerical Recipes, section 7.1). */
function drawn(seed: number): (n: number) => number {
  let state = seed
  return (n) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 2 ** 32) * n)
  }
}
