import { z } from 'zod'
import {
  doughId,
  formulaId,
  personId,
  shelfId,
  specialDayId,
  stationId,
  stepId,
  toppingId,
  varietyId,
  weekdayId,
} from '../ids.ts'
import { date, flag, id, list, name, oneOf, record, region, whole } from '../shop/set-up-fields.ts'
import * as limits from '../shop/set-up-limits.ts'
import { BATCH_STAGES, LINE_ACTS, SPECIAL_KINDS } from '../shop/stages.ts'
import { minute, span, weight, window } from './change-fields.ts'
import { contains, doughRoom, formula, ingredient, madeOf, preparation } from './formula-change-schema.ts'
import { kitchenStation, menuItem, orders, portion, run } from './kitchen-change-schema.ts'

/** One change to a set-up as a command carries it: in the running shop's units, unlike the file that people write. */

const dwell = () => window().exactOptional()

const windows = () =>
  record({
    proof: dwell(),
    chill: dwell(),
    rack: dwell(),
    kettle: dwell(),
    boards: dwell(),
    firstSide: dwell(),
    bake: dwell(),
    cool: dwell(),
  })

const profile = record({
  name: name(limits.NAME_MAX.shop),
  zone: z.string('The name of a time zone.').min(1, 'The name of a time zone.').max(64, 'The name of a time zone.'),
  language: oneOf(['en', 'es']),
  temperature: oneOf(['C', 'F']),
  weight: oneOf(['g', 'lb-oz']),
  clock: oneOf([12, 24]),
})

const hours = record({
  ovenReadyMinute: minute(),
  openMinute: minute(),
  changeoverFromMinute: minute().nullable(),
  changeoverToMinute: minute().nullable(),
  closeMinute: minute(),
  secondMenu: name(limits.NAME_MAX.secondMenu).nullable(),
})

const careEvery = () => whole(1, limits.CARE_PIECES_MAX).nullable()

const kettle = record({
  pieces: whole(1, limits.KETTLE_PIECES_MAX),
  cycleMs: span(limits.CYCLE_MS_MIN, limits.CYCLE_MS_MAX),
  recoverMs: span(0, limits.RECOVER_MS_MAX),
  care: record({ topUp: careEvery(), malt: careEvery(), skim: careEvery(), change: careEvery() }),
})

const boards = record({
  count: whole(0, limits.BOARDS_MAX),
  pieces: whole(1, limits.BOARD_PIECES_MAX),
  rewetMs: span(0, limits.REWET_MS_MAX),
})

const temperature = () => record({ degrees: whole(limits.DEGREES_MIN, limits.DEGREES_MAX), unit: oneOf(['C', 'F']) })

const oven = record({
  kind: oneOf(['shelves', 'rotating', 'hearth']),
  handlingMs: span(0, limits.HANDLING_MS_MAX),
  bakeAt: temperature().nullable(),
  secondAt: temperature().nullable(),
})

const mixer = record({
  name: name(limits.NAME_MAX.mixer),
  washMs: span(0, limits.WASH_MS_MAX),
  leastFlour: weight(),
  mostFlour: weight(),
})
const cooler = record({ trays: whole(1, limits.COOLER_TRAYS_MAX), keepsAt: temperature().nullable() })

const counter = record({
  salesFrom: oneOf(['taps', 'till', 'sweeps']),
  sweepEveryMs: span(limits.SWEEP_MS_MIN, limits.SWEEP_MS_MAX),
  dayOldPercent: whole(0, 100),
})

const demand = record({
  region: region().nullable(),
  disappointCents: whole(0, limits.CENTS_MAX),
  takeAnotherPercent: whole(0, 100),
  dayOldSells: whole(0, limits.DAY_OLD_SELLS_MAX),
})

const atTheDoor = () => span(0, limits.DOOR_MS_MAX)

const baking = record({
  advice: flag(),
  changeGainCents: whole(0, limits.CENTS_MAX),
  stalePercentPerHour: whole(0, 100),
  carryPercent: whole(0, 100),
  boardWaitMs: span(0, limits.BOARD_WAIT_MS_MAX),
  unitPieces: whole(1, limits.UNIT_PIECES_MAX),
  toleranceMs: span(0, limits.TOLERANCE_MS_MAX),
  door: record({ loadMs: atTheDoor(), flipMs: atTheDoor(), outMs: atTheDoor() }),
  turnMs: atTheDoor(),
  people: list(
    record({ fromMinute: minute(), people: whole(0, limits.PEOPLE_MAX) }),
    'times',
    0,
    limits.PEOPLE_ROWS_MAX,
  ),
  showUntilMinute: minute().nullable(),
  contactCents: whole(0, limits.CENTS_MAX),
})

