import { describe, expect, it } from 'vitest'
import type { Keep, Line } from '../../../shared-core/day/state.ts'
import { keepId, orderId, plannedId } from '../../../shared-core/ids.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import { ordersAtRisk } from '../../../shared-core/orders/at-risk.ts'
import { keepNow } from '../../../shared-core/orders/keep-now.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import { pickOf } from '../../../shared-core/orders/picks.ts'
import type { SupplyAsked } from '../../../shared-core/orders/promise.ts'
import { promiseFor } from '../../../shared-core/orders/promise.ts'
import { must } from '../../../shared-core/support.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { Draw } from '../support/draw.ts'
import { drawer } from '../support/draw.ts'
import { at, lot, planned, stateWith, stock } from '../support/make.ts'
import { lookingAt, outlookWith } from '../support/outlook.ts'
import { planWith } from '../support/plan.ts'
import { busyDay, drawnLines } from './busy-day.ts'
import { asking, order } from './promise-makers.ts'

const STEP_MS = 5 * 60_000
const CLOSE = at('15:00')
const KIND = { varieties: 5, orders: 0, loads: 7, pieces: 24 }

/** A whole day in plain numbers: what lies on the rods, what is kept for whom, what will come. */
class Day {
  readonly #draw: Draw
  readonly #begin: SupplyAsked
  readonly #rods = new Map<string, number>()
  readonly #orders = new Map<string, Order>()
  readonly #keeps = new Map<string, Keep>()
  readonly #asked = new Map<string, number>()
  #loads: Plan['loads']
  #nowMs = at('7:00')
  #kept = 0
  readonly #soonerMs: number
  taken = 0
  later = 0
  mixed = 0
  readonly short: string[] = []
  readonly risks: string[] = []

  constructor(seed: number, keepsAsTheyCome: boolean, soonerMs: number) {
    this.#soonerMs = soonerMs
    this.#draw = drawer(seed * 7 + 1)
    this.#begin = busyDay(seed, { ...KIND, rules: { walkInPercent: 100, keepsAsTheyCome } })
    for (const { varietyId, lots } of this.#begin.state.stock.values())
      this.#rods.set(
        varietyId,
        lots.reduce((sum, { pieces }) => sum + pieces, 0),
      )
    this.#loads = this.#begin.plan?.loads ?? []
  }

