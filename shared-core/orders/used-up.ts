import type { Case } from '../day/decision.ts'
import { happen } from '../day/decision.ts'
import type { Lot } from '../day/state.ts'
import type { PortionId, VarietyId } from '../ids.ts'
import { takeOff } from '../stock/decide-stock.ts'
import type { EpochMs } from '../units.ts'
import type { OrderItem, PortionsLeft } from './order.ts'

/**
 * What is begun uses up its bagel and its portions. A portion that nobody has counted is not counted down; one that is
 * at nothing stays there, as what is made was there.
 * @param lots what is left of varieties of which the same command has taken some already
 */
export function takeUsed(
  oneCase: Case,
  items: readonly OrderItem[],
  atMs: EpochMs,
  lots: ReadonlyMap<VarietyId, readonly Lot[]> = new Map(),
): void {
  const bagels = new Map<VarietyId, number>()
  for (const { varietyId } of items) if (varietyId !== null) bagels.set(varietyId, (bagels.get(varietyId) ?? 0) + 1)
  for (const [varietyId, pieces] of bagels) {
    const left = lots.get(varietyId)
    takeOff(oneCase, { varietyId, pieces }, 'kitchen', {
      atMs,
      from: 'tap',
      ...(left === undefined ? {} : { lots: left }),
    })
  }
  const left = portionsAfter(oneCase, items)
  if (left.length > 0) happen(oneCase, atMs, { type: 'portionsLeft', left })
}

function portionsAfter({ state, shop }: Case, items: readonly OrderItem[]): readonly PortionsLeft[] {
  const used = new Map<PortionId, number>()
  for (const item of items)
    for (const [id, portions] of portionsOf(shop, item)) used.set(id, (used.get(id) ?? 0) + portions)
  return [...used].flatMap(([id, portions]) => {
    const known = state.portions.get(id)
    return known === undefined ? [] : [{ ...known, portions: Math.max(0, known.portions - portions) }]
  })
}

/** The portions of one item as it was ordered: what it is made of, less what it is without, and what there is more of. */
export function portionsOf(shop: Case['shop'], { itemId, without, more }: OrderItem): ReadonlyMap<PortionId, number> {
  const sums = new Map<PortionId, number>()
  for (const { portionId, portions } of shop.menu.get(itemId)?.portions ?? [])
    if (!without.includes(portionId)) sums.set(portionId, portions)
  for (const id of more) sums.set(id, (sums.get(id) ?? 0) + 1)
  return sums
}
