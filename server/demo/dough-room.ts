import type { Batch } from '../../shared-core/day/state.ts'
import { untilOf } from '../../shared-core/ferment/until-of.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { drawFor } from './draw.ts'
import { nextOfMix } from './mix-work.ts'
import type { RoomErrand } from './room-errands.ts'
import { roomErrands } from './room-errands.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute, comesUp } from './scene.ts'

/**
 * The one in the dough room: plans tomorrow's mixes before the first load, then weighs, mixes and shapes all morning, a
 * mix at a time, chills what has proofed, begins what must ripen overnight; brings back to the cooler what has stood on
 * the rack for long, and after the last load all of it.
 */
export function doughRoomMoves(scene: Scene): readonly Move[] {
  return [...errands(scene), ...mixing(scene), ...chilling(scene), ...bringingBack(scene), ...tidyingUp(scene)]
}

/** What stands on the clock: planning, readings, counts, preparations. What was missed is missed. */
function errands(scene: Scene): readonly Move[] {
  return errandsOf(scene).flatMap(({ key, minute, who, act }): readonly Move[] => {
    const atMs = atMinute(scene, minute)
    const found = comesUp(scene, atMs) ? act(scene.state) : null
    return found === null ? [] : [{ key: `${key}:${scene.date}`, who, once: true, atMs, act: found }]
  })
}

/** Those of a day are the same all day long, and looked at every second. */
function errandsOf(scene: Scene): readonly RoomErrand[] {
  const { shop, seed, date, dayStartMs } = scene
  const day = `${seed} ${date} ${dayStartMs}`
  const known = OF_DAY.get(shop)
  if (known?.day === day) return known.errands
  const errands = roomErrands({ shop, seed, date, dayStartMs })
  OF_DAY.set(shop, { day, errands })
  return errands
}

const OF_DAY = new WeakMap<Shop, { readonly day: string; readonly errands: readonly RoomErrand[] }>()

function mixing(scene: Scene): readonly Move[] {
  return [...scene.state.mixes.values()].flatMap((mix) => nextOfMix(mix, scene) ?? [])
}

/** Into the cooler when they have proofed, give or take. */
function chilling({ state, seed }: Scene): readonly Move[] {
  return [...state.batches.values()].flatMap((batch) => chillMove(batch, { state, seed }) ?? [])
}

export function chillMove(batch: Batch, { state, seed }: Pick<Scene, 'state' | 'seed'>): Move | null {
  const until = batch.stage === 'proof' ? untilOf(state, batch) : null
  if (until === null) return null
  const key = `chill:${batch.id}`
  // Trays of one mix go together, whoever comes to it.
  const draw = drawFor(seed, `chill:${batch.mixId ?? batch.id}`)
  return { key, who: 'crew', atMs: until.targetAtMs + draw.between(-6, 14) * 60_000, act: moved(batch, 'chill') }
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
