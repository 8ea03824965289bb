import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import type { DayPlan } from '../../../shared-core/dough/day-plan.ts'
import { dayPlan } from '../../../shared-core/dough/day-plan.ts'
import { doughId, formulaId, varietyId } from '../../../shared-core/ids.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { spanMs } from '../../../shared-core/units.ts'
import '../../fixed-seed.ts'
import { anyDoughRoom } from '../shop/formula-maker.ts'
import { at, batch, lines, planned, until } from '../support/make.ts'
import { dough, table } from '../support/shop.ts'
import { doughRoom, percents } from './kitchen.ts'
import { doughShop, noonOf, planState, shapedDough, THURSDAY, TODAY, TOMORROW } from './plan-make.ts'
import { formula, mix, sheetLine } from './room-mix.ts'

function planOf(state: State, date = TOMORROW): DayPlan {
  return dayPlan(state, state.shop ?? doughShop(), date, noonOf)
}

/** `plain 270: counter 300, chilled -32, trays 2` */
function told({ doughs }: DayPlan): string[] {
  return doughs.map(
    ({ doughId: id, pieces, why }) => `${id} ${pieces}: ${why.map((one) => `${one.code} ${one.pieces}`).join(', ')}`,
  )
}

/** Chilled since yesterday evening, good until Thursday evening. */
const chilled = (parts: Parameters<typeof batch>[0]) =>
  batch({
    stage: 'chill',
    since: at('18:00', -1),
    until: { ...until('2:00', '8:00', '8:00'), latestAtMs: at('18:00', 1) },
    ...parts,
  })

const DONE_TODAY = { recordedAt: at('13:00') }

