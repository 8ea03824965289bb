import type { SpecialDayId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'

/** Special days that a date is one of, in order of id. A retired one is no more learnt of and no more told. */
export function specialsOn({ specialDays }: Pick<Shop, 'specialDays'>, isoDate: string): readonly SpecialDayId[] {
  return [...specialDays.values()]
    .filter(({ retired, spans }) => !retired && spans.some(({ from, to }) => from <= isoDate && isoDate <= to))
    .map(({ id }) => id)
    .sort()
}
