import { parseArgs } from 'node:util'
import type { Bug } from './options.ts'
import { BUGS, drawnOptions } from './options.ts'
import { World } from './world.ts'

/** `npm run days -- --days 20 --seed 1 --minutes 600`: as many simulated days as wanted, and how often each fault fired. */
const HELP = `npm run days -- [--days N] [--seed S] [--minutes M] [--bug NAME]
  --days     how many days, each with the next seed (10)
  --seed     the first seed (chosen by the clock)
  --minutes  how long people work before all is calm again (120)
  --bug      a planted bug that the checks must find: ${BUGS.slice(1).join(', ')}`

const { values } = parseArgs({
  options: {
    days: { type: 'string', default: '10' },
    seed: { type: 'string', default: String(Date.now() % 2 ** 32) },
    minutes: { type: 'string', default: '120' },
    bug: { type: 'string', default: 'none' },
    help: { type: 'boolean', default: false },
  },
})
const [days, seed, minutes] = [values.days, values.seed, values.minutes].map(Number)
const bug = BUGS.find((one) => one === values.bug)

if (values.help || bug === undefined || !isCount(days) || !isCount(minutes) || seed === undefined || !(seed >= 0)) {
  console.log(HELP)
  process.exitCode = values.help ? 0 : 1
} else process.exitCode = (await runDays(days, seed, minutes, bug)) ? 0 : 1

async function runDays(count: number, firstSeed: number, length: number, planted: Bug): Promise<boolean> {
  const totals = new Map<string, number>()
  for (let at = firstSeed; at < firstSeed + count; at += 1) {
    const beganMs = performance.now()
    const world = new World({ ...drawnOptions(at, length), bug: planted })
    const trouble = await world.run()
    const { entries, taken, refused, asked } = world.checks.counts
    console.log(
      `seed ${at}: ${entries} entries, ${taken} taken, ${refused} refused, ${asked} asked back, ${Math.round(performance.now() - beganMs)} ms`,
    )
    for (const [kind, times] of world.story.faults) totals.set(kind, (totals.get(kind) ?? 0) + times)
    if (trouble === null) continue
    console.log(`\n${trouble}`)
    return false
  }
  console.log(`\nAll ${count} days held. Faults fired:`)
  for (const [kind, times] of [...totals].sort()) console.log(`  ${kind.padEnd(20)} ${times}`)
  return true
}

function isCount(value: number | undefined): value is number {
  return value !== undefined && Number.isSafeInteger(value) && value > 0
}
