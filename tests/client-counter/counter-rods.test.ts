import { describe, expect, it } from 'vitest'
import { basisOf, counterRods } from '../../client/counter/counter-rods.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { at, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { UNTIL_THREE } from './counter-maker.ts'

const NOW = at('8:00')
const ready = (clock: string, pieces = 12) => lot({ pieces, outAt: at('6:30'), readyAt: at(clock) })
const counted = { atMs: at('7:30'), pieces: 24, within: 0 }

describe('what the number for sale rests on', () => {
  it.each([
    ['nothing', {}, { how: 'nothing' }],
    [
      'pieces for sale and a load that cools',
      { lots: [ready('7:10'), ready('8:10')] },
      { how: 'baked', atMs: at('7:10') },
    ],
    ['a load that cools only', { lots: [ready('8:10')] }, { how: 'nothing' }],
    ['a count', { counted, lots: [ready('7:10', 24)] }, { how: 'counted', atMs: at('7:30'), isNow: false }],
    [
      'a count a moment ago',
      { counted: { ...counted, atMs: at('7:59:30') }, lots: [ready('7:10', 24)] },
      { how: 'counted', atMs: at('7:59:30'), isNow: true },
    ],
    ['a count, and pieces for sale since', { counted, lots: [ready('7:50')] }, { how: 'baked', atMs: at('7:50') }],
    [
      'a count, and a load that cools',
      { counted, lots: [ready('7:10', 24), ready('8:10')] },
      { how: 'counted', atMs: at('7:30'), isNow: false },
    ],
  ])('given %s, then it says so', (_what, parts, basis) => {
    expect(basisOf(stock('sesame', parts), NOW)).toEqual(basis)
  })

  it('given a count in half-dozens, then the number is about; one to the piece is not', () => {
    const state = stateWith()
    const sesame = varietyId('sesame')
    const poppy = varietyId('poppy')
    play(state, { type: 'sweep', counts: [{ varietyId: sesame, pieces: 24, within: 3 }] })
    play(state, { type: 'count', varietyId: poppy, pieces: 12 })
    const [first, second] = counterRods(state, at('6:47'), UNTIL_THREE)
    expect(first).toMatchObject({ varietyId: sesame, basis: { how: 'counted', isNow: true } })
    expect(first?.within).toBeGreaterThan(0)
    expect(second).toMatchObject({ varietyId: poppy, likely: 12, within: 0, basis: { how: 'counted', isNow: true } })
  })
})
