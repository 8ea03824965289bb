import { parseArgs } from 'node:util'
import type { Outcome } from './fuzz.ts'
import { fuzzAll } from './in-process.ts'
import { fuzzNetwork } from './network/over-network.ts'

/** Bad input by the million, and what must hold for each case of it. */
const HELP = `npm run fuzz -- [--cases N] [--network N] [--seed S]
  --cases    in this process: readers, and a shop at work (1000000)
  --network  over HTTP and sockets, on one server (20000)
  --seed     what is drawn (chosen by the clock); the same seed draws the same cases`

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '1000000' },
    network: { type: 'string', default: '20000' },
    seed: { type: 'string', default: String(Date.now() % 2 ** 31) },
    help: { type: 'boolean', default: false },
  },
})
const [cases, network, seed] = [Number(values.cases), Number(values.network), Number(values.seed)]
if (values.help || ![cases, network, seed].every((one) => Number.isSafeInteger(one) && one >= 0)) {
  console.log(HELP)
  process.exitCode = values.help ? 0 : 1
} else process.exitCode = (await run()) ? 0 : 1

async function run(): Promise<boolean> {
  console.log(`seed ${seed}`)
  const inside = cases === 0 ? [] : fuzzAll({ cases, seed }, sayOutcome)
  const outside = network === 0 ? [] : await fuzzNetwork({ cases: network, seed }, sayOutcome)
  const all = [...inside, ...outside]
  const [count, ms] = [all.reduce((sum, one) => sum + one.cases, 0), all.reduce((sum, one) => sum + one.ms, 0)]
  const finds = all.filter(({ find }) => find !== null)
  console.log(`${count} cases, ${Math.round((count / ms) * 1_000)} a second, ${finds.length} finds, seed ${seed}`)
  return finds.length === 0
}

function sayOutcome({ target, cases: count, ms, counts, slowestMs, find }: Outcome): void {
  const words = [...counts].sort(([, one], [, other]) => other - one).map(([word, many]) => `${word} ${many}`)
  const rate = Math.round((count / ms) * 1_000)
  console.log(
    `${target}: ${count} cases, ${rate} a second, the slowest ${slowestMs.toFixed(1)} ms. ${words.join(', ')}`,
  )
  const memory = Math.round(process.memoryUsage().heapUsed / 2 ** 20)
  console.log(`  heap ${memory} MB`)
  if (find !== null) console.log(`FIND in ${target}:\n${find}`)
}
