import type { DaysRow } from '../../server/forecast/days-task.ts'
import type { RunOutRow } from '../../server/forecast/run-out-task.ts'
import type { SoldOutRow } from '../../server/forecast/sold-out-task.ts'
import type { Till } from '../../server/forecast/till.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { pinball, wape } from '../../shared-core/demand/accuracy.ts'

/**
 * The scores of the open data's own scoring script (../shared/data/score.py), worked out again: what each figure means
 * stands in the README beside it. Checked by hand to be the script's, to its last digit.
 */
export interface DaysScore {
  readonly rows: number
  readonly wape: number
  readonly mase: number
  readonly pin50: number
  readonly pin80: number
  readonly pin90: number
  /** Mean of the three: the headline. */
  readonly pinAvg: number
  readonly pinScaled: number
  readonly inside80: number
  readonly width80: number
  /** P(y < q) and P(y ≤ q). */
  readonly held80: readonly [number, number]
  readonly held90: readonly [number, number]
  readonly crossed: number
  /** Sum of the three losses, by day. */
  readonly lossByDay: ReadonlyMap<string, number>
}

const LEVELS = [0.1, 0.5, 0.8, 0.9] as const

/** Pieces sold of an item on a date from a minute on. */
export function soldFrom(till: Till, date: string, item: string, minute = 0): number {
  const sold = till.days.get(date)?.get(item) ?? []
  return sold.reduce((sum, purchase) => sum + (purchase.minute >= minute ? purchase.pieces : 0), 0)
}

/** Scores forecasts of one kind: all of whole days, or all from one minute on. @param from first date of the window */
export function scoreDays(till: Till, from: string, rows: readonly DaysRow[]): DaysScore {
  const scaleOf = scales(till, from, new Set(rows.map(({ item }) => item)))
  const judged = rows.map(({ date, item, asOf, quantiles }) => {
    const came = soldFrom(till, date, item, asOf ?? 0)
    const losses = LEVELS.map((level, at) => pinball(came, quantiles[at] ?? Number.NaN, level))
    const [q10 = 0, q50 = 0, q80 = 0, q90 = 0] = quantiles
    return { date, item, came, q10, q50, q80, q90, losses, scale: scaleOf.get(item) ?? null }
  })
  const mean = (of: (row: (typeof judged)[number]) => number, some = judged) =>
    some.reduce((sum, row) => sum + of(row), 0) / some.length
  const [pin50, pin80, pin90] = [1, 2, 3].map((at) => mean(({ losses }) => losses[at] ?? 0)) as [number, number, number]
  const scaled = judged.filter(({ scale }) => scale !== null)
  const items = [...new Set(scaled.map(({ item }) => item))]
  const ofThree = (losses: readonly number[]) => losses.slice(1).reduce((sum, loss) => sum + loss, 0)
  const lossByDay = new Map<string, number>()
  for (const { date, losses } of judged) lossByDay.set(date, (lossByDay.get(date) ?? 0) + ofThree(losses))
  return {
    rows: judged.length,
    wape:
      wape(
        judged.map(({ came }) => came),
        judged.map(({ q50 }) => q50),
      ) ?? Number.NaN,
    mase:
      items.reduce((sum, item) => {
        const some = scaled.filter((row) => row.item === item)
        return sum + mean(({ came, q50, scale }) => Math.abs(came - q50) / (scale ?? 1), some)
      }, 0) / items.length,
    pin50,
    pin80,
    pin90,
    pinAvg: (pin50 + pin80 + pin90) / 3,
    pinScaled: mean(({ losses, scale }) => ofThree(losses) / 3 / (scale ?? 1), scaled),
    inside80: mean(({ came, q10, q90 }) => Number(came >= q10 && came <= q90)),
    width80: mean(({ q10, q90 }) => q90 - q10),
    held80: [mean(({ came, q80 }) => Number(came < q80)), mean(({ came, q80 }) => Number(came <= q80))],
    held90: [mean(({ came, q90 }) => Number(came < q90)), mean(({ came, q90 }) => Number(came <= q90))],
    crossed: judged.filter(({ q10, q50, q80, q90 }) => q10 > q50 || q50 > q80 || q80 > q90).length,
    lossByDay,
  }
}

/** By item, the mean |y_t − y_(t − 7 days)| before the window, from the item's first sale on; null where it has none. */
function scales(till: Till, from: string, items: ReadonlySet<string>): ReadonlyMap<string, number | null> {
  const before = till.dates.filter((date) => date < from)
  return new Map(
    [...items].map((item) => {
      const first = till.dates.find((date) => soldFrom(till, date, item) > 0) ?? '9'
      const steps = before.flatMap((date) => {
        const weekAgo = dateAfter(date, -7)
        if (!till.days.has(weekAgo) || weekAgo < first) return []
        return [Math.abs(soldFrom(till, date, item) - soldFrom(till, weekAgo, item))]
      })
      const sum = steps.reduce((total, step) => total + step, 0)
      return [item, sum > 0 ? sum / steps.length : null]
    }),
  )
}

