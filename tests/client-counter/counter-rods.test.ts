import { describe, expect, it } from 'vitest'
import { basisOf, counterRods } from '../../client/counter/counter-rods.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { at, lines, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'

const NOW = at('8:00')
const ready = (clock: string, pieces = 12) => lot({ pieces, outAt: at('6:30'), readyAt: at(clock) })
const counted = { atMs: at('7:30'), pieces: 24, within: 0 }
const sales = (clock: string) => [{ fromMs: at(clock), pieces: 6 }]

describe('what the number for sale rests on', () => {
  it.each([
    ['nothing', {}, { how: 'nothing' }],
    [
      'pieces for sale and a load that cools',
      { lots: [ready('7:10'), ready('8:10')] },
      { how: 'baked', atMs: at('7:10') },
    ],
    ['a load that cools only', { lots: [ready('8:10')] }, { how: 'nothing' }],
    ['a count', { counted, lots: [ready('7:10', 24)] }, { how: 'counted', atMs: at('7:30'), lessSales: false }],
    [
      'a count and sales after it',
      { counted, lots: [ready('7:10', 18)], pace: sales('7:45') },
      { how: 'counted', atMs: at('7:30'), lessSales: true },
    ],
    [
      'a count and sales before it',
      { counted, lots: [ready('7:10', 18)], pace: sales('7:15') },
      { how: 'counted', atMs: at('7:30'), lessSales: false },
    ],
    ['a count, and pieces for sale since', { counted, lots: [ready('7:50')] }, { how: 'baked', atMs: at('7:50') }],
    [
      'a count, and a load that cools',
      { counted, lots: [ready('7:10', 24), ready('8:10')] },
      { how: 'counted', atMs: at('7:30'), lessSales: false },
    ],
  ])('given %s, then it says so', (_what, parts, basis) => {
    expect(basisOf(stock('sesame', parts), NOW)).toEqual(basis)
  })

  it('given a count and then a sale, then the number is the count less sales', () => {
    const state = stateWith()
    play(state, { type: 'count', varietyId: varietyId('sesame'), pieces: 24 })
    play(state, { type: 'sell', lines: lines('sesame', 6) })
    const [sesame] = counterRods(state, at('6:50'))
    expect(sesame).toMatchObject({ forSale: 18, basis: { how: 'counted', lessSales: true } })
  })
})
