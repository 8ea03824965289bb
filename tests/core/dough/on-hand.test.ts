import { describe, expect, it } from 'vitest'
import { neededAhead } from '../../../shared-core/dough/need-ingredients.ts'
import { onHandNow } from '../../../shared-core/dough/on-hand.ts'
import { shortages } from '../../../shared-core/dough/shortages.ts'
import { buildId, ingredientId, preparationId } from '../../../shared-core/ids.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { at } from '../support/make.ts'
import { table } from '../support/shop.ts'
import { POUNDS_50, percents, preparation } from './kitchen.ts'
import type { PlanParts } from './plan-make.ts'
import { doughShop, noonOf, planState, THURSDAY, TODAY, TOMORROW } from './plan-make.ts'
import { formula, mix, sheetLine } from './room-mix.ts'

const KG = 1_000_000
const BAG = milligrams(POUNDS_50)

function stocked(counted: { readonly [ingredient: string]: number }, parts: PlanParts = {}) {
  const state = planState({ recordedAt: at('13:00'), ...parts })
  for (const [id, weight] of Object.entries(counted)) {
    const key = ingredientId(id)
    state.onHand.set(key, { ingredientId: key, milligrams: weight, countedAtMs: at('6:00') })
  }
  return state
}

describe('what is on hand', () => {
  it('[D33] given a count, a begun mix and a build, when it is looked at, then they are off, and what is planned is not', () => {
    const mixes = [
      mix('mixing', at('9:00'), { id: 'going', lines: [sheetLine('flour', { milligrams: 8 * KG })] }),
      mix('planned', at('9:00'), { id: 'to-come', lines: [sheetLine('flour', { milligrams: 9 * KG })] }),
    ]
    const build = {
      id: buildId('b1'),
      preparationId: preparationId('sponge'),
      madeAtMs: at('8:00'),
      milligrams: 2 * KG,
      forDate: TOMORROW,
      ready: { earliestAtMs: at('18:00'), targetAtMs: at('20:00'), latestAtMs: at('23:00') },
      lines: [{ ingredientId: ingredientId('flour'), milligrams: KG }],
      dropped: true,
    }
    const state = stocked({ flour: 20 * KG, salt: KG }, { mixes, builds: [build] })
    expect(onHandNow(state).map(({ ingredientId: id, milligrams: weight }) => [id, weight])).toEqual([
      ['flour', 11 * KG],
      ['salt', KG],
    ])
  })

  it('[D33] given an ingredient that nobody knows any more, when it is looked at, then it is not listed', () => {
    const state = stocked({ flour: KG })
    state.onHand.set(ingredientId('salt'), { ingredientId: ingredientId('salt'), milligrams: 0, countedAtMs: null })
    expect(onHandNow(state)).toHaveLength(1)
  })
})

