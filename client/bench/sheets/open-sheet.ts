import type { Line } from '../../../shared-core/day/state.ts'
import type { BatchId } from '../../../shared-core/ids.ts'
import type { ContentsStart } from './contents-sheet.tsx'
import type { DoughJob } from './dough-choice.ts'

/** The sheet that lies over the line; at most one. */
export type OpenSheet =
  | { readonly kind: 'contents'; readonly start: ContentsStart }
  | { readonly kind: 'dough'; readonly job: DoughJob }
  | { readonly kind: 'board'; readonly lines: readonly Line[] }
  | { readonly kind: 'more' | 'unplanned' | 'skip' | 'on-line' | 'done' | 'dry-hands' | 'settings' }
  | { readonly kind: 'batch'; readonly batchId: BatchId }
