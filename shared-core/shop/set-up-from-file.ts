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
import { WEEKDAY_NAMES } from './day-schema.ts'
import { defaultUnitPieces } from './default-rules.ts'
import { dwell } from './default-windows.ts'
import { madeOfFrom, weightFrom, weightOrNull } from './formula-from-file.ts'
import type { DwellObject } from './human-time.ts'
import { clockMinute, spanFromObject } from './human-time.ts'
import type { BakingRules, CounterRules, DemandRules } from './rules.ts'
import type { FullSetUpFile } from './set-up-schema.ts'
import type {
  Boards,
  Cooler,
  Dough,
  Hours,
  Kettle,
  Mixer,
  Oven,
  Person,
  Profile,
  Shelf,
  SpecialDay,
  Station,
  Step,
  Topping,
  Variety,
  Weekday,
  Windows,
} from './shop.ts'
import { WINDOW_STAGES } from './stages.ts'

/** Parts of a set-up file that zod has accepted, as the running shop holds them. Whether they fit is not asked here. */

export function profileFrom({ name, zone, language, units, clock }: FullSetUpFile['shop']): Profile {
  return { name, zone, language, temperature: units.temperature, weight: units.weight, clock }
}

export function hoursFrom(hours: FullSetUpFile['hours']): Hours {
  const { changeover } = hours
  return {
    ovenReadyMinute: clockMinute(hours.ovenReady),
    openMinute: clockMinute(hours.open),
    changeoverFromMinute: changeover === undefined ? null : clockMinute(changeover.from),
    changeoverToMinute: changeover === undefined ? null : clockMinute(changeover.to),
    closeMinute: clockMinute(hours.close),
    secondMenu: hours.secondMenu ?? null,
  }
}

/** A weekday that the file leaves out has the usual hours. */
export function weekdaysFrom(file: FullSetUpFile['weekdays']): Weekday[] {
  return WEEKDAY_NAMES.flatMap((day, index) => {
    const hours = file[day]
    if (hours === undefined) return []
    return [{ id: weekdayId(String(index + 1)), hours: hours === null ? null : hoursFrom(hours), retired: false }]
  })
}

export function kettleFrom({ pieces, cycle, recover, care }: FullSetUpFile['kettle']): Kettle {
  return { pieces, cycleMs: spanFromObject(cycle), recoverMs: spanFromObject(recover), care }
}

export function boardsFrom({ count, pieces, rewet }: FullSetUpFile['boards']): Boards {
  return { count, pieces, rewetMs: spanFromObject(rewet) }
}

export function ovenFrom({ kind, handling, bakeAt, secondAt }: FullSetUpFile['oven']): Oven {
  return { kind, handlingMs: spanFromObject(handling), bakeAt, secondAt }
}

export function mixerFrom(mixer: FullSetUpFile['mixer']): Mixer | null {
  if (mixer === null) return null
  return {
    name: mixer.name,
    washMs: spanFromObject(mixer.wash),
    leastFlour: weightFrom(mixer.leastFlour),
    mostFlour: weightFrom(mixer.mostFlour),
  }
}

export function coolerFrom(cooler: FullSetUpFile['cooler']): Cooler | null {
  return cooler
}

export function counterFrom({ salesFrom, sweepEvery, dayOldPercent }: FullSetUpFile['counter']): CounterRules {
  return { salesFrom, sweepEveryMs: spanFromObject(sweepEvery), dayOldPercent }
}

export function demandFrom(demand: FullSetUpFile['demand']): DemandRules {
  return demand
}

/** @param boardPieces pieces of a board: what is boarded together follows from it unless the file says otherwise */
export function bakingFrom(file: FullSetUpFile['baking'], boardPieces: number): BakingRules {
  const { boardWait, unit, tolerance, door, turn, people, showUntil, ...rest } = file
  return {
    ...rest,
    boardWaitMs: spanFromObject(boardWait),
    unitPieces: unit ?? defaultUnitPieces(boardPieces),
    toleranceMs: spanFromObject(tolerance),
    door: {
      loadMs: spanFromObject(door.load),
      flipMs: spanFromObject(door.flip),
      outMs: spanFromObject(door.out),
    },
    turnMs: spanFromObject(turn),
    people: people.map(({ from, people }) => ({ fromMinute: clockMinute(from), people })),
    showUntilMinute: showUntil === null ? null : clockMinute(showUntil),
  }
}

export function windowsFrom(file: FileWindows): Windows {
  const windows: { -readonly [Stage in keyof Windows]: Windows[Stage] } = {}
  for (const stage of WINDOW_STAGES) {
    const window = file[stage]
    if (window) windows[stage] = dwell(window.unit, window.earliest, window.target, window.latest)
  }
  return windows
}
type FileWindows = { readonly [Stage in keyof Windows]: DwellObject | null | undefined }

export interface ShelfOrFloor {
  readonly id: string
  readonly name: string
  readonly pieces?: number | undefined
  readonly boards?: number | undefined
  readonly emptyBy: string | null
  readonly slots: number
  readonly retired?: boolean
}

/** @param boardPieces pieces of a board: a floor holds that many times its boards unless it says otherwise */
export function shelfFrom(
  { id, name, pieces, boards, emptyBy, slots, retired }: ShelfOrFloor,
  order: number,
  boardPieces: number,
): Shelf {
  const floorBoards = boards ?? null
  return {
    id: shelfId(id),
    name,
    order,
    pieces: pieces ?? (floorBoards ?? 0) * boardPieces,
    emptyByMinute: emptyBy === null ? null : clockMinute(emptyBy),
    floorBoards,
    slots,
    retired: retired ?? false,
  }
}

export function doughFrom({ windows, formula, ...dough }: FullSetUpFile['doughs'][number], order: number): Dough {
  return {
    ...dough,
    id: doughId(dough.id),
    order,
    formulaId: formula === undefined ? null : formulaId(formula),
    pieceWeight: weightOrNull(dough.pieceWeight),
    labelWeight: weightOrNull(dough.labelWeight),
    windows: windowsFrom(windows),
  }
}

export function varietyFrom(
  { dough, toppedWith, windows, ...variety }: FullSetUpFile['varieties'][number],
  order: number,
): Variety {
  return {
    ...variety,
    id: varietyId(variety.id),
    order,
    doughId: doughId(dough),
    toppingId: toppedWith === undefined ? null : toppingId(toppedWith),
    windows: windowsFrom(windows),
  }
}

export function stationFrom(station: FullSetUpFile['stations'][number], order: number): Station {
  return { ...station, id: stationId(station.id), order }
}

export function toppingFrom(topping: FullSetUpFile['toppings'][number], order: number): Topping {
  return { ...topping, id: toppingId(topping.id), order, madeOf: madeOfFrom(topping.madeOf) }
}

export function personFrom(person: FullSetUpFile['people'][number], order: number): Person {
  return { ...person, id: personId(person.id), order }
}

/** Neither before nor after: at the very moment that its list counts from. */
export function stepFrom({ before, after, ...step }: FullSetUpFile['steps'][number], order: number): Step {
  const offsetMs = after === undefined ? 0 - spanFromObject(before ?? {}) : spanFromObject(after)
  return { ...step, id: stepId(step.id), order, offsetMs }
}

/** A date alone is a span of one day. */
export function specialDayFrom({ dates, ...day }: FullSetUpFile['specialDays'][number], order: number): SpecialDay {
  const spans = dates.map((one) => (typeof one === 'string' ? { from: one, to: one } : one))
  return { ...day, id: specialDayId(day.id), order, spans }
}
