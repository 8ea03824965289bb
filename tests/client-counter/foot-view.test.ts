import { describe, expect, it } from 'vitest'
import {
  actKeys,
  chosenLines,
  linesPage,
  nothingChosen,
  withChosen,
  withSingles,
} from '../../client/counter/amounts-view.ts'
import { handText, lastDoneHere, noticeView, sellKeys } from '../../client/counter/foot-view.ts'
import { keptPage } from '../../client/counter/kept-view.ts'
import { deviceId, keepId, varietyId } from '../../shared-core/ids.ts'
import { at, lines, lot, stateWith, stock } from '../core/support/make.ts'
import { play, tap } from '../core/support/play.ts'
import { rod, wordsIn } from './counter-maker.ts'

const words = wordsIn('en')
const BENCH = deviceId('bench-1')
const ROOM = { widthPx: 260, lines: 3, fontPx: 19 }

describe('the keys that sell', () => {
  it('given one rod in hand, then one, six, twelve and thirteen of it', () => {
    const keys = sellKeys(lines('sesame', 1), words)
    expect(keys.map((key) => [key.pieces, key.lines, key.detail])).toEqual([
      [1, lines('sesame', 1), ''],
      [6, lines('sesame', 6), ''],
      [12, lines('sesame', 12), ''],
      [13, lines('sesame', 13), ''],
    ])
  })

  it('given three rods in hand, then a mixed sale says how many of each', () => {
    const [, , , dozen] = sellKeys(lines('sesame', 1, 'poppy', 1, 'plain', 1), words)
    expect(dozen).toMatchObject({ detail: '5 + 4 + 4', spoken: 'sold Sesame 5, Poppy 4, Plain 4' })
  })

  it('given many rods in hand, then a key says how many kinds', () => {
    const [, , , dozen] = sellKeys(lines('sesame', 1, 'poppy', 1, 'plain', 1, 'rye', 1), words)
    expect(dozen?.detail).toBe('4 kinds')
  })

  it('given more in hand than a key sells, then it says why it cannot', () => {
    const keys = sellKeys(lines('sesame', 7), words)
    expect(keys.map((key) => key.refusal)).toEqual(['', '7 in hand', '', ''])
  })
})

describe('the line over the keys', () => {
  const parts = { rods: [rod({ kept: 6 })], time: { nowMs: at('8:00'), closeMs: null, day: 'running' } as const, words }

  it('given nothing in hand, then there is nothing to tell of it', () => {
    expect(handText([], parts, { roomPx: 800, fontPx: 20 })).toBe('')
  })

  it('given several rods and little room, then the others are counted', () => {
    const hand = lines('sesame', 1, 'poppy', 2, 'plain', 1)
    expect(handText(hand, parts, { roomPx: 400, fontPx: 20 })).toBe('Sesame 1, Poppy 2, Plain 1')
    expect(handText(hand, parts, { roomPx: 215, fontPx: 20 })).toBe('Sesame 1, Poppy 2, +1')
  })

  it('given one rod and little room, then only the facts that fit are told, most important first', () => {
    expect(handText(lines('sesame', 1), parts, { roomPx: 900, fontPx: 20 })).toBe(
      'Sesame: 24, counted 6:40, kept 6, no more today',
    )
    expect(handText(lines('sesame', 1), parts, { roomPx: 310, fontPx: 20 })).toBe('Sesame: 24, counted 6:40, kept 6')
  })
})

describe('the last act of this screen', () => {
  const sold = () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot({ pieces: 24 })] })] })
    play(state, { type: 'sell', lines: lines('sesame', 6) }, { id: 'sale000001' })
    return state
  }

  it('given a sale, then it can be taken back and says what it was', () => {
    expect(lastDoneHere(sold(), BENCH, words, ROOM)).toEqual({
      commandId: 'sale000001',
      text: '6:47 sold Sesame 6',
      refusal: '',
    })
  })

  it('given a mixed sale, then its first two are named and the others counted', () => {
    const state = stateWith()
    play(state, { type: 'sell', lines: lines('sesame', 4, 'poppy', 3, 'plain', 3, 'rye', 3) })
    expect(lastDoneHere(state, BENCH, words, ROOM)?.text).toBe('6:47 sold Sesame 4, Poppy 3 +2')
  })

  it('given another screen’s sale only, then there is nothing of this one', () => {
    expect(lastDoneHere(sold(), deviceId('counter-2'), words, ROOM)).toBeNull()
  })

  it('given it was taken back, then nothing is left to take back', () => {
    const state = sold()
    const [trace] = state.traces
    if (trace === undefined) throw new Error('no trace')
    play(state, { type: 'takeBack', commandId: trace.commandId })
    expect(lastDoneHere(state, BENCH, words, ROOM)).toBeNull()
  })
})

