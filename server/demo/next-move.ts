import type { State } from '../../shared-core/day/state.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { counterMoves } from './counter.ts'
import { crewMoves } from './crew.ts'
import { listMoves } from './day-lists.ts'
import { dayMoves } from './day-round.ts'
import { doughRoomMoves } from './dough-room.ts'
import { kitchenCrowd } from './kitchen-crowd.ts'
import { kitchenWork } from './kitchen-work.ts'
import { orderMoves } from './order-moves.ts'
import type { LocalDay, Move, Scene } from './scene.ts'
import { LOOK_AHEAD_MS, localDay } from './scene.ts'

/** What was tried and did not change what called for it is tried again after so long: somebody else was quicker. */
const AGAIN_AFTER_MS = 60_000
/** Moves that are remembered as tried; those of an hour are a few hundred. */
const TRIED_MAX = 2_000

export interface DemoPeopleFrom {
  readonly seed: number
  readonly fromMs: EpochMs
  /** How much later than the clock they do everything, all day. */
  readonly shiftMs?: number
  /** When a wave of today's loads begins; left out: as the oven is ready. */
  readonly waveAtMs?: number | null
  /** They bake what is advised; left out: by a list that they type. */
  readonly isAdvised?: boolean
}

/**
 * The people of the demo as one: where their day has come to and what they have tried. All else is in the shop's state,
 * so that they fit in with whatever people tap in between.
 */
export class DemoPeople {
  readonly #seed: number
  readonly #shiftMs: number
  readonly #waveAtMs: number | null
  readonly #isAdvised: boolean
  readonly #triedAtMs = new Map<string, number>()
  #nowMs: EpochMs
  #day: LocalDay | null = null
  #quiet: { readonly seq: number; readonly untilMs: number } = { seq: -1, untilMs: 0 }

  constructor({ seed, fromMs, shiftMs = 0, waveAtMs = null, isAdvised = false }: DemoPeopleFrom) {
    this.#seed = seed
    this.#shiftMs = shiftMs
    this.#waveAtMs = waveAtMs
    this.#isAdvised = isAdvised
    this.#nowMs = fromMs
  }

  get nowMs(): EpochMs {
    return this.#nowMs
  }

  /** What is missed while the machine sleeps is missed: nobody serves five hours of customers at once. */
  skipTo(nowMs: EpochMs): void {
    if (nowMs > this.#nowMs) this.#nowMs = nowMs
  }

  /**
   * The next thing that one of them does, counted as tried; null when there is nothing until then.
   * Deciding it is the caller's: between two moves the state changes.
   */
  next(state: State, untilMs: EpochMs): (Move & { readonly atMs: EpochMs }) | null {
    while (this.#nowMs <= untilMs && !this.#isQuiet(state, untilMs)) {
      const move = this.#soonest(state)
      const atMs = epochMs(move?.atMs ?? this.#nowMs + LOOK_AHEAD_MS)
      this.#quiet = { seq: state.seq, untilMs: atMs }
      if (atMs > untilMs) break
      this.#nowMs = atMs
      if (move !== null) {
        this.#remember(move.key)
        return { ...move, atMs }
      }
    }
    this.skipTo(untilMs)
    return null
  }

  /** Nothing has happened since they last looked, and what they then meant to do is not due. */
  #isQuiet({ seq }: State, untilMs: EpochMs): boolean {
    return this.#quiet.seq === seq && untilMs < this.#quiet.untilMs
  }

  /** Null when nobody does anything within the look-ahead. */
  #soonest(state: State): Move | null {
    if (state.shop === null) return null
    const nowMs = this.#nowMs
    this.#day = localDay(state.shop.profile.zone, nowMs, this.#day)
    const { date, dayStartMs } = this.#day
    const at = { nowMs, seed: this.#seed, date, dayStartMs: dayStartMs + this.#shiftMs }
    const scene: Scene = { state, shop: state.shop, ...at }
    const moves = [
      ...crewMoves(scene),
      ...doughRoomMoves(scene),
      ...counterMoves(scene),
      ...orderMoves(scene),
      ...kitchenCrowd(scene),
      ...kitchenWork(scene),
      ...dayMoves(scene, { waveAtMs: this.#waveAtMs, isAdvised: this.#isAdvised }),
      ...listMoves(scene),
    ]
    return moves
      .map((move) => ({ ...move, atMs: Math.max(move.atMs, nowMs, this.#againAtMs(move)) }))
      .filter(({ atMs }) => atMs <= nowMs + LOOK_AHEAD_MS)
      .reduce<Move | null>((first, move) => (first === null || isBefore(move, first) ? move : first), null)
  }

  #againAtMs({ key, once }: Move): number {
    const triedAtMs = this.#triedAtMs.get(key)
    if (triedAtMs === undefined) return 0
    return once === true ? Number.MAX_SAFE_INTEGER : triedAtMs + AGAIN_AFTER_MS
  }

  #remember(key: string): void {
    this.#triedAtMs.delete(key)
    this.#triedAtMs.set(key, this.#nowMs)
    const [oldest] = this.#triedAtMs.keys()
    if (this.#triedAtMs.size > TRIED_MAX && oldest !== undefined) this.#triedAtMs.delete(oldest)
  }
}

function isBefore(one: Move, other: Move): boolean {
  return one.atMs < other.atMs || (one.atMs === other.atMs && one.key < other.key)
}
