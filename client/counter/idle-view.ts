import type { Act } from '../../shared-core/day/commands.ts'
import type { Line, State } from '../../shared-core/day/state.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { assorted } from '../../shared-core/stock/assorted.ts'
import { dayOldToPut } from '../../shared-core/stock/day-old.ts'
import { sweepFor } from '../../shared-core/stock/sweep.ts'
import type { AfternoonAhead } from '../parts/afternoon.ts'
import { isNear } from '../parts/afternoon.ts'
import { afternoonWords } from '../words/afternoon.ts'
import type { CounterWords } from '../words/counter.ts'
import type { CounterRod } from './counter-rods.ts'
import type { LastDone, TextRoom } from './foot-view.ts'
import { firstInRoom, isInRoom } from './foot-view.ts'
import { keptForNobody } from './kept-view.ts'
import { hasOrdersKey, makesToOrder, ordersKey, slipKey } from './orders-keys.ts'
import type { RodTime } from './rod-text.ts'
import { rackDay } from './rod-text.ts'
import type { Sheet } from './sheet.ts'
import type { OrdersNow } from './use-orders-now.ts'

/** A key under the rack while nothing is in hand. */
export interface IdleKey {
  readonly id:
    | 'afternoon'
    | 'sweep'
    | 'assorted'
    | 'unnamed'
    | 'last-gone'
    | 'day-old'
    | 'close'
    | 'kept'
    | 'orders'
    | 'slip'
    | 'take-back'
    | 'more'
  readonly label: string
  readonly detail: string
  readonly tone: 'plain' | 'strong' | 'act' | 'late'
  /** Why it cannot be touched; "" when it can. */
  readonly refusal: string
  /** For those who listen, where the visible words do not suffice; "" where they do. */
  readonly spoken: string
  /** How much of the row it takes. */
  readonly share: number
  readonly does: Does
}

export type Does =
  | { readonly kind: 'act'; readonly act: Act }
  | { readonly kind: 'open'; readonly sheet: Sheet }
  /** Selling of which nobody says the kinds. */
  | { readonly kind: 'unnamed' }
  | { readonly kind: 'nothing' }

export interface IdleInput {
  readonly state: State
  readonly rods: readonly CounterRod[]
  readonly time: RodTime
  readonly afternoon: AfternoonAhead | null
  readonly done: LastDone | null
  readonly orders: OrdersNow
  /** On the keys that tell what is sold and what was done. */
  readonly room: TextRoom
  /** Of the label of a narrower key. */
  readonly labelRoom: TextRoom
  readonly words: CounterWords
}

/** Sales are tapped here; else a till tells them, or nobody does, and the counter counts. */
export function sellsHere({ shop }: State): boolean {
  return shop?.counter.salesFrom === 'taps'
}

/** A dozen, the number that is asked for most when kinds do not matter. */
export const ASSORTED_PIECES = 12

/** The keys in their order: first what the counter is for in this shop. */
export function idleKeys(input: IdleInput): readonly IdleKey[] {
  const sells = sellsHere(input.state)
  const sweep = sweepKey(input, sells)
  // Where things are made to order, their slip takes the place of what is asked for seldom, which is under "more" then.
  const second = makesToOrder(input.state) ? slipKey(input) : unnamedKey(input.words)
  const first = sells ? [assortedKey(input), second, sweep] : [...(makesToOrder(input.state) ? [second] : []), sweep]
  return [
    ...first,
    ...slotKeys(input),
    hasOrdersKey(input.state) ? ordersKey(input) : keptKey(input),
    takeBackKey(input),
    moreKey(input),
  ]
}

function sweepKey({ state, time, words }: IdleInput, sells: boolean): IdleKey {
  const { sweep } = words.jobs
  const { dueAtMs, varietyIds } = sweepFor(state, time.nowMs)
  const isDue = dueAtMs !== null && dueAtMs <= time.nowMs && varietyIds.length > 0
  const key = { id: 'sweep', refusal: '', spoken: '', does: { kind: 'open', sheet: { kind: 'sweep' } } } as const
  const share = sells ? 2 : 4
  if (isDue) {
    return { ...key, label: sweep.ask(varietyIds.length), detail: sweep.dueSince(dueAtMs), tone: 'act', share }
  }
  const detail = dueAtMs === null || dueAtMs <= time.nowMs ? '' : sweep.nextAt(dueAtMs)
  return { ...key, label: sweep.byHand, detail, tone: sells ? 'plain' : 'strong', share }
}

function assortedKey(input: IdleInput): IdleKey {
  const { state, time, words } = input
  const { hand } = words.counter
  const lines = assorted(state, time.nowMs, ASSORTED_PIECES)
  const label = hand.assorted(ASSORTED_PIECES)
  const key = { id: 'assorted', label, share: 3 } as const
  if (lines.length === 0) {
    return { ...key, detail: '', spoken: '', tone: 'plain', refusal: hand.noneForSale, does: { kind: 'nothing' } }
  }
  return {
    ...key,
    detail: mixText(lines, input),
    spoken: hand.assortedSold(piecesOf(lines), lines),
    tone: 'strong',
    refusal: '',
    does: { kind: 'act', act: { type: 'sell', lines } },
  }
}

/** Names as many kinds as there is room for; all of them are told once they are sold, or taken in hand. */
function mixText(lines: readonly Line[], { room, words }: IdleInput): string {
  const told = (most: number) => {
    const text = words.line.contents(lines.slice(0, most))
    return lines.length > most ? `${text} ${words.counter.day.others(lines.length - most)}` : text
  }
  const shorter = Array.from({ length: lines.length }, (_, index) => told(lines.length - index))
  return firstInRoom([...shorter, kindsText(lines, words)], room)
}

