import { describe, expect, it } from 'vitest'
import type { Build } from '../../../shared-core/dough/mix.ts'
import { preparationsDue } from '../../../shared-core/dough/preparations-due.ts'
import { buildId, formulaId, preparationId, weekdayId } from '../../../shared-core/ids.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { at } from '../support/make.ts'
import { dwell, table } from '../support/shop.ts'
import { percents, preparation } from './kitchen.ts'
import type { PlanParts } from './plan-make.ts'
import { doughShop, noonOf, planState, THURSDAY, TODAY, TOMORROW } from './plan-make.ts'
import { formula, mix, sheetLine } from './room-mix.ts'

/** Ripe after 10 to 16 h, best after 12. A fifth of the plain formula's flour is in it. */
const SPONGE = preparation({ id: 'sponge' })
const CULTURE = preparation({
  id: 'culture',
  lines: percents({ flour: 100, water: 80 }),
  seedPercent: 20_000,
  fedWith: { thousandths: 500_000, unit: 'g' },
})

function spongeShop(parts: Partial<Shop> = {}): Shop {
  const uses = [{ preparationId: preparationId('sponge'), percent: 20_000 }]
  const plain = formula({ lines: percents({ flour: 100, water: 57, salt: 2, yeast: 0.6 }), preparations: uses })
  return doughShop({ formulas: table([plain]), preparations: table([SPONGE]), ...parts })
}

function due(parts: PlanParts, nowMs: EpochMs = at('13:00')) {
  const shop = parts.shop ?? spongeShop()
  return preparationsDue(planState({ recordedAt: at('13:00'), ...parts, shop }), shop, nowMs, TODAY, noonOf)
}

function build(parts: Partial<Build> = {}): Build {
  return {
    id: buildId('b1'),
    preparationId: preparationId('sponge'),
    madeAtMs: at('12:00'),
    milligrams: 1_000_000,
    forDate: THURSDAY,
    ready: { earliestAtMs: at('22:00'), targetAtMs: at('0:00', 1), latestAtMs: at('4:00', 1) },
    lines: [],
    dropped: false,
    ...parts,
  }
}

describe('preparations due', () => {
  const wanted = { [THURSDAY]: { plain: 150 } }

  it('[D31] given dough mixed tomorrow from 5:00, when today is looked at, then its sponge is begun at 17:00, 13:00 to 19:00', () => {
    expect(due({ wanted })).toEqual([
      {
        preparationId: 'sponge',
        forDate: THURSDAY,
        // 150 · 120 g of a formula of 159.6 %: 11 278.2 g of flour, of it 20 %, at 160 %.
        milligrams: 3_609_023,
        seedMilligrams: 0,
        begin: { earliestAtMs: at('13:00'), targetAtMs: at('17:00'), latestAtMs: at('19:00') },
        usedAtMs: at('5:00', 1),
        status: 'coming',
      },
    ])
  })

  it.each([
    ['16:59', 'coming'],
    ['17:00', 'due'],
    ['19:00', 'due'],
    ['19:01', 'late'],
  ])('[D31] given it is %s, when it is looked at, then the sponge is %s', (now, status) => {
    expect(due({ wanted }, at(now))[0]?.status).toBe(status)
  })

  it('[D31] given two mixes that stand, when they are looked at, then the earlier one sets the time and both the weight', () => {
    const part = (id: string, clock: string) =>
      mix('planned', at('9:00'), {
        id,
        bakeDate: THURSDAY,
        formula: formula({ daysAhead: 1 }),
        startAtMs: at(clock, 1),
        lines: [
          sheetLine('sponge', { ingredientId: null, preparationId: preparationId('sponge'), milligrams: 800_000 }),
        ],
      })
    const [sponge] = due({ wanted, mixes: [part('m1', '9:00'), part('m2', '8:00')] })
    expect(sponge).toMatchObject({ milligrams: 1_600_000, usedAtMs: at('8:00', 1) })
    expect(sponge?.begin.targetAtMs).toBe(at('20:00'))
  })

  it.each([
    ['all of it is made', build({ milligrams: 4_000_000 }), []],
    ['all but a percent of it is made', build({ milligrams: 3_573_000 }), []],
    ['some of it is made', build(), [2_609_023]],
    ['what was made was thrown away', build({ dropped: true }), [3_609_023]],
    ['it was made for another day', build({ forDate: TOMORROW, milligrams: 4_000_000 }), [3_609_023]],
  ])('[D31] given %s, when it is looked at, then the rest is due', (_what, made, expected) => {
    expect(due({ wanted, builds: [made] }).map(({ milligrams }) => milligrams)).toEqual(expected)
  })

  it('[D31] given dough mixed in three days, when today is looked at, then it is not listed yet', () => {
    expect(due({ wanted: { '2026-11-28': { plain: 150 } } })).toEqual([])
  })

  it('[D31] given a soaker of a formula two days ahead, when it is looked at, then it counts from its day of mixing', () => {
    const soaker = preparation({
      id: 'soaker',
      kind: 'soaker',
      lines: percents({ seeds: 100, water: 100 }),
      ready: dwell(2, 3, 12, 'h'),
    })
    const lines = percents({ flour: 100, water: 60, salt: 2, yeast: 0.6, seeds: 5 })
    const uses = [{ preparationId: soaker.id, percent: 5_000 }]
    const shop = spongeShop({
      preparations: table([soaker]),
      formulas: table([formula({ lines, preparations: uses, daysAhead: 2 })]),
    })
    const [first] = due({ shop, wanted: { '2026-11-27': { plain: 60 } } })
    expect(first).toMatchObject({ preparationId: 'soaker', forDate: '2026-11-27', usedAtMs: at('5:00', 1) })
    expect(first?.begin.targetAtMs).toBe(at('2:00', 1))
  })
})

