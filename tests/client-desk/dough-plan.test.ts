import { describe, expect, it } from 'vitest'
import { evenly, handPlan, standing } from '../../client/desk/dough/plan-view.ts'
import { sheetsOf } from '../../client/desk/dough/sheet-view.ts'
import { inBags, readCount, stockRows } from '../../client/desk/dough/stock-view.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { DayPlan } from '../../shared-core/dough/day-plan.ts'
import { dayPlan } from '../../shared-core/dough/day-plan.ts'
import { doughId, formulaId, ingredientId } from '../../shared-core/ids.ts'
import { must } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import { asked, kg, plan, planMixes, roomShop, TOMORROW } from '../core/dough/acts-shop.ts'
import { at, stateWith } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'

const SHOP = roomShop()
const PLAIN = formulaId('plain')
const noonOf = (date: string) => epochMs(Date.parse(`${date}T18:00:00Z`))

/** 600 plain of 120 g and 150 mini of 60 g: 81 kg of dough, 51.6 kg of flour, three mixes in a mixer of 25 kg. */
function wantedPlan(): { readonly state: State; readonly plan: DayPlan } {
  const state = stateWith({ shop: SHOP })
  const line = (id: string, pieces: number) => ({ doughId: doughId(id), varietyId: null, pieces, ordered: 0 })
  play(state, { type: 'setWanted', date: TOMORROW, lines: [line('plain', 600), line('mini', 150)] })
  return { state, plan: dayPlan(state, SHOP, TOMORROW, noonOf) }
}

describe('a plan that is changed by hand', () => {
  it('given no change, then the mixes are the plan’s and cost nothing', () => {
    const { plan: whole } = wantedPlan()
    const hand = handPlan(whole, SHOP, new Map(), 'kg')
    expect(whole.mixes).toHaveLength(3)
    expect(hand.mixes?.map(({ flourMilligrams }) => flourMilligrams)).toEqual(
      whole.mixes.map(({ flourMilligrams }) => flourMilligrams),
    )
    expect(hand.formulas.map(({ isByHand, changes }) => ({ isByHand, changes }))).toEqual([
      { isByHand: false, changes: [] },
    ])
  })

  it('given less flour in one mix, then it says which pieces fall short, and no dough is promised twice', () => {
    const { plan: whole } = wantedPlan()
    const [need] = whole.formulas
    const texts = evenly(must(new Map([[0, need]]), 0)?.flourMilligrams ?? 0, 3, 'kg')
    const hand = handPlan(whole, SHOP, new Map([[PLAIN, [...texts.slice(0, 2), '10']]]), 'kg')
    const [formula] = hand.formulas
    expect(formula?.changes.every(({ pieces }) => pieces < 0)).toBe(true)
    for (const mix of hand.mixes ?? []) {
      const shaped = mix.gives.reduce((sum, { doughId: id, pieces }) => sum + pieces * (id === 'mini' ? 60 : 120), 0)
      // 157 % of the flour is dough; less than one piece is left over.
      const doughGrams = (mix.flourMilligrams * 1.57) / 1_000
      expect(doughGrams - shaped).toBeGreaterThanOrEqual(-0.001)
      expect(doughGrams - shaped).toBeLessThan(120)
    }
  })

  it('given other numbers of mixes, then the limits of the mixer are told and not enforced', () => {
    const { plan: whole } = wantedPlan()
    const flour = whole.formulas[0]?.flourMilligrams ?? 0
    const limits = (count: number) =>
      handPlan(whole, SHOP, new Map([[PLAIN, evenly(flour, count, 'kg')]]), 'kg').formulas[0]?.mixes.map(
        (mix) => mix?.limit,
      )
    expect(limits(1)).toEqual(['overMost'])
    expect(limits(3)).toEqual([null, null, null])
    const [formula] = handPlan(whole, SHOP, new Map([[PLAIN, evenly(flour, 4, 'kg')]]), 'kg').formulas
    expect(formula?.mixerChangeMs).toBe(12 * 60_000)
  })

  it.each(['', '0', 'much'])('given "%s" as flour, then nothing can be planned', (text) => {
    const { plan: whole } = wantedPlan()
    const hand = handPlan(whole, SHOP, new Map([[PLAIN, [text]]]), 'kg')
    expect([hand.mixes, hand.formulas[0]?.mixes]).toEqual([null, [null]])
  })
})

