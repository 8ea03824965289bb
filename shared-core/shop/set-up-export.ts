import { durationMs } from '../units.ts'
import { WEEKDAY_NAMES } from './day-schema.ts'
import {
  doughRoomFile,
  formulaFile,
  ingredientFile,
  madeOfFile,
  preparationFile,
  weightFile,
  weightOrNullFile,
} from './formula-export.ts'
import { clockText, dwellObject, spanObject } from './human-time.ts'
import { inOrder } from './in-order.ts'
import { kitchenStationFile, menuItemFile, ordersFile, portionFile, runFile } from './kitchen-export.ts'
import type { SetUpFile } from './set-up-schema.ts'
import { SET_UP_FORMAT } from './set-up-schema.ts'
import type { Dough, Hours, Mixer, Shelf, Shop, SpecialDay, Station, Step, Topping, Variety, Windows } from './shop.ts'
import { WINDOW_STAGES } from './stages.ts'

/**
 * The shop as the set-up file that people write, whole: what was left out of the file that it came from is said.
 * Reading it again gives the same shop; only `order` is counted anew, from 0, the retired ones last.
 */
export function toSetUpFile(shop: Shop): SetUpFile {
  const { profile, boards } = shop
  const { name, zone, language, temperature, weight, clock } = profile
  return {
    format: SET_UP_FORMAT,
    shop: { name, zone, language, units: { temperature, weight }, clock },
    hours: hoursFile(shop.hours),
    weekdays: weekdaysFile(shop.weekdays),
    kettle: kettleFile(shop.kettle),
    boards: { count: boards.count, pieces: boards.pieces, rewet: spanObject(boards.rewetMs) },
    oven: ovenFile(shop),
    mixer: mixerFile(shop.mixer),
    cooler: shop.cooler,
    doughRoom: doughRoomFile(shop.doughRoom),
    counter: counterFile(shop.counter),
    demand: shop.demand,
    baking: bakingFile(shop.baking),
    orders: ordersFile(shop.orders),
    windows: shopWindowsFile(shop.windows),
    ingredients: inOrder(shop.ingredients).map(ingredientFile),
    preparations: inOrder(shop.preparations).map(preparationFile),
    formulas: inOrder(shop.formulas).map(formulaFile),
    doughs: inOrder(shop.doughs).map(doughFile),
    toppings: inOrder(shop.toppings).map(toppingFile),
    varieties: inOrder(shop.varieties).map(varietyFile),
    stations: inOrder(shop.stations).map(stationFile),
    people: inOrder(shop.people).map(({ id, name, retired }) => ({ id, name, ...retiredFile({ retired }) })),
    steps: inOrder(shop.steps).map(stepFile),
    specialDays: inOrder(shop.specialDays).map(specialDayFile),
    kitchenStations: inOrder(shop.kitchenStations).map(kitchenStationFile),
    portions: inOrder(shop.portions).map(portionFile),
    menu: inOrder(shop.menu).map(menuItemFile),
    runs: inOrder(shop.runs).map(runFile),
  }
}

function hoursFile(hours: Hours): SetUpFile['hours'] {
  const { changeoverFromMinute: from, changeoverToMinute: to } = hours
  return {
    ovenReady: clockText(hours.ovenReadyMinute),
    open: clockText(hours.openMinute),
    ...(from === null || to === null ? {} : { changeover: { from: clockText(from), to: clockText(to) } }),
    close: clockText(hours.closeMinute),
    ...(hours.secondMenu === null ? {} : { secondMenu: hours.secondMenu }),
  }
}

/** A weekday that has the usual hours again is left out. */
function weekdaysFile(weekdays: Shop['weekdays']): NonNullable<SetUpFile['weekdays']> {
  const own = [...weekdays.values()]
    .filter(({ retired }) => !retired)
    .sort((one, other) => (one.id < other.id ? -1 : 1))
  return Object.fromEntries(
    own.map(({ id, hours }) => [WEEKDAY_NAMES[Number(id) - 1], hours === null ? null : hoursFile(hours)]),
  )
}

function kettleFile({ pieces, cycleMs, recoverMs, care }: Shop['kettle']): SetUpFile['kettle'] {
  return { pieces, cycle: spanObject(cycleMs), recover: spanObject(recoverMs), care: { ...care } }
}

function mixerFile(mixer: Mixer | null): SetUpFile['mixer'] {
  if (mixer === null) return null
  const { name, washMs, leastFlour, mostFlour } = mixer
  return { name, wash: spanObject(washMs), leastFlour: weightFile(leastFlour), mostFlour: weightFile(mostFlour) }
}

function counterFile({ salesFrom, sweepEveryMs, dayOldPercent }: Shop['counter']): SetUpFile['counter'] {
  return { salesFrom, sweepEvery: spanObject(sweepEveryMs), dayOldPercent }
}

