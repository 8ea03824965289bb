import type { SlotOrder, SlotPart, SlotsGiven } from '../../../shared-core/kitchen/slots.ts'
import { Chance } from '../../../shared-core/plan/bake-off/chance.ts'

const MINUTE_MS = 60_000

export interface DrawnSlots {
  readonly parts: number
  /** Places of each shelf. */
  readonly shelves?: readonly number[]
  /** Share of the things that take two places. */
  readonly wide?: number
  /** Orders are due over so many minutes. */
  readonly dueOver?: number
}

/** A rush at the oven, drawn: orders of one to four things that bake one and a half to eight minutes. */
export function drawnSlots(
  seed: number,
  { parts: count, shelves = [4, 4, 4], wide = 0.1, dueOver = 30 }: DrawnSlots,
): SlotsGiven {
  const chance = new Chance(seed)
  const orders: SlotOrder[] = []
  const parts: SlotPart[] = []
  while (parts.length < count) {
    const id = `o${orders.length}`
    const dueMs = chance.index(dueOver * 60) * 1_000
    orders.push({ id, dueMs, otherReadyMs: chance.index(10) * MINUTE_MS })
    const things = Math.min(count - parts.length, 1 + chance.index(4))
    for (let at = 0; at < things; at += 1)
      parts.push({
        id: `${id}.${at}`,
        orderId: id,
        readyMs: chance.part() < 0.3 ? chance.index(300) * 1_000 : 0,
        bakeMs: (90 + 30 * chance.index(14)) * 1_000,
        slots: chance.part() < wide ? 2 : 1,
        afterMs: chance.index(3) * 30_000,
        group: null,
      })
  }
  return {
    nowMs: 0,
    stopMs: null,
    handlingMs: 15_000,
    shelves: shelves.map((places, at) => ({
      id: `s${at}`,
      freeMs: Array.from({ length: places }, () => (chance.part() < 0.5 ? 0 : chance.index(240) * 1_000)),
    })),
    orders,
    parts,
  }
}
