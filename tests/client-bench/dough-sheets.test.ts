import { describe, expect, it } from 'vitest'
import { dividerTexts, weighedDoughs } from '../../client/bench/dough-room/divider-view.ts'
import { doughTexts } from '../../client/bench/dough-room/mixer-page.tsx'
import { preparationRows } from '../../client/bench/dough-room/preparations-view.ts'
import { readingText } from '../../client/bench/dough-room/readings-view.ts'
import { endsWith, leftText, shapeChoices } from '../../client/bench/dough-room/shape-view.ts'
import { tempViews, weighView } from '../../client/bench/dough-room/weigh-view.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Mix } from '../../shared-core/dough/mix.ts'
import { doughId, preparationId } from '../../shared-core/ids.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { asked, celsius, move, plan, roomShop, shape } from '../core/dough/acts-shop.ts'
import { at } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { dough, table, variety } from '../core/support/shop.ts'
import { partsAt, roomState } from './dough-support.ts'

function planned(formula: string, gives: Readonly<Record<string, number>> = {}, shop: Shop = roomShop()) {
  const state = roomState([], {}, shop)
  const [id] = plan(state, [asked(formula, gives)], { nowMs: at('5:00') })
  const mix = () => mixIn(state, id)
  return { state, id: mix().id, mix }
}

function mixIn(state: State, id: Mix['id'] | undefined): Mix {
  const mix = id === undefined ? undefined : state.mixes.get(id)
  if (mix === undefined) throw new Error('there is no mix')
  return mix
}

describe('the mix sheet at the scale', () => {
  it('given a planned mix, when lines are weighed, then the next one stands large and the water says how warm it is to be', () => {
    const { state, id, mix } = planned('plain')
    const before = weighView(mix(), partsAt(state, at('5:00')))
    expect(before.lines.map(({ name, weight }) => `${name} ${weight}`)).toEqual([
      'flour 10 kg',
      // 5500 g less the ice that its tap is too warm for.
      'water 5481 g',
      'salt 200 g',
    ])
    expect([before.next?.key, before.toWeigh]).toEqual(['flour', 3])
    play(state, { type: 'weighLine', mixId: id, line: 'flour', done: true }, { nowMs: at('5:01') })
    const after = weighView(mix(), partsAt(state, at('5:01')))
    expect([after.next?.key, after.toWeigh]).toEqual(['water', 2])
    expect(after.next?.figures).toEqual(['+ 19 g ice', expect.stringMatching(/^at \d+ °F$/)])
  })

  it('given warm flour, then ice stands beside the water; without an ice machine the sheet says that no water is cold enough', () => {
    const { doughRoom, ...rest } = roomShop()
    if (doughRoom === null) throw new Error('there is no dough room')
    const waterIn = (shop: Shop) => {
      const { state, id, mix } = planned('plain', {}, shop)
      play(state, { type: 'readMix', mixId: id, temp: 'flour', read: celsius(38) }, { nowMs: at('5:01') })
      return weighView(mix(), partsAt(state, at('5:01'))).lines[1]
    }
    const iced = waterIn({ ...rest, doughRoom })
    expect(iced?.figures[0]).toMatch(/^\+ \d+ g ice$/)
    expect(iced?.isTrouble).toBe(false)
    const hot = waterIn({ ...rest, doughRoom: { ...doughRoom, hasIce: false } })
    expect(hot?.isTrouble).toBe(true)
    expect(hot?.details[0]).toMatch(/^No water is cold enough: the dough comes to \d+ °F$/)
  })

  it('given a pre-ferment, then its line says that none was made, that it is not ripe, or nothing; its heat is asked for', () => {
    const { state, mix } = planned('sour')
    const detailsAt = (clock: string) =>
      weighView(mix(), partsAt(state, at(clock))).lines.find(({ key }) => key === 'poolish')?.details
    expect(detailsAt('5:00')).toEqual(['none made'])
    const make = { preparationId: preparationId('poolish'), milligrams: 2_000_000, forDate: '2026-11-25' } as const
    play(state, { type: 'makePreparation', ...make }, { nowMs: at('5:00') })
    expect(detailsAt('12:59')).toEqual(['not ripe before 13:00'])
    expect(detailsAt('13:00')).toEqual([])
    const temps = (of: Mix) => tempViews(of, partsAt(state, at('5:00')), ['flour', 'preferment'])
    expect(temps(mix()).map(({ temp, text }) => `${temp}: ${text}`)).toEqual([
      'flour: assumed 68 °F',
      'preferment: not read',
    ])
    expect(temps(planned('plain').mix()).map(({ temp }) => temp)).toEqual(['flour'])
  })
})