function bakingFile(baking: Shop['baking']): SetUpFile['baking'] {
  const { boardWaitMs, unitPieces, toleranceMs, door, turnMs, people, showUntilMinute, ...rest } = baking
  return {
    ...rest,
    boardWait: spanObject(boardWaitMs),
    unit: unitPieces,
    tolerance: spanObject(toleranceMs),
    door: { load: spanObject(door.loadMs), flip: spanObject(door.flipMs), out: spanObject(door.outMs) },
    turn: spanObject(turnMs),
    people: people.map(({ fromMinute, people }) => ({ from: clockText(fromMinute), people })),
    showUntil: showUntilMinute === null ? null : clockText(showUntilMinute),
  }
}

function ovenFile({ oven, shelves, boards }: Shop): SetUpFile['oven'] {
  const heat = { handling: spanObject(oven.handlingMs), bakeAt: oven.bakeAt, secondAt: oven.secondAt }
  const list = inOrder(shelves)
  const floor = list.find((shelf) => shelf.floorBoards !== null && !shelf.retired)
  if (oven.kind !== 'hearth' || floor?.floorBoards == null) {
    const kind = oven.kind === 'rotating' ? 'rotating' : 'shelves'
    return { kind, ...heat, shelves: list.map((shelf) => shelfFile(shelf, boards.pieces)) }
  }
  const { id, name, floorBoards } = floor
  const rest = list.filter((shelf) => shelf !== floor).map((shelf) => shelfFile(shelf, boards.pieces))
  return {
    kind: 'hearth',
    ...heat,
    floor: {
      id,
      name,
      boards: floorBoards,
      ...ownPieces(floor, boards.pieces),
      ...emptyByFile(floor),
      slots: floor.slots,
    },
    ...(rest.length === 0 ? {} : { shelves: rest }),
  }
}

function shelfFile(shelf: Shelf, boardPieces: number) {
  const { id, name, floorBoards, slots } = shelf
  const size = floorBoards === null ? {} : { boards: floorBoards }
  return { id, name, ...size, ...ownPieces(shelf, boardPieces), ...emptyByFile(shelf), slots, ...retiredFile(shelf) }
}

function emptyByFile({ emptyByMinute }: Shelf): { emptyBy: string | null } {
  return { emptyBy: emptyByMinute === null ? null : clockText(emptyByMinute) }
}

/** A floor's pieces are left out where they are those of its boards. */
function ownPieces({ pieces, floorBoards }: Shelf, boardPieces: number): { pieces?: number } {
  return floorBoards !== null && pieces === floorBoards * boardPieces ? {} : { pieces }
}

function doughFile(dough: Dough): SetUpFile['doughs'][number] {
  const { id, name, route, trayPieces, contains, formulaId, pieceWeight, shapedBy, labelWeight } = dough
  return {
    id,
    name,
    route: [...route],
    trayPieces,
    contains: [...contains],
    ...(formulaId === null ? {} : { formula: formulaId }),
    pieceWeight: weightOrNullFile(pieceWeight),
    shapedBy,
    labelWeight: weightOrNullFile(labelWeight),
    ...ownWindowsFile(dough),
    ...retiredFile(dough),
  }
}

function toppingFile(topping: Topping) {
  const { id, name, contains, madeOf } = topping
  return { id, name, contains: [...contains], madeOf: madeOfFile(madeOf), ...retiredFile(topping) }
}

function stepFile(step: Step) {
  const { id, name, list, offsetMs, kind } = step
  const span = spanObject(durationMs(Math.abs(offsetMs)))
  return { id, name, list, ...(offsetMs > 0 ? { after: span } : { before: span }), kind, ...retiredFile(step) }
}

function specialDayFile(day: SpecialDay) {
  const { id, name, kind, spans } = day
  const dates = spans.map(({ from, to }) => (from === to ? from : { from, to }))
  return { id, name, kind, dates, ...retiredFile(day) }
}

function varietyFile(variety: Variety): SetUpFile['varieties'][number] {
  const { id, name, doughId, size, decidedAt, topping, toppingId, bakedOn, flip } = variety
  const { priceCents, costCents, kitchenCents, showLeast, avoids, usual } = variety
  return {
    id,
    name,
    dough: doughId,
    size,
    decidedAt,
    topping,
    ...(toppingId === null ? {} : { toppedWith: toppingId }),
    bakedOn,
    flip,
    ...ownWindowsFile(variety),
    priceCents,
    costCents,
    kitchenCents,
    showLeast,
    avoids: [...avoids],
    usual,
    ...retiredFile(variety),
  }
}

function stationFile(station: Station): SetUpFile['stations'][number] {
  const { id, name, acts } = station
  return { id, name, acts: [...acts], ...retiredFile(station) }
}

type WindowsFile = NonNullable<SetUpFile['windows']>

function shopWindowsFile(windows: Windows): WindowsFile {
  return Object.fromEntries(
    WINDOW_STAGES.map((stage) => [stage, windows[stage] === undefined ? null : dwellObject(windows[stage])]),
  )
}

function ownWindowsFile({ windows }: { readonly windows: Windows }) {
  const own = WINDOW_STAGES.flatMap((stage) => {
    const window = windows[stage]
    return window === undefined ? [] : [[stage, dwellObject(window)] as const]
  })
  return own.length === 0 ? {} : { windows: Object.fromEntries(own) }
}

function retiredFile({ retired }: { readonly retired: boolean }) {
  return retired ? { retired: true } : {}
}
