import { specialsOn } from '../../../shared-core/demand/special-days.ts'
import type { Why } from '../../../shared-core/plan/why.ts'
import { isoWeekday } from '../../../shared-core/shop/hours.ts'
import type { ComingParts } from './parts.ts'

interface WhyProps extends ComingParts {
  readonly why: readonly Why[]
  readonly unit: 'tray' | 'board'
}

/** The reasons of one number, each with its pieces, signed; they sum up to it. */
export function WhyList({ why, unit, shop, say, date }: WhyProps) {
  const named = specialsOn(shop, date).flatMap((id) => shop.specialDays.get(id)?.name ?? [])
  const of = { weekday: isoWeekday(date), named, unit }
  const sum = why.reduce((all, { pieces }) => all + pieces, 0)
  return (
    <ul class="coming-why">
      {why.map((one) => (
        <li key={one.code}>
          <span class="desk-number">{say.signed(one.pieces)}</span>
          <span>{say.reason(one, of)}</span>
        </li>
      ))}
      <li>
        <span />
        <strong>{say.sum(sum, unit === 'tray' ? 'toMake' : 'bake')}</strong>
      </li>
    </ul>
  )
}
