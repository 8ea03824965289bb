import { describe, expect, it } from 'vitest'
import { draftOf } from '../../client/desk/set-up/draft.ts'
import { stepsSaid } from '../../client/desk/set-up/kitchen-text.ts'
import { KITCHEN_STATIONS } from '../../client/desk/set-up/lists.ts'
import { earlier } from '../../client/desk/set-up/parts/item-steps.tsx'
import { nextTurn } from '../../client/desk/set-up/parts/oven-step.tsx'
import { misfitText } from '../../client/desk/set-up/parts/wrong.tsx'
import { inLanguage } from '../../client/desk/set-up/picks.ts'
import { toldChanges } from '../../client/desk/set-up/told-changes.ts'
import { deskWords } from '../../client/words/desk.ts'
import { setUpWords } from '../../client/words/set-up.ts'
import { wordsFor } from '../../client/words/words.ts'
import { kitchenStationId } from '../../shared-core/ids.ts'
import { pickableKitchenStations } from '../../shared-core/shop/pickable-kitchen.ts'
import type { SetUpChange } from '../../shared-core/shop/set-up-change.ts'
import { shopMisfits } from '../../shared-core/shop/set-up-rules.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import { must } from '../../shared-core/support.ts'
import { durationMs, spanMs } from '../../shared-core/units.ts'
import { shelf, shopWith } from '../core/support/shop.ts'
import {
  byHand,
  inOven,
  kitchenParts,
  kitchenStation,
  menuItem,
  of,
  portion,
  run,
  turnAt,
} from '../core/support/shop-kitchen.ts'

const shop = shopWith(kitchenParts())
const tellingIn = (language: Language, then: Shop) => {
  const words = deskWords(wordsFor(language, then))
  return { words, say: setUpWords(words), shop: then }
}
const told = (change: SetUpChange, language: Language) =>
  toldChanges(shop, [change], tellingIn(language, draftOf(shop, [change]))).map(
    ({ what, lines }) => `${what}: ${lines.join('; ')}`,
  )

const long = menuItem({
  id: 'long',
  order: 4,
  priceCents: 1_250,
  portions: of({ ball: 2, sauce: 1 }),
  steps: [
    byHand('sandwiches', 60),
    inOven('oven', 390, { slots: 2, at: { degrees: 500, unit: 'F' }, turns: [turnAt(150), turnAt(300, 'move')] }),
  ],
})

describe('orders and the kitchen, when they change', () => {
  const cases: readonly (readonly [string, SetUpChange, string, string])[] = [
    [
      'rules for orders',
      {
        entity: 'orders',
        value: {
          ...shop.orders,
          dozenPieces: 13,
          cutOffMinute: 17 * 60 + 30,
          keepsAsTheyCome: false,
          noShowMs: spanMs(90, 'min'),
        },
      },
      'Orders: Pieces in a dozen: 12 → 13; Orders for the next day until: not said → 5:30 pm; Keep pieces for orders as they come out of the oven: yes → no; Not fetched: ends after: not said → 90 min',
      'Pedidos: Piezas de una docena: 12 → 13; Pedidos para el día siguiente hasta: sin decir → 5:30 p. m.; Apartar piezas para los pedidos al salir del horno: sí → no; Sin recoger: termina después de: sin decir → 90 min',
    ],
    [
      'a station',
      { entity: 'kitchenStation', value: kitchenStation({ id: 'drinks', order: 3, hands: 2 }) },
      'Station of the kitchen Drinks: Made there at once, by hand: 1 → 2',
      'Puesto de la cocina Drinks: Cuántos a la vez, a mano: 1 → 2',
    ],
    [
      'a portion',
      { entity: 'portion', value: portion({ id: 'sauce', order: 2, contains: ['milk'], trayPortions: 20 }) },
      'Portion Sauce: Contains: – → milk; Portions on a tray: 12 → 20',
      'Porción Sauce: Contiene: – → leche; Porciones por bandeja: 12 → 20',
    ],
    [
      'an item',
      { entity: 'menuItem', value: long },
      'Item Long: Price: 9.00 → 12.50; Portions in it: 2 Ball, 2 Sauce, 2 Cheese → 2 Ball, Sauce; How it is made: Sandwiches 1 min, Oven 6.5 min (2 places), Sandwiches 15 s → Sandwiches 1 min, Oven 6.5 min (2 places, 500 °F, turn after 2.5 min, move after 5 min)',
      'Producto Long: Precio: 9.00 → 12.50; Porciones que lleva: 2 Ball, 2 Sauce, 2 Cheese → 2 Ball, Sauce; Cómo se hace: Sandwiches 1 min, Oven 6.5 min (2 lugares), Sandwiches 15 s → Sandwiches 1 min, Oven 6.5 min (2 lugares, 500 °F, girar a los 2.5 min, mover a los 5 min)',
    ],
    [
      'a run',
      { entity: 'run', value: run({ id: 'van', leavesMinute: 440, stopMs: spanMs(15, 'min') }) },
      'Run Van: Leaves at: 7:00 am → 7:20 am; From stop to stop: 10 min → 15 min',
      'Recorrido Van: Sale a las: 7:00 a. m. → 7:20 a. m.; De parada a parada: 10 min → 15 min',
    ],
    [
      'places of a shelf',
      { entity: 'shelf', value: shelf({ id: 's3', order: 3, slots: 6 }) },
      'Shelf 3: Places of the second menu: 2 → 6',
      'Piso 3: Lugares del segundo menú: 2 → 6',
    ],
  ]

  it.each(cases)('[M39] given %s, then it is told in English and Spanish', (_what, change, english, spanish) => {
    expect(told(change, 'en')).toEqual([english])
    expect(told(change, 'es')).toEqual([spanish])
  })

  it('[M39] given what does not fit, then both languages have a sentence of their own for it', () => {
    const wrong: readonly SetUpChange[] = [
      {
        entity: 'menuItem',
        value: { ...long, canToast: true, steps: [byHand('grill', 10)], portions: of({ oil: 1 }) },
      },
      { entity: 'run', value: run({ id: 'van', leavesMinute: 10 }) },
      { entity: 'portion', value: portion({ id: 'sauce', contains: ['milk', 'milk'] }) },
    ]
    const then = draftOf(shop, wrong)
    const misfits = shopMisfits(then)
    expect(misfits.map(({ entity, field }) => `${entity}/${field.split('/')[0]}`).sort()).toEqual([
      'menuItem/canToast',
      'menuItem/portions',
      'menuItem/steps',
      'portion/contains',
      'run/leavesMinute',
    ])
    for (const language of ['en', 'es'] as const)
      for (const misfit of misfits)
        expect(misfitText(misfit, tellingIn(language, then).say)).not.toContain(misfit.wrong)
  })
})

