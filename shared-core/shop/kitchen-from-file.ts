import { kitchenStationId, menuItemId, portionId, runId } from '../ids.ts'
import { clockMinute, spanFromObject } from './human-time.ts'
import type { KitchenStation, MenuItem, MenuStep, Portion, Run } from './kitchen.ts'
import type { OrderRules } from './rules.ts'
import type { FullSetUpFile } from './set-up-schema.ts'

/** What a set-up file says of orders and the kitchen, as the running shop holds it. Whether it fits is not asked here. */

export function ordersFrom(file: FullSetUpFile['orders']): OrderRules {
  const { cutOff, noShow, madeIn, sliceCool, pack, ...rest } = file
  return {
    ...rest,
    cutOffMinute: cutOff === null ? null : clockMinute(cutOff),
    noShowMs: noShow === null ? null : spanFromObject(noShow),
    madeInMs: spanFromObject(madeIn),
    sliceCoolMs: spanFromObject(sliceCool),
    packMs: spanFromObject(pack),
  }
}

export function kitchenStationFrom(station: FullSetUpFile['kitchenStations'][number], order: number): KitchenStation {
  return { ...station, id: kitchenStationId(station.id), order }
}

export function portionFrom({ pull, ...portion }: FullSetUpFile['portions'][number], order: number): Portion {
  return { ...portion, id: portionId(portion.id), order, pullMs: pull === null ? null : spanFromObject(pull) }
}

type MenuItemFile = FullSetUpFile['menu'][number]

export function menuItemFrom({ portions, steps, ...item }: MenuItemFile, order: number): MenuItem {
  return {
    ...item,
    id: menuItemId(item.id),
    order,
    portions: portions.map((one) => ({ portionId: portionId(one.portion), portions: one.portions })),
    steps: steps.map(stepFrom),
  }
}

function stepFrom({ station, takes, oven }: MenuItemFile['steps'][number]): MenuStep {
  return {
    stationId: kitchenStationId(station),
    takesMs: spanFromObject(takes),
    oven:
      oven === null
        ? null
        : { ...oven, turns: oven.turns.map(({ after, what }) => ({ afterMs: spanFromObject(after), what })) },
  }
}

export function runFrom({ leaves, stop, load, ...run }: FullSetUpFile['runs'][number], order: number): Run {
  return {
    ...run,
    id: runId(run.id),
    order,
    leavesMinute: clockMinute(leaves),
    stopMs: spanFromObject(stop),
    loadMs: spanFromObject(load),
  }
}
