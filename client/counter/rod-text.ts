import { isFirstLoadIn } from '../../shared-core/day/opening-list.ts'
import type { State } from '../../shared-core/day/state.ts'
import { isShort } from '../../shared-core/stock/show.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { CounterRodWords, CounterWords } from '../words/counter.ts'
import type { CounterRod } from './counter-rods.ts'

/** What is said of one rod. */
export interface RodText {
  /** "about" over the number, "" where the number is known to the piece. */
  readonly about: string
  /** "gone about 9:40", "none 8:14–8:43", "may run out 11:20", "sold out 8:47", "lasts to close"; "" when nothing is known. */
  readonly when: string
  /** "36 about 9:04", "no more today", "about 6 left"; "" when it says nothing. */
  readonly more: string
  readonly moreTone: 'coming' | 'trouble' | 'quiet'
  /** What is there and not for sale as today's: there is room for one line. "kept 6", else "day-old 4", else "". */
  readonly apart: string
  readonly known: string
  /** None, or none soon and before more comes. */
  readonly isTrouble: boolean
}

/**
 * What a rack can speak of today: `closed` while no day is open after a close, `ahead` before a day's first load, when
 * nobody knows yet of what there will be none, else `running`.
 */
export type RackDay = 'ahead' | 'running' | 'closed'

export interface RodTime {
  readonly nowMs: EpochMs
  /** Where the day ends, for what lasts; null before the shop's hours are known. */
  readonly closeMs: EpochMs | null
  readonly day: RackDay
}

export function rackDay(state: State): RackDay {
  if (state.day === null && state.lastDay !== null) return 'closed'
  return isFirstLoadIn(state) ? 'running' : 'ahead'
}

/** A rod that is gone sooner than this, with nothing coming before, is trouble. */
const TROUBLE_MS = 60 * 60_000

/** Sold out: what was there has gone. Where there never was any, there is none, but nobody missed it. */
export function isSoldOut({ forSale, goneSinceMs }: Pick<CounterRod, 'forSale' | 'goneSinceMs'>): boolean {
  return forSale === 0 && goneSinceMs !== null
}

export function rodText(rod: CounterRod, { nowMs, day }: RodTime, { counter }: CounterWords): RodText {
  const words = counter.rod
  const { forSale, likely, ahead } = rod
  const [next] = rod.onTheWay
  const isGone = isSoldOut(rod)
  const mayBeGone = forSale > 0 && likely === 0
  const isSoon = isShort(rod) && ahead.goneAtMs !== null && ahead.goneAtMs - nowMs < TROUBLE_MS
  const isTrouble = isGone || mayBeGone || isSoon
  const said = {
    about: aboutOf(rod, words),
    apart: apartOf(rod, words)[0] ?? '',
    known: knownOf(rod, words),
    isTrouble,
  }
  if (day === 'closed') return { ...said, isTrouble: false, when: '', more: words.closed, moreTone: 'quiet' }
  const when = mayBeGone ? words.mayBeGone : whenOf(rod, words)
  if (next !== undefined) {
    const more = words.coming(next.pieces, next.readyAtMs, next.from)
    return { ...said, when, more, moreTone: 'coming' }
  }
  if (forSale === 0 && !isGone) {
    return { ...said, when: '', more: day === 'ahead' ? words.noneYet : words.none, moreTone: 'quiet' }
  }
  return { ...said, when, more: lastWord(rod, day, words), moreTone: isTrouble ? 'trouble' : 'quiet' }
}

/** Where nothing comes: that, or how much will be left of what lasts. */
function lastWord({ ahead: { lasts, leftAtClose } }: CounterRod, day: RackDay, words: CounterRodWords): string {
  if (lasts) return leftAtClose === null ? '' : words.aboutLeft(leftAtClose)
  return day === 'ahead' ? '' : words.noMore
}

function aboutOf({ within }: CounterRod, words: CounterRodWords): string {
  return within === 0 ? '' : words.about
}

/** A count before the last piece went would read as if none had been counted. */
function knownOf({ forSale, goneSinceMs, basis }: CounterRod, words: CounterRodWords): string {
  if (forSale === 0 && goneSinceMs !== null && basis.how !== 'nothing' && basis.atMs < goneSinceMs) return ''
  return words.known(basis)
}

function apartOf({ kept, dayOld }: CounterRod, words: CounterRodWords): readonly string[] {
  return [...(kept > 0 ? [words.kept(kept)] : []), ...(dayOld > 0 ? [words.dayOld(dayOld)] : [])]
}

function whenOf(rod: CounterRod, words: CounterRodWords): string {
  const { forSale, ahead, goneSinceMs } = rod
  const [next] = rod.onTheWay
  if (forSale === 0) return goneSinceMs === null ? '' : words.soldOut(goneSinceMs)
  if (ahead.goneAtMs !== null) {
    return ahead.isGap && next !== undefined
      ? words.noneBetween(ahead.goneAtMs, next.readyAtMs)
      : words.goneAbout(ahead.goneAtMs)
  }
  if (ahead.doubt !== null)
    return ahead.doubt.before === 'more' ? words.mayNotReach : words.mayRunOut(ahead.doubt.fromMs)
  return ahead.lasts ? words.lastsToClose : ''
}

/** Further loads are a plan, and change. */
const COMING_MOST = 3

/**
 * All that is known of a rod, in the order in which a seller asks.
 * @example ["about 24 (± 3), counted 8:40", "kept 6", "36 about 9:04"]
 * @example ["sold out since 9:10", "24 more about 9:35"]
 */
export function rodFacts(rod: CounterRod, time: RodTime, words: CounterWords): readonly string[] {
  const { rod: said } = words.counter
  const { when, more, known } = rodText(rod, time, words)
  const apart = apartOf(rod, said)
  const { goneSinceMs } = rod
  const coming = rod.onTheWay.slice(0, COMING_MOST)
  if (isSoldOut(rod) && goneSinceMs !== null) {
    const later = coming.map(({ pieces, readyAtMs, from }) => said.moreAbout(pieces, readyAtMs, from))
    return [said.soldOutSince(goneSinceMs), ...(later.length > 0 ? later : [more]), ...apart].filter(isSaid)
  }
  const rest = coming.map(({ pieces, readyAtMs, from }) => said.coming(pieces, readyAtMs, from))
  const last = rest.length > 0 ? rest : [more]
  return [numberFact(rod, known, said), ...apart, surely(rod, when, said), ...last].filter(isSaid)
}

/** When it is gone with what that rests on: how far off it may be, that it is a guess, or the pace. */
function surely({ ahead, likely, perHour }: CounterRod, when: string, words: CounterRodWords): string {
  if (likely === 0 || when === '') return when
  const { by, between, goneAtMs } = ahead
  if (by === 'guess') return words.guessed(when)
  if (by === 'pace') return goneAtMs === null || perHour === null ? when : words.atPace(when, perHour)
  return goneAtMs === null || between === null ? when : words.between(when, between.fromMs, between.toMs)
}

/** The number with what it rests on. @example "about 12 (± 3), counted 8:40", "24 for sale" */
export function numberFact({ likely, within }: CounterRod, known: string, words: CounterRodWords): string {
  if (known === '') return within === 0 ? words.forSale(likely) : words.number(likely, within)
  return `${words.number(likely, within)}, ${known}`
}

function isSaid(fact: string): boolean {
  return fact !== ''
}
