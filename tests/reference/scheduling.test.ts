import { describe, expect, it } from 'vitest'
import { mixingOrder } from '../../shared-core/dough/order.ts'
import { dayOf, drawnDay } from '../core/dough/order-maker.ts'
import longOrders from './data/long-orders.json' with { type: 'json' }
import solvedOrders from './data/mixing-orders.json' with { type: 'json' }

const MINUTE_MS = 60_000

/**
 * Mixing orders against a general-purpose solver (mixed-integer programs, each solved to the optimum; its name and version
 * stand in the data, its program in `data/solve-mixing-orders.ts`), and against the best that is known of long days.
 */
describe('the mixing order', () => {
  it.each(solvedOrders.solved)(
    '[D83] given $name, when the solver has proved the best, then ours costs the same',
    ({ day, ...solved }) => {
      const { tasks, rules } = dayOf(day as Parameters<typeof dayOf>[0])
      const { contacts, washes, latenessMs, how } = mixingOrder(tasks, rules)
      expect({ contacts, washes, lateMinutes: latenessMs / MINUTE_MS, how }).toEqual({
        contacts: solved.contacts,
        washes: solved.washes,
        lateMinutes: solved.lateMinutes,
        how: 'exact',
      })
    },
  )

  it.each(longOrders.found)(
    '[D83] given thirty mixes of $formulas formulas, when the best known is stored, then ours is as good',
    (long) => {
      const { tasks, rules } = dayOf(drawnDay(long.seed, long))
      const { contacts, washes, latenessMs } = mixingOrder(tasks, rules)
      expect({ contacts, washes, lateMinutes: latenessMs / MINUTE_MS }).toEqual({
        contacts: long.contacts,
        washes: long.washes,
        lateMinutes: long.lateMinutes,
      })
    },
  )
})
