import type { MixStage } from '../dough/mix.ts'
import type {
  CommandId,
  DeviceId,
  DoughId,
  FormulaId,
  IngredientId,
  MenuItemId,
  MixId,
  PersonId,
  PortionId,
  PreparationId,
  ShelfId,
  StepId,
} from '../ids.ts'
import type { EpochMs } from '../units.ts'
import type { CareKind } from './said.ts'
import type { Account, Line } from './state.ts'

/** What one command did, so that it can be told and taken back. */
export interface Trace {
  readonly commandId: CommandId
  readonly deviceId: DeviceId
  readonly seq: number
  readonly atMs: EpochMs
  readonly told: Told
  readonly touched: readonly Touched[]
  readonly booked: readonly { readonly doughId: DoughId; readonly column: keyof Account; readonly pieces: number }[]
  readonly touches: readonly { readonly key: string; readonly pieces: number }[]
}

/** The command in a form that words can be made of. */
export interface Told {
  readonly type: string
  readonly shelfId?: ShelfId
  readonly doughId?: DoughId
  readonly lines?: readonly Line[]
  readonly pieces?: number
  readonly stepId?: StepId
  readonly personId?: PersonId
  readonly care?: CareKind
  readonly formulaId?: FormulaId
  readonly preparationId?: PreparationId
  readonly ingredientId?: IngredientId
  readonly mixStage?: MixStage
  readonly mixId?: MixId
  readonly date?: string
  readonly milligrams?: number
  readonly text?: string
  /** What an order is called. */
  readonly mark?: string
  readonly menuItemId?: MenuItemId
  readonly portionId?: PortionId
  /** Of a take-back: the type of the command that it undid. */
  readonly takenBack?: string
}

export type TableName =
  | 'batches'
  | 'loads'
  | 'shelves'
  | 'stock'
  | 'keeps'
  | 'orders'
  | 'standing'
  | 'portions'
  | 'makeTimes'
  | 'planned'
  | 'unsure'
  | 'marks'
  | 'notes'
  | 'cares'
  | 'setUps'
  | 'habits'
  | 'wanted'
  | 'mixes'
  | 'builds'
  | 'readings'
  | 'frictions'
  | 'teachings'
  | 'onHand'
  | 'checks'
  /** One row, `FORBIDS_ROW`, that is the whole list. */
  | 'forbids'
export interface Touched {
  readonly table: TableName
  readonly id: string
  /** The value before; null when there was none. */
  readonly before: unknown
}
