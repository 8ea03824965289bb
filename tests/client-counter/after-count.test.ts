import { describe, expect, it } from 'vitest'
import { foundBy, foundText } from '../../client/counter/after-count.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { forkState } from '../../shared-core/day/state-json.ts'
import { commandId, varietyId } from '../../shared-core/ids.ts'
import { at, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { wordsIn } from './counter-maker.ts'

const stocked = () =>
  stateWith({
    stock: [
      stock('sesame', { lots: [lot({ pieces: 24 })] }),
      stock('poppy', { lots: [lot({ id: 'l2', pieces: 12 })] }),
    ],
  })

function foundAfter(act: Act, names: readonly string[]) {
  const before = stocked()
  const after = forkState(before)
  play(after, act, { id: 'count00001', nowMs: at('8:00') })
  return foundBy(before, after, commandId('count00001'), names.map(varietyId))
}

const count = (...pairs: (readonly [string, number])[]): Act => ({
  type: 'sweep',
  counts: pairs.map(([name, pieces]) => ({ varietyId: varietyId(name), pieces, within: 0 })),
})

describe('what a count found', () => {
  it.each([
    ['fewer', count(['sesame', 21]), 'Sesame: 3 fewer than known, kept as unexplained'],
    ['more', count(['sesame', 26]), 'Sesame: 2 more than known, kept as unexplained'],
    ['as many', count(['sesame', 24]), 'Counted as known, nothing is missing'],
    [
      'fewer and more',
      count(['sesame', 21], ['poppy', 14]),
      'Fewer than known: Sesame 3; more than known: Poppy 2; kept as unexplained',
    ],
    [
      'none left',
      { type: 'lastOneGone', varietyId: varietyId('sesame') },
      'Sesame: 24 fewer than known, kept as unexplained',
    ],
  ] as const)('given %s than known, then it is told as unexplained', (_what, act, text) => {
    const found = foundAfter(act as Act, ['sesame', 'poppy'])
    expect(found === null ? '' : foundText(found, wordsIn('en'))).toBe(text)
  })

  it('given a count that was not taken, then nothing is told of it', () => {
    const state = stocked()
    expect(foundBy(state, state, commandId('count00001'), [varietyId('sesame')])).toBeNull()
  })
})