describe('what a day needs', () => {
  it('[D24] given pieces wanted and ordered and some chilled, when it is planned, then they are counted off and it is told', () => {
    const state = planState({
      ...DONE_TODAY,
      wanted: { [TOMORROW]: { plain: 250 } },
      ordered: { [TOMORROW]: { plain: 50 } },
      batches: [chilled({ id: 'left', pieces: 32 })],
    })
    expect(told(planOf(state))).toEqual(['plain 270: counter 250, orders 50, chilled -32, trays 2'])
  })

  it('[D24] given varieties of one dough, some ordered, when it is planned, then they are pooled to their dough', () => {
    const state = planState(DONE_TODAY)
    const line = (variety: string, pieces: number, ordered = 0) => ({
      doughId: doughId('plain'),
      varietyId: varietyId(variety),
      pieces,
      ordered,
    })
    state.wanted.set(TOMORROW, { date: TOMORROW, lines: [line('sesame', 50), line('poppy', 28, 12)] })
    expect(told(planOf(state))).toEqual(['plain 90: counter 78, orders 12'])
  })

  it.each([
    ['over before the oven is ready', at('4:29', 1), 300],
    ['over right then', at('4:30', 1), 300 - 30],
  ])(
    '[D24] given chilled pieces whose window is %s, when it is planned, then %i minutes count',
    (_when, latestAtMs, pieces) => {
      const batches = [chilled({ id: 'left', pieces: 30, until: { ...until('2:00', '8:00', '8:00'), latestAtMs } })]
      const state = planState({ ...DONE_TODAY, wanted: { [TOMORROW]: { plain: 300 } }, batches })
      expect(planOf(state).doughs[0]?.pieces).toBe(pieces)
    },
  )

  it('[D24] given pieces that may not be boiled before tomorrow noon, when tomorrow is planned, then they do not count', () => {
    const late = { earliestAtMs: at('12:00', 1), targetAtMs: at('18:00', 1), latestAtMs: at('18:00', 3) }
    const batches = [chilled({ id: 'late', pieces: 30, until: late })]
    const state = planState({
      ...DONE_TODAY,
      wanted: { [TOMORROW]: { plain: 30 }, [THURSDAY]: { plain: 30 } },
      batches,
    })
    expect(told(planOf(state))).toEqual(['plain 30: counter 30'])
    expect(told(planOf(state, THURSDAY))).toEqual(['plain 0: counter 30, chilled -30'])
  })

  it('[D24] given what proofs, when it is planned, then it counts as chilled when it is ready', () => {
    const proofing = batch({
      id: 'p',
      pieces: 45,
      stage: 'proof',
      since: at('12:00'),
      until: until('12:45', '13:00', '13:30'),
    })
    const state = planState({ ...DONE_TODAY, wanted: { [TOMORROW]: { plain: 60 } }, batches: [proofing] })
    expect(told(planOf(state))).toEqual(['plain 15: counter 60, chilled -45'])
  })

  it('[D24] given a cooler that stood warm all day, when tomorrow is planned, then what is over-proofed by then does not count', () => {
    const tray = { ...chilled({ id: 'left', pieces: 30, dough: 'rye', since: at('6:00') }), fermentedMs: 60 * 60_000 }
    const state = planState({ ...DONE_TODAY, wanted: { [TOMORROW]: { rye: 30 } }, batches: [tray] })
    expect(told(planOf(state))).toEqual(['rye 0: counter 30, chilled -30'])
    const read = { thousandths: 20_000, unit: 'C' } as const
    state.readings.set('cooler', { place: 'cooler', points: [{ atMs: at('6:00'), milliCelsius: 20_000 }], read })
    expect(told(planOf(state))).toEqual(['rye 30: counter 30'])
  })

  it('[D24] given a day half boiled, when it is planned itself, then what was pulled and what loads still take is told', () => {
    const wanted = { [TODAY]: { plain: 100 } }
    const batches = [chilled({ id: 'cold', pieces: 40 }), batch({ id: 'hot', pieces: 60, stage: 'kettle' })]
    expect(told(planOf(planState({ wanted, batches }), TODAY))).toEqual([
      'plain 0: counter 100, boiled -60, chilled -40',
    ])
    const loads = [
      planned({ lines: lines('sesame', 48, 'poppy', 48) }),
      planned({ id: 'p2', lines: lines('sesame', 90) }),
    ]
    const more = planState({ wanted, batches, planned: loads })
    expect(told(planOf(more, TODAY))).toEqual(['plain 90: counter 100, loads 26, chilled -40, trays 4'])
  })

  it('[D24] given a mix half shaped, when its day is planned, then its trays and what is left in it count once', () => {
    const going = mix('bench', at('11:00'), {
      formula: formula({ lossPercent: 0 }),
      lines: [sheetLine('flour', { milligrams: 12_000_000 })],
      gives: [{ doughId: doughId('plain'), pieces: 100, pieceMilligrams: 120_000 }],
      shapedMilligrams: 45 * 120_000,
    })
    const tray = { ...batch({ id: 'p', pieces: 45, stage: 'proof', since: at('12:00') }), mixId: going.id }
    const state = planState({ ...DONE_TODAY, wanted: { [TOMORROW]: { plain: 130 } }, batches: [tray], mixes: [going] })
    expect(told(planOf(state))).toEqual(['plain 30: counter 130, begun -100'])
  })

  it('[D24] given a mix of which one dough is shaped, when its day is planned, then what is left is the other', () => {
    const going = mix('bench', at('11:00'), {
      lines: [sheetLine('flour', { milligrams: 9_000_000 })],
      gives: [
        { doughId: doughId('plain'), pieces: 50, pieceMilligrams: 120_000 },
        { doughId: doughId('mini'), pieces: 50, pieceMilligrams: 60_000 },
      ],
      shapedMilligrams: 50 * 120_000,
    })
    const tray = { ...batch({ id: 'p', pieces: 50, stage: 'proof', since: at('12:00') }), mixId: going.id }
    const wanted = { [TOMORROW]: { plain: 50, mini: 50 } }
    expect(told(planOf(planState({ ...DONE_TODAY, wanted, batches: [tray], mixes: [going] })))).toEqual([
      'plain 0: counter 50, begun -50',
      'mini 0: counter 50, begun -50',
    ])
  })

  it('[D24] given any day, when it is planned, then the reasons sum to the pieces, and no more is taken than is there', () => {
    const anyPieces = fc.record({ plain: fc.nat(400), mini: fc.nat(90), rye: fc.nat(200) })
    fc.assert(
      fc.property(anyPieces, anyPieces, fc.array(fc.nat(120), { maxLength: 5 }), (wanted, ordered, batches) => {
        const state = planState({
          ...DONE_TODAY,
          wanted: { [TOMORROW]: wanted, [THURSDAY]: ordered },
          ordered: { [TOMORROW]: ordered },
          batches: batches.map((pieces, n) =>
            chilled({ id: `b${n}`, pieces, dough: ['plain', 'mini', 'rye'][n % 3] ?? '' }),
          ),
        })
        const plans = [planOf(state), planOf(state, THURSDAY)]
        let used = 0
        for (const need of plans.flatMap(({ doughs }) => doughs)) {
          expect(need.why.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(need.pieces)
          expect(need.pieces).toBeGreaterThanOrEqual(0)
          used -= need.why.reduce((sum, { code, pieces }) => (code === 'chilled' ? sum + pieces : sum), 0)
        }
        expect(used).toBeLessThanOrEqual(batches.reduce((sum, pieces) => sum + pieces, 0))
      }),
    )
  })
})

describe('days before it', () => {
  const both = { [TOMORROW]: { plain: 30 }, [THURSDAY]: { plain: 60 } }

  it('[D25] given chilled pieces good for both days, when the second is planned, then the first has taken its own', () => {
    const short = { ...DONE_TODAY, wanted: both, batches: [chilled({ id: 'left', pieces: 45 })] }
    const long = { ...DONE_TODAY, wanted: both, batches: [chilled({ id: 'left', pieces: 45, until: null })] }
    expect(told(planOf(planState(long), THURSDAY))).toEqual(['plain 45: counter 60, chilled -15'])
    // Those whose window is over on Wednesday evening are no help on Thursday.
    expect(told(planOf(planState(short), THURSDAY))).toEqual(['plain 60: counter 60'])
  })

  it('[D25] given pieces whose window closes first, when two days are planned, then the first day takes those', () => {
    const long = { ...until('2:00', '8:00', '8:00'), latestAtMs: at('18:00', 3) }
    const batches = [chilled({ id: 'a', pieces: 30, until: long }), chilled({ id: 'b', pieces: 30 })]
    const state = planState({ ...DONE_TODAY, wanted: both, batches })
    expect(told(planOf(state, THURSDAY))).toEqual(['plain 30: counter 60, chilled -30'])
  })

  it('[D25] given trays made for the day after, when tomorrow is planned, then they are left to their day', () => {
    const for2 = mix('ended', at('11:00'), { bakeDate: THURSDAY, lines: [] })
    const trays = { ...chilled({ id: 'two', pieces: 60 }), mixId: for2.id }
    const state = planState({ ...DONE_TODAY, wanted: both, batches: [trays], mixes: [for2] })
    expect(told(planOf(state))).toEqual(['plain 30: counter 30'])
    expect(told(planOf(state, THURSDAY))).toEqual(['plain 0: counter 60, begun -60'])
  })

  it('[D25] given mixes planned for tomorrow that give more than is wanted, when Thursday is planned, then the rest counts', () => {
    const gives = [{ doughId: doughId('plain'), pieces: 75, pieceMilligrams: 120_000 }]
    const state = planState({ ...DONE_TODAY, wanted: both, mixes: [mix('planned', at('9:00'), { gives })] })
    expect(told(planOf(state, THURSDAY))).toEqual(['plain 15: counter 60, earlier -45'])
  })

  it.each([
    ['nothing said of today', {}, 'plain 300: counter 300'],
    ['40 wanted today', { wanted: { [TODAY]: { plain: 40 } } }, 'plain 240: counter 300, chilled -60'],
    [
      '40 planned in loads today',
      { planned: [planned({ lines: lines('sesame', 40) })] },
      'plain 240: counter 300, chilled -60',
    ],
    [
      'today’s loads all in',
      { planned: [planned({ lines: lines('sesame', 40), done: true })] },
      'plain 210: counter 300, chilled -100, trays 10',
    ],
    ['boiling over for today', DONE_TODAY, 'plain 210: counter 300, chilled -100, trays 10'],
  ])(
    '[D25] given 100 chilled and %s, when tomorrow is planned at dawn, then today’s are not counted',
    (_what, parts, expected) => {
      const wanted = { [TOMORROW]: { plain: 300 }, ...('wanted' in parts ? parts.wanted : {}) }
      const state = planState({ ...parts, batches: [chilled({ id: 'left', pieces: 100 })], wanted })
      expect(told(planOf(state))).toEqual([expected])
    },
  )
})

describe('rounding up', () => {
  const inBags = (parts: Partial<Shop['doughRoom'] & object>) => doughShop({ doughRoom: doughRoom(parts) })
  const flourOf = ({ formulas }: DayPlan, id: string) =>
    formulas.find((one) => one.formulaId === formulaId(id))?.flourMilligrams ?? 0

  it('[D26] given 301 wanted on trays of 15, when it is planned, then 315 are shaped and 14 are over', () => {
    const { doughs } = planOf(planState({ ...DONE_TODAY, wanted: { [TOMORROW]: { plain: 301 } } }))
    expect(doughs[0]).toMatchObject({ pieces: 315, over: 14, short: 0 })
  })

  it.each([
    ['bags', 1],
    ['halfBags', 0.5],
  ] as const)(
    '[D26] given flour in %s, when two formulas take of it, then the day’s sum is whole and plain gets the rest',
    (flourIn, bag) => {
      const shop = inBags({ flourIn, surplusTo: formulaId('plain') })
      const state = planState({ ...DONE_TODAY, shop, wanted: { [TOMORROW]: { plain: 90, rye: 30 } } })
      const plan = planOf(state)
      const plainAlone = planOf({ ...state, shop: doughShop() })
      const taken = flourOf(plan, 'plain') + 0.6 * flourOf(plan, 'rye')
      const unit = milligrams({ thousandths: 50_000, unit: 'lb' }) * bag
      expect(Math.abs(taken / unit - Math.round(taken / unit)) * unit).toBeLessThan(2)
      expect(flourOf(plan, 'rye')).toBe(flourOf(plainAlone, 'rye'))
      expect(flourOf(plan, 'plain') - flourOf(plainAlone, 'plain')).toBeLessThan(unit)
      const [plain] = plan.doughs
      expect(plain?.why.some(({ code, pieces }) => code === 'bags' && pieces > 0)).toBe(true)
      expect(plan.mixes.flatMap(({ gives }) => gives).filter((one) => one.doughId === plain?.doughId)[0]?.pieces).toBe(
        plain?.pieces,
      )
    },
  )

  it('[D26] given bags whose rest goes to plain, when plain is not mixed that day, then nothing is added', () => {
    const shop = inBags({ flourIn: 'bags', surplusTo: formulaId('plain') })
    const plan = planOf(planState({ ...DONE_TODAY, shop, wanted: { [TOMORROW]: { rye: 60 } } }))
    expect(told(plan)).toEqual(['rye 60: counter 60'])
    expect(plan.formulas[0]?.why.map(({ code }) => code)).toEqual(['pieces'])
  })

  it('[D26] given bags and nobody named for the rest, when two are mixed, then each fills up its own', () => {
    const shop = inBags({ flourIn: 'halfBags', surplusTo: null })
    const plan = planOf(planState({ ...DONE_TODAY, shop, wanted: { [TOMORROW]: { plain: 150, rye: 60 } } }))
    const half = milligrams({ thousandths: 25_000, unit: 'lb' })
    for (const taken of [flourOf(plan, 'plain'), 0.6 * flourOf(plan, 'rye')])
      expect(Math.abs(taken - Math.round(taken / half) * half)).toBeLessThan(2)
  })
})

describe('dough and mixes', () => {
  it('[D27] given two doughs of one formula, when they are planned, then they are pooled by weight, loss and all', () => {
    const shop = doughShop({
      formulas: table([
        formula({
          lines: percents({ flour: 100, water: 57 }),
          lossPercent: 2_000,
        }),
      ]),
    })
    const { formulas } = planOf(planState({ ...DONE_TODAY, shop, wanted: { [TOMORROW]: { plain: 45, mini: 48 } } }))
    const shaped = 45 * 120_000 + 48 * 60_000
    expect(formulas[0]?.why).toEqual([
      { code: 'pieces', milligrams: shaped },
      { code: 'loss', milligrams: Math.round(shaped / 0.98) - shaped },
    ])
  })

  it('[D27] given a small mixer, when a day is planned, then mixes are even and give all of its pieces', () => {
    const mixer = {
      name: 'Mixer',
      washMs: spanMs(10, 'min'),
      leastFlour: { thousandths: 8_000, unit: 'kg' },
      mostFlour: { thousandths: 20_000, unit: 'kg' },
    } as const
    const plan = planOf(
      planState({ ...DONE_TODAY, shop: doughShop({ mixer }), wanted: { [TOMORROW]: { plain: 600, mini: 96 } } }),
    )
    expect(plan.mixes.map(({ gives }) => gives.map(({ doughId: id, pieces }) => `${id} ${pieces}`))).toEqual([
      ['plain 216'],
      ['plain 216'],
      ['plain 168', 'mini 96'],
    ])
    const flours = plan.mixes.map(({ flourMilligrams }) => flourMilligrams)
    expect(Math.max(...flours) - Math.min(...flours)).toBeLessThanOrEqual(1)
    expect(plan.formulas[0]).toMatchObject({ fits: 'fits', mixes: 3 })
  })

  it('[D28] given a dough without a formula or a weight, when it is planned, then its pieces are told as short', () => {
    const shop = doughShop({
      doughs: table([
        dough({ id: 'plain' }),
        shapedDough({ id: 'rye', formulaId: formulaId('rye'), pieceWeight: null }),
      ]),
    })
    const plan = planOf(planState({ ...DONE_TODAY, shop, wanted: { [TOMORROW]: { plain: 20, rye: 10 } } }))
    expect(plan.doughs.map(({ pieces, short }) => [pieces, short])).toEqual([
      [30, 30],
      [15, 15],
    ])
    expect(plan.mixes).toEqual([])
    expect(plan.decideAtMs).toBeNull()
  })

  it('[D28] given a formula that is retired, when its dough is planned, then it is short too', () => {
    const formulas = table([formula({ lines: percents({ flour: 100, water: 57 }), retired: true })])
    const plan = planOf(
      planState({ ...DONE_TODAY, shop: doughShop({ formulas }), wanted: { [TOMORROW]: { plain: 30 } } }),
    )
    expect(plan.doughs[0]).toMatchObject({ formulaId: null, short: 30 })
  })

  it('[D27] given any dough room that the set-up takes, when a day is planned, then mixes hold all flour and all pieces', () => {
    fc.assert(
      fc.property(anyDoughRoom, fc.integer({ min: 1, max: 2_000 }), (room, pieces) => {
        const doughs = table([shapedDough({ id: 'plain' })])
        const plan = planOf(
          planState({ ...DONE_TODAY, shop: doughShop({ ...room, doughs }), wanted: { [TOMORROW]: { plain: pieces } } }),
        )
        const [need] = plan.formulas
        const total = (of: (one: (typeof plan.mixes)[number]) => number) =>
          plan.mixes.reduce((sum, one) => sum + of(one), 0)
        expect(total(({ flourMilligrams }) => flourMilligrams)).toBe(need?.flourMilligrams)
        expect(total(({ gives }) => gives[0]?.pieces ?? 0)).toBe(plan.doughs[0]?.pieces)
        expect(need?.why.reduce((sum, { milligrams: weight }) => sum + weight, 0)).toBe(need?.doughMilligrams)
      }),
    )
  })
})
