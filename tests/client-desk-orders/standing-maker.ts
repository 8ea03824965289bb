import type { OrderCommand } from '../../shared-core/orders/order-commands.ts'
import { askedLine } from '../core/orders/order-makers.ts'

type SetStanding = Extract<OrderCommand, { type: 'setStanding' }>

/** Twelve sesame for ST, fetched at 7:30 every day from the test day on, unless said otherwise. */
export function standingCommand(parts: Partial<SetStanding> = {}): SetStanding {
  return {
    type: 'setStanding',
    standingId: null,
    mark: 'ST',
    way: 'pickUp',
    runId: null,
    stop: 0,
    dueMinute: 7 * 60 + 30,
    lines: [askedLine('sesame', { pieces: 12 })],
    isPaid: false,
    recurrence: {
      freq: 'daily',
      interval: 1,
      from: '2026-11-24',
      until: null,
      weekdays: [],
      nth: null,
      except: [],
      also: [],
    },
    onHolidays: true,
    ...parts,
  }
}
