import type { Line } from '../../../shared-core/day/state.ts'
import type { BatchId, DoughId, PersonId, ShelfId, StepId } from '../../../shared-core/ids.ts'
import type { ChangePart } from './changeover-sheet.tsx'
import type { ContentsStart } from './contents-sheet.tsx'
import type { DoughJob } from './dough-choice.ts'

/** The sheet that lies over the line; at most one. */
export type OpenSheet =
  | { readonly kind: 'contents'; readonly start: ContentsStart }
  | { readonly kind: 'dough'; readonly job: DoughJob }
  | { readonly kind: 'board'; readonly lines: readonly Line[] }
  | { readonly kind: 'more' | 'unplanned' | 'skip' | 'on-line' | 'done' | 'dry-hands' | 'settings' }
  | { readonly kind: 'batch'; readonly batchId: BatchId }
  /** In place of the line: it stays open. */
  | { readonly kind: 'dough-room' | 'kitchen' }
  | { readonly kind: 'opening' | 'notes' | 'kettle' | 'person' }
  | { readonly kind: 'changeover'; readonly part?: ChangePart }
  | {
      readonly kind: 'give'
      readonly stepId: StepId
      readonly doughId: DoughId | null
      readonly from: 'opening' | 'changeover'
    }
  | {
      readonly kind: 'float'
      readonly doughId: DoughId
      readonly personId: PersonId | null
      readonly from: 'opening' | 'changeover'
    }
  | { readonly kind: 'heat'; readonly shelfId: ShelfId | null }