function unnamedKey({ counter: { hand } }: CounterWords): IdleKey {
  return {
    id: 'unnamed',
    label: hand.unnamed,
    detail: hand.unnamedDetail,
    spoken: '',
    tone: 'plain',
    refusal: '',
    share: 2,
    does: { kind: 'unnamed' },
  }
}

function keptKey({ state, words }: IdleInput): IdleKey {
  const { kept } = words.counter
  const keeps = keptForNobody(state)
  return {
    id: 'kept',
    label: kept.title,
    detail: kept.summary(keeps.length, piecesOf(keeps.flatMap((keep) => keep.lines))),
    spoken: '',
    tone: 'plain',
    refusal: '',
    share: 2,
    does: { kind: 'open', sheet: { kind: 'kept' } },
  }
}

function takeBackKey({ done, words: { counter } }: IdleInput): IdleKey {
  return {
    id: 'take-back',
    label: counter.takeBack,
    detail: done?.text ?? '',
    spoken: '',
    tone: 'plain',
    refusal: done === null ? counter.nothingDone : done.refusal,
    share: 3,
    does: done === null ? { kind: 'nothing' } : { kind: 'act', act: { type: 'takeBack', commandId: done.commandId } },
  }
}

function moreKey({ state, words: { jobs } }: IdleInput): IdleKey {
  return {
    id: 'more',
    label: jobs.more.title,
    detail: state.notes.size > 0 ? jobs.noteCount(state.notes.size) : '',
    spoken: '',
    tone: 'plain',
    refusal: '',
    share: 1,
    does: { kind: 'open', sheet: { kind: 'more' } },
  }
}

/** At most one key for what the hour asks: the close, yesterday's pieces, the afternoon, the rod that is likely at its last. */
function slotKeys(input: IdleInput): readonly IdleKey[] {
  const { state, time, words } = input
  const key = { detail: '', spoken: '', tone: 'strong', refusal: '', share: 2 } as const
  if (state.day !== null && time.closeMs !== null && time.nowMs >= time.closeMs) {
    const does = { kind: 'open', sheet: { kind: 'close' } } as const
    return [{ ...key, id: 'close', label: words.jobs.close.title, does }]
  }
  const old = dayOldToPut(state)
  if (isMorning(state, time) && old.length > 0) {
    const does = { kind: 'act', act: { type: 'dayOldIn', lines: old } } as const
    return [{ ...key, id: 'day-old', label: words.jobs.dayOld.putOut(piecesOf(old)), detail: '', does }]
  }
  if (isNear(input.afternoon, time.nowMs)) {
    const does = { kind: 'open', sheet: { kind: 'afternoon' } } as const
    return [{ ...key, id: 'afternoon', label: afternoonWords(words).title, does }]
  }
  const low = lowestRod(input.rods)
  if (low === null) return []
  const does = { kind: 'act', act: { type: 'lastOneGone', varietyId: low.varietyId } } as const
  const label = words.counter.hand.lastOf(low.name)
  // Under a name that is cut off somebody might say it of another rod; in hand each rod has the key in full.
  return isInRoom(label, input.labelRoom) ? [{ ...key, id: 'last-gone', label, does }] : []
}

/** Yesterday's pieces are offered while the day is young; later they still are in the sheet of what is day-old. */
const MORNING_MS = 5 * 3_600_000
/** A day closed less than this ago is still this evening. */
const NIGHT_MS = 4 * 3_600_000

function isMorning({ day, lastDay }: State, { nowMs }: RodTime): boolean {
  if (day !== null) return nowMs - day.openedAtMs < MORNING_MS
  return lastDay === null || nowMs - lastDay.closedAtMs > NIGHT_MS
}

/** A few pieces: the next customer may take them all. */
const LOW_PIECES = 3

function lowestRod(rods: readonly CounterRod[]): CounterRod | null {
  return rods.reduce<CounterRod | null>((lowest, rod) => {
    if (rod.forSale === 0 || rod.likely > LOW_PIECES) return lowest
    const isLower =
      lowest === null ||
      rod.likely < lowest.likely ||
      (rod.likely === lowest.likely && rod.soldToday > lowest.soldToday)
    return isLower ? rod : lowest
  }, null)
}

export interface IdleTold {
  readonly isBakingOver: boolean
  /** An order at risk, or one that is ready; "" where there is none. */
  readonly order: string
  /** In the last hour before the changeover what the last loads should carry; "" at other times. */
  readonly lastLoad: string
  readonly note: string
  readonly isPhone: boolean
}

/** The line over the keys while nothing is in hand: what to do, or what holds of the day, and the newest note. */
export function idleText(
  state: State,
  words: CounterWords,
  { isBakingOver, order, lastLoad, note, isPhone }: IdleTold,
): string {
  const { hand } = words.counter
  const salesFrom = state.shop?.counter.salesFrom ?? 'taps'
  const how = { taps: hand.touchARod, till: hand.tillSells, sweeps: hand.countsOnly }[salesFrom]
  // Nothing is sold after a close; the keys under it say what can be done.
  if (rackDay(state) === 'closed') return note
  const usual = isBakingOver ? hand.bakingOver : lastLoad === '' ? how : lastLoad
  const first = order === '' ? usual : order
  if (note === '' || order !== '') return first
  // A phone has room for one of them, and who holds it knows how to sell.
  return isPhone && first === how ? note : `${first} · ${note}`
}

/** What the lines of a mixed sale are called on a key that has little room. */
export function kindsText(lines: readonly Line[], words: CounterWords): string {
  return lines.length < 2 ? words.line.contents(lines) : words.counter.hand.kinds(lines.length)
}
