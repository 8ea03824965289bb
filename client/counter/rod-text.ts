import type { EpochMs } from '../../shared-core/units.ts'
import type { CounterWords } from '../words/counter.ts'
import type { CounterRod } from './counter-rods.ts'

/** What is said of one rod. */
export interface RodText {
  /** "gone about 9:40", "none 8:14–8:43", "gone since 8:47", "lasts to close"; "" when nothing is known. */
  readonly when: string
  /** "36 at 9:04", "no more today"; "" when it says nothing. */
  readonly more: string
  readonly moreTone: 'coming' | 'trouble' | 'quiet'
  readonly kept: string
  readonly known: string
  /** None, or none soon and before more comes. */
  readonly isTrouble: boolean
}

/** Where the day ends, for what lasts; null before the shop's hours are known. */
export interface RodTime {
  readonly nowMs: EpochMs
  readonly closeMs: EpochMs | null
}

/** A rod that is gone sooner than this, with nothing coming before, is trouble. */
const TROUBLE_MS = 60 * 60_000

export function rodText(rod: CounterRod, { nowMs, closeMs }: RodTime, { counter }: CounterWords): RodText {
  const words = counter.rod
  const { likely, kept, goneAtMs, goneSinceMs, basis } = rod
  const [next] = rod.onTheWay
  const lasts = goneAtMs !== null && closeMs !== null && goneAtMs >= closeMs
  const runsOut = goneAtMs !== null && !lasts && (next === undefined || goneAtMs < next.readyAtMs)
  const isGone = likely === 0 && goneSinceMs !== null
  const isTrouble = isGone || (runsOut && goneAtMs - nowMs < TROUBLE_MS)
  const said = {
    kept: kept === 0 ? '' : words.kept(kept),
    known: words.known(basis),
    isTrouble,
  }
  const isGap = likely > 0 && runsOut && next !== undefined
  const when = isGap
    ? words.noneBetween(goneAtMs, next.readyAtMs)
    : likely === 0
      ? goneSinceMs === null
        ? ''
        : words.goneSince(goneSinceMs)
      : whenGone(goneAtMs, lasts, words)
  if (next !== undefined) return { ...said, when, more: words.coming(next.pieces, next.readyAtMs), moreTone: 'coming' }
  if (likely === 0 && !isGone) return { ...said, when: '', more: words.none, moreTone: 'quiet' }
  return { ...said, when, more: lasts ? '' : words.noMore, moreTone: isTrouble ? 'trouble' : 'quiet' }
}

function whenGone(goneAtMs: EpochMs | null, lasts: boolean, words: CounterWords['counter']['rod']): string {
  if (goneAtMs === null) return ''
  return lasts ? words.lastsToClose : words.goneAbout(goneAtMs)
}

/** Further loads are a plan, and change. */
const COMING_MOST = 3

/** All that is known of a rod, in the order in which a seller asks. @example ["24 for sale", "kept 6", "36 at 9:04"] */
export function rodFacts(rod: CounterRod, time: RodTime, words: CounterWords): readonly string[] {
  const { rod: said } = words.counter
  const { when, more, kept, known } = rodText(rod, time, words)
  const pace = rod.goneAtMs !== null && rod.perHour !== null && when !== said.lastsToClose && rod.likely > 0
  const gone = pace ? said.atPace(when, rod.perHour) : when
  const coming = rod.onTheWay.slice(0, COMING_MOST).map(({ pieces, readyAtMs }) => said.coming(pieces, readyAtMs))
  const rest = coming.length > 0 ? coming : [more]
  return [said.forSale(rod.likely), kept, gone, ...rest, known].filter((fact) => fact !== '')
}
