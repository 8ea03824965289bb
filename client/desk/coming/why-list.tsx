import { specialsOn } from '../../../shared-core/demand/special-days.ts'
import type { Why } from '../../../shared-core/plan/why.ts'
import { isoWeekday } from '../../../shared-core/shop/hours.ts'
import type { ComingParts } from './parts.ts'

/** The reasons of one number, each with its pieces, signed; they sum up to it. */
export function WhyList({ why, shop, say, date }: ComingParts & { readonly why: readonly Why[] }) {
  const named = specialsOn(shop, date).flatMap((id) => shop.specialDays.get(id)?.name ?? [])
  const day = { weekday: isoWeekday(date), named }
  return (
    <ul class="coming-why">
      {why.map((one) => (
        <li key={one.code}>
          <span class="desk-number">{say.signed(one.pieces)}</span>
          <span>{say.reason(one, day)}</span>
        </li>
      ))}
    </ul>
  )
}