describe('what is short', () => {
  const short = (state: ReturnType<typeof stocked>, days = 5) =>
    shortages(state, state.shop ?? doughShop(), TODAY, days, noonOf)

  /** 195 pieces of 120 g are 23.4 kg at 161.1 %: 14.525 kg of flour a day. */
  const wanted = { [TOMORROW]: { plain: 195 }, [THURSDAY]: { plain: 195 }, '2026-11-27': { plain: 195 } }
  const daily = (195 * 120_000) / 1.611

  it('[D34] given flour for one day and a half, when three are wanted, then it is short from the second mixing on, in bags', () => {
    const [flour] = short(stocked({ flour: Math.round(1.5 * daily) }, { wanted }))
    expect(flour).toMatchObject({ ingredientId: 'flour', fromDate: TOMORROW, bags: 1 })
    expect(Math.abs((flour?.shortMilligrams ?? 0) - 1.5 * daily)).toBeLessThan(3)
    const [none] = short(stocked({ flour: 0 }, { wanted }))
    expect(none).toMatchObject({ fromDate: TODAY, bags: Math.ceil((3 * daily) / BAG) })
  })

  it('[D34] given enough to the scale’s step, or nothing counted, when it is looked at, then nothing is short', () => {
    expect(short(stocked({ flour: Math.round(3 * daily) - 4_000 }, { wanted }))).toEqual([])
    expect(short(stocked({}, { wanted }))).toEqual([])
    expect(short(stocked({ water: 0 }, { wanted }))).toEqual([])
  })

  it('[D34] given what is bought loose, when it is short, then no bags are told', () => {
    expect(short(stocked({ salt: 0 }, { wanted }))[0]).toMatchObject({ ingredientId: 'salt', bags: null })
  })

  it('[D34] given mixes that stand, when it is looked at, then they are needed instead of the plan', () => {
    const mixes = [mix('planned', at('9:00'), { lines: [sheetLine('flour', { milligrams: 40 * KG })] })]
    const [flour] = short(stocked({ flour: 30 * KG }, { wanted: { [TOMORROW]: { plain: 195 } }, mixes }))
    expect(flour).toMatchObject({ shortMilligrams: 10 * KG, fromDate: TODAY })
  })

  it('[D34] given a sponge and a culture, when needs are dated, then each when it is begun, the culture every day', () => {
    const sponge = preparation({ id: 'sponge', lines: percents({ rye: 100, water: 60 }) })
    const culture = preparation({ id: 'culture', seedPercent: 20_000, fedWith: { thousandths: 1_000, unit: 'kg' } })
    const uses = [{ preparationId: sponge.id, percent: 20_000 }]
    const lines = percents({ flour: 80, rye: 20, water: 57 })
    const shop = doughShop({
      preparations: table([sponge, culture]),
      formulas: table([formula({ lines, preparations: uses })]),
    })
    const state = planState({ shop, recordedAt: at('13:00'), wanted: { '2026-11-27': { plain: 157 } } })
    const needed = neededAhead({ state, shop, noonOf }, TODAY, 4)
    const of = (id: string) => Object.fromEntries(needed.get(ingredientId(id)) ?? [])
    // 165 pieces on trays of 15: 19.8 kg at 157 % is 12.611 kg of flour, mixed on Thursday from 5:00, its sponge begun at 17:00.
    const flour = (165 * 120_000) / 1.57
    expect(of('rye')[TOMORROW]).toBeCloseTo(0.2 * flour, -1)
    expect(of('flour')[THURSDAY]).toBeCloseTo(0.8 * flour + KG, -1)
    expect([of('flour')[TODAY], of('flour')[TOMORROW], of('flour')['2026-11-27']]).toEqual([KG, KG, KG])
    expect(of('rye')[THURSDAY] ?? 0).toBeLessThan(1)
  })

  it('[D34] given a culture built yesterday for tomorrow’s mix, when needs are dated, then it is fed today all the same', () => {
    const culture = preparation({ id: 'culture', seedPercent: 20_000, fedWith: { thousandths: 1_000, unit: 'kg' } })
    const uses = [{ preparationId: culture.id, percent: 20_000 }]
    const formulas = table([formula({ lines: percents({ flour: 100, water: 57 }), preparations: uses })])
    const shop = doughShop({ preparations: table([culture]), formulas })
    const made = {
      id: buildId('b1'),
      preparationId: culture.id,
      madeAtMs: at('12:00', -1),
      milligrams: 50 * KG,
      forDate: THURSDAY,
      ready: { earliestAtMs: at('0:00'), targetAtMs: at('2:00'), latestAtMs: at('4:00', 1) },
      lines: [],
      dropped: false,
    }
    const state = planState({ shop, recordedAt: at('13:00'), wanted: { [THURSDAY]: { plain: 150 } }, builds: [made] })
    expect(neededAhead({ state, shop, noonOf }, TODAY, 2).get(ingredientId('flour'))?.get(TODAY)).toBe(KG)
  })
})
