import type { Act, ActType, Command } from './commands.ts'
import type { Case, Context, Decision } from './decision.ts'
import { askFor, openCase, refuse } from './decision.ts'
import type { Event } from './events.ts'
import { forgottenDay } from './forgotten-day.ts'
import { labelOf } from './label.ts'
import type { Fits } from './planned-set-ups.ts'
import { afterDue, dueSetUps } from './planned-set-ups.ts'
import { doneMeanwhile } from './same-act.ts'
import type { State } from './state.ts'
import { eventVersion } from './upcast.ts'

/** A tap that waited longer than this on a screen without contact is asked back before it counts. */
const OLD_TAP_MS = 36 * 3_600_000

/**
 * What the shop says to a command: the events that it makes, questions to answer first, or why not. Pure: the state is
 * read only, and the same arguments give the same answer on the server and on every screen.
 */
export type Decide = (state: State, command: Command, context: Context) => Decision

/** One function for each kind of command. */
export type Deciders = {
  readonly [Type in Exclude<ActType, 'changeSetUp'>]: (oneCase: Case<Extract<Act, { type: Type }>>) => Decision
} & {
  readonly changeSetUp: (state: State, command: Extract<Command, { type: 'changeSetUp' }>, context: Context) => Decision
}

/**
 * Decides with these; what none is given for is not this screen's to do.
 * @param fits for planned changes that are due. They fitted when they were planned: that they may not any more is left
 * to the server by screens that cannot change the set-up, so that these need not fetch its rules.
 */
export function decideWith(deciders: Partial<Deciders>, fits: Fits = () => true): Decide {
  return (state, command, context) => decideBy({ deciders, fits }, state, command, context)
}

interface By {
  readonly deciders: Partial<Deciders>
  readonly fits: Fits
}

function decideBy({ deciders, fits }: By, state: State, command: Command, context: Context): Decision {
  if (command.tappedAtMs !== null && context.nowMs - command.tappedAtMs > OLD_TAP_MS) {
    const asked = askFor(command, [{ code: 'old-tap', params: { tappedAtMs: command.tappedAtMs } }])
    if (asked !== null) return asked
  }
  if (command.type === 'changeSetUp')
    return deciders.changeSetUp?.(state, command, context) ?? refuse('not-your-role', { type: command.type })
  const decider = deciders[command.type]
  if (decider === undefined) return refuse('not-your-role', { type: command.type })
  if (state.shop === null) return refuse('no-set-up')
  const due = dueSetUps(state, context.nowMs, fits)
  if (command.type === 'takeUpSetUps' && due.length === 0) return refuse('nothing-due')
  // They hold for the act that finds them due.
  const forgotten = OUTSIDE_A_DAY.has(command.type) ? null : forgottenDay(state, context)
  const ground = afterDue(forgotten?.state ?? state, due)
  const { shop } = ground
  if (shop === null) return refuse('no-set-up')
  const decision = decider(openCase(ground, shop, command, context) as never)
  if (decision.kind !== 'taken') return decision
  if (doneMeanwhile(state, command, decision.told, context) !== null) return refuse('already-moved', { stage: null })
  const before = [...(forgotten?.events ?? []), ...due, ...opening(ground, command, decision, context)]
  return { ...decision, events: [...before, ...decision.events] }
}

/** Planning, orders, readings and taking back: neither do they open a business day nor close a forgotten one. */
const OUTSIDE_A_DAY: ReadonlySet<ActType> = new Set<ActType>([
  'openDay',
  'closeDay',
  'setLoadList',
  'skipPlanned',
  'forbidLoads',
  'takeBack',
  'confirmPresumed',
  'reopenDay',
  'dropSetUp',
  'takeUpSetUps',
  'writeNote',
  'clearNote',
  'slipChangeover',
  'readOven',
  'noteImport',
  'takeOrder',
  'changeOrder',
  'cancelOrder',
  'setStanding',
  'endStanding',
  'takeUpOrders',
  'setWanted',
  'planMixes',
  'orderMixes',
  'dropMix',
  'readPlace',
])

/** Work of the dough room goes on between two days too: it opens none, but shows that the day before is over. */
const OPENS_NO_DAY: ReadonlySet<ActType> = new Set<ActType>([
  ...OUTSIDE_A_DAY,
  'weighLine',
  'readMix',
  'moveMix',
  'foldMix',
  'endMix',
  'placeBatch',
  'countIngredients',
  'receiveIngredient',
  'makePreparation',
  'dropBuild',
  'weighPieces',
])

/**
 * The first act of a morning opens the day: nobody has to think of it in the dark. A tap from before the last close that
 * arrives after it counts on the next day, which begins no earlier than that close.
 */
function opening(
  { day, lastDay }: State,
  command: Command,
  decision: Extract<Decision, { kind: 'taken' }>,
  { nowMs, localDate, noonOf }: Context,
): readonly Event[] {
  if (day !== null || OPENS_NO_DAY.has(command.type)) return []
  const tappedAtMs = decision.events[0]?.atMs ?? nowMs
  const atMs = lastDay !== null && lastDay.closedAtMs > tappedAtMs ? lastDay.closedAtMs : tappedAtMs
  const label = labelOf(localDate, lastDay?.closedOn ?? null)
  return [{ v: eventVersion('dayOpened'), atMs, type: 'dayOpened', label, noonMs: noonOf?.(label) ?? null }]
}
