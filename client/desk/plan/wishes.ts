import type { Act } from '../../../shared-core/day/commands.ts'
import type { Forbid, Line, State } from '../../../shared-core/day/state.ts'
import type { ShelfId } from '../../../shared-core/ids.ts'
import type { Plan, PlanLoad } from '../../../shared-core/live/plan.ts'
import { isAdvised } from '../../../shared-core/live/plan.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'

/**
 * What people set and forbid for a day. It is changed here, tried on the server, and only then kept, as the shop's load
 * list and its list of what is forbidden; dropped, nothing was ever written.
 */
export interface Wishes {
  readonly pins: readonly Pin[]
  readonly forbids: readonly Forbid[]
}

/** A load that people set. Without a shelf or a time of its own it takes what is free. */
export interface Pin {
  /** The load that it was in the plan, by which the screen follows it while it is moved. */
  readonly key: string
  readonly shelfId: ShelfId | null
  readonly inAtMs: EpochMs | null
  readonly lines: readonly Line[]
}

/** A load as the screen shows it, under a key that stays while people move it. */
export interface ShownLoad {
  readonly key: string
  readonly load: PlanLoad
}

type Own = Pick<State, 'planned' | 'forbids'>

const MINUTE_MS = 60_000

/** What stands for a day. @param dateOf the shop's date of an instant; a load without a time is today's */
export function wishesOf(state: Own, date: string, today: string, dateOf: (atMs: EpochMs) => string): Wishes {
  const pins = ownLoads(state)
    .filter(({ inAtMs }) => (inAtMs === null ? today : dateOf(inAtMs)) === date)
    .map(({ id, shelfId, inAtMs, lines }) => ({ key: id, shelfId, inAtMs, lines }))
  return { pins, forbids: state.forbids.filter(({ fromMs }) => dateOf(fromMs) === date) }
}

/** Loads of the shop's own list that are still to come, in its order; advised ones only stand there to be shown. */
function ownLoads({ planned }: Own) {
  const own = [...planned.values()].filter(({ id, done }) => !done && !isAdvised(id))
  return own.sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
}

/** The load stays where it is, or goes where it was moved to. */
export function withPin({ pins, forbids }: Wishes, pin: Pin): Wishes {
  const isThere = pins.some(({ key }) => key === pin.key)
  return { forbids, pins: isThere ? pins.map((one) => (one.key === pin.key ? pin : one)) : [...pins, pin] }
}

export function withoutPin({ pins, forbids }: Wishes, key: string): Wishes {
  return { forbids, pins: pins.filter((pin) => pin.key !== key) }
}

export function withForbid({ pins, forbids }: Wishes, forbid: Forbid): Wishes {
  return { pins, forbids: [...forbids.filter((one) => !isSameForbid(one, forbid)), forbid] }
}

export function withoutForbid({ pins, forbids }: Wishes, forbid: Forbid): Wishes {
  return { pins, forbids: forbids.filter((one) => !isSameForbid(one, forbid)) }
}

/** The load as people would set it: where it stands. */
export function pinOf({ key, load: { shelfId, inAtMs, lines } }: ShownLoad): Pin {
  return { key, shelfId, inAtMs, lines }
}

/** @param minutes later; negative: earlier. To full five minutes, as people say times. */
export function movedInTime(pin: Pin, minutes: number, leastMs: EpochMs | null = null): Pin {
  if (pin.inAtMs === null) return pin
  const step = 5 * MINUTE_MS
  const snapped = Math.round((pin.inAtMs + minutes * MINUTE_MS) / step) * step
  return { ...pin, inAtMs: epochMs(Math.max(snapped, leastMs ?? 0)) }
}

/**
 * The plan's loads with what people have just set laid over them, so that a load is where the hand put it before the
 * server has said what that costs.
 */
