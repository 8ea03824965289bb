import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { ForeignCpu, median, quantile } from '../bench/figures.ts'
import { bundleServer, ROOT } from '../server/support/server-program.ts'
import { judgeDamages, sayDamages } from './damage-run.ts'
import type { Round } from './shop-under-load.ts'
import { BUILD_ID, freePort, KILLING_SQLITE, ShopUnderLoad } from './shop-under-load.ts'

/** The real server killed at random moments under load, and what must hold after each kill. */
const HELP = `npm run kills -- [--kills N] [--damage N] [--seed S]
  --kills  how many times the server is killed (100)
  --damage instead: so many damaged journals, each started and verified
  --seed   what is drawn: moments, acts, pauses (chosen by the clock). The machine's own timing is not repeated.`

/** A new shop now and then: first starts are killed too, and a look at the whole file stays quick. */
const KILLS_A_SHOP = 50

for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(1))

const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '100' },
    damage: { type: 'string' },
    seed: { type: 'string', default: String(Date.now() % 2 ** 32) },
    help: { type: 'boolean', default: false },
  },
})
const [kills, seed, damage] = [values.kills, values.seed, values.damage ?? '0'].map(Number)
if (values.help || kills === undefined || seed === undefined || ![kills, seed, damage].every(Number.isSafeInteger)) {
  console.log(HELP)
  process.exitCode = values.help ? 0 : 1
} else if (values.damage === undefined) process.exitCode = (await run(kills, seed)) ? 0 : 1
else process.exitCode = sayDamages(await judgeDamages(damage ?? 0, seed, 1), console.log) ? 0 : 1

async function run(kills: number, seed: number): Promise<boolean> {
  const cache = join(ROOT, 'node_modules', '.cache', `boilboard-kills-${process.pid}`)
  const folder = mkdtempSync(join(tmpdir(), 'boilboard-kills-'))
  mkdirSync(cache, { recursive: true })
  const program = join(cache, 'server.mjs')
  const sqlite = await loadSqlite()
  const rounds: Round[] = []
  const cpu = new ForeignCpu([])
  let entries = 0
  let answers = 0
  try {
    await bundleServer(program, BUILD_ID, KILLING_SQLITE)
    for (let shopNumber = 0; rounds.length < kills; shopNumber += 1) {
      const own = { folder: join(folder, `shop-${shopNumber}`), port: await freePort(), seed: seed + shopNumber }
      const shop = new ShopUnderLoad({ sqlite, program, ...own })
      const most = Math.min(kills, rounds.length + KILLS_A_SHOP)
      while (rounds.length < most && shop.ledger.troubles.length === 0) {
        const round = await shop.round()
        rounds.push(round)
        console.log(told(rounds.length, round, shop.ledger.entries))
      }
      await shop.end()
      entries += shop.ledger.entries
      answers += shop.ledger.answered.size
      if (shop.ledger.troubles.length > 0) {
        console.log(`\nSeed ${seed + shopNumber}, files in ${own.folder}:\n${shop.ledger.troubles.join('\n')}`)
        return false
      }
      rmSync(own.folder, { recursive: true, force: true })
    }
  } finally {
    rmSync(cache, { recursive: true, force: true })
    sayFigures(rounds, entries, answers)
    console.log(`  the machine's processors were busy for ${Math.round(cpu.share() * 100)} % of the time`)
  }
  rmSync(folder, { recursive: true, force: true })
  return true
}

function told(number: number, { moment, isMet, startMs, rightMs }: Round, entries: number): string {
  const { kind, ...rest } = moment
  const times = [startMs, rightMs].map((ms) => (ms === null ? '–' : `${Math.round(ms)} ms`))
  return `${number} ${kind} ${JSON.stringify(rest)}${isMet ? '' : ', did not come'}: port ${times[0]}, right ${times[1]}, ${entries} entries`
}

function sayFigures(rounds: readonly Round[], entries: number, answers: number): void {
  const kinds = new Map<string, { met: number; all: number }>()
  for (const { moment, isMet } of rounds) {
    const of = kinds.get(moment.kind) ?? { met: 0, all: 0 }
    kinds.set(moment.kind, { met: of.met + Number(isMet), all: of.all + 1 })
  }
  console.log(`\n${rounds.length} kills, ${entries} entries, ${answers} commands answered. Moments (met of drawn):`)
  for (const [kind, { met, all }] of [...kinds].sort()) console.log(`  ${kind.padEnd(10)} ${met} of ${all}`)
  for (const [what, of] of [
    ['start to the port’s first answer', rounds.flatMap(({ startMs }) => startMs ?? [])],
    ['port’s first answer to all screens right', rounds.flatMap(({ rightMs }) => rightMs ?? [])],
  ] as const) {
    const shares = [median(of), quantile(of, 0.9), quantile(of, 0.95), quantile(of, 0.99), Math.max(...of)]
    console.log(
      `  ${what}, ${of.length} times: median, 90 %, 95 %, 99 %, most: ${shares.map((ms) => `${Math.round(ms)} ms`).join(', ')}`,
    )
  }
}
