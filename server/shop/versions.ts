import type { Entry } from '../../shared-core/day/events.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import { applySetUp } from '../../shared-core/shop/set-up-apply.ts'
import type { ChangeTold } from '../../shared-core/shop/set-up-told.ts'
import { changesTold } from '../../shared-core/shop/set-up-told.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'

/** A set-up as it was from an entry on. */
export interface Version {
  readonly seq: number
  readonly atMs: EpochMs
  /** Who sent the command that made it; of a planned change, who planned it. */
  readonly deviceId: DeviceId
  /** It was planned and took effect in its time. */
  readonly isPlanned: boolean
  readonly told: readonly ChangeTold[]
  /** Planned changes that no longer fitted and were dropped with this entry, though nobody asked for that. */
  readonly lost: number
}

/**
 * Every version of a set-up, oldest first, out of the entries that changed it.
 *
 * Folded anew each time it is asked for: a shop changes its set-up a few hundred times a year, which takes milliseconds,
 * and a list kept in memory would have to be right after failed writes too.
 * @param entries those with events of the set-up, in order, from the first on (`Journal.setUpEntries`)
 */
export function versionsOf(entries: Iterable<Entry>): Version[] {
  const versions: Version[] = []
  let shop: Shop | null = null
  const plannedBy = new Map<string, DeviceId>()
  for (const entry of entries) {
    const before: Shop | null = shop
    const step = stepOf(entry, before, plannedBy)
    shop = step.shop
    if (step.told.length > 0 || step.lost > 0) {
      const { seq, recordedAtMs: atMs } = entry
      const { told, lost, deviceId, isPlanned } = step
      versions.push({ seq, atMs, deviceId, isPlanned, told, lost })
    }
  }
  return versions
}

/** The set-up after an entry; null when no entry of the set-up has this number. */
export function setUpAfter(entries: Iterable<Entry>, seq: number): Shop | null {
  let shop: Shop | null = null
  for (const entry of entries) {
    for (const event of entry.events) if (event.type === 'setUpChanged') shop = applySetUp(shop, event.changes)
    if (entry.seq === seq) return shop
    if (entry.seq > seq) return null
  }
  return null
}

function stepOf(entry: Entry, before: Shop | null, plannedBy: Map<string, DeviceId>) {
  const ownAt = ownChangeAt(entry, plannedBy)
  let shop = before
  let deviceId = entry.deviceId
  let isPlanned = false
  let lost = 0
  const told: ChangeTold[] = []
  entry.events.forEach((event, index) => {
    if (event.type === 'setUpPlanned') plannedBy.set(event.setUp.id, event.setUp.deviceId)
    if (event.type === 'setUpChanged') {
      told.push(...changesTold(shop, event.changes))
      shop = applySetUp(shop, event.changes)
    }
    if (event.type !== 'setUpDropped') return
    // What took effect is dropped right after: it is planned no more.
    const isAfterChange = entry.events[index - 1]?.type === 'setUpChanged' && index - 1 !== ownAt
    if (isAfterChange && plannedBy.has(event.setUpId)) {
      isPlanned = ownAt === null
      deviceId = isPlanned ? (plannedBy.get(event.setUpId) ?? deviceId) : deviceId
    } else if (entry.told.type !== 'dropSetUp') lost += 1
  })
  return { shop, told, lost, deviceId, isPlanned }
}

/**
 * Where the change stands that a command made at once: after those that were due with it. Null where the command was
 * another, or planned a change for later.
 */
function ownChangeAt({ told, events }: Entry, plannedBy: ReadonlyMap<string, DeviceId>): number | null {
  const isPlan = events.some((event) => event.type === 'setUpPlanned' && !plannedBy.has(event.setUp.id))
  if (told.type !== 'changeSetUp' || isPlan) return null
  return events.findLastIndex(({ type }) => type === 'setUpChanged')
}
