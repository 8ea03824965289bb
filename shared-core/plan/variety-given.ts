import type { VarietyId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import { broughtTo, CONTACT_PLACES } from '../line/contacts.ts'
import type { Allergen, Shop, Variety } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { VarietyGiven } from './bake-off/bake-off.ts'
import { standardNormal } from './bake-off/expected.ts'
import { doughKeyOf } from './dough-key.ts'
import type { PlanAsked } from './plan-asked.ts'
import { moneyOf, worthOf } from './worth.ts'

const MINUTE_MS = 60_000

/** A variety as the planner sees it, and what its figures leave out. */
export interface ValuedVariety {
  readonly given: VarietyGiven
  /** Cents that each piece asked for brings whatever is planned: added to the figures that people see. */
  readonly besideCents: number
}

/**
 * Varieties on the menu of which something is known or there, in the set-up's order. Money is in cents:
 *
 *   price + lostSale = worth of a piece where somebody would go without (`worth.ts`): own margin, disappointment, and what
 *                      others take instead
 *   price            = what a piece brings at the counter and in the kitchen, by their parts; never above that worth:
 *                      who takes another variety instead pays all the same, and that is `besideCents`
 *   salvage          = price of a day-old piece times the chance that one more still sells; always less than it cost, or
 *                      baking for the day after would seem to pay without end
 *   stalePerHour     = the shop's part of the price
 */
export function valuedVarieties(asked: PlanAsked, wanted: ReadonlySet<VarietyId>): readonly ValuedVariety[] {
  const { shop, demand, kitchen } = asked
  const varieties = [...shop.varieties.values()]
    .filter(({ id, retired }) => wanted.has(id) || (!retired && demand.has(id)))
    .sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
  const means = new Map([...demand].map(([id, { mean }]) => [varietyId(id), mean]))
  const sells = dayOldPart(asked)
  return varieties.map((variety) => {
    const worth = worthOf(shop, variety, { means, kitchen })
    const { priceCents } = moneyOf(shop, variety)
    const share = variety.kitchenCents === null ? 0 : Math.min(1, Math.max(0, kitchen.get(variety.id) ?? 0))
    const brings = (1 - share) * priceCents + share * (variety.kitchenCents ?? 0)
    const worthCents = worth.uses.reduce((sum, { part, worthCents: cents }) => sum + part * cents, 0)
    const price = Math.min(brings, worthCents)
    return {
      besideCents: brings - price,
      given: {
        ...fixedOf(asked, variety),
        price,
        cost: worth.costCents,
        salvage: Math.min(SALVAGE_PART * worth.costCents, worth.dayOldCents * sells),
        lostSale: Math.max(0, worthCents - price),
        stalePerHour: (brings * shop.baking.stalePercentPerHour) / 100,
      },
    }
  })
}

/** Of the cost of a piece, at most so much is had back for it on the next day. */
const SALVAGE_PART = 0.9

type Fixed = Omit<VarietyGiven, 'price' | 'cost' | 'salvage' | 'lostSale' | 'stalePerHour'>

function fixedOf(asked: PlanAsked, variety: Variety): Fixed {
  const { shop, line, demand } = asked
  const { id, doughId, showLeast, avoids } = variety
  const window = (stage: 'bake' | 'cool') => (windowOf(shop, stage, doughId, id)?.targetMs ?? 0) / MINUTE_MS
  const brings = broughtBy(shop, variety)
  const known = demand.get(id)
  return {
    name: id,
    dough: doughKeyOf(shop, variety),
    bakeMin: window('bake'),
    coolMin: window('cool'),
    onShelf: line.stock.find((one) => one.varietyId === id)?.pieces ?? 0,
    demand: known ?? NOT_ASKED,
    ...(showLeast > 0 ? { show: showOf(shop, showLeast, asked) } : {}),
    ...(brings.length > 0 ? { brings } : {}),
    ...(avoids.length > 0 ? { avoids } : {}),
  }
}

const NOT_ASKED: VarietyGiven['demand'] = {
  mean: 0,
  dispersion: 1,
  profile: [
    [0, 0],
    [1_440, 1],
  ],
}

function showOf({ baking, hours }: Shop, least: number, { line }: PlanAsked): NonNullable<VarietyGiven['show']> {
  const untilMin = baking.showUntilMinute ?? hours.openMinute
  return { atOpen: line.isOpen && line.stock.length > 0 ? 0 : least, least, untilMin }
}

/** Allergens that it leaves at any place of the line. */
function broughtBy(shop: Shop, variety: Variety): readonly Allergen[] {
  return [...new Set(CONTACT_PLACES.flatMap((place) => broughtTo(shop, variety, place) ?? []))].sort()
}

/** Of one standard deviation of demand so much is left on average where quantities are worth choosing. */
const LEFT_PER_DEVIATION = 0.4
/** How far all that is left strays, as a part of what is left on average. Common practice, no source. */
const LEFT_STRAYS = 0.5

/** Chance that one more piece that is left still sells as day-old: that fewer than the day sells are left without it. */
function dayOldPart({ shop, demand }: PlanAsked): number {
  let left = 0
  for (const { mean, dispersion } of demand.values())
    left += LEFT_PER_DEVIATION * Math.sqrt(Math.max(0, mean) + (mean * mean) / dispersion)
  const { dayOldSells } = shop.demand
  return left <= 0 || dayOldSells === 0 ? 0 : standardNormal((dayOldSells - left) / (LEFT_STRAYS * left))
}