describe('questions', () => {
  it('given a count that is asked back, then the question comes with its two answers', () => {
    const params = { varietyId: 'sesame', known: 24, pieces: 80 }
    const command = tap({ type: 'count', varietyId: varietyId('sesame'), pieces: 80 })
    const view = noticeView(
      [{ id: 'n1', kind: 'ask', atMs: at('6:47'), command, asks: [{ code: 'far-count', params }] }],
      words,
    )
    expect(view).toEqual({
      id: 'n1',
      title: 'Sesame: 80 counted, 24 known. Is the count right?',
      text: '',
      answer: { yes: 'Yes, as counted', no: 'No, count again' },
    })
  })

  it('given news and a question, then the question comes first', () => {
    const command = tap({ type: 'count', varietyId: varietyId('sesame'), pieces: 80 })
    const ask = { id: 'q', kind: 'ask', atMs: at('6:47'), command, asks: [{ code: 'old-tap', params: {} }] } as const
    expect(noticeView([{ id: 'n', kind: 'not-saved', atMs: at('6:40') }, ask], words)?.id).toBe('q')
    expect(noticeView([], words)).toBeNull()
  })
})

describe('a number as rings and singles', () => {
  it.each([
    [6, 1, 7],
    [27, 0, 24],
    [52, 5, 53],
    [null, 3, 3],
  ])('given %s, when %i singles are touched, then they stand beside its half-dozens', (pieces, singles, expected) => {
    expect(withSingles(pieces, singles)).toBe(expected)
  })

  it('given rods in hand, when a number is asked for, then none is chosen, however often they were touched', () => {
    const start = nothingChosen(lines('sesame', 2, 'poppy', 1))
    expect(chosenLines(start)).toEqual([])
    expect(chosenLines(withChosen(start, varietyId('poppy'), 0))).toEqual(lines('poppy', 0))
  })

  it('given nothing chosen, then a key names no number', () => {
    const labels = (['other', 'keep', 'count'] as const).map((purpose) => actKeys(purpose, [], words, true)[0]?.label)
    expect(labels).toEqual(['Sold', 'Keep', 'Counted'])
  })

  it.each([
    [8, 0, 8, 1],
    [9, 0, 6, 2],
    [9, 1, 3, 2],
    [9, 7, 3, 2],
  ])(
    'given %i rods in hand and page %i wanted, then %i of them stand on one of %i pages',
    (rods, wanted, shown, pages) => {
      const hand = Array.from({ length: rods }, (_, n) => ({ varietyId: varietyId(`v${n}`), pieces: 1 }))
      const view = linesPage(hand, wanted)
      expect([view.items.length, view.pages]).toEqual([shown, pages])
    },
  )

  it('given what was not sold, then each variety is taken off in an act of its own', () => {
    const keys = actKeys('other', lines('sesame', 2, 'poppy', 0, 'plain', 1), words, false)
    expect(keys.map((key) => key.label)).toEqual(['Wasted 3', 'Kitchen used 3', 'Given away 3'])
    expect(keys[0]?.acts).toEqual([
      { type: 'remove', varietyId: 'sesame', pieces: 2, fate: 'wasted' },
      { type: 'remove', varietyId: 'plain', pieces: 1, fate: 'wasted' },
    ])
  })

  it('given a count of none, then it is a count all the same', () => {
    expect(actKeys('count', lines('sesame', 0), words, true)).toEqual([
      { id: 'counted', label: 'Counted 0', acts: [{ type: 'count', varietyId: 'sesame', pieces: 0 }] },
    ])
  })

  it('given several rods counted, then they are one sweep to the piece, so that one touch takes them back', () => {
    const [key] = actKeys('count', lines('sesame', 17, 'poppy', 0), words, true)
    expect(key?.acts).toEqual([
      {
        type: 'sweep',
        counts: [
          { varietyId: 'sesame', pieces: 17, within: 0 },
          { varietyId: 'poppy', pieces: 0, within: 0 },
        ],
      },
    ])
  })
})

describe('what is kept', () => {
  const keep = (id: string, clock: string) => {
    const atMs = at(clock)
    return { id: keepId(id), lines: lines('sesame', 6), keptAtMs: atMs, outAtMs: atMs, readyAtMs: atMs }
  }

  it('given more than a page, then the longest kept comes first', () => {
    const all = [keep('late', '8:00'), keep('early', '6:00'), keep('middle', '7:00')]
    expect(keptPage(all, 2, 0)).toMatchObject({ keeps: [{ id: 'early' }, { id: 'middle' }], page: 0, pages: 2 })
    expect(keptPage(all, 2, 5)).toMatchObject({ keeps: [{ id: 'late' }], page: 1 })
  })
})
