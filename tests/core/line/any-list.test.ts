import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEntry } from '../../../shared-core/day/apply.ts'
import { bakingIsOver, changeoverNow } from '../../../shared-core/day/changeover.ts'
import { closeNow } from '../../../shared-core/day/close.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import { openingList } from '../../../shared-core/day/opening-list.ts'
import type { Ruler } from '../../../shared-core/day/ruler.ts'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { nextActs } from '../../../shared-core/line/acts.ts'
import { contacts, newToKettle } from '../../../shared-core/line/contacts.ts'
import { earliestBoilMs } from '../../../shared-core/line/float-hold.ts'
import { boilsAgainAt, kettleCare } from '../../../shared-core/line/kettle-care.ts'
import { shelfKeys } from '../../../shared-core/line/shelf-keys.ts'
import { isShelfOver } from '../../../shared-core/line/shelf-over.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { anyAct, startedShop } from '../support/any-act.ts'
import { at, minuteToMs } from '../support/make.ts'
import { context, entryOf, tap } from '../support/play.ts'

interface Moment {
  readonly state: State
  readonly nowMs: EpochMs
  readonly ruler: Ruler | null
}

/** Looks at a morning after each of its drawn acts, which are five minutes apart. */
function atEachMoment(look: (moment: Moment) => void): void {
  const seeds = fc.array(fc.nat({ max: 2 ** 31 - 1 }), { minLength: 25, maxLength: 60 })
  fc.assert(
    fc.property(seeds, (drawn) => {
      const state = startedShop()
      drawn.forEach((seed, n) => {
        const nowMs = epochMs(at('5:00') + n * 5 * 60_000)
        const when = { nowMs, id: `act${String(n).padStart(8, '0')}` }
        const command = tap(anyAct(state, seed), { ...when, confirmed: ['far-count', 'line-not-empty', 'orders-open'] })
        const decision = decide(state, command, context(when))
        if (decision.kind !== 'taken') return
        applyEntry(state, entryOf(state, command, decision, when))
        look({ state, nowMs, ruler: rulerOf(state, nowMs, minuteToMs) })
      })
    }),
    { numRuns: 30 },
  )
}

describe('any morning', () => {
  it('[L50, K3] given any tests and cares, then no dip is called for before its dough and the kettle are ready', () => {
    let held = 0
    atEachMoment(({ state, nowMs }) => {
      const boilsAtMs = boilsAgainAt(state, nowMs) ?? 0
      for (const { act, atMs, doughId } of nextActs(state, nowMs)) {
        if (act !== 'dip' || doughId === null) continue
        const holdMs = earliestBoilMs(state, doughId, nowMs) ?? 0
        held += Number(holdMs > 0)
        expect(atMs).toBeGreaterThanOrEqual(Math.max(holdMs, boilsAtMs))
      }
    })
    expect(held).toBeGreaterThan(0)
  })

  it('[X3, X4, X7] given any shelves over and loads, then none that is over is offered one, and views agree', () => {
    let over = 0
    atEachMoment(({ state, nowMs, ruler }) => {
      const changeover = changeoverNow(state, nowMs, ruler)
      const acts = nextActs(state, nowMs)
      for (const key of shelfKeys(state, nowMs)) {
        if (!isShelfOver(state, key.shelfId)) continue
        over += 1
        expect(acts.some(({ act, shelfId }) => act === 'load' && shelfId === key.shelfId)).toBe(false)
        expect(key.isOver).toBe(true)
        if (key.act === 'load') expect(key.plannedId).toBeNull()
      }
      for (const { shelfId, state: so, freeAtMs } of changeover?.shelves ?? []) {
        const isIn = [...state.loads.values()].some((load) => load.shelfId === shelfId)
        if (so === 'over') expect([isIn, freeAtMs]).toEqual([false, null])
        if (so === 'emptying') expect(isIn).toBe(true)
        if (isIn) expect(freeAtMs).toBeGreaterThanOrEqual(nowMs)
      }
      if (bakingIsOver(state, nowMs, ruler)) expect(changeover?.ovenEmptyAtMs).toBeNull()
    })
    expect(over).toBeGreaterThan(0)
  })

  it('[K1, K4, K5] given any boils and cares, then what the water had is what was boiled, and nothing twice new', () => {
    const brought = new Set<string>()
    atEachMoment(({ state, nowMs }) => {
      const { kettle, boards } = contacts(state)
      for (const { pieces } of [...kettle, ...boards]) expect(pieces).toBeGreaterThan(0)
      const change = kettleCare(state, nowMs).reminders.find(({ care }) => care === 'change')
      expect(change?.boiled).toBe(kettle.reduce((sum, one) => sum + one.pieces, 0))
      const had = new Set(kettle.flatMap(({ contains }) => contains))
      for (const doughId of state.shop?.doughs.keys() ?? []) {
        const brings = newToKettle(state, doughId)
        expect(brings.filter((allergen) => had.has(allergen))).toEqual([])
        for (const allergen of brings) brought.add(allergen)
      }
    })
    expect([...brought]).toEqual(['egg'])
  })

  it('[O1, O5, T16] given any morning, then lists are in order, gone with the first load, and the account adds up', () => {
    atEachMoment(({ state, nowMs, ruler }) => {
      const list = openingList(state, nowMs, ruler)
      const dues = list?.lines.map(({ dueAtMs }) => dueAtMs) ?? []
      expect([...dues].sort((one, other) => one - other)).toEqual(dues)
      const openedAtMs = state.day?.openedAtMs ?? nowMs
      const isLoaded = [...state.loads.values()].some(({ loadedAtMs }) => loadedAtMs >= openedAtMs)
      if (list !== null && state.day !== null) expect(isLoaded).toBe(false)
      const close = closeNow(state, nowMs, ruler)
      if (close === null) return
      const { total } = close
      const gone = total.sold + total.kitchen + total.wasted + total.given + total.dayOld + total.unexplained
      expect(total.shaped + total.carriedIn).toBe(total.present + gone)
    })
  })
})
