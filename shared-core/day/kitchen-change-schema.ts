import { kitchenStationId, menuItemId, portionId, runId } from '../ids.ts'
import { flag, id, list, name, oneOf, record, whole } from '../shop/set-up-fields.ts'
import * as limits from '../shop/set-up-limits.ts'
import { minute, span } from './change-fields.ts'
import { contains } from './formula-change-schema.ts'

/** Rules for orders, and what is made to order, as a command carries them. */

const order = () => whole(0, limits.ORDER_MAX)

export const orders = record({
  dozenPieces: whole(limits.DOZEN_PIECES_MIN, limits.DOZEN_PIECES_MAX),
  cutOffMinute: minute().nullable(),
  walkInPercent: whole(0, 100),
  walkInLeast: whole(0, limits.WALK_IN_LEAST_MAX),
  keepsAsTheyCome: flag(),
  noShowMs: span(limits.NO_SHOW_MS_MIN, limits.NO_SHOW_MS_MAX).nullable(),
  forgetDays: whole(1, limits.FORGET_DAYS_MAX),
  madeInMs: span(limits.MADE_IN_MS_MIN, limits.MADE_IN_MS_MAX),
  sliceCoolMs: span(0, limits.SLICE_COOL_MS_MAX),
  packMs: span(0, limits.PACK_MS_MAX),
  boxPieces: whole(1, limits.BOX_PIECES_MAX),
})

export const kitchenStation = record({
  id: id().transform(kitchenStationId),
  name: name(limits.NAME_MAX.kitchenStation),
  order: order(),
  hands: whole(1, limits.HANDS_MAX),
  retired: flag(),
})

export const portion = record({
  id: id().transform(portionId),
  name: name(limits.NAME_MAX.portion),
  order: order(),
  contains: contains(),
  pullMs: span(0, limits.PULL_MS_MAX).nullable(),
  trayPortions: whole(1, limits.TRAY_PORTIONS_MAX),
  retired: flag(),
})

const takes = () => span(limits.TAKES_MS_MIN, limits.TAKES_MS_MAX)

const ovenStep = record({
  slots: whole(1, limits.SLOTS_MAX),
  at: record({ degrees: whole(limits.DEGREES_MIN, limits.DEGREES_MAX), unit: oneOf(['C', 'F']) }).nullable(),
  turns: list(record({ afterMs: takes(), what: oneOf(['turn', 'move']) }), 'turns', 0, limits.TURNS_MAX),
})

export const menuItem = record({
  id: id().transform(menuItemId),
  name: name(limits.NAME_MAX.menuItem),
  order: order(),
  priceCents: whole(0, limits.CENTS_MAX),
  onBagel: flag(),
  canToast: flag(),
  portions: list(
    record({ portionId: id().transform(portionId), portions: whole(1, limits.PORTIONS_EACH_MAX) }),
    'portions',
    0,
    limits.PORTIONS_OF_MAX,
  ),
  steps: list(
    record({ stationId: id().transform(kitchenStationId), takesMs: takes(), oven: ovenStep.nullable() }),
    'steps',
    0,
    limits.ITEM_STEPS_MAX,
  ),
  retired: flag(),
})

export const run = record({
  id: id().transform(runId),
  name: name(limits.NAME_MAX.run),
  order: order(),
  leavesMinute: minute(),
  stopMs: span(0, limits.STOP_MS_MAX),
  loadMs: span(0, limits.LOAD_MS_MAX),
  retired: flag(),
})
