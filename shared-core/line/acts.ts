import type { Load, State, Until } from '../day/state.ts'
import type { LineAct, Station } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { later } from '../units.ts'
import type { LineActDue } from './act-due.ts'
import { actDue, bySoonest } from './act-due.ts'
import { boardsLatest } from './allot.ts'
import { contentsByLoad } from './contents.ts'
import { dipsAndPulls } from './dough-acts.ts'
import { piecesOf } from './lines.ts'
import type { LookAhead } from './look-ahead.ts'
import { loadCalls, lookAhead } from './look-ahead.ts'
import { turnOrder } from './turn.ts'

/**
 * What should be done next on the line, soonest first. Acts that no station taps are not called for: what follows
 * presumes them. Nothing is called for of which the board cannot say when: a load without a bake window stands on its
 * key only.
 * @returns empty without a set-up; keys are unique
 */
export function nextActs(state: State, nowMs: EpochMs): readonly LineActDue[] {
  const ahead = lookAhead(state, nowMs)
  if (ahead === null) return []
  const turn = new Map(turnOrder(state, ahead.shop).map((shelf, place) => [shelf.id, place]))
  return [...lifts(ahead), ...ofLoads(ahead), ...loads(ahead), ...boardings(ahead), ...dipsAndPulls(ahead)]
    .filter(({ act }) => ahead.tapped.has(act))
    .sort(bySoonest(nowMs, turn))
}

/** The acts that one station does, e.g. for its pedal: the kettle's pedal does kettle acts only. */
export function actsForStation(acts: readonly LineActDue[], station: Station): readonly LineActDue[] {
  return acts.filter(({ act }) => station.acts.includes(act))
}

/**
 * What a load in the oven waits for: the flip, if something in it is flipped and somebody taps flips; else the out.
 * `until` is null where the set-up gives no window.
 */
export function nextOfLoad(load: Load, tapped: ReadonlySet<LineAct>): { act: 'flip' | 'out'; until: Until | null } {
  const flips = load.phase === 'first-side' && load.flip !== null && tapped.has('flip')
  return flips ? { act: 'flip', until: load.flip } : { act: 'out', until: load.out }
}

/** Pieces in the kettle without a boil window are lifted by the kettle's cycle at the latest: it holds the boil. */
function lifts({ state, shop, nowMs, becomes }: LookAhead): readonly LineActDue[] {
  return [...state.batches.values()]
    .filter((batch) => batch.stage === 'kettle')
    .map(({ id, doughId, varietyId, pieces, sinceMs, until }) => {
      const atMs = until?.targetAtMs ?? later(sinceMs, shop.kettle.cycleMs)
      const lines = becomes.get(id) ?? []
      const parts = { key: `lift:${id}`, act: 'lift', atMs, batchId: id, doughId, varietyId, lines, pieces } as const
      return actDue({ ...parts, ...limits(until) }, nowMs)
    })
}

function ofLoads({ state, shop, nowMs, tapped }: LookAhead): readonly LineActDue[] {
  const contents = contentsByLoad(state, shop)
  return [...state.loads.values()].flatMap((load) => {
    const { act, until } = nextOfLoad(load, tapped)
    if (until === null) return []
    const lines = contents.get(load.id) ?? []
    const { id, shelfId, plannedId } = load
    const parts = { key: `${act}:${id}`, act, loadId: id, shelfId, plannedId, lines, pieces: piecesOf(lines) }
    return [actDue({ ...parts, atMs: until.targetAtMs, ...limits(until) }, nowMs)]
  })
}

function loads(ahead: LookAhead): readonly LineActDue[] {
  const calls = loadCalls(ahead)
  return ahead.allotments.flatMap((allotment) => {
    const { planned, shelf } = allotment.expected
    const atMs = calls.get(planned.id)
    if (atMs === undefined) return []
    const { id, lines } = planned
    const parts = {
      key: `load:${id}`,
      act: 'load',
      shelfId: shelf.id,
      plannedId: id,
      lines,
      pieces: piecesOf(lines),
    } as const
    return [actDue({ ...parts, atMs, latestAtMs: boardsLatest(allotment) }, ahead.nowMs)]
  })
}

/** Pieces on boards of which nobody has said what they become. */
function boardings({ state, nowMs, becomes }: LookAhead): readonly LineActDue[] {
  return [...state.batches.values()]
    .filter((batch) => batch.stage === 'boards' && batch.varietyId === null)
    .map(({ id, doughId, pieces, sinceMs, until }) => {
      const lines = becomes.get(id) ?? []
      const parts = { key: `board:${id}`, act: 'board', batchId: id, doughId, lines, pieces } as const
      return actDue({ ...parts, atMs: sinceMs, latestAtMs: until?.latestAtMs ?? null }, nowMs)
    })
}

function limits(until: Until | null): Pick<LineActDue, 'earliestAtMs' | 'latestAtMs'> {
  return { earliestAtMs: until?.earliestAtMs ?? null, latestAtMs: until?.latestAtMs ?? null }
}
