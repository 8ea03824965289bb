import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Batch } from '../../../shared-core/day/state.ts'
import type { Mix, MixStage } from '../../../shared-core/dough/mix.ts'
import { roomActs } from '../../../shared-core/dough/room-acts.ts'
import { mixId } from '../../../shared-core/ids.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs, spanMs } from '../../../shared-core/units.ts'
import type { BatchParts } from '../support/make.ts'
import { at, batch, stateWith, until } from '../support/make.ts'
import { dwell, shopWith } from '../support/shop.ts'
import { formula, mix, sheetLine } from './room-mix.ts'

const TODAY = '2026-11-24'
const noonOf = (date: string) => epochMs(Date.parse(`${date}T18:00:00Z`))

function acts(nowMs: EpochMs, mixes: readonly Mix[], batches: readonly Batch[] = []) {
  const shop = shopWith()
  const state = stateWith({ shop, batches })
  for (const one of mixes) state.mixes.set(one.id, one)
  return roomActs(state, shop, nowMs, TODAY, noonOf)
}

function said(nowMs: EpochMs, mixes: readonly Mix[], batches: readonly Batch[] = []) {
  return acts(nowMs, mixes, batches).map(({ key, status }) => `${key} ${status}`)
}

const tray = (id: string, parts: BatchParts = {}) => batch({ id, stage: 'proof', ...parts })
const ofMix = (one: Batch, id: string): Batch => ({ ...one, mixId: mixId(id) })

const FOLDED = formula({
  bulk: { window: dwell(2, 3, 4, 'h'), foldsMs: [spanMs(30, 'min'), spanMs(60, 'min')], chill: dwell(8, 12, 24, 'h') },
})
const RAISIN = formula({ mixInMs: spanMs(10, 'min') })
const RAISINS = [sheetLine('flour'), sheetLine('raisins', { at: 'mixIn' })]

