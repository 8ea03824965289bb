import type { Worked } from '../core/kitchen/worked-afternoon.ts'
import { workedAfternoon } from '../core/kitchen/worked-afternoon.ts'
import { steadyRun, WAITS } from './queueing-runs.ts'

const CUSTOMERS = 400_000

/** Long runs of the kitchen's simulator beside the theory of queues, for `npm run reference`. */
export function* queueingReport(): Generator<string> {
  yield `\nThe simulated kitchen as a queue: mean wait in mean services, ${CUSTOMERS} customers, 99 % interval\n`
  for (const [servers, busy, exponential, fixed] of WAITS) {
    const hands = steadyRun({ servers, busy, service: 'exponential', by: 'hands', seed: servers, customers: CUSTOMERS })
    const oven = steadyRun({ servers, busy, service: 'fixed', by: 'oven', seed: servers, customers: CUSTOMERS })
    yield `c ${servers}  ρ ${busy}   M/M/c ${told(hands, exponential)}   M/D/c ${told(oven, fixed)}`
  }
}

function told({ wait, within }: { readonly wait: number; readonly within: number }, theory: number): string {
  const isInside = Math.abs(wait - theory) < within
  return `${wait.toFixed(4)} ± ${within.toFixed(4)}, theory ${theory.toFixed(4)} ${isInside ? 'inside' : 'OUTSIDE'}`
}

/** Afternoons worked by the board: how far off the waits were that the counter told. */
export function* quotesReport(): Generator<string> {
  yield '\nQuoted waits on worked afternoons, five of 60 slips each: share longer than quoted, beyond the careful figure\n'
  for (const [name, everyMs] of AFTERNOONS) {
    const all = [1, 2, 3, 4, 5].flatMap((seed) => workedAfternoon(seed, { orders: 60, everyMs }))
    const share = (isSo: (one: Worked) => boolean) => `${Math.round((100 * all.filter(isSo).length) / all.length)} %`
    const longer = share(({ waitedMs, quotedMs }) => waitedMs > quotedMs)
    yield `${name}   longer ${longer}   beyond ${share(({ waitedMs, carefulMs }) => waitedMs > carefulMs)}`
  }
}

const AFTERNOONS = [
  ['quiet, a slip in 150 s', 150_000],
  ['busy, a slip in 75 s', 75_000],
  ['rush, a slip in 45 s', 45_000],
] as const
