import { writeFileSync } from 'node:fs'
import highs from 'highs'
import type { MinutesOfDay, MinutesOfMix } from '../../core/dough/order-maker.ts'
import { drawnDay } from '../../core/dough/order-maker.ts'

/**
 * Solves days of mixing by a general-purpose solver, as outside values for our own search:
 *
 *   npx tsx tests/reference/data/solve-mixing-orders.ts
 *
 * writes `mixing-orders.json`, which is kept. A mixed-integer program by places: x(j,k) = 1 when mix j is the k-th. All
 * these doughs wait alike and proof space is no limit, so that the bench takes them in the order of mixing; the other rules
 * are checked against brute force. It is solved three times: fewest contacts, then fewest washes, then least lateness.
 */
const SOLVER = 'HiGHS, npm package highs 1.15.3'
const WASH = 10
const DAYS = [
  { name: 'eight mixes of five formulas', seed: 11, mixes: 8, formulas: 5, due: 190 },
  { name: 'nine mixes of nine formulas', seed: 12, mixes: 9, formulas: 9, due: 200 },
  { name: 'ten mixes of six formulas', seed: 13, mixes: 10, formulas: 6, due: 240 },
  { name: 'ten mixes of ten formulas', seed: 14, mixes: 10, formulas: 10, due: 250 },
  { name: 'twelve mixes of seven formulas', seed: 15, mixes: 12, formulas: 7, due: 290 },
  { name: 'twelve mixes of twelve formulas', seed: 16, mixes: 12, formulas: 12, due: 300 },
]

const solver = await highs()
const solved = []
for (const { name, seed, ...kind } of DAYS) {
  const day = drawnDay(seed, { ...kind, isEven: true, proofTrays: null })
  const began = performance.now()
  const contacts = leastOf(day, 'contacts', {})
  const washes = leastOf(day, 'washes', { contacts })
  const lateMinutes = leastOf(day, 'late', { contacts, washes })
  process.stdout.write(
    `${name}: ${contacts}, ${washes}, ${lateMinutes} in ${Math.round((performance.now() - began) / 1_000)} s\n`,
  )
  solved.push({ name, day, contacts, washes, lateMinutes })
  const text = JSON.stringify({ solver: SOLVER, solved }, null, 2)
  writeFileSync(new URL('./mixing-orders.json', import.meta.url), `${text}\n`)
}

type Goal = 'contacts' | 'washes' | 'late'

function leastOf(day: MinutesOfDay, goal: Goal, known: Partial<Record<Goal, number>>): number {
  const found = solver.solve(programOf(day, goal, known))
  if (found.Status !== 'Optimal') throw new Error(`the solver says: ${found.Status}`)
  return Math.round(found.ObjectiveValue)
}

/** The program in the solver's text form (CPLEX LP). */
function programOf({ tasks }: MinutesOfDay, goal: Goal, known: Partial<Record<Goal, number>>): string {
  const places = tasks.map((_, place) => place)
  const allergens = [...new Set(tasks.flatMap((task) => task.allergens ?? []))]
  const sums: Record<Goal, string> = {
    contacts: places.flatMap((k) => allergens.map((a) => `c_${a}_${k}`)).join(' + '),
    washes: places
      .slice(1)
      .map((k) => `w_${k}`)
      .join(' + '),
    late: places.map((k) => `l_${k}`).join(' + '),
  }
  const rows = [
    ...places.map((k) => `${tasks.map((_, j) => `x_${j}_${k}`).join(' + ')} = 1`),
    ...tasks.map((_, j) => `${places.map((k) => `x_${j}_${k}`).join(' + ')} = 1`),
    ...places.flatMap((k) => rowsAt(tasks, allergens, k)),
    ...Object.entries(known).map(([kind, most]) => `${sums[kind as Goal]} <= ${most}`),
  ]
  const binaries = tasks.flatMap((_, j) => places.map((k) => `x_${j}_${k}`)).join(' ')
  return `Minimize\n obj: ${sums[goal]}\nSubject To\n${rows.map((row, n) => ` r${n}: ${row}`).join('\n')}\nBinary\n ${binaries}\nEnd\n`
}

function rowsAt(tasks: readonly MinutesOfMix[], allergens: readonly string[], k: number): string[] {
  const at = (place: number, value: (task: MinutesOfMix) => number) =>
    tasks.map((task, j) => `- ${value(task)} x_${j}_${place}`).join(' ')
  const having = (place: number, a: string, sign: string) =>
    tasks
      .flatMap((task, j) => ((task.allergens ?? []).some((one) => one === a) ? [`${sign} x_${j}_${place}`] : []))
      .join(' ')
  const mix = ({ mix: minutes = 0 }: MinutesOfMix) => minutes
  const toBench = ({ mix: minutes = 0, wait = 0 }: MinutesOfMix) => minutes + wait
  const own = [
    `s_${k} ${at(k, ({ earliest = 0 }) => earliest)} >= 0`,
    `b_${k} - s_${k} ${at(k, toBench)} >= 0`,
    `l_${k} - b_${k} ${at(k, ({ bench = 0, proof = 0, due = 0 }) => bench + proof - due)} >= 0`.replaceAll('- -', '+ '),
  ]
  if (k === 0) return own
  const before = k - 1
  return [
    ...own,
    `s_${k} - s_${before} - ${WASH} w_${k} ${at(before, mix)} >= 0`,
    `b_${k} - b_${before} ${at(before, ({ bench = 0 }) => bench)} >= 0`,
    ...tasks.flatMap((from, i) => {
      const washed = tasks.flatMap((to, j) => (needsWash(from, to) && i !== j ? [`- x_${j}_${k}`] : []))
      return washed.length === 0 ? [] : [`w_${k} - x_${i}_${before} ${washed.join(' ')} >= -1`]
    }),
    // e: the allergen has been in the mixer before the k-th; c: and the k-th does not contain it.
    ...allergens.flatMap((a) => [
      ...(k > 1 ? [`e_${a}_${k} - e_${a}_${before} >= 0`] : []),
      `e_${a}_${k} ${having(before, a, '-')} >= 0`,
      `c_${a}_${k} - e_${a}_${k} ${having(k, a, '+')} >= 0`,
    ]),
  ]
}

function needsWash(from: MinutesOfMix, to: MinutesOfMix): boolean {
  const brings = (from.allergens ?? []).some((allergen) => !(to.allergens ?? []).includes(allergen))
  return brings || (from.strength ?? 0) > (to.strength ?? 0)
}
