import { dateAfter } from '../day/label.ts'
import type { State } from '../day/state.ts'
import type { BatchId, DoughId, FormulaId, MixId, PreparationId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import { dueStatus } from '../line/act-due.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'
import { minuteOn } from './dates.ts'
import type { Mix } from './mix.ts'
import { actsOfMix } from './mix-acts.ts'
import type { PreparationDue } from './preparations-due.ts'
import { preparationsDue } from './preparations-due.ts'
import { actsOfTrays } from './tray-acts.ts'

/**
 * What somebody has to do in the dough room. `prepare`: begin a pre-ferment or soaker. `feed`: a culture. `startMix`:
 * mixing. `mixIns`: they go in. `mixerOff`: mixed long enough. `restOver`, `bulkOver`, `bulkChillOver`: on to what comes
 * after. `fold`: the n-th. `chill`: trays have proofed. `use`: chilled trays near the end of their window.
 */
export type RoomActKind =
  | 'prepare'
  | 'feed'
  | 'startMix'
  | 'mixIns'
  | 'mixerOff'
  | 'restOver'
  | 'fold'
  | 'bulkOver'
  | 'bulkChillOver'
  | 'chill'
  | 'use'

export interface RoomAct {
  /** The same on every screen and as long as it is the same act. @example 'fold:m7.1:2' */
  readonly key: string
  readonly kind: RoomActKind
  /** What it counts from, for a ring; null: it is not counted down. */
  readonly sinceMs: EpochMs | null
  readonly atMs: EpochMs
  /** After this it is late; null: it waits as long as it must. */
  readonly latestAtMs: EpochMs | null
  /** `coming` before its time, `due` from then on, `late` after its latest. */
  readonly status: DueStatus
  readonly mixId: MixId | null
  readonly formulaId: FormulaId | null
  readonly preparationId: PreparationId | null
  readonly doughId: DoughId | null
  /** Of `chill` and `use`: what is moved, all that is due within a few minutes. */
  readonly batchIds: readonly BatchId[]
  /** Of trays; 0 else. */
  readonly pieces: number
  /** Of `prepare` and `feed`, what is to be made; 0 else. */
  readonly milligrams: number
  /** Of `fold`, from 1; 0 else. */
  readonly fold: number
  /** Of `prepare`, the day of boiling that it is for, YYYY-MM-DD; of `feed` null. */
  readonly forDate: string | null
}

/** What an act needs besides its time; the rest is null, empty or 0. */
export type RoomActParts = Pick<RoomAct, 'key' | 'kind' | 'atMs'> & Partial<Omit<RoomAct, 'status'>>

/**
 * What is to be done next in the dough room, soonest first; what spoils within minutes (a mixer that runs) stands before
 * what can wait. Mixes and preparations of today and what is overdue, all trays. Nothing is called for of which nobody can
 * say when.
 * @param localDate the shop's date now, YYYY-MM-DD @param noonOf the shop's noon of a date
 * @returns keys are unique
 */
export function roomActs(
  state: State,
  shop: Shop,
  nowMs: EpochMs,
  localDate: string,
  noonOf: NoonOf,
): readonly RoomAct[] {
  const endOfDayMs = minuteOn(noonOf, dateAfter(localDate, 1), 0)
  const isOfToday = ({ atMs }: RoomActParts) => atMs < endOfDayMs
  const mixes = [...state.mixes.values()].flatMap((mix) => actsOfMix(mix, startOf(mix, shop, noonOf), nowMs))
  const preparations = preparationsDue(state, shop, nowMs, localDate, noonOf).map((due) => preparing(due, localDate))
  const all = [...mixes.filter(isOfToday), ...preparations.filter(isOfToday), ...actsOfTrays(state, shop, nowMs)]
  return roomActsAt(
    all.map((parts) => ({ ...NOTHING, ...parts })),
    nowMs,
  )
}

/** Acts that were found some seconds ago, as they stand now: finding them takes longer than a tick has. */
export function roomActsAt(acts: readonly Omit<RoomAct, 'status'>[], nowMs: EpochMs): readonly RoomAct[] {
  return acts
    .map((act): RoomAct => ({ ...act, status: dueStatus(act.atMs, act.latestAtMs, nowMs) }))
    .sort(bySoonest(nowMs))
}

const NOTHING = {
  sinceMs: null,
  latestAtMs: null,
  mixId: null,
  formulaId: null,
  preparationId: null,
  doughId: null,
  batchIds: [],
  pieces: 0,
  milligrams: 0,
  fold: 0,
  forDate: null,
} as const

/** Of a mix for which nobody said when: as work begins on its day. */
function startOf({ startAtMs, formula, bakeDate }: Mix, { doughRoom }: Shop, noonOf: NoonOf): EpochMs {
  const fromMinute = doughRoom?.fromMinute ?? DEFAULT_FROM_MINUTE
  return startAtMs ?? minuteOn(noonOf, dateAfter(bakeDate, -formula.daysAhead), fromMinute)
}

/** Five in the morning (common practice, no source). */
const DEFAULT_FROM_MINUTE = 5 * 60

function preparing({ preparationId, forDate, milligrams, begin }: PreparationDue, localDate: string): RoomActParts {
  const key = forDate === null ? `feed:${preparationId}:${localDate}` : `prepare:${preparationId}:${forDate}`
  const { targetAtMs: atMs, latestAtMs } = begin
  const kind = forDate === null ? 'feed' : 'prepare'
  return { key, kind, atMs, latestAtMs, preparationId, milligrams, forDate }
}

/** Dough that mixes on breaks down, and mix-ins that come late are not spread: everything else can wait a minute. */
const SPOILS: ReadonlySet<RoomActKind> = new Set<RoomActKind>(['mixIns', 'mixerOff'])
const HANDS_BUSY_MS = 60_000
/** Trays past their window can wait longest: what is to be done for the others comes first. */
const USE_WAITS_MS = 5 * 60_000

function bySoonest(nowMs: EpochMs) {
  const handsAtMs = ({ kind, atMs }: RoomAct) =>
    SPOILS.has(kind) ? atMs : Math.max(atMs, nowMs + (kind === 'use' ? USE_WAITS_MS : HANDS_BUSY_MS))
  return (one: RoomAct, other: RoomAct): number =>
    handsAtMs(one) - handsAtMs(other) || one.atMs - other.atMs || (one.key < other.key ? -1 : 1)
}
