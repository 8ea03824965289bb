import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { Place } from '../../../shared-core/dough/mix.ts'
import type { BatchId, DoughId, MixId, PreparationId } from '../../../shared-core/ids.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { RingState } from '../../parts/ring.tsx'
import type { DoughRoomWords } from '../../words/bench-dough.ts'
import type { DoneView } from '../done-view.ts'
import type { SheetParts } from '../sheet.tsx'

/** What views of the dough room are made from: the state, the time, and the shop's calendar. */
export interface RoomParts {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly words: DoughRoomWords
  /** YYYY-MM-DD in the shop. */
  readonly localDate: string
  /** The shop's noon of a date. */
  readonly noonOf: (isoDate: string) => EpochMs
}

/** What lies over the dough room; at most one. */
export type RoomPage =
  | { readonly kind: 'mix'; readonly mixId: MixId }
  | { readonly kind: 'batch'; readonly batchId: BatchId; readonly part?: 'look' | 'place' | 'move' }
  /** `batchIds`: of these alone, each by itself. */
  | { readonly kind: 'station'; readonly station: StationId; readonly batchIds?: readonly BatchId[] }
  | { readonly kind: 'preparations' | 'readings' }
  | { readonly kind: 'build'; readonly preparationId: PreparationId; readonly forDate: string | null }
  | { readonly kind: 'reading'; readonly place: Place }
  | { readonly kind: 'divider'; readonly doughId: DoughId | null; readonly mixId: MixId | null }

/** The way of the dough, left to right. */
export const STATIONS = ['scale', 'mixer', 'bench', 'proof', 'cooler'] as const
export type StationId = (typeof STATIONS)[number]

export interface RingView {
  readonly fraction: number
  readonly state: RingState
  readonly label?: string | undefined
}

export type ItemTone = 'plain' | 'act' | 'late'

/** One thing that stands at a station: a mix, or pieces that move together. */
export interface RoomItem {
  readonly id: string
  readonly ring: RingView
  readonly tone: ItemTone
  readonly what: string
  readonly when: string
  readonly contents: readonly string[]
  /** What a touch does, in order; empty: it opens `page`. */
  readonly acts: readonly Act[]
  readonly page: RoomPage
}

/** What each page of the dough room is made with. */
export interface RoomSheetProps extends Omit<SheetParts, 'words'>, RoomParts {
  readonly send: (act: Act) => void
  readonly open: (page: RoomPage | null) => void
  readonly lastDone: DoneView | null
  readonly takeBack: (done: DoneView) => void
}