export function shownLoads({ loads }: Plan, { pins }: Wishes): readonly ShownLoad[] {
  const keys = new Map<PlanLoad, string>()
  const moved = new Map<PlanLoad, Pin>()
  for (const pin of pins) {
    const there = loads.find((load) => !keys.has(load) && load.isPinned && isAt(load, pin))
    const was = there ?? loads.find((load) => !keys.has(load) && load.id === pin.key)
    if (was === undefined) continue
    keys.set(was, pin.key)
    if (there === undefined) moved.set(was, pin)
  }
  const taken = new Set(keys.values())
  // An advised load may come back in the place of one that was set: it is another one on the screen.
  const ownKey = ({ id }: PlanLoad) => (taken.has(id) ? `${id} again` : id)
  return loads.map((load) => ({ key: keys.get(load) ?? ownKey(load), load: at(load, moved.get(load)) }))
}

function isAt({ shelfId, inAtMs }: PlanLoad, pin: Pin): boolean {
  return (pin.shelfId === null || pin.shelfId === shelfId) && (pin.inAtMs === null || pin.inAtMs === inAtMs)
}

function at(load: PlanLoad, pin: Pin | undefined): PlanLoad {
  if (pin === undefined) return load
  const byMs = (pin.inAtMs ?? load.inAtMs) - load.inAtMs
  const by = (atMs: EpochMs) => epochMs(atMs + byMs)
  return {
    ...load,
    shelfId: pin.shelfId ?? load.shelfId,
    kettleAtMs: load.kettleAtMs === null ? null : by(load.kettleAtMs),
    inAtMs: by(load.inAtMs),
    flipAtMs: load.flipAtMs === null ? null : by(load.flipAtMs),
    outAtMs: by(load.outAtMs),
    readyAtMs: by(load.readyAtMs),
    isPinned: true,
  }
}

export function isSameForbid(one: Forbid, other: Forbid): boolean {
  return (
    one.shelfId === other.shelfId &&
    one.varietyId === other.varietyId &&
    one.fromMs === other.fromMs &&
    one.toMs === other.toMs
  )
}

/**
 * A change that was begun here, over what stands by now: what others set or let go of meanwhile stays so, or a list that
 * is sent whole would undo it.
 * @param base what stood when the change began
 */
export function rebased(base: Wishes, stands: Wishes, changed: Wishes): Wishes {
  const pin = ({ key }: Pin) => key
  return {
    pins: rebasedList(base.pins, stands.pins, changed.pins, pin),
    forbids: rebasedList(base.forbids, stands.forbids, changed.forbids, (forbid) => JSON.stringify(forbid)),
  }
}

function rebasedList<One>(
  base: readonly One[],
  stands: readonly One[],
  changed: readonly One[],
  keyOf: (one: One) => string,
): readonly One[] {
  const has = (list: readonly One[], one: One) => list.some((other) => keyOf(other) === keyOf(one))
  const left = changed.filter((one) => !has(base, one) || has(stands, one))
  return [...left, ...stands.filter((one) => !has(base, one) && !has(left, one))]
}

const isSame = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other)

export function isSameWishes(one: Wishes, other: Wishes): boolean {
  return isSame(one, other)
}

/**
 * The commands that keep them: only of what is another than it stands. Each list replaces the whole one, so what other
 * days have in it goes along.
 * @param stands what stood for the same day when the change began
 */
export function actsOf(state: Own, stands: Wishes, wishes: Wishes): readonly Act[] {
  const acts: Act[] = []
  if (!isSame(stands.pins, wishes.pins)) {
    const others = ownLoads(state).filter(({ id }) => !stands.pins.some(({ key }) => key === id))
    const loads = [...others, ...wishes.pins].map(({ shelfId, inAtMs, lines }) => ({ shelfId, inAtMs, lines }))
    acts.push({ type: 'setLoadList', loads })
  }
  if (!isSame(stands.forbids, wishes.forbids)) {
    const others = state.forbids.filter((one) => !stands.forbids.some((other) => isSameForbid(one, other)))
    acts.push({ type: 'forbidLoads', forbids: [...others, ...wishes.forbids] })
  }
  return acts
}
