import type { DoughId } from '../ids.ts'
import { EMPTY_ACCOUNT } from './account.ts'
import type { Undo } from './recorder.ts'
import { addTouch, putAccount } from './recorder.ts'
import type { Account, State } from './state.ts'

/** An entry on its way into the state. */
export interface Folding {
  readonly state: State
  readonly undo: Undo
  readonly booked: { readonly doughId: DoughId; readonly column: keyof Account; readonly pieces: number }[]
  readonly touches: { readonly key: string; readonly pieces: number }[]
}

/** Adds pieces to a column of the day's account. */
export function book(folding: Folding, doughId: DoughId, column: keyof Account, pieces: number): void {
  if (pieces === 0) return
  const account = folding.state.account.get(doughId) ?? EMPTY_ACCOUNT
  putAccount(folding.state, folding.undo, doughId, { ...account, [column]: account[column] + pieces })
  folding.booked.push({ doughId, column, pieces })
}

/** Counts pieces that touch the kettle's water or the boards (`line/touches.ts` names the keys). */
export function touch(folding: Folding, key: string, pieces: number): void {
  if (pieces === 0) return
  addTouch(folding.state, folding.undo, key, pieces)
  folding.touches.push({ key, pieces })
}
