import type { Batch, State, Until } from '../day/state.ts'
import { untilOf } from '../ferment/until-of.ts'
import type { DoughId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import { inOrder } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs, spanMs } from '../units.ts'
import type { RoomActParts } from './room-acts.ts'

/** Trays that are ready within so long of the first go into the cooler together (common practice, no source). */
const TOGETHER_MS = spanMs(15, 'min')
/** How long before the end of their window chilled trays are called for: a wave of the line is that long. */
const USE_WARN_MS = spanMs(3, 'h')
/** Calls that are further ahead than this are no use to anybody. */
const USE_AHEAD_MS = spanMs(12, 'h')

interface Tray {
  readonly batch: Batch
  readonly until: Until
}

/** What the trays ask for: into the cooler when they have proofed, and out of it before their window ends. */
export function actsOfTrays(state: State, shop: Shop, nowMs: EpochMs): readonly RoomActParts[] {
  const trays = [...state.batches.values()].flatMap((batch) => {
    const until = batch.stage === 'proof' || batch.stage === 'chill' ? untilOf(state, batch) : null
    return until === null ? [] : [{ batch, until }]
  })
  return inOrder(shop.doughs).flatMap((dough) => {
    const ofDough = trays.filter(({ batch }) => batch.doughId === dough.id)
    const proofing = dough.route.includes('chill') ? ofDough.filter(({ batch }) => batch.stage === 'proof') : []
    const chilled = ofDough.filter(({ batch }) => batch.stage === 'chill')
    return [...byMix(proofing).map((some) => chilling(some, dough.id)), ...using(chilled, dough.id, nowMs)]
  })
}

/** Trays of one mix are one act; those of which nobody knows the mix are each their own. */
function byMix(trays: readonly Tray[]): readonly (readonly [string, readonly Tray[]])[] {
  const groups = new Map<string, Tray[]>()
  for (const tray of trays) {
    const key = tray.batch.mixId ?? tray.batch.id
    groups.set(key, [...(groups.get(key) ?? []), tray])
  }
  return [...groups]
}

function chilling([group, trays]: readonly [string, readonly Tray[]], doughId: DoughId): RoomActParts {
  const atMs = soonest(trays.map(({ until }) => until.targetAtMs))
  const together = trays.filter(({ until }) => until.targetAtMs <= atMs + TOGETHER_MS)
  return {
    key: `chill:${doughId}:${group}`,
    kind: 'chill',
    sinceMs: soonest(together.map(({ batch }) => batch.sinceMs)),
    atMs,
    latestAtMs: soonest(together.map(({ until }) => until.latestAtMs)),
    doughId,
    mixId: together[0]?.batch.mixId ?? null,
    ...whatOf(together),
  }
}

/** One call for each dough: its trays whose window ends soonest, named by the first of them. */
function using(trays: readonly Tray[], doughId: DoughId, nowMs: EpochMs): readonly RoomActParts[] {
  const near = trays.filter(({ until }) => until.latestAtMs - USE_WARN_MS <= nowMs + USE_AHEAD_MS).sort(byLatest)
  const [first] = near
  if (first === undefined) return []
  const latestAtMs = first.until.latestAtMs
  const together = near.filter(({ until }) => until.latestAtMs <= latestAtMs + TOGETHER_MS)
  const atMs = epochMs(Math.max(0, latestAtMs - USE_WARN_MS))
  return [{ key: `use:${doughId}:${first.batch.id}`, kind: 'use', atMs, latestAtMs, doughId, ...whatOf(together) }]
}

function whatOf(trays: readonly Tray[]): Pick<Required<RoomActParts>, 'batchIds' | 'pieces'> {
  const batches = trays.map(({ batch }) => batch)
  return { batchIds: batches.map(({ id }) => id), pieces: piecesOf(batches) }
}

function byLatest(one: Tray, other: Tray): number {
  return one.until.latestAtMs - other.until.latestAtMs || (one.batch.id < other.batch.id ? -1 : 1)
}

function soonest(instants: readonly EpochMs[]): EpochMs {
  return epochMs(Math.min(...instants))
}
