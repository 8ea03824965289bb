import { describe, expect, it } from 'vitest'
import { mixesToOrder, mixTasks } from '../../../shared-core/dough/mix-tasks.ts'
import { buildId, doughId, formulaId, ingredientId, preparationId } from '../../../shared-core/ids.ts'
import { epochMs, spanMs } from '../../../shared-core/units.ts'
import { at, stateWith } from '../support/make.ts'
import { dwell, table } from '../support/shop.ts'
import { doughRoom, INGREDIENTS, ingredient } from './kitchen.ts'
import { doughShop, noonOf, shapedDough, THURSDAY, TODAY, TOMORROW } from './plan-make.ts'
import { formula, mix } from './room-mix.ts'

const MINUTE_MS = 60_000
/** 120 plain pieces and 96 minis, of one mix. */
const GIVES = [
  { doughId: doughId('plain'), pieces: 120 },
  { doughId: doughId('mini'), pieces: 96 },
]
const room = doughRoom({ dividerPiecesPerHour: 1_200, handPiecesPerHour: 240, rollers: 2, proofTrays: 40 })
const shop = doughShop({
  doughRoom: room,
  mixer: {
    name: 'Big',
    washMs: spanMs(8, 'min'),
    leastFlour: { thousandths: 5_000, unit: 'kg' },
    mostFlour: { thousandths: 25_000, unit: 'kg' },
  },
  doughs: table([
    shapedDough({ id: 'plain', order: 1, shapedBy: 'divider' }),
    shapedDough({ id: 'mini', order: 2, trayPieces: 24, windows: { proof: dwell(20, 30, 60, 'min') } }),
    shapedDough({ id: 'straight', order: 3, route: ['chill', 'kettle', 'boards', 'oven'] }),
  ]),
})
const toOrder = (parts: Parameters<typeof formula>[0] = {}, bakeDate = TOMORROW) => ({
  id: parts.id ?? 'plain',
  formula: formula(parts),
  bakeDate,
  gives: GIVES,
})
const daysOf = (mixes: readonly ReturnType<typeof toOrder>[], state = stateWith({ shop }), nowMs?: number) =>
  mixTasks(state, shop, mixes, noonOf, nowMs === undefined ? undefined : epochMs(nowMs))

