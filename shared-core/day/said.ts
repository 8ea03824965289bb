import type { DeviceId, DoughId, NoteId, PersonId, ShelfId, StepId } from '../ids.ts'
import type { Temperature } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'

/** What is said of the day: steps of lists, float tests, boards, the changeover, the oven. Its `id` is its key. */
export type Mark =
  | {
      readonly kind: 'step'
      readonly id: string
      readonly stepId: StepId
      readonly doughId: DoughId | null
      /** Who did it; while it is not done, who will. */
      readonly personId: PersonId | null
      readonly doneAtMs: EpochMs | null
    }
  | {
      readonly kind: 'float'
      readonly id: string
      readonly doughId: DoughId
      readonly passed: boolean
      readonly atMs: EpochMs
      /** When to look again; null when it has passed. */
      readonly lookAgainAtMs: EpochMs | null
      readonly personId: PersonId | null
      /** Pieces of the dough that had been boiled by then, see `State.touches`: more of them since overrule the test. */
      readonly boiled: number
    }
  | { readonly kind: 'boards'; readonly id: string; readonly usable: number }
  | { readonly kind: 'changeover'; readonly id: string; readonly slipMs: number }
  | { readonly kind: 'shelf-over'; readonly id: string; readonly shelfId: ShelfId; readonly atMs: EpochMs }
  /** It takes bagels again, after it was over or after the time for it. */
  | { readonly kind: 'shelf-open'; readonly id: string; readonly shelfId: ShelfId; readonly atMs: EpochMs }
  | {
      readonly kind: 'oven'
      readonly id: string
      readonly shelfId: ShelfId | null
      readonly atMs: EpochMs
      readonly read: Temperature
      readonly milliCelsius: number
    }
export type MarkKind = Mark['kind']

/** A line from one shift to the next. */
export interface Note {
  readonly id: NoteId
  readonly text: string
  readonly atMs: EpochMs
  readonly deviceId: DeviceId
}

/**
 * In the order in which a shift comes to them. `boiling`: the water boils again after cold water went in; `washBoards`: boards and their covers; `washTrays`: the seed
 * trays; `washPeel`: peel and door; `sweepStone`: the oven's floor.
 */
export const CARE_KINDS = [
  'topUp',
  'boiling',
  'skim',
  'malt',
  'change',
  'washBoards',
  'washTrays',
  'washPeel',
  'sweepStone',
] as const
export type CareKind = (typeof CARE_KINDS)[number]

export interface Care {
  readonly kind: CareKind
  readonly atMs: EpochMs
  /** `State.touches` as it was then. */
  readonly touches: readonly (readonly [key: string, pieces: number])[]
}
