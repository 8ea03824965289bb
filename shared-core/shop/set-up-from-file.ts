import { doughId, shelfId, stationId, varietyId } from '../ids.ts'
import { NO_KETTLE_CARE } from './default-rules.ts'
import { dwell } from './default-windows.ts'
import type { DwellObject } from './human-time.ts'
import { clockMinute, spanFromObject } from './human-time.ts'
import type { FullSetUpFile } from './set-up-schema.ts'
import type { Boards, Dough, Hours, Kettle, Oven, Profile, Shelf, Station, Variety, Windows } from './shop.ts'
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

export function kettleFrom({ pieces, cycle }: FullSetUpFile['kettle']): Kettle {
  return { pieces, cycleMs: spanFromObject(cycle), ...NO_KETTLE_CARE }
}

export function boardsFrom({ count, pieces, rewet }: FullSetUpFile['boards']): Boards {
  return { count, pieces, rewetMs: spanFromObject(rewet) }
}

export function ovenFrom({ kind, handling }: Pick<FullSetUpFile['oven'], 'kind' | 'handling'>): Oven {
  return { kind, handlingMs: spanFromObject(handling), bakeAt: null, secondAt: null }
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
  readonly retired?: boolean
}

/** @param boardPieces pieces of a board: a floor holds that many times its boards unless it says otherwise */
export function shelfFrom(
  { id, name, pieces, boards, retired }: ShelfOrFloor,
  order: number,
  boardPieces: number,
): Shelf {
  const floorBoards = boards ?? null
  return {
    id: shelfId(id),
    name,
    order,
    pieces: pieces ?? (floorBoards ?? 0) * boardPieces,
    floorBoards,
    retired: retired ?? false,
  }
}

export function doughFrom({ windows, ...dough }: FullSetUpFile['doughs'][number], order: number): Dough {
  return { ...dough, id: doughId(dough.id), order, contains: [], windows: windowsFrom(windows) }
}

export function varietyFrom(
  { dough, windows, ...variety }: FullSetUpFile['varieties'][number],
  order: number,
): Variety {
  return {
    ...variety,
    id: varietyId(variety.id),
    order,
    doughId: doughId(dough),
    toppingId: null,
    windows: windowsFrom(windows),
  }
}

export function stationFrom(station: FullSetUpFile['stations'][number], order: number): Station {
  return { ...station, id: stationId(station.id), order }
}
