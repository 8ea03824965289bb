import { dateAfter } from '../../../shared-core/day/label.ts'
import type { Mix } from '../../../shared-core/dough/mix.ts'
import { actsOfMix } from '../../../shared-core/dough/mix-acts.ts'
import { leftOf } from '../../../shared-core/dough/mix-left.ts'
import type { RoomActParts } from '../../../shared-core/dough/room-acts.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { shownWeight } from '../../parts/shop-weight.ts'
import { stageClock } from './clock-ring.ts'
import { mixName } from './mix-name.ts'
import { inOrder, nextStage } from './mix-steps.ts'
import type { RoomItem, RoomPage, RoomParts, StationId } from './room-parts.ts'
import { STATIONS } from './room-parts.ts'
import { trayItems, traysOf } from './tray-view.ts'

export interface StationView {
  readonly id: StationId
  readonly title: string
  /** Trays against their room; "" when there is nothing to say. */
  readonly detail: string
  /** The same beside the title. */
  readonly short: string
  /** What calls for somebody soonest stands first. */
  readonly items: readonly RoomItem[]
  readonly nothing: string
}

/** The way of the dough from scale to cooler, with what stands at each station. */
export function stationViews(parts: RoomParts): readonly StationView[] {
  const mixes = [...parts.state.mixes.values()].sort(inOrder)
  return STATIONS.map((id) => {
    const { way } = parts.words.room
    const ofMixes = mixes.filter((mix) => stationOf(mix) === id).map((mix) => mixItem(mix, parts))
    const items = [...ofMixes, ...trayItems(id, parts)]
    const nothing = id === 'scale' && mixes.length === 0 ? way.nothingPlanned : way.nothing
    const { detail, short } = traysText(id, parts)
    return { id, title: way[id], detail, short, items, nothing }
  })
}

function stationOf({ stage }: Mix): StationId | null {
  if (stage === 'ended') return null
  if (stage === 'planned') return 'scale'
  if (stage === 'mixing') return 'mixer'
  return stage === 'bulkChill' ? 'cooler' : 'bench'
}

function mixItem(mix: Mix, parts: RoomParts): RoomItem {
  const page: RoomPage = { kind: 'mix', mixId: mix.id }
  const what = mixName(mix, parts)
  const base = { id: mix.id, what, page, acts: [] }
  if (mix.stage === 'planned') return { ...base, ...plannedItem(mix, parts) }
  if (mix.stage === 'bench') return { ...base, ...benchItem(mix, parts) }
  return { ...base, ...countingItem(mix, parts) }
}

type Shown = Pick<RoomItem, 'ring' | 'tone' | 'when' | 'contents'> & Partial<Pick<RoomItem, 'acts'>>

/** Nearer than this a start is counted down to, further away its clock time says more. */
const NEAR_MS = 3_600_000

/** Its ring fills as its lines are weighed out; it calls when it should be in the mixer. */
function plannedItem({ startAtMs, lines, bakeDate }: Mix, { nowMs, words, localDate }: RoomParts): Shown {
  const { mix: say } = words.room
  const done = lines.filter(({ weighedAtMs }) => weighedAtMs !== null).length
  const isLate = startAtMs !== null && nowMs >= startAtMs
  const isNear = startAtMs !== null && !isLate && startAtMs - nowMs <= NEAR_MS
  const weighed = say.weighed(done, lines.length)
  return {
    ring: { fraction: 1 - done / Math.max(1, lines.length), state: done === 0 ? 'idle' : 'running' },
    tone: isLate ? 'act' : 'plain',
    when: startAtMs === null ? '' : isNear ? words.times.within(startAtMs - nowMs) : say.start(startAtMs),
    contents: bakeDate === dateAfter(localDate, 1) ? [weighed] : [weighed, say.forDate(bakeDate)],
  }
}

