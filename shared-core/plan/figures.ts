import type { PlanFigures } from '../live/plan.ts'
import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'

import type { Expected } from './bake-off/expected.ts'
import { expectedOf } from './bake-off/expected.ts'
import { piecesIn } from './bake-off/load-parts.ts'
import { wavesPlan } from './bake-off/waves.ts'
import type { Problem } from './bake-off-of.ts'
import type { PlanAsked } from './plan-asked.ts'
import { instantOf } from './plan-asked.ts'

/** What a plan comes to; the bottleneck is named by who asks for it. */
export function figuresOf(
  asked: PlanAsked,
  problem: Problem,
  loads: readonly BakeLoad[],
  expected = expectedToday(problem, loads),
): PlanFigures {
  const given = today(problem)
  const all = [...problem.started.begun.map(({ load }) => load), ...(given.pinned ?? []), ...loads]
  const firstMin = all.length === 0 ? null : Math.min(...all.map(({ kettleStart }) => kettleStart))
  const outs = [...(given.running ?? []), ...all].map(({ out }) => out)
  const lastMin = outs.length === 0 ? null : Math.max(...outs)
  return {
    profitCents: Math.round(expected.profit + problem.besideCents),
    wavesProfitCents: Math.round(expectedOf(given, wavesPlan(given).loads).profit + problem.besideCents),
    baked: all.reduce((sum, { lines }) => sum + piecesIn(lines), 0),
    lost: oneDecimal(expected.lost),
    missing: oneDecimal(expected.missing),
    left: oneDecimal(expected.left),
    ageMinutes: Math.round(expected.ageMin),
    firstKettleAtMs: firstMin === null ? null : instantOf(asked, firstMin),
    lastOutAtMs: lastMin === null ? null : instantOf(asked, lastMin),
    crewMinutes: crewMinutes(given, all, firstMin, lastMin),
    bottleneck: null,
  }
}

/** What loads bring today. */
export function expectedToday(problem: Problem, loads: readonly BakeLoad[]): Expected {
  return expectedOf(today(problem), loads)
}

/** What is not baked is still worth something tomorrow, but nothing today. */
export function today({ given }: Problem): BakeOff {
  return { ...given, doughs: mapOf(given.doughs, ({ pieces }) => ({ pieces })) }
}

function mapOf<One, Other>(record: Readonly<Record<string, One>>, to: (one: One) => Other): Record<string, Other> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, to(value)]))
}

export function oneDecimal(value: number): number {
  return Math.round(value * 10) / 10
}

/** From the first dip to the last out, each minute times the people who are there by then. */
function crewMinutes(
  given: BakeOff,
  loads: readonly BakeLoad[],
  firstMin: number | null,
  lastMin: number | null,
): number | null {
  const people = given.hands?.people ?? []
  if (people.length === 0 || firstMin === null || lastMin === null || loads.length === 0) return null
  let sum = 0
  for (const [at, [from, count]] of people.entries()) {
    const until = people[at + 1]?.[0] ?? Number.POSITIVE_INFINITY
    sum += count * Math.max(0, Math.min(until, lastMin) - Math.max(from, firstMin))
  }
  return Math.round(sum)
}
