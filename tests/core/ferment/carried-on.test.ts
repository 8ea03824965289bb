import { describe, expect, it } from 'vitest'
import type { Batch, State } from '../../../shared-core/day/state.ts'
import { doughId, mixId } from '../../../shared-core/ids.ts'
import { nextActs } from '../../../shared-core/line/acts.ts'
import { at, lines, planned } from '../support/make.ts'
import { eventsOf, play } from '../support/play.ts'
import { ALL_STATIONS, table } from '../support/shop.ts'
import { clockShop, clockState, readings, standing } from './clocks.ts'

const PLAIN = doughId('plain')
const MINUTE = 60_000
const shop = clockShop({ stations: table(ALL_STATIONS) })

function only(state: State): Batch {
  const [first, ...others] = state.batches.values()
  if (first === undefined || others.length > 0) throw new Error(`${state.batches.size} batches`)
  return first
}

function toChill(state: State, batch: Batch, nowMs = at('7:00')) {
  const { id: batchId, pieces } = batch
  return play(state, { type: 'moveBatch', batchId, from: 'proof', to: 'chill', pieces }, { nowMs })
}

describe('what pieces carry with them', () => {
  const trays = { ...standing({ stage: 'proof' }), mixId: mixId('m1'), place: 'Rack 2, 5' }

  it('[D47] given trays proofed for an hour, when they are chilled, then an hour, their mix and their place go with them', () => {
    const state = clockState({ shop, batches: [trays] })
    toChill(state, trays)
    expect(only(state)).toMatchObject({
      stage: 'chill',
      fermentedMs: 60 * MINUTE,
      mixId: 'm1',
      place: 'Rack 2, 5',
    })
  })

  it('[D47] given trays that are boiled from the proof, when they go to the rack, then not their place', () => {
    const state = clockState({ shop, batches: [trays] })
    const { id: batchId, pieces } = trays
    play(state, { type: 'moveBatch', batchId, from: 'proof', to: 'rack', pieces }, { nowMs: at('7:00') })
    expect(only(state)).toMatchObject({ stage: 'rack', mixId: 'm1' })
    expect(only(state).place).toBeUndefined()
  })

  it('[D47] given chilled trays, when they are pulled, then what the cooling added goes along, their place does not', () => {
    const state = clockState({ shop, batches: [trays] })
    toChill(state, trays)
    play(state, { type: 'pull', doughId: PLAIN, varietyId: null, pieces: trays.pieces }, { nowMs: at('15:30') })
    const racked = only(state)
    expect(racked).toMatchObject({ stage: 'rack', mixId: 'm1' })
    expect(racked.place).toBeUndefined()
    // 38.42 min at 24 °C in 510 min: as in tests/reference/fermentation.test.ts.
    expect((racked.fermentedMs ?? 0) / MINUTE).toBeCloseTo(60 + 38.4198, 2)
    play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: trays.pieces }, { nowMs: at('16:00') })
    expect(only(state)).toMatchObject({ stage: 'kettle', mixId: 'm1' })
    expect(only(state).fermentedMs).toBeUndefined()
  })

  it('[D47] given pieces of two mixes pulled at once, then the riper counts, and no mix is said', () => {
    const chilled = (id: string, mix: string, fermentedMs: number) => ({
      ...standing({ id, stage: 'chill', fermentedMs }),
      mixId: mixId(mix),
    })
    const batches = [chilled('b1', 'm1', 50 * MINUTE), chilled('b2', 'm2', 70 * MINUTE)]
    const state = clockState({ shop, batches })
    play(state, { type: 'pull', doughId: PLAIN, varietyId: null, pieces: 72 }, { nowMs: at('6:00') })
    expect(only(state).fermentedMs).toBe(70 * MINUTE)
    expect(only(state).mixId).toBeUndefined()
  })
})

describe('what goes by the clocks', () => {
  const old = standing({ id: 'old', stage: 'chill', since: at('16:00', -1), fermentedMs: 50 * MINUTE }, shop)
  const ripe = standing({ id: 'ripe', stage: 'chill', since: at('18:00', -1), fermentedMs: 85 * MINUTE }, shop)
  const warm = [
    readings('cooler', [
      [at('18:00', -1), 9],
      [at('6:00'), 9],
    ]),
  ]

  it('[D48] given a warm cooler, then the ripest trays are used first, not the oldest', () => {
    const pull = { type: 'pull', doughId: PLAIN, varietyId: null, pieces: 36 } as const
    const cold = clockState({ shop, batches: [old, ripe] })
    play(cold, pull)
    expect([...cold.batches.values()].find(({ stage }) => stage === 'chill')?.id).toBe('ripe')
    const warmed = clockState({ shop, batches: [old, ripe], read: warm })
    play(warmed, pull)
    expect([...warmed.batches.values()].find(({ stage }) => stage === 'chill')?.id).toBe('old')
  })

  it('[D48] given trays over-proofed by the clock, when they are pulled, then that is too late; chilled too soon, too early', () => {
    const state = clockState({ shop, batches: [ripe], read: warm })
    const events = play(state, { type: 'pull', doughId: PLAIN, varietyId: null, pieces: 36 })
    expect(eventsOf(events, 'batchMoved')[0]?.over).toEqual(['too-late'])
    const proofing = standing({ stage: 'proof' }, shop)
    const cold = clockState({ shop, batches: [proofing], read: [readings('room', [[at('6:00'), 15]])] })
    expect(eventsOf(toChill(cold, proofing), 'batchMoved')[0]?.over).toEqual(['too-early'])
  })

  it('[D48] given a load for which trays are pulled, then no later than their clock says', () => {
    const load = planned({ inAt: at('9:00'), lines: lines('sesame', 36) })
    const pullOf = (state: State) =>
      nextActs({ ...state, planned: new Map([[load.id, load]]) }, at('6:00')).find(({ act }) => act === 'pull')
    expect(pullOf(clockState({ shop, batches: [ripe] }))?.status).toBe('coming')
    expect(pullOf(clockState({ shop, batches: [ripe], read: warm }))?.status).toBe('late')
  })
})
