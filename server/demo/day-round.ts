import { UNSURE_MAX } from '../../shared-core/day/decision.ts'
import { isAdvised } from '../../shared-core/live/plan.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { usualBusy } from './demo-demand.ts'
import { demoLoadList } from './demo-load-list.ts'
import { drawFor } from './draw.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute } from './scene.ts'

const DAY_MS = 24 * 3_600_000
/** The first hands turn the oven on. */
const OPENS_BEFORE_OVEN_MINUTES = 70
/** Cash and broom; then the day's account. */
const CLOSES_AFTER_MINUTES = 6
/** Dry hands look at the list of what the board took for granted. */
const CONFIRMS_AFTER_MINUTES = [35, 95] as const
/** What is confirmed together with something old was seen at least so long ago. */
const SEEN_MINUTES = 25

/** How the day's loads come about. */
export interface DayRound {
  /** When a wave of a typed list begins; null: as the oven is ready. */
  readonly waveAtMs: number | null
  /** Nobody types a list as long as advice is switched on. */
  readonly isAdvised: boolean
}

/** The owner at the desk: opens, sets the list, settles what is unsure, leaves out what is too late, closes. */
export function dayMoves(scene: Scene, round: DayRound): readonly Move[] {
  return [...opening(scene, round), ...confirming(scene), ...leavingOut(scene), ...closing(scene)]
}

function opening(scene: Scene, { waveAtMs, isAdvised: followsAdvice }: DayRound): readonly Move[] {
  const { state, shop, date, dayStartMs, nowMs } = scene
  const { ovenReadyMinute, changeoverFromMinute, closeMinute } = shop.hours
  const opensMs = atMinute(scene, ovenReadyMinute - OPENS_BEFORE_OVEN_MINUTES)
  if (nowMs >= atMinute(scene, changeoverFromMinute ?? closeMinute)) return []
  if (state.day === null) return [{ key: `open:${date}`, who: 'desk', atMs: opensMs, act: { type: 'openDay' } }]
  if (state.planned.size > 0 || (followsAdvice && shop.baking.advice)) return []
  const waves = { dayStartMs, waveAtMs: waveAtMs ?? atMinute(scene, ovenReadyMinute), busy: usualBusy(date) }
  const loads = demoLoadList(shop, waves).filter(({ inAtMs }) => inAtMs >= nowMs)
  if (loads.length === 0) return []
  return [{ key: `list:${date}`, who: 'desk', atMs: opensMs + 60_000, act: { type: 'setLoadList', loads } }]
}

function confirming({ state, seed, nowMs }: Scene): readonly Move[] {
  const due = [...state.unsure.values()].map(({ id, atMs }) => {
    const key = `confirm:${id}`
    return { key, atMs: atMs + drawFor(seed, key).between(...CONFIRMS_AFTER_MINUTES) * 60_000 }
  })
  const seen = [...state.unsure.values()].filter(({ atMs }) => atMs <= nowMs - SEEN_MINUTES * 60_000)
  if (seen.length === 0) return []
  const unsureIds = seen.map(({ id }) => id).slice(0, UNSURE_MAX)
  return due.map(({ key, atMs }) => ({ key, who: 'desk', atMs, act: { type: 'confirmPresumed', unsureIds } }))
}

/** The oven is needed for the second menu: what has not gone in by then does not go in today. */
function leavingOut(scene: Scene): readonly Move[] {
  const { state, shop } = scene
  const fromMs = atMinute(scene, shop.hours.changeoverFromMinute ?? shop.hours.closeMinute)
  if (scene.nowMs < fromMs) return []
  return [...state.planned.values()]
    .filter(({ id, done }) => !done && !isAdvised(id))
    .map(({ id }) => ({ key: `skip:${id}`, who: 'desk', atMs: fromMs, act: { type: 'skipPlanned', plannedId: id } }))
}

/** At the first close after the opening, also when the machine slept over it. */
function closing(scene: Scene): readonly Move[] {
  const { state } = scene
  if (state.day === null) return []
  const atMs = closeAfter(scene, state.day.openedAtMs) + CLOSES_AFTER_MINUTES * 60_000
  const key = `close:${state.day.label}`
  return [{ key, who: 'desk', atMs, act: { type: 'closeDay' }, confirmed: ['line-not-empty', 'orders-open'] }]
}

function closeAfter(scene: Scene, openedAtMs: EpochMs): number {
  const today = atMinute(scene, scene.shop.hours.closeMinute)
  const daysBack = Math.floor((today - openedAtMs) / DAY_MS)
  const closesMs = today - Math.max(0, daysBack) * DAY_MS
  return closesMs <= openedAtMs ? closesMs + DAY_MS : closesMs
}
