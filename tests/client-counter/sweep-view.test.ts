import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SweepRod } from '../../client/counter/sweep-view.ts'
import {
  countsOf,
  halvesAround,
  halvesCounted,
  lookedText,
  nextToLook,
  pageAround,
  rodsToCount,
  startSweep,
  sweepAct,
  withLooked,
} from '../../client/counter/sweep-view.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { at, lot, stateWith, stock } from '../core/support/make.ts'
import { rod, wordsIn } from './counter-maker.ts'

const ids = (...names: string[]) => names.map(varietyId)
const [sesame, poppy, plain] = ids('sesame', 'poppy', 'plain')
const begun = () => startSweep(ids('sesame', 'poppy', 'plain'))
const looked = (rods: readonly SweepRod[], name: string, what: SweepRod['looked']) =>
  withLooked(rods, varietyId(name), what)

describe('a sweep, rod by rod', () => {
  it('given each rod in turn, then the next one comes by itself and none comes after the last', () => {
    const one = looked(begun(), 'sesame', halvesCounted(3))
    expect(nextToLook(one, sesame ?? null)).toBe(poppy)
    const two = looked(one, 'poppy', 'skipped')
    expect(nextToLook(two, poppy ?? null)).toBe(plain)
    const three = looked(two, 'plain', halvesCounted(0))
    expect(nextToLook(three, plain ?? null)).toBeNull()
  })

  it('given a rod out of turn, then those before it are still to come', () => {
    const last = looked(begun(), 'plain', halvesCounted(2))
    expect(nextToLook(last, plain ?? null)).toBe(sesame)
  })

  it('given half-dozens, none, an exact number and a rod skipped, then one command says how well each is known', () => {
    const rods = looked(looked(looked(begun(), 'sesame', halvesCounted(3)), 'poppy', halvesCounted(0)), 'plain', {
      pieces: 17,
      within: 0,
    })
    expect(sweepAct(rods)).toEqual({
      type: 'sweep',
      counts: [
        { varietyId: 'sesame', pieces: 18, within: 3 },
        { varietyId: 'poppy', pieces: 0, within: 0 },
        { varietyId: 'plain', pieces: 17, within: 0 },
      ],
    })
    expect(countsOf(looked(rods, 'plain', 'skipped'))).toHaveLength(2)
  })

  it('given what was seen, then the rod says whether it is about', () => {
    const words = wordsIn('en')
    expect(
      [halvesCounted(3), halvesCounted(0), 'skipped', 'waiting'].map((one) => lookedText(one as never, words)),
    ).toEqual(['about 18', '0', 'skipped', '–'])
  })

  it('given any number that is thought to be there, then its half-dozen and the ones around can be touched', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300 }), (likely) => {
        const halves = halvesAround(likely)
        const nearest = Math.max(1, Math.round(likely / 6))
        expect(halves).toHaveLength(8)
        expect(halves[0]).toBeGreaterThanOrEqual(1)
        expect(halves).toContain(nearest)
        expect(halves).toContain(nearest + 4)
      }),
    )
  })

  it('given more rods than one page, then the page is that of the rod being looked at', () => {
    const rods = startSweep(Array.from({ length: 14 }, (_, n) => varietyId(`v${n}`)))
    expect(pageAround(rods, varietyId('v7')).map((one) => one.varietyId)).toEqual(
      ids('v6', 'v7', 'v8', 'v9', 'v10', 'v11'),
    )
    expect(pageAround(rods, null)).toHaveLength(2)
  })

  it('given that no rod is in doubt, when somebody counts all the same, then those known least come first', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot()] })], day: null })
    const rods = [
      rod({ varietyId: varietyId('sesame'), within: 1 }),
      rod({ varietyId: varietyId('poppy'), within: 3 }),
      rod({ varietyId: varietyId('plain'), forSale: 0 }),
    ]
    expect(rodsToCount(state, rods, at('2:00'))).toEqual(ids('poppy', 'sesame'))
  })
})
