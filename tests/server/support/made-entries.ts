import type { Refused } from '../../../server/journal/journal.ts'
import { ASK_CODES } from '../../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import { commandId, doughId, setUpId, varietyId } from '../../../shared-core/ids.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { must } from '../../../shared-core/support.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { anyAct } from '../../core/support/any-act.ts'
import { at, lines } from '../../core/support/make.ts'
import { decided, entryOf, tap } from '../../core/support/play.ts'
import { ALL_STATIONS, shopWith, table } from '../../core/support/shop.ts'

/** Entries 1 to `count` of one shop's morning: its set-up, then openings and closings of days, the cheapest acts. */
export function someEntries(count: number, prefix = 'entry'): Entry[] {
  const state = emptyState()
  const entries: Entry[] = []
  for (let seq = 1; seq <= count; seq += 1) {
    const id = `${prefix}${String(seq).padStart(6, '0')}`
    const when = { id, nowMs: epochMs(at('5:00') + seq * 1_000) }
    const act: Act =
      seq === 1
        ? { type: 'changeSetUp', changes: setUpChanges(null, shopWith()) }
        : { type: state.day === null ? 'openDay' : 'closeDay' }
    entries.push(takenInto(state, act, when))
  }
  return entries
}

/**
 * A set-up, a price planned and taken up by a sale, one planned and dropped; between them other acts, and a note that
 * quotes what entries of the set-up have in them.
 */
export function setUpEntries(): Entry[] {
  const state = emptyState()
  const shop = shopWith()
  const price = (priceCents: number, clock: string): Act => {
    const value = { ...must(shop.varieties, varietyId('sesame')), priceCents }
    return { type: 'changeSetUp', changes: [{ entity: 'variety', value }], fromMs: at(clock) }
  }
  const sale: Act = { type: 'sell', lines: lines('sesame', 1) }
  const acts: readonly (readonly [string, Act])[] = [
    ['4:00', { type: 'changeSetUp', changes: setUpChanges(null, shop) }],
    ['5:00', sale],
    ['5:10', price(200, '6:00')],
    ['5:20', { type: 'writeNote', text: 'see "type":"setUpChanged"' }],
    ['6:00', sale],
    ['6:10', price(300, '9:00')],
    ['6:20', sale],
    ['6:30', { type: 'dropSetUp', setUpId: setUpId('made0000006.1') }],
  ]
  return acts.map(([clock, act], n) => takenInto(state, act, { id: `made000000${n + 1}`, nowMs: at(clock) }))
}

/**
 * A shop's set-up and a morning of drawn acts, folded from nothing: every kind of event is among them, and the same seed
 * gives the same entries.
 */
export function drawnMorning(count: number, seed: number): Entry[] {
  const state = emptyState()
  const changes = setUpChanges(null, shopWith({ stations: table(ALL_STATIONS) }))
  const entries = [takenInto(state, { type: 'changeSetUp', changes }, { id: 'setup00001', nowMs: at('4:00') })]
  for (let drawn = 0; entries.length < count; drawn += 1) {
    const act = drawn < 3 ? STOCK_UP[drawn] : anyAct(state, seed + drawn)
    const when = {
      id: `drawn${String(drawn).padStart(7, '0')}`,
      nowMs: epochMs(at('5:00') + drawn * 7_000),
      confirmed: ASK_CODES,
    }
    if (act !== undefined && decided(state, act, when).kind === 'taken') entries.push(takenInto(state, act, when))
  }
  return entries
}

const carryIn = { type: 'carryIn', varietyId: null, pieces: 60, stage: 'chill', sinceMs: null } as const
const STOCK_UP: readonly Act[] = [
  { ...carryIn, doughId: doughId('plain') },
  { ...carryIn, doughId: doughId('rye') },
  { type: 'setLoadList', loads: [{ shelfId: null, inAtMs: null, lines: lines('sesame', 24, 'poppy', 12) }] },
]

export function refusedAt(id: string, clock: string): Refused {
  return {
    commandId: commandId(id),
    recordedAtMs: at(clock),
    answer: { kind: 'refused', refusal: { code: 'unknown-load', params: { loadId: 'gone' } } },
  }
}

function takenInto(
  state: ReturnType<typeof emptyState>,
  act: Act,
  when: { id: string; nowMs: ReturnType<typeof at> },
): Entry {
  const decision = decided(state, act, when)
  if (decision.kind !== 'taken') throw new Error(`${act.type} was not taken`)
  const entry = entryOf(state, tap(act, when), decision, when)
  applyEntry(state, entry)
  return entry
}