describe('dough at the bench', () => {
  it('given a mix for two piece weights, when some are shaped, then what is to go is the plan less these, as far as the dough goes', () => {
    const { state, id, mix } = planned('plain', { plain: 90, mini: 60 })
    play(state, move(id, 'planned', 'mixing'), { nowMs: at('5:10') })
    play(state, move(id, 'mixing', 'bench'), { nowMs: at('5:30') })
    const toGo = () => shapeChoices(mix(), partsAt(state, at('5:30'))).map(({ key, toGo: pieces }) => [key, pieces])
    // 15.7 kg: 130 pieces of 120 g, or 261 of 60 g.
    expect(toGo()).toEqual([
      ['plain', 90],
      ['mini', 60],
    ])
    play(state, shape(id, 60), { nowMs: at('5:31') })
    expect(toGo()).toEqual([
      ['plain', 30],
      ['mini', 60],
    ])
    play(state, shape(id, 65), { nowMs: at('5:32') })
    // 700 g are left: 5 pieces, or 11 small ones.
    expect(toGo()).toEqual([
      ['mini', 11],
      ['plain', 0],
    ])
    const parts = partsAt(state, at('5:33'))
    expect(leftText(mix(), shapeChoices(mix(), parts)[0] ?? null, parts)).toBe('about 11 pieces left, 700 g')
  })

  it('given a dough temperature, when flour, room and water were read, then what the mixer warms by; else that it taught nothing', () => {
    const texts = (temps: readonly ('flour' | 'room' | 'water' | 'dough')[]) => {
      const { state, id, mix } = planned('plain', { plain: 90 })
      for (const temp of temps)
        play(state, { type: 'readMix', mixId: id, temp, read: celsius(20) }, { nowMs: at('5:10') })
      return doughTexts(mix(), partsAt(state, at('5:20'))).slice(1)
    }
    expect(texts(['room', 'water', 'dough'])).toEqual([
      'this mix taught no friction: flour, room or water was not read',
    ])
    expect(texts(['flour', 'room', 'water', 'dough'])).toEqual([
      expect.stringMatching(/^mixer warms by .*, from 1 mix$/),
    ])
  })

  it('given the last of one dough while another is still planned, then what ending would lose is named, and what is to come', () => {
    const { state, id, mix } = planned('plain', { plain: 90, mini: 60 })
    play(state, move(id, 'planned', 'mixing'), { nowMs: at('5:10') })
    play(state, shape(id, 60), { nowMs: at('5:31') })
    const parts = partsAt(state, at('5:33'))
    const all = shapeChoices(mix(), parts)
    const [plain = null, mini = null] = all
    expect(endsWith(mix(), { all, chosen: plain, shaped: 30 }, parts)).toEqual({ lost: '4900 g', toCome: ['Mini'] })
    expect(endsWith(mix(), { all, chosen: mini, shaped: 60 }, parts)).toEqual({ lost: '4900 g', toCome: ['Plain'] })
    expect(endsWith(mix(), { all, chosen: plain, shaped: 71 }, parts)).toEqual({ lost: null, toCome: [] })
  })

  it('given a dough of which the mixer decides everything, then its pieces are that variety', () => {
    const shop = roomShop({
      varieties: table([variety({ id: 'raisin', doughId: doughId('raisin'), decidedAt: 'mixer' })]),
    })
    const { state, mix } = planned('raisin', { raisin: 45 }, shop)
    expect(shapeChoices(mix(), partsAt(state, at('5:00'))).map(({ varietyId }) => varietyId)).toEqual(['raisin'])
  })
})

describe('what is made, read and checked beside the mixes', () => {
  it('given a mix with a pre-ferment, then it is to be made in time; once made, it stands there until it is thrown away', () => {
    const { state } = planned('sour', { rye: 100 })
    const rows = () => preparationRows(partsAt(state, at('5:30')))
    const [due] = rows()
    expect(due?.title).toBe('Make Poolish')
    // What is weighed into it: half of it flour, half water.
    expect(due?.texts.slice(1)).toEqual(['4000 g for Wed, Nov 25', 'flour 2000 g', 'water 2000 g'])
    expect(due?.due).not.toBeNull()
    if (due?.due == null) return
    const { milligrams, forDate } = due.due
    play(
      state,
      { type: 'makePreparation', preparationId: preparationId('poolish'), milligrams, forDate },
      { nowMs: at('5:30') },
    )
    const [made] = rows()
    expect(rows()).toHaveLength(1)
    expect(made?.due).toBeNull()
    expect(made?.texts[0]).toMatch(/, ripe in 8 h$/)
  })

  it('given a culture to build, then its seed stands last', () => {
    const base = roomShop()
    const poolish = [...base.preparations.values()].map((one) => ({ ...one, seedPercent: 20_000 }))
    const { state } = planned('sour', { rye: 100 }, roomShop({ preparations: table(poolish) }))
    expect(preparationRows(partsAt(state, at('5:30')))[0]?.texts.at(-1)).toMatch(/^\d+ g of the ripe one$/)
  })

  it('given a place, then it says what was read and when, else what is assumed', () => {
    const { state } = planned('plain')
    expect(readingText('room', partsAt(state, at('5:00')))).toBe('assumed 72 °F')
    play(state, { type: 'readPlace', place: 'room', read: celsius(24.5) }, { nowMs: at('5:10') })
    expect(readingText('room', partsAt(state, at('5:20')))).toBe('24.5 °C at 5:10')
  })

  it('given pieces weighed behind the divider, then they say how far off they are; with a label, what it comes to', () => {
    const plain = dough({ id: 'plain', formulaId: roomShop().doughs.get(doughId('plain'))?.formulaId ?? null })
    const grams = (value: number) => ({ thousandths: value * 1_000, unit: 'g' }) as const
    const labelled = { ...plain, pieceWeight: grams(120), labelWeight: grams(110) }
    const state = roomState([], {}, roomShop({ doughs: table([labelled, dough({ id: 'old', order: 2 })]) }))
    expect(weighedDoughs(partsAt(state, at('5:00'))).map(({ id }) => id)).toEqual(['plain'])
    expect(dividerTexts(doughId('plain'), partsAt(state, at('5:00')))).toEqual([])
    const weights = [124, 125, 126, 125, 125].map(grams)
    play(state, { type: 'weighPieces', doughId: doughId('plain'), mixId: null, weights }, { nowMs: at('5:00') })
    const texts = dividerTexts(doughId('plain'), partsAt(state, at('5:01')))
    expect(texts[0]).toBe('5 g too heavy on average')
    expect(texts).toContain('set the divider lighter')
    expect(texts).toContain('label 110 g: weigh 12 at least')
  })
})
