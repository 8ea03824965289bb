import type { State } from '../../shared-core/day/state.ts'
import { slotsNow } from '../../shared-core/kitchen/slots-now.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { BatchStage, Shop } from '../../shared-core/shop/shop.ts'
import { assert } from '../../shared-core/support.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { localDate, localInstant } from '../live/shop-clock.ts'
import type { DemoAt } from './demo-at.ts'
import { demoShop } from './demo-shop.ts'
import { DemoPeople } from './next-move.ts'
import type { PastDays } from './past-days.ts'
import { pastDays } from './past-days.ts'
import type { PlayedDays } from './played.ts'
import { Played } from './played.ts'

/**
 * The demo's morning so far, after some days before it: a journal as if the board had been there all that time, made by
 * playing the demo's people through the same rules, permissions and fold as any tap. So what the screens show has a true
 * history, and ends now.
 */
export type LivingMorning = PlayedDays

/** Nobody is in the shop so long before the oven is ready. */
const BEGINS_BEFORE_OVEN_MINUTES = 75
/**
 * How long after a wave's first load the demo opens, at most: the first shelf is flipped, the second just loaded, dough
 * for the third is in the kettle and on boards, and the wave before is cooling.
 */
const INTO_WAVE_MS = 10 * 60_000
/** The moment that shows most is looked for this far back from there. */
const LOOK_BACK_MS = 4 * 60_000
const LOOK_STEP_MS = 3_000
/** What is in the kettle should stay long enough to be seen. */
const KETTLE_SEEN_MS = 12_000
/** A rod that a person would call low. */
const LOW_PIECES = 8
const PLENTY_PIECES = 24
/** Somebody may have forgotten the very tap that would have shown something; then it is another crew's morning. */
const CREWS_TRIED = 16

/**
 * The journal of a demo that opens at `nowMs`. The same seed and instant make the same journal. A morning is played twice:
 * once to find the moment at which every stage holds something, then so much later that this moment is now. The days
 * before do not move with it, so that it is looked at again.
 * @param given `isAdvised`: from now on loads are as the board advises; what is left of the typed list is taken off it
 */
export function livingMorning({ isAdvised = false, at = 'morning', ...opened }: OpenedDemo): LivingMorning {
  const morning = at === 'morning' ? bestMorning(opened) : laterOn({ ...opened, at })
  return isAdvised ? withoutList(morning, opened.nowMs) : morning
}

export interface OpenedDemo {
  readonly nowMs: EpochMs
  readonly seed: number
  readonly isAdvised?: boolean
  /** Left out: in the middle of the morning. */
  readonly at?: DemoAt
  /** That were before it; left out: a week and a day. */
  readonly days?: number
}

/** The whole morning and on, as it comes: later in the day there is no wave to wait for. */
function laterOn({ nowMs, seed, at, days }: OpenedDemo & { readonly at: DemoAt }): LivingMorning {
  const shop = demoShop(nowMs, at)
  const past = pastDays({ nowMs, seed, at, days })
  const playWith = (crew: number) =>
    play({ shop, past, seed: seed * CREWS_TRIED + crew, nowMs, shiftMs: 0, hasWave: false }, () => undefined)
  for (let crew = 0; crew < AFTERNOONS_TRIED; crew += 1) {
    const later = playWith(crew)
    if (at === 'changeover' || slotsNow(later.state, nowMs).length >= BAKING_SEEN) return later
  }
  return playWith(0)
}
/** Now and then nobody has just ordered; then it is another crowd's afternoon. */
const AFTERNOONS_TRIED = 4
const BAKING_SEEN = 2

/** The same, with nothing left on the typed list. */
export function withoutList(morning: LivingMorning, nowMs: EpochMs): LivingMorning {
  const { state } = morning
  assert(state.shop !== null, 'the demo has a set-up')
  const played = new Played({ shop: state.shop, idPrefix: `list${nowMs.toString(36)}`, after: morning })
  played.take({ key: 'list', who: 'desk', atMs: nowMs, act: { type: 'setLoadList', loads: [] } })
  return { entries: played.entries, state: played.state, details: [...played.details.values()] }
}