describe('what stands for a day against its plan', () => {
  it('given nothing planned, the plan used, and pieces wanted otherwise since, then it says none, same, differs', () => {
    const { state, plan: whole } = wantedPlan()
    const mixes = handPlan(whole, SHOP, new Map(), 'kg').mixes ?? []
    expect(standing(state, SHOP, TOMORROW, mixes)).toEqual({ kind: 'none', begun: 0 })
    play(state, planMixes(...mixes))
    expect(standing(state, SHOP, TOMORROW, mixes)).toEqual({ kind: 'same', begun: 0 })
    expect(standing(state, SHOP, TOMORROW, [asked('plain', { plain: 12 })])).toEqual({ kind: 'differs', begun: 0 })
  })

  it('given a formula changed since its mixes were planned, then it says so, and not when only its place in the list did', () => {
    const { state, plan: whole } = wantedPlan()
    const mixes = handPlan(whole, SHOP, new Map(), 'kg').mixes ?? []
    play(state, planMixes(...mixes))
    const kindAfter = (change: object) => {
      const formulas = new Map([...SHOP.formulas].map(([id, formula]) => [id, { ...formula, ...change }]))
      return standing(state, { formulas }, TOMORROW, mixes).kind
    }
    expect(kindAfter({ lossPercent: 3_000 })).toBe('earlierFormula')
    expect(kindAfter({ order: 40 })).toBe('same')
  })
})

describe('the sheets of a day', () => {
  it('given mixes of two days, then those of the day stand in their order, mix-ins apart, with what they sum to', () => {
    const state = stateWith({ shop: SHOP })
    plan(state, [asked('plain', { plain: 100 }), asked('raisin', { raisin: 80 })])
    const sheets = sheetsOf(state.mixes.values(), TOMORROW, SHOP)
    expect(sheets.map(({ mix, place, all }) => [mix.formula.id, place, all])).toEqual([
      ['plain', 1, 2],
      ['raisin', 2, 2],
    ])
    expect(sheets[1]?.start.map(({ name, tenths }) => [name, tenths])).toEqual([
      ['flour', 1_000],
      ['water', 550],
      ['salt', 20],
    ])
    expect(sheets[1]?.mixIns.map(({ name, tenths, milligrams }) => [name, tenths, milligrams])).toEqual([
      ['raisins', 200, 2_000_000],
    ])
    expect(sheets[1]?.doughMilligrams).toBe(17_700_000)
    expect(sheetsOf(state.mixes.values(), '2026-11-26', SHOP)).toEqual([])
  })

  it('given a pre-ferment, then its percent is of all flour and it has a name', () => {
    const state = stateWith({ shop: SHOP })
    plan(state, [asked('sour', { rye: 100 })])
    const [sheet] = sheetsOf(state.mixes.values(), TOMORROW, SHOP)
    // 20 % of the flour in a poolish of equal parts: 2 kg of flour and 2 kg of water of 10 kg of flour.
    expect(sheet?.start.map(({ name, tenths }) => [name, tenths])).toContainEqual(['Poolish', 400])
    expect(sheet?.start.map(({ name, tenths }) => [name, tenths])).toContainEqual(['flour', 800])
  })
})

describe('ingredients on hand', () => {
  const BAG = { thousandths: 50_000, unit: 'lb' } as const

  it('given a count typed in part, then only that is counted, and a text that is no weight is marked', () => {
    const state = stateWith({ shop: SHOP })
    const rows = stockRows(state, SHOP, [])
    expect(rows.map(({ ingredient, onHand }) => [ingredient.id, onHand])).toEqual([
      ['flour', null],
      ['salt', null],
      ['raisins', null],
    ])
    const typed = new Map([
      [ingredientId('flour'), '40'],
      [ingredientId('salt'), 'some'],
    ])
    const { counts, wrong } = readCount(rows, typed, 'kg')
    expect(counts).toEqual([{ ingredientId: 'flour', weight: kg(40) }])
    expect([...wrong]).toEqual(['salt'])
    play(state, { type: 'countIngredients', counts }, { tappedAtMs: at('9:00') })
    expect(stockRows(state, SHOP, [])[0]?.onHand).toMatchObject({ milligrams: 40_000_000 })
  })

  it('given a weight in bags, then whole bags and the rest; less than one bag, or less than nothing, is no bags', () => {
    // A pound is 453 592 mg: NIST Special Publication 811 (2008), appendix B.8.
    expect(inBags(87 * 453_592, BAG)).toEqual({ bags: 1, restMilligrams: 87 * 453_592 - 22_679_619 })
    const TEN = { thousandths: 10_000, unit: 'lb' } as const
    expect(inBags(13_607_771, TEN)).toEqual({ bags: 3, restMilligrams: 0 })
    expect([inBags(1_000, BAG), inBags(-50_000_000, BAG), inBags(50_000_000, null)]).toEqual([null, null, null])
  })
})
