import { existsSync, readFileSync } from 'node:fs'
import type { BakeOff, BakePlan } from '../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../shared-core/plan/bake-off/plan-bake-off.ts'
import { wavesPlan } from '../../shared-core/plan/bake-off/waves.ts'
import { scorePlans } from '../reference/bake-off/score.ts'
import { largeShop, restOf } from './drawn-shops.ts'
import { median, ms, quantile } from './figures.ts'

/**
 * Processor time of a day's plan and of one made again two hours after opening, once the code is warm, beside what shops
 * do by habit (equal waves of 90 minutes) in the same run; and what ten times the work gains, which must be no loss.
 */
const SHOPS = 8
const TIMES = 15
const WARM_UPS = 20
/** The same customers for all plans of a shop: differences are far more exact than the scores. */
const DAYS = { days: 600, seed: 1 }
/** Two plans of nearly the same worth may come out either way in so few days. */
const NOISE = 0.001

const SAMPLES = new URL('../../../shared/data/plan/', import.meta.url)
const hasSamples = existsSync(SAMPLES)

process.stdout.write(
  '\nWhich loads when. Processor time; profit against equal waves of 90 minutes, and with ten times the work.\n',
)
if (!hasSamples)
  process.stdout.write('The public samples are not there (../shared/data/plan, beside the checkout): skipped.\n')
process.stdout.write('\n')
row(['shop', 'full plan', 'worst', 'again', 'worst', 'waves', 'over waves', 'again', '10x work', 'again'])
for (const [name, given] of hasSamples ? ['small', 'medium', 'large'].map(sample) : []) report(name, [given])
report(
  `${SHOPS} drawn, 28 × 5`,
  Array.from({ length: SHOPS }, (_, seed) => largeShop(seed + 1)),
)

function sample(name: string): readonly [string, BakeOff] {
  return [`sample ${name}`, JSON.parse(readFileSync(new URL(`${name}.json`, SAMPLES), 'utf8'))]
}

function report(name: string, shops: readonly BakeOff[]): void {
  const rests = shops.map((given) => restOf(given, planBakeOff(given).loads))
  const [full, again] = [timesOf(shops), timesOf(rests)]
  const waves = shops.map((given) => cpuMs(() => wavesPlan(given)))
  const [ofDays, ofRests] = [scores(shops), scores(rests)]
  row([
    name,
    ms(median(full)),
    ms(Math.max(...full)),
    ms(median(again)),
    ms(Math.max(...again)),
    ms(median(waves)),
    percent(ofDays.overWaves),
    percent(ofRests.overWaves),
    percent(ofDays.withMoreWork),
    percent(ofRests.withMoreWork),
  ])
  if (Math.min(ofDays.worst, ofRests.worst) < -NOISE) {
    process.stdout.write(
      `  with ten times the work a plan is worse by ${percent(-Math.min(ofDays.worst, ofRests.worst))}\n`,
    )
    process.exitCode = 1
  }
}

function timesOf(shops: readonly BakeOff[]): readonly number[] {
  for (let n = 0; n < WARM_UPS; n += 1) for (const given of shops.slice(0, 3)) planBakeOff(given)
  const runs = Math.ceil(TIMES / shops.length)
  return shops.flatMap((given) => Array.from({ length: runs }, () => cpuMs(() => planBakeOff(given))))
}

/** Shares of the waves' or the usual plan's profit: medians, and the worst of what more work does. */
function scores(shops: readonly BakeOff[]) {
  const gains = shops.map((given) => {
    const plans: BakePlan[] = [wavesPlan(given), planBakeOff(given), planBakeOff(given, 10)]
    const [waves = Number.NaN, usual = Number.NaN, more = Number.NaN] = scorePlans(given, plans, DAYS).map(
      ({ profit }) => profit,
    )
    return { overWaves: (usual - waves) / Math.abs(waves), withMoreWork: (more - usual) / Math.abs(usual) }
  })
  const more = gains.map(({ withMoreWork }) => withMoreWork)
  return {
    overWaves: median(gains.map(({ overWaves }) => overWaves)),
    withMoreWork: median(more),
    worst: quantile(more, 0),
  }
}

function cpuMs(run: () => unknown): number {
  const before = process.cpuUsage()
  run()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1_000
}

function percent(share: number): string {
  return `${share < 0 ? '' : '+'}${(100 * share).toFixed(2)} %`
}

function row(cells: readonly string[]): void {
  process.stdout.write(`${cells.map((cell, place) => cell.padEnd(place === 0 ? 20 : 11)).join('')}\n`)
}
