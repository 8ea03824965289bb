import type { Plan } from '../../../shared-core/live/plan.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { BenchWords } from '../../words/bench.ts'
import { kitchenActWords } from '../../words/kitchen-acts.ts'
import type { BenchView } from '../view.ts'

export interface PullsParts {
  /** Null: loads are not advised. */
  readonly plan: Pick<Plan, 'pulls'> | null
  readonly view: Pick<BenchView, 'kitchenActs'>
  readonly words: BenchWords
  readonly nowMs: EpochMs
}

/** Pulls that are named: what comes later is still to change. */
const PULLS_MOST = 3
/** Portions of the second menu are named so long before their time: till then the morning's dough has the list. */
const PORTIONS_AHEAD_MS = 3 * 60 * 60_000

/** The next pulls of the plan, above the doughs that they take, and what the second menu needs out of the cooler. */
export function pullsText({ plan, view, words, nowMs }: PullsParts): string | undefined {
  const made = kitchenActWords(words)
  const portions = view.kitchenActs
    .filter(({ act, atMs }) => act === 'pull' && atMs - nowMs <= PORTIONS_AHEAD_MS)
    .map(
      (act) =>
        `${made.act(act)[0]} ${act.status === 'coming' ? words.times.at(act.atMs) : words.times.when(act, nowMs)}`,
    )
  const pulls = (plan?.pulls ?? []).slice(0, PULLS_MOST)
  const texts = [...portions, ...(pulls.length === 0 ? [] : [words.advice.pulls(pulls)])]
  return texts.length === 0 ? undefined : texts.join(' · ')
}
