import type { State } from '../day/state.ts'
import type { BatchId, VarietyId } from '../ids.ts'
import { contentsByLoad } from '../line/contents.ts'
import type { LookAhead } from '../line/look-ahead.ts'
import { lookAhead } from '../line/look-ahead.ts'
import { loadWindow, windowOf } from '../shop/windows.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

export type ComingFrom = 'cooling' | 'oven' | 'boards' | 'planned'

/** Pieces that will be for sale later. */
export interface Coming {
  readonly pieces: number
  readonly readyAtMs: EpochMs
  /** Where they are now; `planned`: still dough. */
  readonly from: ComingFrom
}

/**
 * What is on the way to each variety, soonest first. Pieces that are ready within the same minute from the same place
 * are one. What is late counts as if the next act were done now; dough of which nobody said what it becomes counts only
 * where a planned load takes it.
 * @returns only varieties to which something is on the way
 */
export function onTheWay(state: State, nowMs: EpochMs): ReadonlyMap<VarietyId, readonly Coming[]> {
  const ahead = lookAhead(state, nowMs)
  return ahead === null ? new Map() : onTheWayAhead(ahead)
}

/** The same, for who has looked ahead already. */
export function onTheWayAhead(ahead: LookAhead): ReadonlyMap<VarietyId, readonly Coming[]> {
  const coming = new Map<VarietyId, Coming[]>()
  const add = (varietyId: VarietyId, one: Coming) => {
    const so = coming.get(varietyId)
    if (so === undefined) coming.set(varietyId, [one])
    else so.push(one)
  }
  addCooling(ahead, add)
  addOven(ahead, add)
  addPlanned(ahead, add)
  return new Map([...coming].map(([varietyId, all]) => [varietyId, merged(all)]))
}

type Add = (varietyId: VarietyId, one: Coming) => void

function addCooling({ state, nowMs }: LookAhead, add: Add): void {
  for (const { varietyId, lots } of state.stock.values())
    for (const { pieces, readyAtMs } of lots)
      if (readyAtMs > nowMs) add(varietyId, { pieces, readyAtMs, from: 'cooling' })
}

function addOven(ahead: LookAhead, add: Add): void {
  const contents = contentsByLoad(ahead.state, ahead.shop)
  for (const load of ahead.state.loads.values())
    for (const { varietyId, pieces } of contents.get(load.id) ?? [])
      add(varietyId, { pieces, readyAtMs: cooled(ahead, varietyId, load.out?.targetAtMs ?? ahead.nowMs), from: 'oven' })
}

function addPlanned(ahead: LookAhead, add: Add): void {
  const boarded = new Map<BatchId, number>()
  for (const { expected, parts } of ahead.allotments) {
    for (const { varietyId, pieces } of expected.planned.lines) {
      let onBoards = 0
      for (const part of parts) {
        if (part.varietyId !== varietyId || part.batch.stage !== 'boards') continue
        onBoards += part.pieces
        boarded.set(part.batch.id, (boarded.get(part.batch.id) ?? 0) + part.pieces)
      }
      const readyAtMs = cooled(ahead, varietyId, expected.outAtMs)
      if (onBoards > 0) add(varietyId, { pieces: onBoards, readyAtMs, from: 'boards' })
      if (pieces > onBoards) add(varietyId, { pieces: pieces - onBoards, readyAtMs, from: 'planned' })
    }
  }
  addUnplannedBoards(ahead, boarded, add)
}

/** Topped pieces on boards that no planned load takes: as if they went in now. */
function addUnplannedBoards(ahead: LookAhead, boarded: ReadonlyMap<BatchId, number>, add: Add): void {
  const { state, shop, nowMs } = ahead
  for (const batch of state.batches.values()) {
    const { id, stage, varietyId } = batch
    const pieces = batch.pieces - (boarded.get(id) ?? 0)
    if (stage !== 'boards' || varietyId === null || pieces === 0) continue
    const outAtMs = nowMs + (loadWindow(shop, 'bake', [varietyId])?.targetMs ?? 0)
    add(varietyId, { pieces, readyAtMs: cooled(ahead, varietyId, epochMs(outAtMs)), from: 'boards' })
  }
}

function cooled({ shop, nowMs }: LookAhead, varietyId: VarietyId, outAtMs: EpochMs): EpochMs {
  const { doughId } = must(shop.varieties, varietyId)
  return epochMs(Math.max(outAtMs, nowMs) + (windowOf(shop, 'cool', doughId, varietyId)?.targetMs ?? 0))
}

const NEAREST: readonly ComingFrom[] = ['cooling', 'oven', 'boards', 'planned']

function merged(all: readonly Coming[]): readonly Coming[] {
  const byMinute = new Map<string, Coming>()
  for (const one of all) {
    const key = `${Math.floor(one.readyAtMs / 60_000)} ${one.from}`
    const so = byMinute.get(key)
    const readyAtMs = so !== undefined && so.readyAtMs > one.readyAtMs ? so.readyAtMs : one.readyAtMs
    byMinute.set(key, { pieces: one.pieces + (so?.pieces ?? 0), readyAtMs, from: one.from })
  }
  return [...byMinute.values()].sort(
    (one, other) => one.readyAtMs - other.readyAtMs || NEAREST.indexOf(one.from) - NEAREST.indexOf(other.from),
  )
}
