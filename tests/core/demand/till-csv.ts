import type { SalesDay } from '../../../shared-core/demand/sales-day.ts'

/** Days as a till would write them: a row for each purchase. */
export function tillCsv(days: readonly SalesDay[]): string {
  let ticket = 0
  const rows = days.flatMap(({ date, items }) =>
    [...items].flatMap(([id, { sold }]) =>
      sold.map(({ minute, pieces }) => `${date} ${clock(minute)},${++ticket},${id},${pieces}`),
    ),
  )
  return ['Date,Ticket,Item,Qty', ...rows].join('\r\n')
}

function clock(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
}
