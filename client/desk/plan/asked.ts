import type { Line } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import type { PlanFigures } from '../../../shared-core/live/plan.ts'
import type { DurationMs, EpochMs } from '../../../shared-core/units.ts'
import { durationMs } from '../../../shared-core/units.ts'
import type { WhatIfKind } from '../../words/desk-plan.ts'

/** What `POST /api/v1/plan/what-if` is asked. */
export type WhatIfChange =
  | { readonly kind: 'shelf' }
  | { readonly kind: 'kettle'; readonly cycleMs: DurationMs }
  | { readonly kind: 'boards'; readonly more: number }
  | { readonly kind: 'opening'; readonly earlierMs: DurationMs }
  | { readonly kind: 'changeover'; readonly byMs: number }
  | { readonly kind: 'order'; readonly dueAtMs: EpochMs; readonly lines: readonly Line[] }
  | { readonly kind: 'people'; readonly fewer: number }

/** The day as it is, and with the change. */
export interface WhatIfAnswer {
  readonly before: PlanFigures
  readonly after: PlanFigures
}

interface Typed {
  /** Seconds, pieces, minutes or people, as its kind has it. */
  readonly amount: number
  readonly varietyId: VarietyId
  readonly dueAtMs: EpochMs
}

const MINUTE_MS = 60_000

export function changeOf(kind: WhatIfKind, { amount, varietyId, dueAtMs }: Typed): WhatIfChange {
  switch (kind) {
    case 'shelf':
      return { kind }
    case 'kettle':
      return { kind, cycleMs: durationMs(amount * 1_000) }
    case 'boards':
      return { kind, more: amount }
    case 'opening':
      return { kind, earlierMs: durationMs(amount * MINUTE_MS) }
    case 'changeover':
      return { kind, byMs: amount * MINUTE_MS }
    case 'order':
      return { kind, dueAtMs, lines: [{ varietyId, pieces: amount }] }
    case 'people':
      return { kind, fewer: amount }
  }
}
