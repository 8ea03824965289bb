import { derivedId, setUpId } from '../ids.ts'
import { applySetUp, isWholeSetUp } from '../shop/set-up-apply.ts'
import { shopMisfits } from '../shop/set-up-rules.ts'
import type { Shop } from '../shop/shop.ts'
import type { Ask } from './answers.ts'
import type { Command, DayCommand } from './commands.ts'
import type { Case, Context, Decision } from './decision.ts'
import { askFor, happen, happenedAt, refuse, take } from './decision.ts'
import type { Event } from './events.ts'
import { afterDue, dueSetUps, inTurn, lostIn, movedWith, setUpChanged } from './planned-set-ups.ts'
import { retiredInUse } from './retired-in-use.ts'
import { doughMoved, fits } from './set-up-fits.ts'
import type { PlannedSetUp, State } from './state.ts'
import { eventVersion } from './upcast.ts'

type ChangeSetUp = Extract<Command, { type: 'changeSetUp' }>

/** The only command that an empty shop takes. What is running keeps the targets it began with. */
export function decideChangeSetUp(state: State, command: ChangeSetUp, context: Context): Decision {
  if (state.shop === null && !isWholeSetUp(command.changes)) return refuse('set-up-mismatch', { id: null })
  const due = dueSetUps(state, context.nowMs, fits)
  const ground = afterDue(state, due)
  const { fromMs } = command
  const decision =
    ground.shop === null || fromMs === undefined || fromMs <= context.nowMs
      ? changeNow(ground, command, context)
      : planChange(ground, ground.shop, { ...command, fromMs }, context)
  return decision.kind === 'taken' ? { ...decision, events: [...due, ...decision.events] } : decision
}

function changeNow(state: State, command: ChangeSetUp, { nowMs }: Context): Decision {
  const before = state.shop
  const shop = applySetUp(before, command.changes)
  const [misfit] = [...doughMoved(before, shop), ...shopMisfits(shop)]
  if (misfit !== undefined) return refuse('set-up-mismatch', { id: misfit.id })
  const moved = before === null ? [] : movedWith(state.setUps.values(), before, shop, nowMs)
  const planned = afterDue(state, moved).setUps
  const lost = before === null ? [] : newlyLost(state, lostIn(shop, planned.values(), fits))
  const asked = askFor(command, [...retiredInUse(state, shop), ...asksOf(lost)])
  if (asked !== null) return asked
  return taken(command, [setUpChanged(nowMs, command.changes), ...moved, ...lost.map((one) => droppedAt(one, nowMs))])
}

/**
 * A change for later is held against the shop as it will be by then. Nothing is asked of pieces that are there now:
 * these are not the ones that will be there then.
 */
function planChange(state: State, shop: Shop, command: ChangeSetUp & Pick<PlannedSetUp, 'fromMs'>, context: Context) {
  const { nowMs, deviceId } = context
  if (state.setUps.size >= SET_UPS_MAX) return refuse('too-many', { most: SET_UPS_MAX })
  const { fromMs, changes } = command
  const setUp: PlannedSetUp = { id: setUpId(derivedId(command.id, 1)), fromMs, changes, deviceId }
  const turns = inTurn(shop, [...state.setUps.values(), setUp], fits)
  if (turns.some((turn) => turn.setUp.id === setUp.id && turn.after === null))
    return refuse('set-up-mismatch', { id: misfitOf(turns, shop, setUp) })
  const lost = newlyLost(state, new Set(turns.filter(({ after }) => after === null).map((turn) => turn.setUp.id)))
  const asked = askFor(command, asksOf(lost))
  if (asked !== null) return asked
  const planned: Event = { v: eventVersion('setUpPlanned'), atMs: nowMs, type: 'setUpPlanned', setUp }
  return taken(command, [planned, ...lost.map((one) => droppedAt(one, nowMs))])
}

/** What does not fit of a planned change, in its turn; null for the shop as a whole. */
function misfitOf(turns: ReturnType<typeof inTurn>, shop: Shop, { id }: PlannedSetUp): string | null {
  const at = turns.findIndex(({ setUp }) => setUp.id === id)
  const before = turns.slice(0, at).reduce((so, { after }) => after ?? so, shop)
  const after = applySetUp(before, turns[at]?.setUp.changes ?? [])
  return [...doughMoved(before, after), ...shopMisfits(after)][0]?.id ?? null
}

/** Planned changes that would not fit any more and did before. */
function newlyLost({ shop, setUps }: State, lost: ReadonlySet<string>): readonly PlannedSetUp[] {
  const before = shop === null ? new Set<string>() : lostIn(shop, setUps.values(), fits)
  return [...setUps.values()].filter(({ id }) => lost.has(id) && !before.has(id))
}

function asksOf(lost: readonly PlannedSetUp[]): readonly Ask[] {
  return lost.slice(0, 1).map(({ fromMs }) => ({ code: 'loses-planned', params: { count: lost.length, fromMs } }))
}

function droppedAt({ id }: PlannedSetUp, atMs: Event['atMs']): Event {
  return { v: eventVersion('setUpDropped'), atMs, type: 'setUpDropped', setUpId: id }
}

function taken(command: ChangeSetUp, events: readonly Event[]): Decision {
  return { kind: 'taken', events, told: { type: 'changeSetUp', pieces: command.changes.length } }
}

/** More planned changes than this are more likely a mistake than a plan. */
export const SET_UPS_MAX = 20

export function decideDropSetUp(oneCase: Case<Extract<DayCommand, { type: 'dropSetUp' }>>): Decision {
  const { command, state, shop } = oneCase
  const dropped = state.setUps.get(command.setUpId)
  if (dropped === undefined) return refuse('unknown-set-up')
  const others = [...state.setUps.values()].filter((one) => one !== dropped)
  const lost = newlyLost(state, lostIn(shop, others, fits))
  const asked = askFor(command, asksOf(lost))
  if (asked !== null) return asked
  const atMs = happenedAt(oneCase)
  for (const one of [dropped, ...lost]) happen(oneCase, atMs, { type: 'setUpDropped', setUpId: one.id })
  return take(oneCase)
}

/** Nothing of its own: `decide` puts what is due before every command, and refuses this one when nothing is. */
export function decideTakeUpSetUps(oneCase: Case<Extract<DayCommand, { type: 'takeUpSetUps' }>>): Decision {
  return take(oneCase)
}

/** Imported sales are rows beside the journal; which file they came from is history. */
export function decideNoteImport(oneCase: Case<Extract<DayCommand, { type: 'noteImport' }>>): Decision {
  const { name, sha256, rows, from, to } = oneCase.command
  happen(oneCase, happenedAt(oneCase), { type: 'importNoted', name, sha256, rows, from, to })
  return take(oneCase, { text: name, pieces: rows, date: from })
}
