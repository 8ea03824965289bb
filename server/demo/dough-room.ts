import type { Batch } from '../../shared-core/day/state.ts'
import type { DoughId, VarietyId } from '../../shared-core/ids.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { must } from '../../shared-core/support.ts'
import { demoLoadList } from './demo-load-list.ts'
import { drawFor } from './draw.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute, comesUp, minuteOfDay } from './scene.ts'

/**
 * The one in the dough room: shapes tomorrow's dough all morning, a mix at a time, always of what is shortest; chills
 * what has proofed; brings back to the cooler what has stood on the rack for long, and after the last load all of it.
 */
export function doughRoomMoves(scene: Scene): readonly Move[] {
  return [...shaping(scene), ...chilling(scene), ...bringingBack(scene), ...tidyingUp(scene)]
}

/** What one mixer-full makes. */
const TRAYS_A_MIX = 5
const FIRST_MIX_MINUTE = 5 * 60 + 10
/** Proofed and chilled before close. */
const LAST_MIX_MINUTE = 11 * 60 + 20
const MIX_MINUTES = 23
/** A tray more than planned, of each: something always drops, and a count may find fewer. */
const SPARE_TRAYS = 1

/** Dough as it is shaped: plain, or what the mixer or the shaper already made of it. */
export interface Shaped {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly trayPieces: number
  /** What a day needs of it, in whole trays. */
  readonly pieces: number
}

/** The dough of a whole day, by the list of a usual one; reckoned once for each set-up, which never changes in place. */
export function doughForDay(shop: Shop): readonly Shaped[] {
  const known = FOR_DAY.get(shop)
  if (known !== undefined) return known
  const reckoned = reckonDough(shop)
  FOR_DAY.set(shop, reckoned)
  return reckoned
}

const FOR_DAY = new WeakMap<Shop, readonly Shaped[]>()

function reckonDough(shop: Shop): readonly Shaped[] {
  const pieces = new Map<string, Shaped>()
  const lines = demoLoadList(shop, { dayStartMs: 0, waveAtMs: 0 }).flatMap((load) => load.lines)
  for (const line of lines) {
    const { doughId, decidedAt, id } = must(shop.varieties, line.varietyId)
    const varietyId = decidedAt === 'mixer' ? id : null
    const key = `${doughId} ${varietyId ?? ''}`
    const { trayPieces } = must(shop.doughs, doughId)
    const sum = (pieces.get(key)?.pieces ?? 0) + line.pieces
    pieces.set(key, { doughId, varietyId, trayPieces, pieces: sum })
  }
  return [...pieces.values()].map((one) => ({
    ...one,
    pieces: (Math.ceil(one.pieces / one.trayPieces) + SPARE_TRAYS) * one.trayPieces,
  }))
}

function shaping(scene: Scene): readonly Move[] {
  const slot = Math.ceil((minuteOfDay(scene, scene.nowMs) - FIRST_MIX_MINUTE) / MIX_MINUTES)
  const key = `mix:${scene.date}:${slot}`
  const minute = FIRST_MIX_MINUTE + slot * MIX_MINUTES
  const atMs = atMinute(scene, minute)
  if (slot < 0 || minute > LAST_MIX_MINUTE || !comesUp(scene, atMs)) return []
  const shortest = doughForDay(scene.shop)
    .map((one) => ({ one, short: one.pieces - overFromToday(scene, one) }))
    .sort((a, b) => b.short - a.short)[0]
  if (shortest === undefined || shortest.short <= 0) return []
  const { doughId, varietyId, trayPieces } = shortest.one
  const trays = Math.min(TRAYS_A_MIX, Math.ceil(shortest.short / trayPieces))
  const pieces = trays * trayPieces
  const act = { type: 'shape', doughId, varietyId, pieces, stage: 'proof' } as const
  return [{ key, who: 'crew', once: true, atMs, act }]
}

/** What stands before the kettle and no planned load of today wants. */
export function overFromToday({ state, shop }: Pick<Scene, 'state' | 'shop'>, one: Shaped): number {
  const { doughId, varietyId } = one
  const have = [...state.batches.values()].filter(
    (batch) => batch.doughId === doughId && batch.varietyId === varietyId && isBeforeKettle(batch),
  )
  const wanted = [...state.planned.values()]
    .filter(({ done }) => !done)
    .flatMap(({ lines }) => lines)
    .filter((line) => {
      const variety = must(shop.varieties, line.varietyId)
      return variety.doughId === doughId && (variety.decidedAt === 'mixer' ? variety.id : null) === varietyId
    })
  return piecesOf(have) - piecesOf(wanted)
}

function isBeforeKettle({ stage }: Batch): boolean {
  return stage === 'proof' || stage === 'chill' || stage === 'rack'
}

/** Into the cooler when they have proofed, give or take. */
function chilling({ state, seed }: Scene): readonly Move[] {
  return [...state.batches.values()]
    .filter((batch) => batch.stage === 'proof' && batch.until !== null)
    .map((batch) => {
      const key = `chill:${batch.id}`
      const atMs = (batch.until?.targetAtMs ?? 0) + drawFor(seed, key).between(-12, 25) * 60_000
      return { key, who: 'crew', atMs, act: moved(batch, 'chill') }
    })
}

/** Half a tray that was pulled and not wanted goes back before it is over; now and then nobody sees it. */
function bringingBack({ state, seed }: Scene): readonly Move[] {
  return [...state.batches.values()].flatMap((batch): readonly Move[] => {
    if (batch.stage !== 'rack' || batch.until === null) return []
    const key = `back:${batch.id}`
    const draw = drawFor(seed, key)
    if (draw.oneIn(OVERLOOKED_ONCE_IN)) return []
    const atMs = batch.until.latestAtMs - draw.between(1, 9) * 60_000
    return [{ key, who: 'crew', atMs, act: moved(batch, 'chill') }]
  })
}
const OVERLOOKED_ONCE_IN = 9

/** After the changeover: trays go back to the cooler, loose pieces on wet boards are no good any more. */
function tidyingUp(scene: Scene): readonly Move[] {
  const { state, shop, seed } = scene
  const { changeoverFromMinute, closeMinute } = shop.hours
  const fromMs = atMinute(scene, changeoverFromMinute ?? closeMinute)
  if (scene.nowMs < fromMs || scene.nowMs >= atMinute(scene, closeMinute)) return []
  return [...state.batches.values()].flatMap((batch): readonly Move[] => {
    const key = `tidy:${batch.id}`
    const atMs = fromMs + drawFor(seed, key).between(1, 12) * 60_000
    if (batch.stage === 'rack') return [{ key, who: 'crew', atMs, act: moved(batch, 'chill') }]
    if (batch.stage !== 'boards') return []
    const act = { type: 'wasteBatch', batchId: batch.id, from: 'boards', pieces: batch.pieces } as const
    return [{ key, who: 'crew', atMs, act }]
  })
}

function moved(batch: Batch, to: 'chill'): Move['act'] {
  return { type: 'moveBatch', batchId: batch.id, from: batch.stage, to, pieces: batch.pieces }
}