describe('what is to be done next in the dough room', () => {
  it.each([
    // stage, since, of what, now, then
    ['planned', '5:00', { startAtMs: at('6:00') }, '5:50', ['startMix:m1 coming']],
    ['planned', '5:00', { startAtMs: at('6:00') }, '6:00', ['startMix:m1 due']],
    ['planned', '5:00', { startAtMs: at('6:00') }, '6:16', ['startMix:m1 late']],
    ['mixing', '6:00', {}, '6:11', ['mixerOff:m1 coming']],
    ['mixing', '6:00', {}, '6:12', ['mixerOff:m1 due']],
    ['mixing', '6:00', {}, '6:16', ['mixerOff:m1 late']],
    ['rest', '6:12', {}, '6:19', ['restOver:m1 due']],
    ['rest', '6:12', { formula: formula({ restMs: spanMs(0, 'min') }) }, '6:12', ['restOver:m1 due']],
    ['bulk', '6:00', { formula: FOLDED }, '6:20', ['fold:m1:1 coming', 'bulkOver:m1 coming']],
    ['bulk', '6:00', { formula: FOLDED, folds: 1 }, '7:16', ['fold:m1:2 late', 'bulkOver:m1 coming']],
    ['bulk', '6:00', { formula: FOLDED, folds: 2 }, '9:00', ['bulkOver:m1 due']],
    ['bulkChill', '6:00', { formula: FOLDED }, '8:00', ['bulkChillOver:m1 coming']],
    ['bench', '6:00', {}, '6:10', []],
    ['ended', '6:00', {}, '6:10', []],
  ] as const)('[D100] given a mix that is %s since %s, when it is %s, then %s', (stage, since, parts, now, then) => {
    expect(said(at(now), [mix(stage as MixStage, at(since), parts)])).toEqual(then)
  })

  it('[D100] given a mix for which nobody said when, then it is called for as work begins on its day', () => {
    const later = mix('planned', at('5:00'), { id: 'm2', bakeDate: '2026-11-26' })
    const [first, ...rest] = acts(at('4:00'), [mix('planned', at('4:00')), later])
    expect([first?.key, first?.atMs, rest]).toEqual(['startMix:m1', at('5:00'), []])
  })

  it.each([
    ['not weighed', null, '6:09', ['mixIns:m1 coming', 'mixerOff:m1 coming']],
    ['not weighed', null, '6:11', ['mixIns:m1 due', 'mixerOff:m1 coming']],
    ['not weighed', null, '6:13', ['mixIns:m1 late', 'mixerOff:m1 due']],
    ['weighed before', '5:50', '6:10', ['mixIns:m1 due', 'mixerOff:m1 coming']],
    ['weighed before', '5:50', '6:11', ['mixerOff:m1 coming']],
    ['weighed in', '6:10', '6:10', ['mixerOff:m1 coming']],
  ] as const)('[D101] given mix-ins %s (%s), when it is %s, then %s', (_how, weighed, now, then) => {
    const lines = RAISINS.map((line) => ({ ...line, weighedAtMs: weighed === null ? null : at(weighed) }))
    expect(said(at(now), [mix('mixing', at('6:00'), { formula: RAISIN, lines, mixedAtMs: at('6:00') })])).toEqual(then)
  })

  it('[D102] given trays of one mix, when the first have proofed, then those within a quarter of an hour go together', () => {
    const trays = ['8:00', '8:10', '8:20'].map((target, n) =>
      ofMix(tray(`t${n}`, { pieces: 24, since: at('5:00'), until: until('7:00', target, '9:00') }), 'm1'),
    )
    const other = tray('x', { since: at('5:00'), until: until('8:00', '9:00', '10:00') })
    const [first, second, ...rest] = acts(at('8:05'), [], [...trays, other])
    expect(first).toMatchObject({ key: 'chill:plain:m1', status: 'due', batchIds: ['t0', 't1'], pieces: 48 })
    expect(first?.latestAtMs).toBe(at('9:00'))
    expect([second?.key, rest]).toEqual(['chill:plain:x', []])
  })

  it('[D102] given the first trays are chilled, then the call for the others is the same one', () => {
    const one = ofMix(tray('t2', { until: until('7:00', '8:20', '9:00') }), 'm1')
    expect(said(at('8:15'), [], [one])).toEqual(['chill:plain:m1 coming'])
  })

  it.each([
    ['8:59', ['use:plain:b coming']],
    ['9:00', ['use:plain:b due']],
    ['12:01', ['use:plain:b late']],
  ] as const)('[D103] given trays whose window ends at 12:00, when it is %s, then %s', (now, then) => {
    const chilled = [
      tray('a', { stage: 'chill', until: { ...until('0:00', '6:00', '20:00'), latestAtMs: at('20:00', 1) } }),
      tray('b', { stage: 'chill', until: until('0:00', '6:00', '12:00') }),
    ]
    expect(said(at(now), [], chilled)).toEqual(then)
  })

  it('[D104] given a mixer to stop and older acts that can wait, then what spoils comes first, else the soonest', () => {
    const planned = mix('planned', at('5:00'), { id: 'm2', startAtMs: at('5:40') })
    const rest = mix('rest', at('5:50'), { id: 'm3' })
    expect(said(at('6:12'), [planned, rest, mix('mixing', at('6:00'))])).toEqual([
      'mixerOff:m1 due',
      'startMix:m2 late',
      'restOver:m3 due',
    ])
  })

  it('[D104] given trays long past their window and a rest that is over, then the rest comes first', () => {
    const over = tray('o', { stage: 'chill', until: until('0:00', '2:00', '4:00') })
    expect(said(at('6:12'), [mix('rest', at('6:00'))], [over])).toEqual(['restOver:m1 due', 'use:plain:o late'])
  })

  it('[D104] given any mixes and trays, then keys are unique and stay while the clock goes on', () => {
    const anyStage = fc.constantFrom<MixStage>('planned', 'mixing', 'rest', 'bulk', 'bench')
    const minute = fc.integer({ min: 0, max: 600 }).map((after) => epochMs(at('1:00') + after * 60_000))
    const any = fc.array(fc.tuple(anyStage, minute), { maxLength: 6 })
    fc.assert(
      fc.property(any, minute, (drawn, nowMs) => {
        const mixes = drawn.map(([stage, sinceMs], n) => mix(stage, sinceMs, { id: `m${n}`, formula: FOLDED }))
        const keys = acts(nowMs, mixes).map(({ key }) => key)
        expect(new Set(keys).size).toBe(keys.length)
        expect(
          acts(epochMs(nowMs + 60_000), mixes)
            .map(({ key }) => key)
            .sort(),
        ).toEqual([...keys].sort())
      }),
    )
  })
})
