import { beforeAll, describe, expect, it } from 'vitest'
import { demoShop } from '../../server/demo/demo-shop.ts'
import type { PastDays } from '../../server/demo/past-days.ts'
import { pastDays } from '../../server/demo/past-days.ts'
import type { Event } from '../../shared-core/day/events.ts'
import { pieceCost } from '../../shared-core/dough/cost.ts'
import { formulaFigures } from '../../shared-core/dough/formula-figures.ts'
import { leftOf } from '../../shared-core/dough/mix-left.ts'
import { onHandNow } from '../../shared-core/dough/on-hand.ts'
import { untilOf } from '../../shared-core/ferment/until-of.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { milliCelsiusOf } from '../../shared-core/shop/temperature.ts'
import { must } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'

const NOON = epochMs(Date.parse('2026-11-24T12:15:00Z'))
const DAYS = 4

let past: PastDays
let events: readonly Event[]
beforeAll(() => {
  past = pastDays({ nowMs: NOON, seed: 1, days: DAYS })
  events = past.entries.flatMap((entry) => entry.events)
})

describe('the demo’s dough room', () => {
  it('[D109] given its past days, then each act of the dough room is there, each day from wanted to chilled', () => {
    const acts = new Map<string, number>()
    for (const { told } of past.entries) acts.set(told.type, (acts.get(told.type) ?? 0) + 1)
    const daily = ['setWanted', 'planMixes', 'weighLine', 'readMix', 'moveMix', 'foldMix', 'shape', 'moveBatch']
    const more = ['makePreparation', 'readPlace', 'weighPieces']
    for (const act of [...daily, ...more]) expect(acts.get(act) ?? 0, act).toBeGreaterThanOrEqual(DAYS)
    expect(acts.get('countIngredients') ?? 0).toBeGreaterThan(0)
    const begun = events.filter((event) => event.type === 'mixMoved' && event.begun !== null)
    expect(begun.length).toBeGreaterThanOrEqual(DAYS * 6)
  })

  it('[D109] given what was mixed, then nothing is left in a bowl, little was lost, and pieces come out of mixes', () => {
    const planned = events.flatMap((event) => (event.type === 'mixesPlanned' ? event.mixes : []))
    const ended = events.flatMap((event) => (event.type === 'mixEnded' ? [event] : []))
    expect(ended.length).toBe(planned.length)
    expect(ended.filter(({ spoiltMilligrams }) => spoiltMilligrams > 0)).toEqual([])
    for (const { mixId, lostMilligrams } of ended) {
      const mix = planned.find(({ id }) => id === mixId)
      const dough = mix?.lines.reduce((sum, { milligrams }) => sum + milligrams, 0) ?? 0
      // Bowl and divider keep 1.5 %, and what rounding to whole pieces and to the scale's step leaves.
      expect(lostMilligrams / dough).toBeLessThan(0.04)
    }
    const shaped = events.flatMap((event) => (event.type === 'piecesShaped' ? [event] : []))
    expect(shaped.filter(({ from }) => from === undefined)).toEqual([])
    expect([...past.state.mixes.values()].filter((mix) => leftOf(mix) > 0)).toEqual([])
  })

  it('[D109] given the evening, then tomorrow’s trays stand in the cooler with their windows, enough of each dough', () => {
    const { state } = past
    const tomorrow = must(state.wanted, '2026-11-24')
    for (const { doughId, pieces, ordered } of tomorrow.lines) {
      const trays = [...state.batches.values()].filter((batch) => batch.doughId === doughId && batch.stage === 'chill')
      const there = trays.reduce((sum, batch) => sum + batch.pieces, 0)
      const asked = pieces + ordered
      // A tray slips now and then: of a small dough half of one is more than 3 %.
      const halfTray = must(demoShop(NOON).doughs, doughId).trayPieces / 2
      expect(there, doughId).toBeGreaterThanOrEqual(Math.min(asked * 0.97, asked - halfTray))
      for (const batch of trays) expect(untilOf(state, batch)?.latestAtMs ?? 0, doughId).toBeGreaterThan(NOON)
    }
  })

  it('[D109] given days of readings, then friction is learnt near what the mixer does, and dough comes out as wished', () => {
    const frictions = [...past.state.frictions.values()]
    expect(frictions.map(({ formulaId }) => formulaId)).toContain('plain')
    const plain = frictions.find(({ formulaId }) => formulaId === 'plain')
    // The demo's mixer warms by 31 °F where the set-up says 28: 17.2 °C.
    expect(Math.abs((plain?.milliCelsius ?? 0) - 17_222)).toBeLessThan(1_000)
    const last = events.flatMap((event) =>
      event.type === 'mixRead' && event.temps.dough !== null ? [event.temps.dough] : [],
    )
    const off = last.slice(-12).map((read) => Math.abs(milliCelsiusOf(read) - 25_556))
    expect(off.sort((a, b) => a - b)[6] ?? Number.NaN).toBeLessThan(1_200)
  })

  it('[D109] given its stock, then no ingredient runs out, and flour goes down by what was mixed', () => {
    const onHand = onHandNow(past.state)
    expect(onHand.length).toBe(inUse(demoShop(NOON).ingredients).filter(({ bag }) => bag !== null).length)
    expect(onHand.filter(({ milligrams }) => milligrams <= 0)).toEqual([])
  })

  it('given its formulas, then none is out of the ranges that bakers keep, and every piece has a cost', () => {
    const shop = demoShop(NOON)
    for (const formula of inUse(shop.formulas)) {
      expect(formulaFigures(shop, formula).warnings, formula.id).toEqual([])
    }
    for (const { id, priceCents } of inUse(shop.varieties)) {
      const cost = pieceCost(shop, id)
      expect([cost?.unpriced, cost?.missing], id).toEqual([[], []])
      // A small shop's ingredients are a tenth to a third of its price (common practice, no source); minis the least.
      expect((cost?.cents ?? 0) / priceCents, id).toBeGreaterThan(0.03)
      expect((cost?.cents ?? 0) / priceCents, id).toBeLessThan(0.35)
    }
  })
})
