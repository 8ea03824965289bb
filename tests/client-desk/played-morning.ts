import type { DayRecordJson } from '../../client/desk/past/day-record.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { decide } from '../../shared-core/day/decide.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { forkState, toJson } from '../../shared-core/day/state-json.ts'
import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { CLOCK } from '../client-counter/counter-maker.ts'
import { at, lines } from '../core/support/make.ts'
import { context, entryOf, tap } from '../core/support/play.ts'
import { hours, shopWith } from '../core/support/shop.ts'

/** Open 6:00 to 15:00. */
export const SHOP = shopWith({ hours: hours() })

/** Acts at their times, each decided and folded as the server would have. */
export class Recorded {
  readonly state: State = emptyState()
  readonly entries: Entry[] = []

  constructor() {
    this.act('3:00', { type: 'changeSetUp', changes: setUpChanges(null, SHOP) }, -1)
  }

  act(clock: string, act: Act, dayOffset = 0, tappedAtMs: EpochMs = at(clock, dayOffset)): void {
    const nowMs = at(clock, dayOffset)
    const id = `day${String(this.state.seq).padStart(8, '0')}`
    const when = { nowMs, tappedAtMs, id, confirmed: ['line-not-empty', 'far-count', 'orders-open'] as const }
    const command = tap(act, when)
    const decision = decide(this.state, command, context(when))
    if (decision.kind !== 'taken') throw new Error(`${act.type}: ${JSON.stringify(decision)}`)
    const entry = entryOf(this.state, command, decision, when)
    applyEntry(this.state, entry)
    this.entries.push(entry)
  }
}

/**
 * Two loads: shelf 1 from 5:30 to 5:46 with sesame 36, shelf 2 from 6:10 to 6:30 with poppy 24. Sesame sells out at 7:00
 * and comes again at 8:16 out of a third load.
 */
export function morning(): { readonly record: DayRecordJson; readonly recorded: Recorded } {
  const made = new Recorded()
  const start = forkState(made.state)
  made.act('4:00', { type: 'openDay' })
  made.act('4:10', {
    type: 'carryIn',
    doughId: doughId('plain'),
    varietyId: null,
    pieces: 200,
    stage: 'rack',
    sinceMs: null,
  })
  bake(made, 's1', lines('sesame', 36), '5:30', '5:38', '5:46')
  bake(made, 's2', lines('poppy', 24), '6:10', '6:20', '6:30')
  made.act('6:50', { type: 'sell', lines: lines('sesame', 30) })
  made.act('7:00', { type: 'sell', lines: lines('sesame', 6) })
  bake(made, 's1', lines('sesame', 36), '8:00', '8:08', '8:16')
  made.act('9:00', { type: 'sell', lines: lines('sesame', 6) })
  made.act('15:10', { type: 'closeDay', crewMinutes: 600 })
  const entries = made.entries.slice(1)
  const [opened] = entries
  const record: DayRecordJson = {
    label: '2026-11-24',
    openedAtMs: opened?.recordedAtMs ?? at('4:00'),
    closedAtMs: at('15:10'),
    foldVersion: FOLD_VERSION,
    start: toJson(start),
    entries,
    clock: CLOCK,
  }
  return { record, recorded: made }
}

function bake(
  made: Recorded,
  shelf: string,
  some: ReturnType<typeof lines>,
  inAt: string,
  flipAt: string,
  outAt: string,
): void {
  made.act(inAt, { type: 'load', shelfId: shelfId(shelf), plannedId: null, lines: some })
  const load = [...made.state.loads.values()].find(({ shelfId: id }) => id === shelf)
  if (load === undefined) throw new Error(`nothing on ${shelf}`)
  made.act(flipAt, { type: 'flip', loadId: load.id })
  made.act(outAt, { type: 'out', loadId: load.id, from: 'second-side', lines: null })
}

export const SESAME = varietyId('sesame')