describe('parts of an item', () => {
  it('given one moved up, then it goes before the one above it; the first stays', () => {
    const [a, b, c] = [byHand('sandwiches', 1), byHand('oven', 2), byHand('drinks', 3)]
    expect(earlier([a, b, c], 2)).toEqual([a, c, b])
    expect(earlier([a, b, c], 1)).toEqual([b, a, c])
    expect(earlier([a, b, c], 0)).toEqual([a, b, c])
  })

  it('given a turn that is added, then it lies half-way to the out, after the one before it', () => {
    expect(nextTurn([], durationMs(240_000)).afterMs).toBe(120_000)
    expect(nextTurn([turnAt(120)], durationMs(240_000)).afterMs).toBe(180_000)
    expect(nextTurn([turnAt(120)], durationMs(241_000)).afterMs).toBe(181_000)
  })

  it('given no parts, then it is handed over as it is', () => {
    expect(stepsSaid([], tellingIn('en', shop))).toBe('handed over as it is')
    expect(stepsSaid([], tellingIn('es', shop))).toBe('se entrega como está')
  })
})

describe('stations to begin with', () => {
  it.each(['en', 'es'] as const)('given those of %s, then they fit in a shop without any', (language) => {
    const picked = pickableKitchenStations(language).map(KITCHEN_STATIONS.change)
    const then = draftOf(shopWith(), picked)
    expect(shopMisfits(then)).toEqual([])
    expect([...then.kitchenStations.values()].map(({ order }) => order)).toEqual([0, 1, 2])
  })

  it('given another language, then picked stations are called so, and a typed name stays', () => {
    const picked = draftOf(shopWith(), pickableKitchenStations('en').map(KITCHEN_STATIONS.change))
    const drinks = must(picked.kitchenStations, kitchenStationId('drinks'))
    const own = draftOf(picked, [KITCHEN_STATIONS.change({ ...drinks, name: 'Coffee bar' })])
    const then = draftOf(own, inLanguage(own, 'es'))
    expect([...then.kitchenStations.values()].map(({ name }) => name)).toEqual(['Sándwiches', 'Horno', 'Coffee bar'])
  })
})

describe('the question whether to retire what orders name', () => {
  const ask = (language: Language, params: { readonly pieces: number; readonly orders: number }) =>
    wordsFor(language, shop).answers.ask({ code: 'retires-in-use', params: { id: 'rye', name: 'Rye', ...params } })
      .question
  it.each([
    [
      { pieces: 12, orders: 0 },
      'There are 12 pieces of Rye. Retire it all the same?',
      'Hay 12 piezas de Rye. ¿Retirarlo de todos modos?',
    ],
    [
      { pieces: 0, orders: 1 },
      '1 order names Rye. Retire it all the same?',
      'Rye: 1 pedido lo nombra. ¿Retirarlo de todos modos?',
    ],
    [
      { pieces: 12, orders: 2 },
      'There are 12 pieces of Rye, and 2 orders name it. Retire it all the same?',
      'Hay 12 piezas de Rye, y 2 pedidos lo nombran. ¿Retirarlo de todos modos?',
    ],
  ])('[M38] given %j, then it is asked in both languages', (params, english, spanish) => {
    expect(ask('en', params)).toBe(english)
    expect(ask('es', params)).toBe(spanish)
  })
})
