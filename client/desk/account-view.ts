import { accountGaps, EMPTY_ACCOUNT } from '../../shared-core/day/account.ts'
import type { Account, State } from '../../shared-core/day/state.ts'
import type { DoughId } from '../../shared-core/ids.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'

/** Where the pieces of one dough are, or went; the first two equal the sum of all others. */
export interface AccountRow extends Account {
  readonly doughId: DoughId
  readonly onTheLine: number
  /** Out of the oven: for sale or cooling, what is day-old on the rods included. */
  readonly forSale: number
  readonly kept: number
}

/** The day's account so far, in the order of the set-up; doughs of which there is nothing are left out. */
export function accountRows(state: State): readonly AccountRow[] {
  const ids = new Set([...(state.shop?.doughs.keys() ?? []), ...state.account.keys()])
  const stocks = [...state.stock.values()]
  return [...ids]
    .map((doughId): AccountRow => {
      const mine = stocks.filter((stock) => stock.doughId === doughId)
      const batches = [...state.batches.values()].filter((batch) => batch.doughId === doughId)
      return {
        ...(state.account.get(doughId) ?? EMPTY_ACCOUNT),
        doughId,
        onTheLine: batches.reduce((sum, batch) => sum + batch.pieces, 0),
        forSale: mine.reduce((sum, stock) => sum + piecesOf(stock.lots) + stock.dayOld, 0),
        kept: mine.reduce((sum, stock) => sum + stock.kept, 0),
      }
    })
    .filter(hasSomething)
}

/** The sum of all rows, for the last line. */
export function accountTotal(rows: readonly AccountRow[]): Omit<AccountRow, 'doughId'> {
  const sum = (pick: (row: AccountRow) => number) => rows.reduce((all, row) => all + pick(row), 0)
  return {
    shaped: sum((row) => row.shaped),
    carriedIn: sum((row) => row.carriedIn),
    onTheLine: sum((row) => row.onTheLine),
    forSale: sum((row) => row.forSale),
    kept: sum((row) => row.kept),
    sold: sum((row) => row.sold),
    kitchen: sum((row) => row.kitchen),
    wasted: sum((row) => row.wasted),
    given: sum((row) => row.given),
    dayOld: sum((row) => row.dayOld),
    unexplained: sum((row) => row.unexplained),
  }
}

/** Pieces of a closed day that went on to the next: chilled, kept, or left over on the line. */
export function carriedOn(account: Account): number {
  const { shaped, carriedIn, sold, kitchen, wasted, given, dayOld, unexplained } = account
  return shaped + carriedIn - sold - kitchen - wasted - given - dayOld - unexplained
}

/** Doughs whose account does not come out even: none, or the board has a fault. */
export function gaps(state: State): readonly { readonly doughId: DoughId; readonly pieces: number }[] {
  return [...accountGaps(state)].map(([doughId, pieces]) => ({ doughId, pieces }))
}

/** A signed number: what is missing has a plus, what turned up a minus. @example signed(-3) // "−3" */
export function signed(pieces: number): string {
  return pieces < 0 ? `−${-pieces}` : pieces > 0 ? `+${pieces}` : '0'
}

function hasSomething({ doughId: _, ...columns }: AccountRow): boolean {
  return Object.values(columns).some((pieces) => pieces !== 0)
}
