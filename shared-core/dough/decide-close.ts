import type { Fact } from '../day/events.ts'
import type { Day, State } from '../day/state.ts'
import type { EpochMs } from '../units.ts'
import { buildsLeft } from './builds-left.ts'
import type { Build, Mix } from './mix.ts'
import { takenSinceClose } from './on-hand.ts'

/** Dough past its window is still used by people who know better; a day later it is gone, whatever was tapped. */
const GONE_AFTER_MS = 24 * 3_600_000
/** What a culture was fed with last is known for a week: one that stood longer is another one (common practice, no source). */
const LAST_FED_KNOWN_MS = 7 * 24 * 3_600_000

export interface RoomClosing {
  readonly day: Day
  readonly atMs: EpochMs
  /** YYYY-MM-DD */
  readonly closedOn: string
}

/**
 * What a close clears out of the dough room: mixes that have ended, planned ones whose day is over, and those that nobody
 * has touched since before the day; pre-ferments and soakers of which nothing is left or that are long over. What they
 * took comes off what is on hand, so that it is counted once. In id order, as tables' own differs between screens.
 */
export function roomAtClose(
  state: State,
  closing: RoomClosing,
): Pick<Extract<Fact, { type: 'dayClosed' }>, 'mixIds' | 'buildIds' | 'onHand'> {
  const mixes = new Map([...state.mixes].filter(([, mix]) => leaves(mix, closing)))
  const builds = new Map([...state.builds].filter(([, build]) => isGone(state, build, closing.atMs)))
  const taken = takenSinceClose({ mixes, builds })
  const onHand = [...state.onHand.values()]
    .filter(({ ingredientId }) => (taken.get(ingredientId) ?? 0) > 0)
    .map((one) => ({ ...one, milligrams: one.milligrams - (taken.get(one.ingredientId) ?? 0) }))
    .sort((one, other) => (one.ingredientId < other.ingredientId ? -1 : 1))
  return { mixIds: [...mixes.keys()].sort(), buildIds: [...builds.keys()].sort(), onHand }
}

function leaves({ stage, bakeDate, sinceMs, until }: Mix, { day, atMs, closedOn }: RoomClosing): boolean {
  if (stage === 'ended') return true
  if (stage === 'planned') return bakeDate <= closedOn
  return sinceMs < day.openedAtMs && atMs - (until?.latestAtMs ?? sinceMs) > GONE_AFTER_MS
}

function isGone(state: State, build: Build, atMs: EpochMs): boolean {
  const isOver = atMs - build.ready.latestAtMs > GONE_AFTER_MS
  const isLast = ![...state.builds.values()].some(
    (other) => other.preparationId === build.preparationId && other.madeAtMs > build.madeAtMs && !other.dropped,
  )
  // The last one tells when it was made, which the next one's time follows from.
  if (isLast && !build.dropped && atMs - build.madeAtMs < LAST_FED_KNOWN_MS) return false
  return isOver || (buildsLeft(state).get(build.id) ?? 0) === 0
}
