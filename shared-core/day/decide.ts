import {
  decideBoard,
  decideCarryIn,
  decideConfirmPresumed,
  decideDip,
  decideLift,
  decideMoveBatch,
  decidePull,
  decideShape,
  decideWasteBatch,
} from '../line/decide-batches.ts'
import { decideChangeLoad, decideFlip, decideLoad, decideMoveLoad, decideOut } from '../line/decide-loads.ts'
import type { Shop } from '../shop/shop.ts'
import {
  decideCount,
  decideHandOver,
  decideKeep,
  decideRelease,
  decideRemove,
  decideSell,
} from '../stock/decide-stock.ts'
import { unreachable } from '../support.ts'
import type { ActType, Command } from './commands.ts'
import { decideChangeSetUp, decideCloseDay, decideOpenDay, decideSetLoadList, decideSkipPlanned } from './decide-day.ts'
import type { Context, Decision } from './decision.ts'
import { askFor, openCase, refuse } from './decision.ts'
import type { Event } from './events.ts'
import { forgottenDay } from './forgotten-day.ts'
import { labelOf } from './label.ts'
import { doneMeanwhile } from './same-act.ts'
import type { State } from './state.ts'
import { decideTakeBack } from './take-back.ts'

export type { Context, Decision } from './decision.ts'

/** A tap that waited longer than this on a screen without contact is asked back before it counts. */
const OLD_TAP_MS = 36 * 3_600_000

/**
 * What the shop says to a command: the events that it makes, questions to answer first, or why not. Pure: the state is
 * read only, and the same arguments give the same answer on the server and on every screen.
 */
export function decide(state: State, command: Command, context: Context): Decision {
  if (command.tappedAtMs !== null && context.nowMs - command.tappedAtMs > OLD_TAP_MS) {
    const asked = askFor(command, [{ code: 'old-tap', params: { tappedAtMs: command.tappedAtMs } }])
    if (asked !== null) return asked
  }
  if (command.type === 'changeSetUp') return decideChangeSetUp(state, command, context)
  if (state.shop === null) return refuse('no-set-up')
  const forgotten = OUTSIDE_A_DAY.has(command.type) ? null : forgottenDay(state, context)
  const ground = forgotten?.state ?? state
  const decision = decideAct(ground, state.shop, command, context)
  if (decision.kind !== 'taken') return decision
  if (doneMeanwhile(state, command, decision.told, context) !== null) return refuse('already-moved', { stage: null })
  const events = [...(forgotten?.events ?? []), ...opening(ground, command, decision, context), ...decision.events]
  return { ...decision, events }
}

function decideAct(
  state: State,
  shop: Shop,
  command: Exclude<Command, { type: 'changeSetUp' }>,
  context: Context,
): Decision {
  switch (command.type) {
    case 'shape':
      return decideShape(openCase(state, shop, command, context))
    case 'carryIn':
      return decideCarryIn(openCase(state, shop, command, context))
    case 'pull':
      return decidePull(openCase(state, shop, command, context))
    case 'dip':
      return decideDip(openCase(state, shop, command, context))
    case 'lift':
      return decideLift(openCase(state, shop, command, context))
    case 'board':
      return decideBoard(openCase(state, shop, command, context))
    case 'moveBatch':
      return decideMoveBatch(openCase(state, shop, command, context))
    case 'wasteBatch':
      return decideWasteBatch(openCase(state, shop, command, context))
    case 'confirmPresumed':
      return decideConfirmPresumed(openCase(state, shop, command, context))
    case 'load':
      return decideLoad(openCase(state, shop, command, context))
    case 'changeLoad':
      return decideChangeLoad(openCase(state, shop, command, context))
    case 'flip':
      return decideFlip(openCase(state, shop, command, context))
    case 'out':
      return decideOut(openCase(state, shop, command, context))
    case 'moveLoad':
      return decideMoveLoad(openCase(state, shop, command, context))
    default:
      return decideCounterOrDay(state, shop, command, context)
  }
}

type CounterOrDay = Extract<
  Command,
  {
    type:
      | 'sell'
      | 'remove'
      | 'count'
      | 'keep'
      | 'release'
      | 'handOver'
      | 'openDay'
      | 'closeDay'
      | 'setLoadList'
      | 'skipPlanned'
      | 'takeBack'
  }
>

function decideCounterOrDay(state: State, shop: Shop, command: CounterOrDay, context: Context): Decision {
  switch (command.type) {
    case 'sell':
      return decideSell(openCase(state, shop, command, context))
    case 'remove':
      return decideRemove(openCase(state, shop, command, context))
    case 'count':
      return decideCount(openCase(state, shop, command, context))
    case 'keep':
      return decideKeep(openCase(state, shop, command, context))
    case 'release':
      return decideRelease(openCase(state, shop, command, context))
    case 'handOver':
      return decideHandOver(openCase(state, shop, command, context))
    case 'openDay':
      return decideOpenDay(openCase(state, shop, command, context))
    case 'closeDay':
      return decideCloseDay(openCase(state, shop, command, context))
    case 'setLoadList':
      return decideSetLoadList(openCase(state, shop, command, context))
    case 'skipPlanned':
      return decideSkipPlanned(openCase(state, shop, command, context))
    case 'takeBack':
      return decideTakeBack(openCase(state, shop, command, context))
    default:
      return unreachable(command)
  }
}

/** Acts that belong to a business day; what is left out is planning, and taking back. */
const OUTSIDE_A_DAY: ReadonlySet<ActType> = new Set<ActType>([
  'openDay',
  'closeDay',
  'setLoadList',
  'skipPlanned',
  'takeBack',
  'confirmPresumed',
])

/**
 * The first act of a morning opens the day: nobody has to think of it in the dark. A tap from before the last close that
 * arrives after it counts on the next day, which begins no earlier than that close.
 */
function opening(
  { day, lastDay }: State,
  command: Command,
  decision: Extract<Decision, { kind: 'taken' }>,
  { nowMs, localDate }: Context,
): readonly Event[] {
  if (day !== null || OUTSIDE_A_DAY.has(command.type)) return []
  const tappedAtMs = decision.events[0]?.atMs ?? nowMs
  const atMs = lastDay !== null && lastDay.closedAtMs > tappedAtMs ? lastDay.closedAtMs : tappedAtMs
  return [{ v: 1, atMs, type: 'dayOpened', label: labelOf(localDate, lastDay?.closedOn ?? null) }]
}