describe('a culture', () => {
  const shop = spongeShop({
    preparations: table([CULTURE]),
    formulas: table([formula({ id: 'sour', decideByMinute: 600 })]),
  })

  it('[D32] given a day on which no dough asks for it, when it is looked at, then it is fed as work begins, with its seed', () => {
    expect(due({ shop }, at('4:00'))).toEqual([
      {
        preparationId: 'culture',
        forDate: null,
        milligrams: 900_000,
        seedMilligrams: 100_000,
        begin: { earliestAtMs: at('0:00'), targetAtMs: at('5:00'), latestAtMs: at('23:59:59') + 999 },
        usedAtMs: null,
        status: 'coming',
      },
    ])
  })

  it('[D32] given a weekday on which the shop is closed, when it is looked at, then it is fed all the same', () => {
    const closed = { ...shop, weekdays: table([{ id: weekdayId('5'), hours: null, retired: false }]) }
    const state = planState({ shop: closed, day: null, recordedAt: at('13:00') })
    expect(preparationsDue(state, closed, at('13:00', 3), '2026-11-27', noonOf).map(({ forDate }) => forDate)).toEqual([
      null,
    ])
  })

  it.each([
    ['was fed today', { madeAtMs: at('6:00'), forDate: null }, 0],
    ['was fed yesterday', { madeAtMs: at('23:00', -1), forDate: null }, 1],
    ['was fed today and thrown away', { madeAtMs: at('6:00'), forDate: null, dropped: true }, 1],
    ['was built for a dough today', { madeAtMs: at('6:00'), forDate: THURSDAY }, 0],
  ])('[D32] given it %s, when it is looked at, then %s, %i feedings are due', (_what, parts, count) => {
    expect(due({ shop, builds: [build({ ...parts, preparationId: preparationId('culture') })] })).toHaveLength(count)
  })

  it('[D32] given a dough that asks for it today, when it is looked at, then the build is its feeding', () => {
    const uses = [{ preparationId: CULTURE.id, percent: 10_000 }]
    const lines = percents({ flour: 100, water: 57, salt: 2 })
    const sour = { ...shop, formulas: table([formula({ id: formulaId('plain'), lines, preparations: uses })]) }
    expect(due({ shop: sour, wanted: { [THURSDAY]: { plain: 60 } } }).map(({ forDate }) => forDate)).toEqual([THURSDAY])
  })
})
