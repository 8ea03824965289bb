import { ASK_CODES } from '../../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import type { Load, State } from '../../../shared-core/day/state.ts'
import type { Mix } from '../../../shared-core/dough/mix.ts'
import { doughId, specialDayId, toppingId, varietyId, weekdayId } from '../../../shared-core/ids.ts'
import { DEFAULT_KETTLE_CARE } from '../../../shared-core/shop/default-rules.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import type { Dough, Shop } from '../../../shared-core/shop/shop.ts'
import { assert, must } from '../../../shared-core/support.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs, spanMs } from '../../../shared-core/units.ts'
import { asked, planMixes, roomShop } from '../../core/dough/acts-shop.ts'
import { anyAct } from '../../core/support/any-act.ts'
import { at, lines } from '../../core/support/make.ts'
import { decided, entryOf, tap } from '../../core/support/play.ts'
import { ALL_STATIONS, hours, PEOPLE, STEPS, shopWith, table } from '../../core/support/shop.ts'
import { kitchenParts } from '../../core/support/shop-kitchen.ts'

/**
 * A shop's days from its set-up on: drawn acts, and between them what a draw does not reach, so that every kind of event
 * is there in today's form.
 */
export function goldenEntries(count: number, seed: number): Entry[] {
  const state = emptyState()
  const entries: Entry[] = []
  const play = (act: Act, nowMs: EpochMs): void => {
    const when = { id: `gold${String(entries.length).padStart(8, '0')}`, nowMs, confirmed: ASK_CODES }
    const decision = decided(state, act, when)
    if (decision.kind !== 'taken') return
    const entry = entryOf(state, tap(act, when), decision, when)
    applyEntry(state, entry)
    entries.push(entry)
  }
  play({ type: 'changeSetUp', changes: setUpChanges(null, fullShop()) }, at('4:00'))
  for (const act of STOCK_UP) play(act, at('4:30'))
  for (let drawn = 0; entries.length < count; drawn += 1) {
    const nowMs = epochMs(at('5:00') + drawn * 7_000)
    for (const [every, acts] of NOW_AND_THEN)
      if (drawn % every === every - 1) for (const act of acts(state, nowMs)) play(act, nowMs)
    play(anyAct(state, seed + drawn), nowMs)
  }
  return entries
}

function fullShop(): Shop {
  const plain = shopWith()
  const { ingredients, preparations, formulas, doughRoom, mixer, doughs } = roomShop()
  return shopWith({
    ...{ ingredients, preparations, formulas, doughRoom, mixer },
    doughs: new Map(
      [...plain.doughs, ...doughs].map(([id, one]) => [id, { ...one, ...plain.doughs.get(id), ...made(one) }]),
    ),
    ...kitchenParts(),
    stations: table(ALL_STATIONS),
    steps: table(STEPS),
    people: table(PEOPLE),
    kettle: { ...plain.kettle, ...DEFAULT_KETTLE_CARE },
    toppings: table([
      { id: toppingId('seed'), name: 'Seed', order: 1, contains: ['sesame'], madeOf: [], retired: false } as const,
    ]),
    weekdays: table([{ id: weekdayId('7'), hours: hours({ openMinute: 420 }), retired: false }]),
    demand: { region: 'US-IL', disappointCents: 40, takeAnotherPercent: 60, dayOldSells: 18 },
    baking: { ...plain.baking, people: [{ fromMinute: 240, people: 2 }], showUntilMinute: 540 },
    specialDays: table([
      {
        ...{ id: specialDayId('fair'), name: 'Street fair', order: 0, kind: 'event', retired: false },
        spans: [{ from: '2026-11-28', to: '2026-11-29' }],
      } as const,
    ]),
    cooler: { trays: 40, keepsAt: { degrees: 38, unit: 'F' } },
  })
}

/** What a dough is made of. */
function made({ formulaId, pieceWeight }: Dough): Pick<Dough, 'formulaId' | 'pieceWeight'> {
  return { formulaId, pieceWeight }
}

const carryIn = { type: 'carryIn', varietyId: null, pieces: 60, stage: 'chill', sinceMs: null } as const
const STOCK_UP: readonly Act[] = [
  { ...carryIn, doughId: doughId('plain') },
  { ...carryIn, doughId: doughId('rye') },
  planMixes(asked('plain', { plain: 120 }), asked('sour', { rye: 140 }), asked('sour'), asked('raisin')),
  { type: 'setLoadList', loads: [{ shelfId: null, inAtMs: null, lines: lines('sesame', 24, 'poppy', 12) }] },
]

/** Every so many drawn acts: what the shop does not count by, set-ups planned, dropped and taken up, a load back out. */
const NOW_AND_THEN: readonly (readonly [number, (state: State, nowMs: EpochMs) => readonly Act[]])[] = [
  [
    60,
    () => [
      { type: 'sell', lines: lines('sesame', 2), from: 'till' },
      { type: 'sellUnnamed', pieces: 6, from: 'till' },
    ],
  ],
  [65, ({ mixes }) => [...mixes.values()].slice(0, 2).flatMap(toBulk)],
  [70, ({ loads }) => [...loads.values()].slice(0, 1).map(backToBoards)],
  [55, ({ loads }) => [...loads.values()].slice(0, 1).map(toOtherSide)],
  [90, (state, nowMs) => [price(state, 200, epochMs(nowMs + spanMs(1, 'min')))]],
  [100, () => [{ type: 'takeUpSetUps' }]],
  [40, () => [{ type: 'takeUpOrders' }]],
  [50, ({ keeps }) => [...keeps.keys()].slice(0, 1).map((keepId) => ({ type: 'release', keepId }))],
  [110, (state, nowMs) => [price(state, 300, epochMs(nowMs + spanMs(40, 'min')))]],
  [115, ({ day }) => (day === null ? [] : [{ type: 'closeDay' }, { type: 'reopenDay', label: day.label }])],
  [95, () => [900_000, 0].map((slipMs) => ({ type: 'slipChangeover', slipMs }))],
  [120, ({ setUps }) => [...setUps.keys()].map((id) => ({ type: 'dropSetUp', setUpId: id }))],
]

function toBulk({ id, stage, formula, folds }: Mix): readonly Act[] {
  if (formula.bulk === null || stage === 'ended') return []
  return [
    { type: 'moveMix', mixId: id, from: stage, to: 'bulk' },
    { type: 'foldMix', mixId: id, fold: folds + 1 },
    { type: 'readMix', mixId: id, temp: 'dough', read: { thousandths: 78_000 + 100 * folds, unit: 'F' } },
  ]
}

function price({ shop }: State, priceCents: number, fromMs: EpochMs): Act {
  assert(shop !== null, 'a price without a shop')
  const value = { ...must(shop.varieties, varietyId('sesame')), priceCents }
  return { type: 'changeSetUp', changes: [{ entity: 'variety', value }], fromMs }
}

function toOtherSide({ id, phase, shelfId }: Load): Act {
  const to = phase === 'first-side' ? 'second-side' : 'first-side'
  return { type: 'moveLoad', loadId: id, from: phase, to, shelfId }
}

function backToBoards({ id, phase, shelfId }: Load): Act {
  return { type: 'moveLoad', loadId: id, from: phase, to: 'boards', shelfId }
}