  run(): this {
    for (; this.#nowMs <= CLOSE; this.#nowMs = epochMs(this.#nowMs + STEP_MS)) {
      this.#come()
      this.#walkIns()
      for (const one of [...this.#orders.values()]) if (one.dueAtMs <= this.#nowMs) this.#handOver(one)
      if (this.#draw.upTo(2) === 0) this.#ask()
    }
    return this
  }

  #names(): string[] {
    return [...this.#rods.keys()]
  }

  #come(): void {
    const ready = this.#loads.filter(({ readyAtMs }) => readyAtMs <= this.#nowMs)
    this.#loads = this.#loads.filter((one) => !ready.includes(one))
    for (const { lines } of ready) {
      const shop = this.#looked().state.shop
      if (shop === null) throw new Error('the test has a shop')
      const lots = lines.map(({ varietyId, pieces }) => ({
        varietyId,
        doughId: must(shop.varieties, varietyId).doughId,
        lot: lot({ pieces, outAt: this.#nowMs }),
      }))
      const kept = keepNow(this.#looked().state, shop, lots)
      for (const { varietyId, pieces } of lines) this.#add(varietyId, pieces)
      for (const { orderId: id, lines: some } of kept) this.#keep(id, some)
    }
  }

  /** Never more in any span than what is expected of it; now and then fewer. Who finds none has gone. */
  #walkIns(): void {
    for (const { varietyId, rest } of this.#begin.outlook?.varieties ?? []) {
      const by = Math.floor((rest.q50 * (this.#nowMs - at('7:00'))) / (CLOSE - at('7:00')))
      const some = by - (this.#asked.get(varietyId) ?? 0)
      this.#asked.set(varietyId, by)
      const takes = this.#draw.upTo(3) === 0 ? this.#draw.upTo(some) : some
      this.#add(varietyId, -Math.min(this.#rods.get(varietyId) ?? 0, takes))
    }
  }

  #ask(): void {
    const lines = drawnLines(this.#draw, this.#names(), KIND)
    const { atMs } = promiseFor({ ...this.#looked(), lines })
    if (atMs === null) return
    const dueAtMs = epochMs(Math.max(this.#nowMs, atMs - this.#soonerMs) + this.#draw.upTo(3) * 20 * 60_000)
    if (dueAtMs > CLOSE) return
    this.taken += 1
    if (atMs > this.#nowMs) this.later += 1
    if (lines.some(({ varietyId }) => varietyId === null)) this.mixed += 1
    const one = order(`o${this.taken}`, '9:00', lines, { dueAtMs })
    this.#orders.set(one.id, one)
    if (ordersAtRisk(this.#looked()).length > 0) this.risks.push(one.id)
    if (dueAtMs <= this.#nowMs) this.#handOver(one)
  }

  #handOver(one: Order): void {
    const looked = this.#looked()
    const pick = pickOf(looked.state, one, this.#nowMs, looked)
    for (const { varietyId, pieces } of pick.keep) this.#add(varietyId, -pieces)
    if (pick.missing > 0) this.short.push(one.id)
    this.#orders.delete(one.id)
    for (const [id, keep] of this.#keeps) if (keep.orderId === one.id) this.#keeps.delete(id)
  }

  #keep(id: string, lines: readonly Line[]): void {
    const keep = {
      id: keepId(`k${this.#kept++}`),
      lines,
      keptAtMs: this.#nowMs,
      outAtMs: this.#nowMs,
      readyAtMs: this.#nowMs,
    }
    this.#keeps.set(keep.id, { ...keep, orderId: orderId(id) })
    for (const { varietyId, pieces } of lines) this.#add(varietyId, -pieces)
  }

  #add(id: string, pieces: number): void {
    this.#rods.set(id, (this.#rods.get(id) ?? 0) + pieces)
  }

  /** The day as the board would see it, its rods just counted. */
  #looked(): SupplyAsked {
    const shop = this.#begin.state.shop
    const seen = { seen: { atMs: this.#nowMs, sold: 0, shopSold: 0 } }
    const stocks = [...this.#rods].map(([id, pieces]) =>
      stock(
        id,
        { ...seen, lots: pieces === 0 ? [] : [lot({ id: `${id}-${this.#nowMs}`, pieces, readyAt: this.#nowMs })] },
        shop ?? undefined,
      ),
    )
    const [orders, keeps] = [[...this.#orders.values()], [...this.#keeps.values()]]
    const coming = this.#loads.map((one, n) => ({
      ...planned({ inAt: one.inAtMs, lines: one.lines }),
      id: plannedId(`p${n}`),
    }))
    const state = stateWith({ shop, stock: stocks, orders, keeps, planned: coming })
    const part = (CLOSE - this.#nowMs) / (CLOSE - at('7:00'))
    const outlook = outlookWith(
      (this.#begin.outlook?.varieties ?? []).map(({ varietyId, rest }) => {
        const q50 = rest.q50 * part
        return lookingAt(varietyId, { rest: { q10: q50, q50, q90: q50 } })
      }),
    )
    return asking(state, { nowMs: this.#nowMs, outlook, plan: planWith(this.#loads) })
  }
}

function days(count: number, soonerMs: number) {
  const all = Array.from({ length: count }, (_, n) => new Day(n + 1, n % 2 === 0, soonerMs).run())
  const sum = (of: (day: Day) => number) => all.reduce((so, day) => so + of(day), 0)
  return {
    short: all.flatMap((day, n) => day.short.map((id) => `${n + 1} ${id}`)),
    risks: all.flatMap((day, n) => day.risks.map((id) => `${n + 1} ${id}`)),
    taken: sum((day) => day.taken),
    later: sum((day) => day.later),
    mixed: sum((day) => day.mixed),
  }
}

describe('days on which each order is taken as it was promised', () => {
  it('[M52] given walk-ins up to what is left to them, when orders come all day, then none is short nor at risk when it was taken', () => {
    const { short, risks, taken, later, mixed } = days(10, 0)
    expect([short, risks]).toEqual([[], []])
    expect([taken > 120, later > 20, mixed > 50], `${taken} ${later} ${mixed}`).toEqual([true, true, true])
  })

  it('[M52] given orders that are taken an hour sooner than they were promised, when the same days go by, then some are short', () => {
    expect(days(4, 3_600_000).short.length).toBeGreaterThan(0)
  })
})
