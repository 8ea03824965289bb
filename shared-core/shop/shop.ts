import type { DoughId, ShelfId, StationId, VarietyId } from '../ids.ts'
import type { DurationMs, TimeUnit } from '../units.ts'

/**
 * What a shop is, as the line's rules use it: the running form of its set-up. The published file that people write is
 * `set-up-file.ts`. Entities have stable ids and are retired, never deleted: old events name them for ever.
 */
export interface Shop {
  readonly profile: Profile
  readonly hours: Hours
  readonly kettle: Kettle
  readonly boards: Boards
  readonly oven: Oven
  /** The shop's own windows, where neither variety nor dough says otherwise. */
  readonly windows: Windows
  readonly shelves: ReadonlyMap<ShelfId, Shelf>
  readonly doughs: ReadonlyMap<DoughId, Dough>
  readonly varieties: ReadonlyMap<VarietyId, Variety>
  readonly stations: ReadonlyMap<StationId, Station>
}

export type Language = 'en' | 'es'

export interface Profile {
  readonly name: string
  /** IANA zone, e.g. America/Chicago. */
  readonly zone: string
  readonly language: Language
  readonly temperature: 'C' | 'F'
  readonly weight: 'g' | 'lb-oz'
  /** Hours shown 1–12 or 0–23. */
  readonly clock: 12 | 24
}

/** Minutes after local midnight. */
export interface Hours {
  readonly ovenReadyMinute: number
  readonly openMinute: number
  readonly changeoverFromMinute: number | null
  readonly changeoverToMinute: number | null
  readonly closeMinute: number
  readonly secondMenu: string | null
}

export interface Kettle {
  /** Pieces of one dip, a kettle-full. */
  readonly pieces: number
  /** From one dip to the next: boil, lift and recovery. */
  readonly cycleMs: DurationMs
}

export interface Boards {
  readonly count: number
  readonly pieces: number
  readonly rewetMs: DurationMs
}

/**
 * `shelves`: loaded one by one, a load each. `rotating`: the same, but they come to the door in turn, in the order of
 * the list. `hearth`: one floor without shelves, sized in boards, several loads on it at once, drawn in several outs.
 */
export type OvenKind = 'shelves' | 'rotating' | 'hearth'

export interface Oven {
  readonly kind: OvenKind
  readonly handlingMs: DurationMs
}

export interface Shelf {
  readonly id: ShelfId
  readonly name: string
  readonly order: number
  readonly pieces: number
  /** A hearth's floor in boards; null for a shelf that is counted in pieces. */
  readonly floorBoards: number | null
  readonly retired: boolean
}

/** Where pieces can stand before the oven. */
export type BatchStage = 'proof' | 'chill' | 'rack' | 'kettle' | 'boards' | 'oven'
/** The part of the route that a dough takes, in order; `oven` is on every route. */
export type Route = readonly BatchStage[]

export type WindowStage = 'proof' | 'chill' | 'rack' | 'kettle' | 'boards' | 'firstSide' | 'bake' | 'cool'

/** How long a stage should take. The unit entered is kept beside the milliseconds derived. */
export interface DwellWindow {
  readonly earliestMs: DurationMs
  readonly targetMs: DurationMs
  readonly latestMs: DurationMs
  readonly unit: TimeUnit
}
export type Windows = { readonly [stage in WindowStage]?: DwellWindow }

export interface Dough {
  readonly id: DoughId
  readonly name: string
  readonly order: number
  readonly route: Route
  readonly trayPieces: number
  readonly windows: Windows
  readonly retired: boolean
}

export interface Variety {
  readonly id: VarietyId
  readonly name: string
  readonly order: number
  readonly doughId: DoughId
  readonly size: 'mini' | 'regular' | 'large' | 'stick'
  /** Made at the mixer (raisins in the dough) or on the line (seeds on the boards). */
  readonly decidedAt: 'mixer' | 'line'
  readonly topping: 'none' | 'before-flip' | 'after-flip'
  readonly bakedOn: 'board' | 'pan'
  readonly flip: boolean
  readonly windows: Windows
  readonly priceCents: number
  readonly costCents: number
  readonly retired: boolean
}

/** Acts of the line that a station may tap; what no station taps is presumed from the next act that one does. */
export type LineAct = 'pull' | 'dip' | 'lift' | 'board' | 'load' | 'flip' | 'out'

export interface Station {
  readonly id: StationId
  readonly name: string
  readonly order: number
  readonly acts: readonly LineAct[]
  readonly retired: boolean
}
