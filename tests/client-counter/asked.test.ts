import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Asked, Portioned } from '../../client/counter/orders/asked.ts'
import {
  allPieces,
  askedOf,
  orderLinesOf,
  splitAsked,
  withFewer,
  withFlag,
  withMore,
  withTurned,
} from '../../client/counter/orders/asked.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { askedLine } from '../core/orders/order-makers.ts'
import { orderLine } from '../core/orders/promise-makers.ts'
import { lines } from '../core/support/make.ts'

const [sesame, poppy] = [varietyId('sesame'), varietyId('poppy')]
const none: Asked = []
const dozen = (variety: string | null) => askedLine(variety, { dozens: 1, pieces: 0 })

/** Touches one after the other, each on what the last one chose. */
function touched(...touches: readonly (readonly [string | null, Portioned])[]) {
  return touches.reduce<{ asked: Asked; chosen: number }>(
    ({ asked, chosen }, [variety, much]) => withMore(asked, chosen, variety === null ? null : varietyId(variety), much),
    { asked: none, chosen: -1 },
  )
}

describe('[M131] given touches of varieties', () => {
  it('when a dozen, a half and one are touched, then the line grows by each, a dozen counted as the shop does', () => {
    const { asked, chosen } = touched(['sesame', 'dozen'], ['sesame', 'half'], ['sesame', 'one'])
    expect(asked).toEqual([askedLine('sesame', { dozens: 1, pieces: 7 })])
    expect(chosen).toBe(0)
    expect(allPieces(asked, 13)).toBe(20)
    expect(allPieces(asked, 12)).toBe(19)
  })

  it('when another is touched and then the first again, then each has its line and the last touched is chosen', () => {
    const { asked, chosen } = touched(['sesame', 'dozen'], [null, 'dozen'], ['sesame', 'one'])
    expect(asked).toEqual([askedLine('sesame', { dozens: 1, pieces: 1 }), dozen(null)])
    expect(chosen).toBe(0)
  })

  it('when two lines are of one variety, then the chosen one grows, else the last', () => {
    const two = [askedLine('sesame'), askedLine('sesame', { sliced: true }), askedLine('poppy')]
    expect(withMore(two, 0, sesame, 'one')).toMatchObject({ chosen: 0, asked: [{ pieces: 7 }, { pieces: 6 }, {}] })
    expect(withMore(two, 2, sesame, 'one').chosen).toBe(1)
  })

  it('when the chosen line is sliced, then the next line begins so', () => {
    const sliced = withFlag(touched(['sesame', 'dozen']).asked, 0, 'sliced')
    expect(withMore(sliced, 0, poppy, 'dozen').asked[1]?.sliced).toBe(true)
  })

  it('when a mixed line leaves one out and takes it back, then it is as it was; a line of one variety stays so', () => {
    const mixed = touched([null, 'dozen']).asked
    const without = withTurned(mixed, 0, sesame)
    expect(without[0]?.without).toEqual([sesame])
    expect(withTurned(without, 0, sesame)).toEqual(mixed)
    const one = touched(['poppy', 'dozen']).asked
    expect(withTurned(one, 0, sesame)).toEqual(one)
  })

  it('when fewer are touched, then as much goes as a touch adds, and a line without pieces goes itself', () => {
    const { asked } = touched(['sesame', 'dozen'], ['sesame', 'one'], ['poppy', 'dozen'])
    expect(withFewer(asked, 0, 'dozen')[0]).toEqual(askedLine('sesame', { dozens: 0, pieces: 1 }))
    expect(withFewer(asked, 1, 'dozen')).toEqual([asked[0]])
    expect(withFewer(asked, 1, 'one')).toEqual([asked[0]])
  })
})

describe('[M134] given an order that is changed', () => {
  it('then it begins with what it holds, and one of another dozen asks for the same pieces', () => {
    const held = [orderLine('sesame', 26, { dozens: 2 }), orderLine(null, 12, { dozens: 1 })]
    expect(orderLinesOf(askedOf(held, 13), 13).map(({ pieces }) => pieces)).toEqual([26, 12])
    expect(askedOf(held, 13)[1]).toMatchObject({ dozens: 0, pieces: 12 })
    expect(askedOf(held, 12)[0]).toMatchObject({ dozens: 2, pieces: 2 })
  })
})

describe('[M133] given an order in two parts', () => {
  it('then named lines are met before mixed ones, and what is split counts in pieces', () => {
    const asked = [
      askedLine(null, { dozens: 1, pieces: 0, without: [poppy] }),
      askedLine('sesame', { dozens: 1, pieces: 0 }),
    ]
    const { now, rest } = splitAsked(asked, lines('sesame', 15, 'poppy', 4), 12)
    expect(now).toEqual([askedLine('sesame', { pieces: 3 }), askedLine('sesame', { pieces: 12 })])
    expect(rest).toEqual([askedLine(null, { pieces: 9, without: [poppy] })])
  })

  it('given anything asked and anything there, then both parts together are what was asked for', () => {
    const kind = fc.constantFrom('sesame', 'poppy', 'plain', null)
    const line = fc.record({ kind, dozens: fc.nat(2), pieces: fc.nat(7), without: fc.subarray([sesame, poppy]) })
    const there = fc.array(fc.tuple(fc.constantFrom('sesame', 'poppy', 'plain'), fc.nat(20)), { maxLength: 4 })
    fc.assert(
      fc.property(fc.array(line, { maxLength: 5 }), there, (drawn, now) => {
        const asked = drawn.map(({ kind: variety, ...rest }) =>
          askedLine(variety, { ...rest, without: variety === null ? rest.without : [] }),
        )
        const parts = splitAsked(asked, lines(...now.flat()), 13)
        expect(allPieces(parts.now, 13) + allPieces(parts.rest, 13)).toBe(allPieces(asked, 13))
        // Nothing goes now that is not there.
        for (const variety of ['sesame', 'poppy', 'plain']) {
          const goes = parts.now.filter((one) => one.varietyId === variety)
          const has = now.filter(([name]) => name === variety).reduce((sum, [, pieces]) => sum + pieces, 0)
          expect(allPieces(goes, 13)).toBeLessThanOrEqual(has)
        }
      }),
    )
  })
})
