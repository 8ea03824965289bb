import type { Ruler } from '../day/ruler.ts'
import type { State } from '../day/state.ts'
import type { MenuItemId, PortionId, VarietyId } from '../ids.ts'
import { itemIsBegun } from '../orders/item-steps.ts'
import type { AskedItem } from '../orders/order-commands.ts'
import { inUse } from '../shop/in-order.ts'
import type { MenuItem } from '../shop/kitchen.ts'
import { rods } from '../stock/left.ts'
import type { EpochMs } from '../units.ts'
import { askedOrder, withOrder } from './asked-order.ts'
import type { Kitchen } from './model.ts'
import { kitchenOf, ovenFromMs, simGivenOf, takingAsSetUp } from './model.ts'
import { portionsNow, portionsOf } from './portions-now.ts'
import { simulate } from './simulate.ts'

/**
 * Why a thing is not taken any more, or not yet. `changeover`: the oven does not bake the second menu yet; `ovenCloses`:
 * it would come out too late; `closed`: so would what needs no oven; `noPortions`, `noBagels`: what is left is spoken
 * for; `noPlace`: no hands and no shelf make it; `notNow`: not in use.
 */
export type NotMadeWhy =
  | 'noSuchItem'
  | 'notNow'
  | 'changeover'
  | 'ovenCloses'
  | 'closed'
  | 'noPortions'
  | 'noBagels'
  | 'noPlace'

export interface StillMade {
  readonly itemId: MenuItemId
  readonly isTaken: boolean
  /** Null: it is taken. */
  readonly why: NotMadeWhy | null
  /** How many more can be made of what is left of portions and bagels; null: nothing that is counted limits it. */
  readonly left: number | null
  /** Portions that are out; what is asked for without them is made all the same. */
  readonly missing: readonly PortionId[]
}

/**
 * What the counter can still take of the menu, in the set-up's order: oven, dough, portions and bagels, less what open
 * orders have spoken for.
 * @param ruler the day's; null: hours are no limit
 */
export function stillMade(state: State, nowMs: EpochMs, ruler: Ruler | null): readonly StillMade[] {
  const kitchen = kitchenOf(state, nowMs)
  if (kitchen === null) return []
  const hours =
    ruler === null ? kitchen.hours : { secondFromMs: ruler.changeover?.toMs ?? null, closesAtMs: ruler.closeMs }
  const supply = supplyOf(state, nowMs)
  return inUse(kitchen.shop.menu).map((item) => {
    const { left, missing } = leftOf(item, supply)
    const why = whyNot({ ...kitchen, hours }, item, left, missing)
    return { itemId: item.id, isTaken: why === null, why, left, missing }
  })
}

interface Supply {
  readonly portions: ReadonlyMap<PortionId, number | null>
  readonly bagels: ReadonlyMap<VarietyId, number>
}

function supplyOf(state: State, nowMs: EpochMs): Supply {
  return {
    portions: new Map(portionsNow(state).map(({ portionId, free }) => [portionId, free])),
    bagels: bagelsFree(state, nowMs),
  }
}

/** For sale and as likely there, less those that ordered items are made on; kept ones are gone already. */
export function bagelsFree(state: State, nowMs: EpochMs): ReadonlyMap<VarietyId, number> {
  const free = new Map(rods(state, nowMs).map(({ varietyId, likely }) => [varietyId, likely]))
  for (const { items } of state.orders.values()) {
    for (const item of items) {
      if (item.varietyId === null || itemIsBegun(item)) continue
      free.set(item.varietyId, Math.max(0, (free.get(item.varietyId) ?? 0) - 1))
    }
  }
  return free
}

function leftOf({ portions, onBagel }: MenuItem, supply: Supply): Pick<StillMade, 'left' | 'missing'> {
  const bagels = onBagel ? [...supply.bagels.values()].reduce((sum, pieces) => sum + pieces, 0) : null
  const counts = portions.flatMap(({ portionId, portions: some }) => {
    const free = supply.portions.get(portionId) ?? null
    return free === null || some === 0 ? [] : [{ portionId, left: Math.floor(free / some) }]
  })
  const all = [...counts.map(({ left }) => left), ...(bagels === null ? [] : [bagels])]
  return {
    left: all.length === 0 ? null : Math.min(...all),
    missing: counts.filter(({ left }) => left === 0).map(({ portionId }) => portionId),
  }
}

function whyNot(
  kitchen: Kitchen,
  item: MenuItem,
  left: number | null,
  missing: readonly PortionId[],
): NotMadeWhy | null {
  const one = { itemId: item.id, times: 1, ...PLAIN }
  const late = hoursAgainst(kitchen, [one])
  if (late !== null) return late
  if (missing.length > 0) return 'noPortions'
  if (item.onBagel && left === 0) return 'noBagels'
  return null
}
const PLAIN = { varietyId: null, toasted: false, without: [], more: [], allergies: [] } as const

/** Whether hours, hands and oven let these be made, behind all that is due before them. */
function hoursAgainst(kitchen: Kitchen, items: readonly AskedItem[]): NotMadeWhy | null {
  const { shop, nowMs, hours } = kitchen
  const steps = items.flatMap(({ itemId }) => shop.menu.get(itemId)?.steps ?? [])
  const ovenSteps = steps.flatMap(({ oven }) => oven ?? [])
  const fromMs = Math.max(...ovenSteps.map(({ at }) => ovenFromMs(kitchen, at)), Number.NEGATIVE_INFINITY)
  // Who orders shortly before the oven is there waits no longer than the shop promises.
  if (fromMs - nowMs > shop.orders.madeInMs) return 'changeover'
  const order = askedOrder(kitchen, items)
  const ahead = withOrder(kitchen, order)
  const { endMs } = simulate(simGivenOf(ahead, takingAsSetUp(nowMs)))
  const lastMs = ahead.items.reduce((at, one, job) => (one.order === order ? Math.max(at, endMs[job] ?? 0) : at), 0)
  if (!Number.isFinite(lastMs)) return 'noPlace'
  const { closesAtMs } = hours
  if (closesAtMs !== null && Math.max(lastMs, nowMs) > closesAtMs) return ovenSteps.length > 0 ? 'ovenCloses' : 'closed'
  return null
}

/** Why an order of these cannot be made as it is asked for; null: it can. */
export function whyNotMade(
  state: State,
  nowMs: EpochMs,
  kitchen: Kitchen,
  items: readonly AskedItem[],
): NotMadeWhy | null {
  const wanted = new Map<PortionId, number>()
  const bagels = new Map<VarietyId, number>()
  for (const asked of items) {
    const item = kitchen.shop.menu.get(asked.itemId)
    if (item === undefined) return 'noSuchItem'
    if (item.retired) return 'notNow'
    for (const [portionId, some] of portionsOf(item, asked))
      wanted.set(portionId, (wanted.get(portionId) ?? 0) + some * asked.times)
    if (asked.varietyId !== null) bagels.set(asked.varietyId, (bagels.get(asked.varietyId) ?? 0) + asked.times)
  }
  const supply = supplyOf(state, nowMs)
  if ([...wanted].some(([id, some]) => some > (supply.portions.get(id) ?? Number.POSITIVE_INFINITY)))
    return 'noPortions'
  if ([...bagels].some(([id, some]) => some > (supply.bagels.get(id) ?? 0))) return 'noBagels'
  const late = hoursAgainst(kitchen, items)
  return late === 'ovenCloses' || late === 'closed' ? null : late
}