function bestMorning({ nowMs, seed, days }: OpenedDemo): LivingMorning {
  const shop = demoShop(nowMs)
  const past = pastDays({ nowMs, seed, days })
  const moments: { readonly of: Morning; readonly lacks: number }[] = []
  for (let crew = 0; crew < CREWS_TRIED; crew += 1) {
    const of = { shop, past, seed: seed * CREWS_TRIED + crew, nowMs, shiftMs: 0, hasWave: true }
    const { lacks, shiftMs } = bestMoment(of)
    moments.push({ of: { ...of, shiftMs }, lacks })
    if (lacks > 0) continue
    const morning = play({ ...of, shiftMs }, () => undefined)
    if (lacksAt(morning.state, nowMs) === 0) return morning
  }
  // No crew showed everything: the one that lacks least does.
  const [best] = moments.sort((one, other) => one.lacks - other.lacks)
  assert(best !== undefined, 'a crew was tried')
  return play(best.of, () => undefined)
}

function bestMoment(of: Morning): { readonly lacks: number; readonly shiftMs: number } {
  let best = { shiftMs: 0, lacks: Number.MAX_SAFE_INTEGER }
  play(of, (atMs, state) => {
    const lacks = lacksAt(state, atMs)
    if (lacks < best.lacks) best = { shiftMs: of.nowMs - atMs, lacks }
  })
  return best
}

interface Morning {
  readonly shop: Shop
  readonly past: PastDays
  readonly seed: number
  readonly nowMs: EpochMs
  readonly shiftMs: number
  /** A wave of loads has just begun. */
  readonly hasWave: boolean
}

function play(
  { shop, past, seed, nowMs, shiftMs, hasWave }: Morning,
  onLook: (atMs: number, state: State) => void,
): LivingMorning {
  const { zone } = shop.profile
  const beginMinute = shop.hours.ovenReadyMinute - BEGINS_BEFORE_OVEN_MINUTES
  const beginMs = epochMs(localInstant(zone, localDate(zone, nowMs), beginMinute) + shiftMs)
  const played = new Played({ shop, idPrefix: `past${nowMs.toString(36)}`, after: past })
  const people = new DemoPeople({
    seed,
    fromMs: beginMs,
    shiftMs,
    waveAtMs: hasWave ? nowMs - INTO_WAVE_MS + shiftMs : null,
  })
  const playUntil = (untilMs: EpochMs) => {
    for (let move = people.next(played.state, untilMs); move !== null; move = people.next(played.state, untilMs)) {
      played.take(move)
    }
  }
  for (let atMs = nowMs - LOOK_BACK_MS; atMs < nowMs; atMs += LOOK_STEP_MS) {
    playUntil(epochMs(atMs))
    onLook(atMs, played.state)
  }
  playUntil(nowMs)
  return { entries: played.entries, state: played.state, details: [...played.details.values()] }
}

/** How much of what a shop can show there is nothing of: one for each stage and each thing out of the ordinary. */
function lacksAt(state: State, atMs: number): number {
  const batches = [...state.batches.values()]
  const loads = [...state.loads.values()]
  const mixes = [...state.mixes.values()]
  const ready = [...state.stock.values()].map(({ lots }) => piecesOf(lots.filter(({ readyAtMs }) => readyAtMs <= atMs)))
  const inStage = (stage: BatchStage) => batches.filter((batch) => batch.stage === stage)
  const shown = [
    ...(['proof', 'chill', 'rack', 'boards'] as const).map((stage) => inStage(stage).length > 0),
    inStage('kettle').some(({ until }) => (until?.targetAtMs ?? 0) > atMs + KETTLE_SEEN_MS),
    loads.some(({ phase }) => phase === 'first-side'),
    loads.some(({ phase }) => phase === 'second-side'),
    [...state.stock.values()].some(({ lots }) => lots.some(({ readyAtMs }) => readyAtMs > atMs)),
    ready.some((pieces) => pieces <= LOW_PIECES),
    ready.some((pieces) => pieces >= PLENTY_PIECES),
    state.keeps.size > 0,
    state.unsure.size > 0,
    [...state.account.values()].some(({ wasted }) => wasted > 0),
    mixes.some(({ stage }) => stage === 'mixing' || stage === 'rest' || stage === 'bench'),
    mixes.some(({ stage }) => stage === 'planned'),
  ]
  return shown.filter((isShown) => !isShown).length
}
