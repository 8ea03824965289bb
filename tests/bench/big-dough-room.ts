import { dateAfter } from '../../shared-core/day/label.ts'
import type { Batch, State } from '../../shared-core/day/state.ts'
import { doughId, formulaId, ingredientId, preparationId, varietyId } from '../../shared-core/ids.ts'
import type { Dough, Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs, spanMs } from '../../shared-core/units.ts'
import { doughRoom, INGREDIENTS, percents, preparation } from '../core/dough/kitchen.ts'
import { formula } from '../core/dough/room-mix.ts'
import { at, batch, stateWith } from '../core/support/make.ts'
import { dough, shopWith, table, variety } from '../core/support/shop.ts'

/** An invented shop as large as small shops get, for what its dough room costs to reckon. */
export const VARIETIES = 28
export const FORMULAS = 12
export const FIRST = '2026-11-24'
const DOUGHS = 14
const BATCHES = 100
const DAYS = 21

export function noonOf(date: string): EpochMs {
  return epochMs(Date.parse(`${date}T18:00:00Z`))
}

const count = (many: number) => Array.from({ length: many }, (_, n) => n)

export function bigShop(): Shop {
  const sponge = preparation({ id: 'sponge', lines: percents({ flour: 100, water: 60, yeast: 0.1 }) })
  const soaker = preparation({ id: 'soaker', kind: 'soaker', lines: percents({ seeds: 100, water: 120 }) })
  const uses = [
    { preparationId: preparationId('sponge'), percent: 20_000 },
    { preparationId: preparationId('soaker'), percent: 8_000 },
  ]
  const lines = [
    ...percents({ flour: 90, rye: 10, water: 66, salt: 2, malt: 1.5, yeast: 0.6, seeds: 8 }),
    ...percents({ raisins: 12 }, 'mixIn'),
  ]
  return shopWith({
    doughRoom: doughRoom({ flourIn: 'halfBags', surplusTo: formulaId('f0') }),
    mixer: {
      name: 'Mixer',
      washMs: spanMs(10, 'min'),
      leastFlour: { thousandths: 5_000, unit: 'kg' },
      mostFlour: { thousandths: 25_000, unit: 'kg' },
    },
    cooler: { trays: 120, keepsAt: null },
    ingredients: INGREDIENTS,
    preparations: table([sponge, soaker]),
    formulas: table(
      count(FORMULAS).map((n) =>
        formula({ id: `f${n}`, order: n, lines, preparations: n % 3 === 0 ? uses : [], daysAhead: 1 + (n % 3) }),
      ),
    ),
    doughs: table(count(DOUGHS).map((n) => bigDough(n))),
    varieties: table(
      count(VARIETIES).map((n) => variety({ id: `v${n}`, order: n, doughId: doughId(`d${n % DOUGHS}`) })),
    ),
  })
}

function bigDough(n: number): Dough {
  return dough({
    id: `d${n}`,
    order: n,
    formulaId: formulaId(`f${n % FORMULAS}`),
    pieceWeight: { thousandths: n < FORMULAS ? 120_000 : 60_000, unit: 'g' },
  })
}

/** A hundred trays in the cooler and at proof, every variety wanted on each of three weeks, everything counted. */
export function bigState(shop: Shop): State {
  const until = { earliestAtMs: at('2:00'), targetAtMs: at('8:00'), latestAtMs: at('18:00', 1) }
  const batches: Batch[] = count(BATCHES).map((n) =>
    batch({
      id: `b${n}`,
      dough: `d${n % DOUGHS}`,
      pieces: 15,
      stage: n % 5 === 0 ? 'proof' : 'chill',
      since: at('18:00', -1),
      until,
    }),
  )
  const state = stateWith({ shop, batches, recordedAt: at('13:00') })
  for (const n of count(DAYS)) {
    const date = dateAfter(FIRST, n)
    const lines = count(VARIETIES).map((v) => ({
      doughId: doughId(`d${v % DOUGHS}`),
      varietyId: varietyId(`v${v}`),
      pieces: 40 + ((v * 7 + n * 3) % 50),
      ordered: v % 4 === 0 ? 24 : 0,
    }))
    state.wanted.set(date, { date, lines })
  }
  for (const id of ['flour', 'rye', 'salt', 'malt', 'yeast', 'raisins', 'seeds'].map(ingredientId))
    state.onHand.set(id, { ingredientId: id, milligrams: 200_000_000, countedAtMs: at('6:00') })
  return state
}