export interface SoldOutScore {
  readonly rows: number
  /** Sum of estimates over sum of demand, less 1; its size by item, in the mean. */
  readonly bias: number
  readonly itemBias: number
  readonly mae: number
  readonly rmse: number
}

/** What was true, and whether the day was cut by a sell-out. */
export interface Truth {
  readonly date: string
  readonly item: string
  readonly demand: number
  readonly isCut: boolean
}

export function scoreSoldOut(
  truths: readonly Truth[],
  rows: readonly SoldOutRow[],
  which: 'cut' | 'all',
): SoldOutScore {
  const estimates = new Map(rows.map(({ date, item, demand }) => [`${date} ${item}`, demand]))
  const pairs = truths
    .filter(({ isCut }) => isCut || which === 'all')
    .map(({ date, item, demand }) => ({ item, demand, estimate: estimates.get(`${date} ${item}`) ?? Number.NaN }))
  const bias = (some: typeof pairs) =>
    some.reduce((sum, { estimate }) => sum + estimate, 0) / some.reduce((sum, { demand }) => sum + demand, 0) - 1
  const items = [...new Set(pairs.map(({ item }) => item))]
  const errors = pairs.map(({ demand, estimate }) => estimate - demand)
  return {
    rows: pairs.length,
    bias: bias(pairs),
    itemBias:
      items.reduce((sum, one) => sum + Math.abs(bias(pairs.filter(({ item }) => item === one))), 0) / items.length,
    mae: errors.reduce((sum, error) => sum + Math.abs(error), 0) / errors.length,
    rmse: Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length),
  }
}

export interface RunOutScore {
  readonly rows: number
  readonly hitRate: number
  readonly falseAlarm: number
  readonly maeMinutes: number
  readonly pinballMinutes: number
  readonly inside80: number
}

/** A run-out that came: null is not before close. */
export interface CameOut {
  readonly close: number
  readonly runOut: number | null
}

/** @param came in the order of `rows` */
export function scoreRunOut(rows: readonly RunOutRow[], came: readonly CameOut[]): RunOutScore {
  const judged = rows.map(({ t10, t50, t90 }, at) => {
    const { close, runOut } = came[at] ?? { close: 0, runOut: null }
    // The script reads whole minutes.
    const times = [t10, t50, t90].map((time) => (time === null ? close : Math.min(Math.floor(time), close)))
    return { y: runOut ?? close, isOut: runOut !== null, isSaid: t50 !== null, times }
  })
  const outs = judged.filter(({ isOut }) => isOut)
  const others = judged.filter(({ isOut }) => !isOut)
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  return {
    rows: judged.length,
    hitRate: mean(outs.map(({ isSaid }) => Number(isSaid))),
    falseAlarm: mean(others.map(({ isSaid }) => Number(isSaid))),
    maeMinutes: mean(outs.map(({ y, times }) => Math.abs(y - (times[1] ?? 0)))),
    pinballMinutes: mean(
      judged.map(({ y, times }) => mean([0.1, 0.5, 0.9].map((level, at) => pinball(y, times[at] ?? 0, level)))),
    ),
    inside80: mean(judged.map(({ y, times }) => Number(y >= (times[0] ?? 0) && y <= (times[2] ?? 0)))),
  }
}

/**
 * How much less one loses than another, days paired: 90 % interval of the ratio less 1, by bootstrap over days.
 * @param draw whole numbers from 0 to below n
 */
export function bootstrapped(
  ours: ReadonlyMap<string, number>,
  theirs: ReadonlyMap<string, number>,
  draw: (n: number) => number,
): { readonly ratio: number; readonly low: number; readonly high: number; readonly daysBetter: number } {
  const days = [...ours].map(([date, loss]) => ({ loss, other: theirs.get(date) ?? Number.NaN }))
  const ratioOf = (some: typeof days) =>
    some.reduce((sum, { loss }) => sum + loss, 0) / some.reduce((sum, { other }) => sum + other, 0) - 1
  const ratios = Array.from({ length: 2000 }, () =>
    ratioOf(days.map(() => days[draw(days.length)] ?? { loss: 0, other: 0 })),
  )
  ratios.sort((one, other) => one - other)
  return {
    ratio: ratioOf(days),
    low: ratios[100] ?? Number.NaN,
    high: ratios[1899] ?? Number.NaN,
    daysBetter: days.filter(({ loss, other }) => loss < other).length,
  }
}
