import { clockText, spanObject } from './human-time.ts'
import type { KitchenStation, MenuItem, MenuStep, Portion, Run } from './kitchen.ts'
import type { OrderRules } from './rules.ts'
import type { SetUpFile } from './set-up-schema.ts'

/** Orders and the kitchen of a running shop, as the set-up file says them. */

type EntryOf<List extends 'kitchenStations' | 'portions' | 'menu' | 'runs'> = NonNullable<SetUpFile[List]>[number]

export function ordersFile(orders: OrderRules): NonNullable<SetUpFile['orders']> {
  const { cutOffMinute, noShowMs, madeInMs, sliceCoolMs, packMs, ...rest } = orders
  return {
    ...rest,
    cutOff: cutOffMinute === null ? null : clockText(cutOffMinute),
    noShow: noShowMs === null ? null : spanObject(noShowMs),
    madeIn: spanObject(madeInMs),
    sliceCool: spanObject(sliceCoolMs),
    pack: spanObject(packMs),
  }
}

export function kitchenStationFile(station: KitchenStation): EntryOf<'kitchenStations'> {
  const { id, name, hands } = station
  return { id, name, hands, ...retiredFile(station) }
}

export function portionFile(portion: Portion): EntryOf<'portions'> {
  const { id, name, contains, pullMs, trayPortions } = portion
  const pull = pullMs === null ? null : spanObject(pullMs)
  return { id, name, contains: [...contains], pull, trayPortions, ...retiredFile(portion) }
}

export function menuItemFile(item: MenuItem): EntryOf<'menu'> {
  const { id, name, priceCents, onBagel, canToast, portions, steps } = item
  return {
    id,
    name,
    priceCents,
    onBagel,
    canToast,
    portions: portions.map((one) => ({ portion: one.portionId, portions: one.portions })),
    steps: steps.map(stepFile),
    ...retiredFile(item),
  }
}

function stepFile({ stationId, takesMs, oven }: MenuStep) {
  const turns = oven?.turns.map(({ afterMs, what }) => ({ after: spanObject(afterMs), what })) ?? []
  return { station: stationId, takes: spanObject(takesMs), oven: oven === null ? null : { ...oven, turns } }
}

export function runFile(run: Run): EntryOf<'runs'> {
  const { id, name, leavesMinute, stopMs, loadMs } = run
  const times = { leaves: clockText(leavesMinute), stop: spanObject(stopMs), load: spanObject(loadMs) }
  return { id, name, ...times, ...retiredFile(run) }
}

function retiredFile({ retired }: { readonly retired: boolean }) {
  return retired ? { retired: true } : {}
}