/** At the bench: how much of it is to be divided and shaped yet. */
function benchItem(mix: Mix, { shop, words, nowMs }: RoomParts): Shown {
  const left = leftOf(mix)
  const all = mix.lines.reduce((sum, { milligrams }) => sum + milligrams, 0)
  const clock = stageClock(mix.sinceMs, mix.until, nowMs, words.times)
  const { ring, tone } =
    mix.until === null
      ? { ring: { fraction: left / Math.max(1, all), state: 'running' } as const, tone: 'plain' as const }
      : clock
  const weight = shownWeight(left, shop.profile.weight)
  return { ring, tone, when: '', contents: [words.room.mix.stage('bench'), weight] }
}

/** Mixing, resting or in bulk: a touch moves it on once its time has come, or folds it. */
function countingItem(mix: Mix, parts: RoomParts): Shown {
  const { nowMs, words } = parts
  const say = words.room.mix
  const to = nextStage(mix)
  const call = callOf(mix, nowMs)
  const { ring, tone } = stageClock(mix.sinceMs, mix.until, nowMs, words.times)
  if (call !== null && nowMs >= call.atMs && tone === 'plain') {
    const { fold = 0 } = call
    const acts = call.kind === 'fold' ? [{ type: 'foldMix', mixId: mix.id, fold } as const] : []
    const what = call.kind === 'fold' ? say.fold(fold, foldsOf(mix)) : say.mixInsNow
    return { ring: { ...ring, state: 'act' }, tone: 'act', when: '', contents: [what], acts }
  }
  const isOver = tone !== 'plain' && to !== null
  const acts = isOver ? [{ type: 'moveMix', mixId: mix.id, from: mix.stage, to } as const] : []
  const contents = isOver ? [onText(mix, parts)] : comingText(mix, call, parts)
  return { ring, tone, when: '', contents, acts }
}

function comingText(mix: Mix, call: RoomActParts | null, { words, nowMs }: RoomParts): readonly string[] {
  if (call === null || nowMs >= call.atMs) return [words.room.mix.stage(mix.stage)]
  const { mixInsAt, foldAt } = words.room.mix
  return [call.kind === 'fold' ? foldAt(call.fold ?? 0, call.atMs) : mixInsAt(call.atMs)]
}

/** What moving it on is called. */
export function onText(mix: Mix, { words }: Pick<RoomParts, 'words'>): string {
  const say = words.room.mix
  if (mix.stage === 'mixing') return say.mixerOff
  switch (nextStage(mix)) {
    case 'rest':
      return say.onToRest
    case 'bulk':
      return say.onToBulk
    case 'bulkChill':
      return say.onToBulkChill
    default:
      return say.onToBench
  }
}

/** What a mix calls for within its stage: the mix-ins, or the next fold; null where nothing more does. */
export function callOf(mix: Mix, nowMs: EpochMs): RoomActParts | null {
  return actsOfMix(mix, mix.sinceMs, nowMs).find(({ kind }) => kind === 'mixIns' || kind === 'fold') ?? null
}

/** Folds that the formula asks for. */
export function foldsOf({ formula }: Mix): number {
  return formula.bulk?.foldsMs.length ?? 0
}

/** What stands beside an item's ring: its time, where one counts down. */
export function whenOf({ when, ring }: RoomItem): string {
  return when !== '' ? when : ring.state === 'running' ? (ring.label ?? '') : ''
}

function traysText(station: StationId, parts: RoomParts): Pick<StationView, 'detail' | 'short'> {
  const { shop, state, words } = parts
  if (station !== 'proof' && station !== 'cooler') return NO_TRAYS
  const stage = station === 'proof' ? 'proof' : 'chill'
  const trays = [...state.batches.values()]
    .filter((batch) => batch.stage === stage)
    .reduce((sum, batch) => sum + traysOf(batch, parts), 0)
  const most = station === 'proof' ? (shop.doughRoom?.proofTrays ?? null) : (shop.cooler?.trays ?? null)
  if (trays === 0 && most === null) return NO_TRAYS
  return { detail: words.room.way.trays(trays, most), short: most === null ? `${trays}` : `${trays}/${most}` }
}

const NO_TRAYS = { detail: '', short: '' }
