import { describe, expect, it } from 'vitest'
import { shiftKeyView } from '../../client/bench/shift-key.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import { shelfId, stepId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { durationMs } from '../../shared-core/units.ts'
import { at, batch, lines, minuteToMs, stateWith } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { PEOPLE, STEPS, shopWith, table } from '../core/support/shop.ts'
import { wordsOf } from './support.ts'

const CARE = { topUp: 40, skim: null, malt: null, change: null }
const SHOP = shopWith({
  steps: table(STEPS),
  people: table(PEOPLE),
  kettle: { ...shopWith().kettle, recoverMs: durationMs(240_000), care: CARE },
})

const start = (): State =>
  stateWith({ shop: SHOP, recordedAt: at('3:00'), batches: [batch({ id: 'r', stage: 'rack', pieces: 200 })] })
const keyAt = (state: State, nowMs: EpochMs) =>
  shiftKeyView({
    state,
    nowMs,
    roomActs: [],
    kitchenActs: [],
    ruler: rulerOf(state, nowMs, minuteToMs),
    words: wordsOf(SHOP),
  })

describe('the key for the ends of a shift', () => {
  it('[B10] given an opening list, then it shows the next step and how many are done; late steps make it late', () => {
    const state = start()
    expect(keyAt(state, at('3:20'))).toMatchObject({
      what: 'Opening',
      tone: 'plain',
      act: null,
      sheet: { kind: 'opening' },
    })
    expect(keyAt(state, at('3:20'))?.details).toEqual(['Oven-on 3:30'])
    expect(keyAt(state, at('3:40'))?.tone).toBe('late')
    play(state, { type: 'doStep', stepId: stepId('oven-on'), doughId: null, personId: null }, { nowMs: at('3:40') })
    expect(keyAt(state, at('3:40'))?.details).toEqual(['Kettle-lit 3:45'])
  })

  it('[B10] given a care that is due, then a touch does it, before any list; then it says that the water boils', () => {
    const state = start()
    const load = { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('plain', 48) } as const
    play(state, load, { nowMs: at('4:40') })
    expect(keyAt(state, at('4:41'))).toMatchObject({
      what: 'Top up',
      tone: 'act',
      act: { type: 'care', care: 'topUp' },
    })
    expect(keyAt(state, at('4:41'))?.details).toEqual(['48 boiled'])
    play(state, { type: 'care', care: 'topUp' }, { nowMs: at('4:41') })
    expect(keyAt(state, at('4:42'))).toMatchObject({ what: 'Boils now', act: { type: 'care', care: 'boiling' } })
    expect(keyAt(state, at('4:42'))?.details).toEqual(['boils again in 3 min'])
    expect(keyAt(state, at('4:46'))).toBeNull()
  })

  it.each([
    ['9:59', null],
    ['10:00', 'Changeover'],
    ['11:59', 'Changeover'],
    ['12:00', null],
  ] as const)('[B10] given a changeover from 11:00 to 12:00, when it is %s, then the key is %s', (clock, what) => {
    const state = start()
    play(
      state,
      { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('plain', 36) },
      { nowMs: at('9:00') },
    )
    expect(keyAt(state, at(clock))?.what ?? null).toBe(what)
  })

  it('[B10] given notes and nothing else, then they are shown until the first load', () => {
    const shop = shopWith()
    const state = stateWith({ shop, recordedAt: at('3:00') })
    play(state, { type: 'writeNote', text: 'rye slow' }, { nowMs: at('3:00') })
    expect(keyAt(state, at('3:10'))).toMatchObject({ what: 'Notes', details: ['rye slow'], sheet: { kind: 'notes' } })
  })
})
