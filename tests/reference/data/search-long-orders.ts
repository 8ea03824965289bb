import { writeFileSync } from 'node:fs'
import { ContactsAhead, fewestContacts } from '../../../shared-core/dough/order-contacts.ts'
import { improved } from '../../../shared-core/dough/order-improve.ts'
import { lineAfter } from '../../../shared-core/dough/order-line.ts'
import { problemOf } from '../../../shared-core/dough/order-problem.ts'
import { searched } from '../../../shared-core/dough/order-search.ts'
import type { DayKind } from '../../core/dough/order-maker.ts'
import { dayOf, drawnDay } from '../../core/dough/order-maker.ts'

/**
 * The best that is known of days of thirty mixes, too large for the general-purpose solver: our own search with forty
 * times the effort, and its proof with a hundred times the steps.
 *
 *   npx tsx tests/reference/data/search-long-orders.ts
 *
 * writes `long-orders.json`, which is kept.
 */
const TRIES = 400_000
const STEPS = 200_000
const DAYS: readonly (DayKind & { readonly seed: number })[] = [
  { seed: 31, mixes: 30, formulas: 8, isEven: true, proofTrays: null, due: 600 },
  { seed: 32, mixes: 30, formulas: 10, isEven: false, proofTrays: null, due: 620 },
  { seed: 33, mixes: 30, formulas: 12, isEven: false, proofTrays: 120, due: 640 },
  { seed: 34, mixes: 30, formulas: 6, isEven: false, proofTrays: null, due: 500 },
  { seed: 35, mixes: 30, formulas: 12, isEven: true, proofTrays: null, due: 480 },
  { seed: 36, mixes: 30, formulas: 15, isEven: false, proofTrays: 60, due: 500 },
]

const found = DAYS.map(({ seed, ...kind }) => {
  const { tasks, rules } = dayOf(drawnDay(seed, kind))
  const problem = problemOf(tasks, rules)
  const ahead = new ContactsAhead(problem)
  const order = improved(problem, fewestContacts(problem, ahead), ahead.least(ahead.whole, null), TRIES)
  const { contacts, washes, latenessMs } = lineAfter(problem, order)
  const { isWhole, order: better } = searched(problem, ahead, latenessMs, STEPS)
  const least = better === null ? latenessMs : lineAfter(problem, better).latenessMs
  process.stdout.write(`${seed}: ${contacts}, ${washes}, ${least / 60_000}${isWhole ? ', proved' : ''}\n`)
  return { seed, ...kind, contacts, washes, lateMinutes: least / 60_000, isProved: isWhole }
})
writeFileSync(new URL('./long-orders.json', import.meta.url), `${JSON.stringify({ tries: TRIES, found }, null, 2)}\n`)
