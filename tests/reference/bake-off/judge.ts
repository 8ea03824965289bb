import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { violationsOf } from './feasible.ts'
import { scorePlan } from './score.ts'

/**
 * Judges a plan of the bake-off:
 *
 *   npx tsx tests/reference/bake-off/judge.ts INSTANCE.json PLAN.json [--days 4000] [--seed 1]
 *
 * Exit code 1 when the plan breaks a rule.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { days: { type: 'string', default: '4000' }, seed: { type: 'string', default: '1' } },
})
const [instance, plan] = positionals.map((path) => JSON.parse(readFileSync(path, 'utf8')))
if (instance === undefined || plan === undefined) throw new Error('give an instance and a plan, both JSON files')

const violations = violationsOf(instance, plan)
const score = scorePlan(instance, plan, { days: Number(values.days), seed: Number(values.seed) })
process.stdout.write(`score ${score.profit.toFixed(2)} ± ${score.standardError.toFixed(2)} on ${values.days} days
lost ${score.lost.toFixed(2)}, missing ${score.missing.toFixed(2)}, left ${score.left.toFixed(2)} pieces a day
age ${score.age.toFixed(1)} min, first kettle start ${score.firstKettleStart}, ${plan.loads.length} loads
violations: ${violations.length === 0 ? 'none' : `${violations.length}\n  ${violations.join('\n  ')}`}
`)
process.exitCode = violations.length === 0 ? 0 : 1
