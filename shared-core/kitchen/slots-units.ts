import type { SlotPart, SlotsGiven } from './slots.ts'

/** The given once read, as the search needs it: everything by index, instants since now. */
export interface SlotsProblem {
  readonly given: SlotsGiven
  /** Parts that go in at one moment; most are one. Those that no shelf can hold are left out. */
  readonly units: readonly SlotUnit[]
  readonly orders: readonly { readonly dueMs: number; readonly otherMs: number; readonly units: readonly number[] }[]
  /** First place of each shelf among all places, and one beyond the last. */
  readonly firstPlace: readonly number[]
  readonly freeMs: Float64Array
  readonly stopMs: number
  /** Parts that need more places than any shelf has. */
  readonly misfits: readonly SlotPart[]
}

export interface SlotUnit {
  readonly parts: readonly SlotPart[]
  /** Order of each part, among the problem's. */
  readonly orders: readonly number[]
  readonly readyMs: number
}

/** Orders that the parts name and nobody gave are due now. */
export function readSlots(given: SlotsGiven): SlotsProblem {
  const { nowMs, shelves, parts } = given
  const most = shelves.reduce((sum, { freeMs }) => Math.max(sum, freeMs.length), 0)
  const index = new Map(given.orders.map(({ id }, at) => [id, at]))
  const orders = given.orders.map(({ dueMs, otherReadyMs }) => ({
    dueMs: dueMs - nowMs,
    otherMs: otherReadyMs - nowMs,
    units: [] as number[],
  }))
  for (const { orderId } of parts) {
    if (index.has(orderId)) continue
    index.set(orderId, orders.length)
    orders.push({ dueMs: 0, otherMs: 0, units: [] })
  }
  const fitting = parts.filter(({ slots }) => slots <= most)
  const units = groupsOf(fitting, shelves).map((group) => ({
    parts: group,
    orders: group.map(({ orderId }) => index.get(orderId) ?? 0),
    readyMs: group.reduce((at, { readyMs }) => Math.max(at, readyMs - nowMs), 0),
  }))
  units.forEach((unit, at) => {
    for (const order of new Set(unit.orders)) orders[order]?.units.push(at)
  })
  return {
    given,
    units,
    orders,
    firstPlace: [
      0,
      ...shelves.map((_, at) => shelves.slice(0, at + 1).reduce((sum, { freeMs }) => sum + freeMs.length, 0)),
    ],
    freeMs: Float64Array.from(shelves.flatMap(({ freeMs }) => freeMs.map((atMs) => Math.max(0, atMs - nowMs)))),
    stopMs: given.stopMs === null ? Number.POSITIVE_INFINITY : given.stopMs - nowMs,
    misfits: parts.filter(({ slots }) => slots > most),
  }
}

/** A group that the whole oven cannot hold at once goes in in as many turns as it needs. */
function groupsOf(parts: readonly SlotPart[], shelves: SlotsGiven['shelves']): readonly (readonly SlotPart[])[] {
  const groups: SlotPart[][] = []
  const open = new Map<string, SlotPart[]>()
  for (const part of parts) {
    const group = part.group === null ? undefined : open.get(part.group)
    if (group !== undefined && haveRoom([...group, part], shelves)) {
      group.push(part)
      continue
    }
    const fresh = [part]
    groups.push(fresh)
    if (part.group !== null) open.set(part.group, fresh)
  }
  return groups
}

/** Into the first shelf with room, the widest first: enough to say that it goes. */
function haveRoom(parts: readonly SlotPart[], shelves: SlotsGiven['shelves']): boolean {
  const left = shelves.map(({ freeMs }) => freeMs.length)
  return [...parts]
    .sort((one, other) => other.slots - one.slots)
    .every(({ slots }) => {
      const shelf = left.findIndex((places) => places >= slots)
      if (shelf === -1) return false
      left[shelf] = (left[shelf] ?? 0) - slots
      return true
    })
}
