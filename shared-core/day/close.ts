import type { DoughId, KeepId, VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { isOnTheLine } from '../line/route.ts'
import { inOrder } from '../shop/in-order.ts'
import type { BatchStage, Shop } from '../shop/shop.ts'
import { BATCH_STAGES } from '../shop/stages.ts'
import { toCountAtClose } from '../stock/close.ts'
import type { Rod } from '../stock/left.ts'
import { rods } from '../stock/left.ts'
import type { EpochMs } from '../units.ts'
import { EMPTY_ACCOUNT, piecesPresent } from './account.ts'
import { changeoverList } from './changeover-list.ts'
import { notesWaiting } from './notes.ts'
import type { Ruler } from './ruler.ts'
import type { Note } from './said.ts'
import type { Account, Line, State } from './state.ts'
import type { StepLine } from './step-list.ts'

/** What there is to know and to do before a day is closed; the same on the desk and at the counter. */
export interface CloseNow {
  readonly label: string
  readonly openedAtMs: EpochMs
  /** Rods with pieces for sale, cooling or day-old, each saying how it is known; in the set-up's order. */
  readonly left: readonly Rod[]
  /** Those of which the number is not known to the piece. */
  readonly toCount: readonly VarietyId[]
  /** Kept pieces that nobody has fetched; they stay kept over the close, the oldest first. */
  readonly kept: readonly KeptLeft[]
  /** In the kettle, on boards or in the oven: a close asks about them. */
  readonly onTheLine: readonly Standing[]
  /** In proof, cooler or on the rack: carried in tomorrow. */
  readonly standing: readonly Standing[]
  /** Steps of the changeover that nobody has said are done. */
  readonly openSteps: readonly StepLine[]
  readonly notes: readonly Note[]
  /** By dough in the set-up's order, and the sum of them. */
  readonly account: readonly DoughNow[]
  readonly total: Omit<DoughNow, 'doughId' | 'name'>
}

export interface KeptLeft {
  readonly keepId: KeepId
  readonly lines: readonly Line[]
  readonly keptAtMs: EpochMs
}

export interface Standing {
  readonly stage: BatchStage
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
}

/** shaped + carriedIn = present + sold + kitchen + wasted + given + dayOld + unexplained. */
export interface DoughNow extends Account {
  readonly doughId: DoughId
  readonly name: string
  /** In a stage, for sale, day-old on the rod, or kept. */
  readonly present: number
}

/** @returns null without a set-up, and while no day is open */
export function closeNow(state: State, nowMs: EpochMs, ruler: Ruler | null): CloseNow | null {
  const { shop, day } = state
  if (shop === null || day === null) return null
  const standing = standingOf(state, shop)
  const account = accountOf(state, shop)
  return {
    label: day.label,
    openedAtMs: day.openedAtMs,
    left: rods(state, nowMs).filter((rod) => rod.dayOld + rod.forSale + rod.cooling > 0),
    toCount: toCountAtClose(state, nowMs),
    kept: [...state.keeps.values()]
      .sort((one, other) => one.keptAtMs - other.keptAtMs || (one.id < other.id ? -1 : 1))
      .map(({ id, lines, keptAtMs }) => ({ keepId: id, lines, keptAtMs })),
    onTheLine: standing.filter(({ stage }) => isOnTheLine(stage)),
    standing: standing.filter(({ stage }) => !isOnTheLine(stage)),
    openSteps: (changeoverList(state, nowMs, ruler)?.lines ?? []).filter(({ status }) => status !== 'done'),
    notes: notesWaiting(state),
    account,
    total: account.reduce(added, { ...EMPTY_ACCOUNT, present: 0 }),
  }
}

function standingOf({ batches }: State, shop: Shop): readonly Standing[] {
  return BATCH_STAGES.flatMap((stage) => {
    const here = [...batches.values()].filter((batch) => batch.stage === stage)
    const plain = inOrder(shop.doughs).flatMap(({ id }) => {
      const pieces = here.reduce(
        (sum, one) => (one.varietyId === null && one.doughId === id ? sum + one.pieces : sum),
        0,
      )
      return pieces === 0 ? [] : [{ stage, doughId: id, varietyId: null, pieces }]
    })
    const sums = new Map<VarietyId, number>()
    const doughs = new Map<VarietyId, DoughId>()
    for (const { varietyId, doughId, pieces } of here) {
      if (varietyId === null) continue
      sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
      doughs.set(varietyId, doughId)
    }
    const named = linesOf(sums, shop).flatMap(({ varietyId, pieces }) => {
      const doughId = doughs.get(varietyId)
      return doughId === undefined ? [] : [{ stage, doughId, varietyId, pieces }]
    })
    return [...plain, ...named]
  })
}

function accountOf(state: State, shop: Shop): readonly DoughNow[] {
  const present = piecesPresent(state)
  return inOrder(shop.doughs).flatMap(({ id, name }) => {
    const account = state.account.get(id)
    return account === undefined ? [] : [{ doughId: id, name, ...account, present: present.get(id) ?? 0 }]
  })
}

function added(sum: CloseNow['total'], one: CloseNow['total']): CloseNow['total'] {
  return {
    shaped: sum.shaped + one.shaped,
    carriedIn: sum.carriedIn + one.carriedIn,
    sold: sum.sold + one.sold,
    kitchen: sum.kitchen + one.kitchen,
    wasted: sum.wasted + one.wasted,
    given: sum.given + one.given,
    dayOld: sum.dayOld + one.dayOld,
    unexplained: sum.unexplained + one.unexplained,
    present: sum.present + one.present,
  }
}
