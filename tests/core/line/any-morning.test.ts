import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEntry } from '../../../shared-core/day/apply.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { nextActs } from '../../../shared-core/line/acts.ts'
import { boardsNow } from '../../../shared-core/line/boards.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { expectedLoads, plannedForShelf } from '../../../shared-core/line/planned.ts'
import { standingNow } from '../../../shared-core/line/quiet.ts'
import { shelfKeys } from '../../../shared-core/line/shelf-keys.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { anyAct, startedShop } from '../support/any-act.ts'
import { at, minuteToMs } from '../support/make.ts'
import { context, entryOf, tap } from '../support/play.ts'

/** A morning of acts drawn one by one from what the shop then shows; `each` sees the state after every one taken. */
function drawn(seeds: readonly number[], each: (state: State, nowMs: EpochMs) => void): void {
  const state = startedShop()
  seeds.forEach((seed, n) => {
    const when = { nowMs: epochMs(at('5:00') + n * 45_000), id: `act${String(n).padStart(8, '0')}` }
    const command = tap(anyAct(state, seed), { ...when, confirmed: ['far-count', 'line-not-empty', 'orders-open'] })
    const decision = decide(state, command, context(when))
    if (decision.kind !== 'taken') return
    applyEntry(state, entryOf(state, command, decision, when))
    each(state, when.nowMs)
  })
}

function onAnyMorning(each: (state: State, nowMs: EpochMs) => void): void {
  const seeds = fc.array(fc.nat({ max: 2 ** 31 - 1 }), { minLength: 5, maxLength: 50 })
  fc.assert(
    fc.property(seeds, (all) => drawn(all, each)),
    { numRuns: 60 },
  )
}

describe('the views of any morning', () => {
  it('[L20] given any state, then acts stand in order, what burns before what can wait half a minute, each under a name of its own', () => {
    let seen = 0
    onAnyMorning((state, nowMs) => {
      const acts = nextActs(state, nowMs)
      seen = Math.max(seen, acts.length)
      expect(new Set(acts.map((one) => one.key)).size).toBe(acts.length)
      for (const burns of [true, false]) {
        const alike = acts.filter((one) => ['lift', 'flip', 'out'].includes(one.act) === burns)
        const times = alike.map((one) => (one.latestAtMs === null ? Math.max(one.atMs, nowMs) : one.atMs))
        expect(times).toEqual(times.toSorted((one, other) => one - other))
      }
      const hands = acts.map((one) =>
        ['lift', 'flip', 'out'].includes(one.act) ? one.atMs : Math.max(one.atMs, nowMs + 30_000),
      )
      expect(hands).toEqual(hands.toSorted((one, other) => one - other))
      for (const one of acts) {
        expect(Number.isInteger(one.atMs)).toBe(true)
        expect(one.pieces).toBeGreaterThan(0)
        // Whole trays hold more or, at the cooler's end, fewer than the dips that they are pulled for.
        if (one.act !== 'pull') expect(piecesOf(one.lines)).toBeLessThanOrEqual(one.pieces)
        if (one.status === 'late') expect(one.latestAtMs).not.toBeNull()
      }
    })
    expect(seen).toBeGreaterThan(5)
  })

  it('[L25] given any state, then no two shelves are offered the same load and every planned load is expected once', () => {
    onAnyMorning((state, nowMs) => {
      const shelves = [...(state.shop?.shelves.keys() ?? [])]
      const offered = shelves.flatMap((id) => plannedForShelf(state, id)?.id ?? [])
      expect(new Set(offered).size).toBe(offered.length)
      const toGo = [...state.planned.values()].filter((one) => !one.done).map((one) => one.id)
      expect(
        expectedLoads(state, nowMs)
          .map((one) => one.planned.id)
          .sort(),
      ).toEqual(toGo.sort())
    })
  })

  it('[L30] given any state, then each load has one key and each empty shelf one that loads', () => {
    onAnyMorning((state, nowMs) => {
      const keys = shelfKeys(state, nowMs)
      const running = keys.flatMap((key) => key.loadId ?? [])
      expect([...running].sort()).toEqual([...state.loads.keys()].sort())
      expect(new Set(keys.map((key) => key.shelfId)).size).toBe(state.shop?.shelves.size)
      expect(keys.every((key) => (key.act === 'load') === (key.loadId === null))).toBe(true)
    })
  })

  it('[L32] given any state, then boards free, out and re-wetting are as many as there are, and more than that is shown', () => {
    onAnyMorning((state, nowMs) => {
      const { count, free, out, drying, over } = boardsNow(state, nowMs)
      expect(free + out + drying - over).toBe(count)
      expect(Math.min(free, over)).toBe(0)
      expect(Math.min(free, out, drying, over)).toBeGreaterThanOrEqual(0)
    })
  })

  it('[S21] given any state, then the rods hold all pieces that are out and the stages all that are not', () => {
    onAnyMorning((state, nowMs) => {
      const all = rods(state, nowMs)
      const out = [...state.stock.values()].reduce((sum, one) => sum + piecesOf(one.lots) + one.kept, 0)
      expect(all.reduce((sum, rod) => sum + rod.forSale + rod.cooling + rod.kept, 0)).toBe(out)
      const quiet = [...state.batches.values()].filter((one) => ['proof', 'chill', 'rack'].includes(one.stage))
      const standing = standingNow(state, nowMs).filter((one) => one.stage !== 'cool')
      expect(piecesOf(standing)).toBe(piecesOf(quiet))
    })
  })

  it('[S22] given any state, then what is on the way is what cools, bakes, is topped, or is planned, each once', () => {
    onAnyMorning((state, nowMs) => {
      for (const rod of rods(state, nowMs)) {
        const from = (where: string) => piecesOf(rod.onTheWay.filter((one) => one.from === where))
        const mine = [...state.batches.values()].filter((one) => one.varietyId === rod.varietyId)
        const plans = [...state.planned.values()].filter((one) => !one.done).flatMap((one) => one.lines)
        const plan = piecesOf(plans.filter((line) => line.varietyId === rod.varietyId))
        expect(from('cooling')).toBe(rod.cooling)
        expect(from('oven')).toBe(piecesOf(mine.filter((one) => one.stage === 'oven')))
        expect(from('boards') + from('planned')).toBeGreaterThanOrEqual(plan)
        expect(from('boards')).toBeGreaterThanOrEqual(piecesOf(mine.filter((one) => one.stage === 'boards')))
        expect(rod.onTheWay.every((one) => one.readyAtMs >= nowMs && one.pieces > 0)).toBe(true)
      }
    })
  })

  it('[R3] given any state, then the ruler marks every planned load, soonest first', () => {
    onAnyMorning((state, nowMs) => {
      const marks = rulerOf(state, nowMs, minuteToMs)?.marks ?? []
      const times = marks.map((one) => one.atMs)
      expect(times).toEqual(times.toSorted((one, other) => one - other))
      expect(marks.length).toBe([...state.planned.values()].filter((one) => !one.done).length)
    })
  })
})
