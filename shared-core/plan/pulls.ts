import type { DoughId, VarietyId } from '../ids.ts'
import type { PlanLoad, PlanPull } from '../live/plan.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { doughKeyOf, doughOfKey } from './dough-key.ts'
import type { PlanAsked } from './plan-asked.ts'

/** Pieces of one dough on the rack, over what the loads so far take. */
interface OnRack {
  spare: number
  /** Beyond it, what was pulled is past its window: it is not counted on. */
  untilMs: number
}

/**
 * What to take out of the cooler for the loads, soonest first: in whole trays, so that pieces stand on the rack as long as
 * the shop wants before their dip; dough that is boiled cold comes out at its dip. What stands on the rack already, and
 * what is left of a tray, goes into the next load that can still have it.
 * @param loads in the order of their kettle starts
 * @param before pulls as they were told last: what is late keeps its time, or it would be due just now at every look
 */
export function pullsOf(
  asked: PlanAsked,
  loads: readonly PlanLoad[],
  before: readonly PlanPull[] = [],
): readonly PlanPull[] {
  const racks = rackNow(asked)
  const chilled = chilledLots(asked)
  const pulls: PlanPull[] = []
  for (const load of loads) {
    if (load.kettleAtMs !== null && load.kettleAtMs < asked.line.nowMs) continue
    for (const [key, pieces] of piecesByKey(asked, load)) {
      const pull = pullFor(asked, load, { key, pieces, rack: rackOf(racks, key), lots: chilled.get(key) ?? [] })
      if (pull !== null) pulls.push(lateStaysLate(asked, pull, before))
    }
  }
  return pulls.sort((one, other) => one.atMs - other.atMs || (one.loadId < other.loadId ? -1 : 1))
}

function lateStaysLate({ line }: PlanAsked, pull: PlanPull, before: readonly PlanPull[]): PlanPull {
  if (pull.atMs > line.nowMs) return pull
  const { loadId, doughId, varietyId } = pull
  const was = before.find((one) => one.loadId === loadId && one.doughId === doughId && one.varietyId === varietyId)
  return was !== undefined && was.atMs < pull.atMs ? { ...pull, atMs: was.atMs } : pull
}

interface Chilled {
  left: number
  readonly latestAtMs: EpochMs | null
}

interface Pulling {
  readonly key: string
  readonly pieces: number
  readonly rack: OnRack
  readonly lots: readonly Chilled[]
}

function pullFor({ shop, line }: PlanAsked, load: PlanLoad, { key, pieces, rack, lots }: Pulling): PlanPull | null {
  const { doughId, varietyId } = doughOfKey(key)
  const dough = shop.doughs.get(doughId)
  const dipMs = load.kettleAtMs ?? load.inAtMs
  if (dipMs > rack.untilMs) rack.spare = 0
  const fromRack = Math.min(rack.spare, pieces)
  rack.spare -= fromRack
  const rest = pieces - fromRack
  const there = lots.reduce((sum, { left }) => sum + left, 0)
  if (rest === 0 || dough === undefined || !dough.route.includes('chill') || (there === 0 && !line.doughIsOpen))
    return null
  const trayPieces = Math.max(1, dough.trayPieces)
  const trays = Math.ceil(rest / trayPieces)
  const pulled = line.doughIsOpen ? trays * trayPieces : Math.min(there, trays * trayPieces)
  const window = dough.route.includes('rack') ? windowOf(shop, 'rack', doughId, varietyId) : null
  const atMs = epochMs(Math.max(line.nowMs, dipMs - (window?.targetMs ?? 0)))
  rack.spare += Math.max(0, pulled - rest)
  rack.untilMs = window === null ? dipMs : atMs + window.latestMs
  return { atMs, doughId, varietyId, pieces: pulled, trays, loadId: load.id, latestAtMs: takeOldest(lots, pulled) }
}

/** @returns the soonest end among the lots that it takes from */
function takeOldest(lots: readonly Chilled[], pieces: number): EpochMs | null {
  let rest = pieces
  let latestAtMs: EpochMs | null = null
  for (const lot of lots) {
    const got = Math.min(rest, lot.left)
    if (got === 0) continue
    lot.left -= got
    rest -= got
    if (lot.latestAtMs !== null && (latestAtMs === null || lot.latestAtMs < latestAtMs)) latestAtMs = lot.latestAtMs
  }
  return latestAtMs
}

function piecesByKey({ shop }: PlanAsked, { lines }: PlanLoad): ReadonlyMap<string, number> {
  const sums = new Map<string, number>()
  for (const { varietyId, pieces } of lines) {
    const variety = shop.varieties.get(varietyId)
    if (variety === undefined) continue
    const key = doughKeyOf(shop, variety)
    sums.set(key, (sums.get(key) ?? 0) + pieces)
  }
  return sums
}

function keyOfLot(
  { shop }: PlanAsked,
  { doughId, varietyId }: { doughId: DoughId; varietyId: VarietyId | null },
): string {
  const variety = varietyId === null ? undefined : shop.varieties.get(varietyId)
  return variety === undefined ? doughId : doughKeyOf(shop, variety)
}

function rackNow(asked: PlanAsked): Map<string, OnRack> {
  const racks = new Map<string, OnRack>()
  for (const lot of asked.line.doughs) {
    if (lot.stage !== 'rack') continue
    const key = keyOfLot(asked, lot)
    const spare = (racks.get(key)?.spare ?? 0) + lot.pieces
    // What is past its window on the rack is there all the same, and should go first.
    racks.set(key, { spare, untilMs: Number.POSITIVE_INFINITY })
  }
  return racks
}

function rackOf(racks: Map<string, OnRack>, key: string): OnRack {
  const known = racks.get(key)
  if (known !== undefined) return known
  const rack = { spare: 0, untilMs: Number.POSITIVE_INFINITY }
  racks.set(key, rack)
  return rack
}

/** As the line has them: whose window closes first stands first. */
function chilledLots(asked: PlanAsked): ReadonlyMap<string, readonly Chilled[]> {
  const lots = new Map<string, Chilled[]>()
  for (const lot of asked.line.doughs) {
    if (lot.stage !== 'chill') continue
    const key = keyOfLot(asked, lot)
    lots.set(key, [...(lots.get(key) ?? []), { left: lot.pieces, latestAtMs: lot.latestAtMs }])
  }
  return lots
}