describe('tasks of the mixing order', () => {
  it('[D88] given a mix of two doughs, when it becomes a task, then divider and rollers one after the other, the longest proof, whole trays', () => {
    const [day] = daysOf([toOrder({ strength: 3 })])
    expect(day?.date).toBe(TODAY)
    // 120 pieces at 1,200 an hour: 6 min; 96 at 2 × 240 an hour: 12 min. 120 / 15 + 96 / 24 trays.
    expect(day?.tasks).toEqual([
      {
        id: 'plain',
        formulaId: formulaId('plain'),
        allergens: [],
        strength: 3,
        earliestAtMs: noonOf(TODAY) - 420 * MINUTE_MS,
        mixMs: 12 * MINUTE_MS,
        waitMs: 7 * MINUTE_MS,
        benchMs: 18 * MINUTE_MS,
        proofMs: 60 * MINUTE_MS,
        trays: 12,
        dueAtMs: noonOf(TODAY) + 360 * MINUTE_MS,
      },
    ])
    expect(day?.rules).toMatchObject({ washMs: 8 * MINUTE_MS, proofTrays: 40, before: null })
  })

  it('[D88] given mixes for two days ahead and for one, when they become tasks, then by the day of mixing', () => {
    const days = daysOf([
      toOrder({ id: 'a' }),
      toOrder({ id: 'b', daysAhead: 2 }, THURSDAY),
      toOrder({ id: 'c' }, THURSDAY),
    ])
    expect(days.map(({ date, tasks }) => [date, tasks.map(({ id }) => id)])).toEqual([
      [TODAY, ['a', 'b']],
      [TOMORROW, ['c']],
    ])
  })

  it('[D88] given a bulk ferment, when it is shaped that day or chilled in bulk, then it waits for the bench or needs none', () => {
    const bulk = { window: dwell(90, 120, 180, 'min'), foldsMs: [], chill: null }
    const [day] = daysOf([
      toOrder({ id: 'a', bulk }),
      toOrder({ id: 'b', bulk: { ...bulk, chill: dwell(8, 12, 20, 'h') } }),
    ])
    expect(
      day?.tasks.map(({ waitMs, benchMs, trays, proofMs }) => [waitMs / MINUTE_MS, benchMs > 0, trays, proofMs > 0]),
    ).toEqual([
      [127, true, 12, true],
      [127, false, 0, false],
    ])
  })

  it('[D88] given a dough that does not proof, when it becomes a task, then it takes the bench and no proof space', () => {
    const [day] = daysOf([{ ...toOrder(), gives: [{ doughId: doughId('straight'), pieces: 480 }] }])
    expect(day?.tasks[0]).toMatchObject({ benchMs: 60 * MINUTE_MS, proofMs: 0, trays: 0 })
  })

  it('[D88] given a pre-ferment that was made, when it is ripe later than work begins, then the mix waits for the ripest', () => {
    const made = (id: string, ready: string, parts = {}) => ({
      id: buildId(id),
      preparationId: preparationId('poolish'),
      madeAtMs: at('0:00'),
      milligrams: 1,
      forDate: TOMORROW,
      ready: { earliestAtMs: at(ready), targetAtMs: at('12:00'), latestAtMs: at('16:00') },
      lines: [],
      dropped: false,
      ...parts,
    })
    const state = stateWith({
      shop,
      builds: [
        made('a', '10:00'),
        made('b', '9:00'),
        made('c', '6:00', { dropped: true }),
        made('d', '6:00', { forDate: THURSDAY }),
      ],
    })
    const preparations = [{ preparationId: preparationId('poolish'), percent: 20_000 }]
    expect(daysOf([toOrder({ preparations })], state)[0]?.tasks[0]?.earliestAtMs).toBe(at('9:00'))
    expect(daysOf([toOrder()], state)[0]?.tasks[0]?.earliestAtMs).toBe(at('5:00'))
    expect(daysOf([toOrder()], state, at('11:00'))[0]?.tasks[0]?.earliestAtMs).toBe(at('11:00'))
  })

  it('[D88] given mixes begun that day, when others are put in order, then mixer, bench and bowl begin with them; another day counts nothing', () => {
    const ingredients = table([...INGREDIENTS.values(), { ...ingredient('eggs', 'other'), contains: ['egg'] as const }])
    const withEgg = formula({
      strength: 2,
      lines: [{ ingredientId: ingredientId('eggs'), percent: 100_000, at: 'start' }],
    })
    const state = stateWith({
      shop,
      mixes: [
        mix('mixing', at('9:00'), {
          id: 'now',
          mixedAtMs: at('9:00'),
          gives: GIVES.map((one) => ({ ...one, pieceMilligrams: 0 })),
        }),
        mix('ended', at('8:00'), { id: 'early', formula: withEgg, mixedAtMs: at('8:00') }),
        mix('ended', at('8:00', -1), { id: 'old', mixedAtMs: at('8:00', -1) }),
      ],
    })
    const rules = mixTasks(state, { ...shop, ingredients }, [toOrder({ id: 'next' })], noonOf)[0]?.rules
    expect(rules).toMatchObject({
      mixerFromMs: at('9:12'),
      benchFromMs: at('9:37'),
      before: { allergens: [], strength: 0, dayAllergens: ['egg'] },
    })
  })

  it('[D88] given no dough room, or mixes of a plan, when they become tasks, then none, or by date and place', () => {
    expect(mixTasks(stateWith({ shop }), { ...shop, doughRoom: null }, [toOrder()], noonOf)).toEqual([])
    const asked = { formulaId: formulaId('plain'), flourMilligrams: 1, startAtMs: null, gives: GIVES }
    expect(mixesToOrder(shop, TOMORROW, [asked, { ...asked, formulaId: formulaId('gone') }])).toMatchObject([
      { id: `${TOMORROW}.0`, bakeDate: TOMORROW, gives: GIVES },
    ])
  })
})
