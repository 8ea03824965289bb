import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { varietyId } from '../../../shared-core/ids.ts'
import type { MixedWanted } from '../../../shared-core/orders/mixed-flow.ts'
import { mixedFlow } from '../../../shared-core/orders/mixed-flow.ts'
import type { Order, OrderLine } from '../../../shared-core/orders/order.ts'
import { promiseFor } from '../../../shared-core/orders/promise.ts'
import { fits } from '../../../shared-core/orders/spoken-for.ts'
import { drawer } from '../support/draw.ts'
import { at } from '../support/make.ts'
import { busyDay, drawnLines } from './busy-day.ts'

const sum = (some: readonly number[]) => some.reduce((all, one) => all + one, 0)

/** By trying every way to give each piece of each line to a variety. @returns the most that lines can get in order, first line first */
function everyWay(room: readonly Int32Array[], wanted: readonly MixedWanted[]): number[] {
  let best: number[] = []
  const left = room.map((row) => [...row])
  const given = wanted.map(() => 0)
  const isBetter = () => {
    const at = given.findIndex((pieces, line) => pieces !== (best[line] ?? -1))
    return at >= 0 && (given[at] ?? 0) > (best[at] ?? -1)
  }
  const give = (line: number, piece: number, from: number): void => {
    const one = wanted[line]
    if (one === undefined) {
      if (isBetter()) best = [...given]
      return
    }
    give(line + 1, 0, 0)
    if (piece === one.pieces) return
    for (let variety = from; variety < room.length; variety += 1) {
      const row = left[variety] ?? []
      if (one.fits[variety] !== true || row.slice(one.at).some((pieces) => pieces < 1)) continue
      for (let time = one.at; time < row.length; time += 1) row[time] = (row[time] ?? 0) - 1
      given[line] = (given[line] ?? 0) + 1
      give(line, piece + 1, variety)
      given[line] = (given[line] ?? 0) - 1
      for (let time = one.at; time < row.length; time += 1) row[time] = (row[time] ?? 0) + 1
    }
  }
  give(0, 0, 0)
  return best
}

const rows = fc.array(fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }), {
  minLength: 3,
  maxLength: 3,
})
const wantedDrawn = fc.array(
  fc.record({
    at: fc.integer({ min: 0, max: 2 }),
    fits: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
    pieces: fc.integer({ min: 1, max: 3 }),
  }),
  { minLength: 1, maxLength: 3 },
)

describe('mixed lines', () => {
  it('[M47] given rooms and lines, when every way is tried, then no line can have more without an earlier one having less', () => {
    let [short, whole] = [0, 0]
    fc.assert(
      fc.property(rows, wantedDrawn, (more, wanted) => {
        const room = more.map((row) => Int32Array.from(row, (_, at) => sum(row.slice(0, at + 1))))
        const served = mixedFlow(room, wanted)
        expect(served).toEqual(everyWay(room, wanted))
        if (sum(served) < sum(wanted.map(({ pieces }) => pieces))) short += 1
        else whole += 1
      }),
      { numRuns: 250 },
    )
    expect(Math.min(short, whole)).toBeGreaterThan(40)
  })

  it('[M45, M47] given drawn mornings, when single pieces are matched to single pieces, then all fits at the promised minute and at no sooner one', () => {
    const kind = { varieties: 4, orders: 4, loads: 3, pieces: 8, sliced: true }
    const draw = drawer(8)
    let [now, later, never] = [0, 0, 0]
    for (let seed = 1; seed <= 90; seed += 1) {
      const asked = busyDay(seed, kind)
      const open = [...asked.state.orders.values()]
      const lines = drawnLines(draw, ['v0', 'v1', 'v2', 'v3'], { ...kind, pieces: 64 })
      if (!isMatched(asked, open)) continue
      const { atMs } = promiseFor({ ...asked, lines })
      const fitsAt = (ms: number) =>
        isMatched(asked, [...open, { ...(open[0] as Order), id: 'new' as never, dueAtMs: ms as never, lines }])
      const where = `seed ${seed}`
      expect(atMs === null || fitsAt(atMs), where).toBe(true)
      const lastMs = atMs === null ? asked.closesAtMs : atMs - MINUTE_MS
      const sooner = [lastMs, asked.nowMs, asked.nowMs + draw.upTo(200) * MINUTE_MS].filter(
        (ms) => ms <= lastMs && ms >= asked.nowMs,
      )
      expect(sooner.some(fitsAt), where).toBe(false)
      if (atMs === null) never += 1
      else if (atMs === asked.nowMs) now += 1
      else later += 1
    }
    expect(
      [now, later, never].every((some) => some > 5),
      `${now} ${later} ${never}`,
    ).toBe(true)
  })
})

const MINUTE_MS = 60_000
type Asked = ReturnType<typeof busyDay>

/** Whether each single piece of all orders can have a piece that is ready when it is taken: a matching, by Kuhn's method. */
function isMatched({ state, plan, nowMs }: Asked, orders: readonly Order[]): boolean {
  const units: { readonly varietyId: string; readonly readyMs: number }[] = []
  const add = (id: string, pieces: number, readyMs: number) => {
    for (let piece = 0; piece < pieces; piece += 1) units.push({ varietyId: id, readyMs })
  }
  for (const { varietyId: id, lots } of state.stock.values()) for (const lot of lots) add(id, lot.pieces, lot.readyAtMs)
  // The load in the oven is out at 6:56 by its window, so now, and cools for a quarter of an hour.
  for (const { varietyId: id, pieces, stage } of state.batches.values())
    if (stage === 'oven') add(id ?? '', pieces, at('7:15'))
  for (const { lines, readyAtMs } of plan?.loads ?? [])
    for (const one of lines) add(one.varietyId, one.pieces, readyAtMs)
  const pieces = orders.flatMap((order) => piecesOf(order, nowMs))
  const holder = new Map<number, number>()
  const find = (piece: number, seen: Set<number>): boolean => {
    const one = pieces[piece]
    return units.some((unit, at) => {
      if (one === undefined || seen.has(at) || unit.readyMs > one.takenMs) return false
      if (!fits(one.line, varietyId(unit.varietyId))) return false
      seen.add(at)
      const other = holder.get(at)
      if (other !== undefined && !find(other, seen)) return false
      holder.set(at, piece)
      return true
    })
  }
  return pieces.every((_, piece) => find(piece, new Set()))
}

/** Slicing: half an hour after the oven, a quarter after it is sold, and two minutes for each dozen begun. */
function piecesOf(
  { lines, dueAtMs }: Order,
  nowMs: number,
): readonly { readonly line: OrderLine; readonly takenMs: number }[] {
  const sliced = sum(lines.map((line) => (line.sliced ? line.pieces : 0)))
  const beforeMs = 15 * 60_000 + Math.ceil(sliced / 12) * 120_000
  return lines.flatMap((line) =>
    Array.from({ length: line.pieces }, () => ({
      line,
      takenMs: Math.max(nowMs, dueAtMs) - (line.sliced ? beforeMs : 0),
    })),
  )
}
