import { describe, expect, it } from 'vitest'
import { supplyAsked } from '../../../shared-core/orders/supply-asked.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { at, stateWith } from '../support/make.ts'
import { planWith } from '../support/plan.ts'
import { DATE, noonOf, promiseShop } from './promise-makers.ts'

const BEFORE = '2026-11-23'
const SHOP = promiseShop()
const LATE = promiseShop({}, { hours: { ...SHOP.hours, openMinute: 17 * 60, closeMinute: 2 * 60 } })

function today(shop: typeof SHOP, label: string | null, nowMs: EpochMs) {
  const { day: usual } = stateWith({ shop })
  const day = label === null || usual === null ? null : { ...usual, label }
  const plan = { ...planWith([]), date: DATE }
  const asked = supplyAsked({ state: stateWith({ shop, day }), nowMs, localDate: DATE, noonOf, outlook: null, plan })
  return [asked.date, asked.closesAtMs, asked.plan !== null]
}

describe('[M45] what a promise is reckoned from', () => {
  it.each([
    ['no day is open', SHOP, null, at('7:00'), DATE, at('15:00'), true],
    ['the day is open', SHOP, DATE, at('7:00'), DATE, at('15:00'), true],
    ['nobody closed the day before', SHOP, BEFORE, at('7:00'), DATE, at('15:00'), true],
    ['the day before goes on after midnight', LATE, BEFORE, at('1:00'), BEFORE, at('2:00'), false],
    ['the day before is over since two', LATE, BEFORE, at('2:01'), DATE, at('2:00', 1), true],
    ['the next day is open already', SHOP, '2026-11-25', at('16:00'), '2026-11-25', at('15:00', 1), false],
  ] as const)(
    'given %s, then it is of that day until its close',
    (_what, shop, label, nowMs, date, closesAtMs, has) => {
      expect(today(shop, label, nowMs)).toEqual([date, closesAtMs, has])
    },
  )
})
