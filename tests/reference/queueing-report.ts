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
