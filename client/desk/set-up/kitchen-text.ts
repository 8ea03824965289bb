import type { MenuItem, MenuStep } from '../../../shared-core/shop/kitchen.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { Texts } from './field-text.ts'
import type { Telling } from './say-value.ts'
import { allergensSaid, minuteSaid, moneySaid, spanSaid, temperatureSaid } from './say-value.ts'

const text = (value: string) => value
const count = (value: number) => String(value)
const span = (value: number, telling: Telling) => spanSaid(value, telling)
const spanOrNot = (value: number | null, telling: Telling) =>
  value === null ? telling.say.form.notSaid : spanSaid(value, telling)
const yesOrNo = (value: boolean, { say }: Telling) => (value ? say.options.yes : say.options.no)

/** Rules for orders, the kitchen, its menu and the van, as the list of changes tells them. */
export const KITCHEN_TEXTS: Pick<Texts, 'orders' | 'kitchenStation' | 'portion' | 'menuItem' | 'run'> = {
  orders: {
    dozenPieces: count,
    cutOffMinute: (value, telling) => (value === null ? telling.say.form.notSaid : minuteSaid(value, telling)),
    walkInPercent: (value) => `${value} %`,
    walkInLeast: count,
    keepsAsTheyCome: yesOrNo,
    noShowMs: spanOrNot,
    forgetDays: count,
    madeInMs: span,
    sliceCoolMs: span,
    packMs: span,
    boxPieces: count,
  },
  kitchenStation: { name: text, hands: count },
  portion: { name: text, contains: allergensSaid, pullMs: spanOrNot, trayPortions: count },
  menuItem: {
    name: text,
    priceCents: moneySaid,
    onBagel: yesOrNo,
    canToast: yesOrNo,
    portions: portionsSaid,
    steps: stepsSaid,
  },
  run: { name: text, leavesMinute: minuteSaid, stopMs: span, loadMs: span },
}

function portionsSaid(portions: MenuItem['portions'], { say, shop }: Telling): string {
  const said = portions.map((one) => say.kitchen.item.portion(one.portions, portionName(shop, one.portionId)))
  return said.join(', ') || '–'
}

export function portionName({ portions }: Pick<Shop, 'portions'>, id: MenuItem['portions'][number]['portionId']) {
  return portions.get(id)?.name ?? '?'
}

/** How an item is made, in one line. @example "Sandwiches 1 min, Oven 4 min (turn after 2 min)" */
export function stepsSaid(steps: readonly MenuStep[], telling: Telling): string {
  const { item } = telling.say.kitchen
  if (steps.length === 0) return item.asItIs
  return steps.map((step) => stepSaid(step, telling)).join(', ')
}

function stepSaid({ stationId, takesMs, oven }: MenuStep, telling: Telling): string {
  const { item } = telling.say.kitchen
  const station = telling.shop.kitchenStations.get(stationId)?.name ?? '?'
  if (oven === null) return item.stepSaid(station, spanSaid(takesMs, telling), null)
  const heat = oven.at === null ? [] : [temperatureSaid(oven.at)]
  const turns = oven.turns.map(({ afterMs, what }) => item.turnSaid(what, spanSaid(afterMs, telling)))
  return item.stepSaid(station, spanSaid(takesMs, telling), { slots: oven.slots, turns: [...heat, ...turns] })
}
