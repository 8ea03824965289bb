import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import type { BakeLoad, BakeOff } from '../../shared-core/plan/bake-off/bake-off.ts'
import { wavesPlan } from '../../shared-core/plan/bake-off/waves.ts'
import type { Morning } from './morning.ts'
import { morningOf, profitOf } from './morning.ts'
import type { Followed } from './ways.ts'
import { eveningPlan, livePlan, lowestFirst } from './ways.ts'

/**
 * What live advice is worth: `npm run mornings -- INSTANCE.json … [--mornings 100] [--common 0.15] [--each 0.2] [--gain 0,200]`. On
 * simulated mornings whose demand is away from the forecast, the same customers meet each way of baking.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    mornings: { type: 'string', default: '100' },
    common: { type: 'string', default: '0.15' },
    each: { type: 'string', default: '0.2' },
    /** What a change of the next load must gain, in cents; several, comma between. */
    gain: { type: 'string', default: '0,200' },
  },
})
const away = { common: Number(values.common), each: Number(values.each) }

const WAYS: readonly (readonly [string, (morning: Morning) => Followed])[] = [
  ['equal waves of 90 min', ({ given }) => ({ loads: wavesPlan(given).loads as BakeLoad[], plans: 1, changes: 0 })],
  ['lowest rod first', (morning) => lowestFirst(morning)],
  ['the evening’s plan', eveningPlan],
  ...values.gain.split(',').map((cents) => {
    const way = (morning: Morning) => livePlan(morning, Number(cents))
    return [`live, changed for ${cents} c`, way] as const
  }),
]

for (const file of positionals) {
  const given = inCents(JSON.parse(readFileSync(file, 'utf8')))
  const count = Number(values.mornings)
  const rows = WAYS.map(([name, way]) => {
    const profits: number[] = []
    let [plans, changes] = [0, 0]
    for (let n = 1; n <= count; n += 1) {
      const morning = morningOf(given, n, away, normal(n))
      const followed = way(morning)
      profits.push(profitOf(morning, followed.loads))
      plans += followed.plans
      changes += followed.changes
    }
    return { name, profits, share: plans === 0 ? 0 : changes / plans }
  })
  const base = rows[0]?.profits ?? []
  process.stdout.write(`${file}: ${count} mornings\n`)
  for (const { name, profits, share } of rows) {
    const more = profits.map((one, n) => one - (base[n] ?? 0))
    const changed = share === 0 ? '' : `, next load changed in ${(100 * share).toFixed(1)} % of plans`
    process.stdout.write(
      `  ${name.padEnd(24)} ${money(mean(profits)).padStart(9)}  ${money(mean(more)).padStart(8)} ± ${money(error(more))}${changed}\n`,
    )
  }
}

/** The samples have money in whole units; what a change must gain is in cents. */
function inCents(given: BakeOff): BakeOff {
  const cents = ({ price, cost, salvage, lostSale, stalePerHour, ...rest }: BakeOff['varieties'][number]) => ({
    ...rest,
    ...{ price: price * 100, cost: cost * 100, salvage: salvage * 100, lostSale: lostSale * 100 },
    stalePerHour: stalePerHour * 100,
  })
  return { ...given, varieties: given.varieties.map(cents) }
}

function money(cents: number): string {
  return (cents / 100).toFixed(2)
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, one) => sum + one, 0) / Math.max(1, values.length)
}

function error(values: readonly number[]): number {
  const middle = mean(values)
  return Math.sqrt(
    values.reduce((sum, one) => sum + (one - middle) ** 2, 0) /
      Math.max(1, values.length - 1) /
      Math.max(1, values.length),
  )
}

/** Numbers of a standard normal law, the same for the same seed (mulberry32, twelve of them summed). */
function normal(seed: number): () => number {
  let state = Math.imul(seed, 0x9e3779b1)
  const next = () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  return () => Array.from({ length: 12 }, next).reduce((sum, one) => sum + one, -6)
}