const order = () => whole(0, limits.ORDER_MAX)

const shelf = record({
  id: id().transform(shelfId),
  name: name(limits.NAME_MAX.shelf),
  order: order(),
  pieces: whole(1, limits.SHELF_PIECES_MAX),
  emptyByMinute: minute().nullable(),
  floorBoards: whole(1, limits.FLOOR_BOARDS_MAX).nullable(),
  slots: whole(0, limits.SLOTS_MAX),
  retired: flag(),
})

const dough = record({
  id: id().transform(doughId),
  name: name(limits.NAME_MAX.dough),
  order: order(),
  route: list(oneOf(BATCH_STAGES), 'stages', 1, BATCH_STAGES.length),
  trayPieces: whole(1, limits.TRAY_PIECES_MAX),
  contains: contains(),
  formulaId: id().transform(formulaId).nullable(),
  pieceWeight: weight().nullable(),
  shapedBy: oneOf(['divider', 'hand']),
  labelWeight: weight().nullable(),
  windows: windows(),
  retired: flag(),
})

const topping = record({
  id: id().transform(toppingId),
  name: name(limits.NAME_MAX.topping),
  order: order(),
  contains: contains(),
  madeOf: madeOf(),
  retired: flag(),
})

const person = record({
  id: id().transform(personId),
  name: name(limits.NAME_MAX.person),
  order: order(),
  retired: flag(),
})

const step = record({
  id: id().transform(stepId),
  name: name(limits.NAME_MAX.step),
  order: order(),
  list: oneOf(['opening', 'changeover']),
  offsetMs: whole(-limits.STEP_OFFSET_MS_MAX, limits.STEP_OFFSET_MS_MAX),
  kind: oneOf(['plain', 'float-test']),
  retired: flag(),
})

const specialDay = record({
  id: id().transform(specialDayId),
  name: name(limits.NAME_MAX.specialDay),
  order: order(),
  kind: oneOf(SPECIAL_KINDS),
  spans: list(record({ from: date(), to: date() }), 'spans', 0, limits.SPANS_MAX),
  retired: flag(),
})

const weekday = record({
  id: oneOf(['1', '2', '3', '4', '5', '6', '7']).transform(weekdayId),
  hours: hours.nullable(),
  retired: flag(),
})

const variety = record({
  id: id().transform(varietyId),
  name: name(limits.NAME_MAX.variety),
  order: order(),
  doughId: id().transform(doughId),
  size: oneOf(['mini', 'regular', 'large', 'stick']),
  decidedAt: oneOf(['mixer', 'line']),
  topping: oneOf(['none', 'before-flip', 'after-flip']),
  toppingId: id().transform(toppingId).nullable(),
  bakedOn: oneOf(['board', 'pan']),
  flip: flag(),
  windows: windows(),
  priceCents: whole(0, limits.CENTS_MAX),
  costCents: whole(0, limits.CENTS_MAX),
  kitchenCents: whole(0, limits.CENTS_MAX).nullable(),
  showLeast: whole(0, limits.SHOW_LEAST_MAX),
  avoids: contains(),
  usual: whole(0, limits.USUAL_MAX).nullable(),
  retired: flag(),
})

const station = record({
  id: id().transform(stationId),
  name: name(limits.NAME_MAX.station),
  order: order(),
  acts: list(oneOf(LINE_ACTS), 'acts', 0, LINE_ACTS.length),
  retired: flag(),
})

const change = <Entity extends string, Value extends z.ZodType>(entity: Entity, value: Value) =>
  record({ entity: oneOf([entity]), value })

export const setUpChangeSchema = z.discriminatedUnion(
  'entity',
  [
    change('profile', profile),
    change('hours', hours),
    change('kettle', kettle),
    change('boards', boards),
    change('oven', oven),
    change('mixer', mixer.nullable()),
    change('cooler', cooler.nullable()),
    change('doughRoom', doughRoom.nullable()),
    change('counter', counter),
    change('demand', demand),
    change('baking', baking),
    change('orders', orders),
    change('windows', windows()),
    change('ingredient', ingredient),
    change('preparation', preparation),
    change('formula', formula),
    change('shelf', shelf),
    change('dough', dough),
    change('topping', topping),
    change('variety', variety),
    change('station', station),
    change('person', person),
    change('step', step),
    change('specialDay', specialDay),
    change('weekday', weekday),
    change('kitchenStation', kitchenStation),
    change('portion', portion),
    change('menuItem', menuItem),
    change('run', run),
  ],
  'A part of the set-up.',
)
