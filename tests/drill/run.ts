import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { Chance } from '../days/chance.ts'
import { bundleServer, ROOT } from '../server/support/server-program.ts'
import { DRILL_DAMAGES, drill } from './drill.ts'

/** `npm run drill -- --times N --seed S`: restores in earnest, one after another, with what was there before and after. */
const { values } = parseArgs({
  options: { times: { type: 'string', default: '20' }, seed: { type: 'string', default: '1' } },
})
const place = join(ROOT, 'node_modules', '.cache', `boilboard-drill-${process.pid}`)
mkdirSync(place, { recursive: true })
const program = join(place, 'server.mjs')
await bundleServer(program, 'drill')
const sqlite = await loadSqlite()
const kinds = Object.keys(DRILL_DAMAGES)
const totals = { answered: 0, had: 0, restored: 0, wrong: 0 }
for (let n = 0; n < Number(values.times); n += 1) {
  const folder = mkdtempSync(join(tmpdir(), 'boilboard-drill-'))
  const damage = kinds[n % kinds.length] ?? ''
  const done = await drill({ sqlite, program, folder, chance: new Chance(Number(values.seed) + n), damage })
  const { answered, had, copied, restored, wrong, said } = done
  console.log(`${n + 1}. ${damage}: had ${had}, copy ${copied}, restored ${restored}; ${answered} answered before`)
  if (wrong.length > 0) console.log([...wrong, ...said].map((line) => `   ${line}`).join('\n'))
  totals.answered += answered
  totals.had += had
  totals.restored += restored
  totals.wrong += wrong.length
  rmSync(folder, { recursive: true, force: true })
}
rmSync(place, { recursive: true, force: true })
console.log(
  `${values.times} restores: ${totals.restored} of ${totals.had} entries back, ${totals.answered} answers asked again, ${totals.wrong} wrong.`,
)
process.exitCode = totals.wrong === 0 ? 0 : 1
