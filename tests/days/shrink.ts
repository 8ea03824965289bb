import type { FaultKind } from './faults.ts'
import { FAULT_KINDS } from './faults.ts'
import type { DayResult } from './one-day.ts'
import type { WorldOptions } from './options.ts'

/** Fewer screens than these leave nobody to agree with. */
const SCREENS_MIN = 2

export interface Shrunk {
  readonly options: WorldOptions
  readonly result: DayResult
  readonly tries: number
}

/**
 * The smallest day that goes wrong in the same way: shorter, with fewer kinds of faults and fewer screens. Each try is
 * a whole day of its own from the same seed; one that goes wrong otherwise does not count.
 */
export async function shrink(
  options: WorldOptions,
  result: DayResult,
  runDay: (options: WorldOptions) => Promise<DayResult>,
): Promise<Shrunk> {
  let best: Shrunk = { options, result, tries: 0 }
  const kind = kindOf(result)
  const attempt = async (change: Partial<WorldOptions>): Promise<boolean> => {
    const changed = { ...best.options, ...change }
    const tried = await runDay(changed)
    const isSame = kindOf(tried) === kind
    best = isSame ? { options: changed, result: tried, tries: best.tries + 1 } : { ...best, tries: best.tries + 1 }
    return isSame
  }
  await shorten(attempt, best)
  // Twice: a day without some kinds is another day, on which others may fire.
  for (const one of [...FAULT_KINDS, ...FAULT_KINDS]) await leaveOut(attempt, () => best, one)
  for (let screens = SCREENS_MIN; screens < best.options.screens; screens += 1) if (await attempt({ screens })) break
  await shorten(attempt, best)
  return best
}

type Attempt = (change: Partial<WorldOptions>) => Promise<boolean>

/** By halving: that a longer day goes wrong wherever a shorter one does is likely, not certain, and good enough. */
async function shorten(attempt: Attempt, { result, options }: Shrunk): Promise<void> {
  let [fine, wrong] = [0, Math.ceil(options.untilSecond ?? result.atSecond)]
  if (options.untilSecond === null && !(await attempt({ untilSecond: wrong }))) return
  while (wrong - fine > 1) {
    const middle = Math.floor((fine + wrong) / 2)
    if (await attempt({ untilSecond: middle })) wrong = middle
    else fine = middle
  }
}

async function leaveOut(attempt: Attempt, best: () => Shrunk, kind: FaultKind): Promise<void> {
  const { options, result } = best()
  if (result.faults.some(([fired]) => fired === kind)) await attempt({ without: [...options.without, kind] })
}

/** What went wrong, without names, numbers and places. */
function kindOf({ trouble }: DayResult): string | null {
  if (trouble === null) return null
  return headOf(trouble).replace(/[0-9a-f]{12,}(\.\d+)?|\w+-\d|\d+|, in \..*/g, '#')
}

/** Enough to know it by. */
function headOf(trouble: string): string {
  return trouble.replace(/\{.*/s, '…').slice(0, 90)
}

/** The line that keeps it. */
export function findLine({ options, result }: Shrunk): string {
  const { seed, dayMinutes, untilSecond, screens, without, isOnFile, bug } = options
  const file = isOnFile ? ', isOnFile: true' : ''
  const planted = bug === 'none' ? '' : `, bug: '${bug}'`
  const kinds = without.map((kind) => `'${kind}'`).join(', ')
  const change = `{ untilSecond: ${untilSecond}, screens: ${screens}, without: [${kinds}]${file}${planted} }`
  return `{ seed: ${seed}, dayMinutes: ${dayMinutes}, change: ${change}, found: '${headOf(result.trouble ?? '')}' },`
}
