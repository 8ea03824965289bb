import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readCrew } from '../../client/desk/close/crew-view.ts'
import type { FateRow } from '../../client/desk/close/fates-view.ts'
import { allTo, fateActs, fateOf, fateRows, totalFates, withFate } from '../../client/desk/close/fates-view.ts'
import { closeWarnings } from '../../client/desk/close/last-view.ts'
import { closeWords } from '../../client/words/desk-close.ts'
import { wordsFor } from '../../client/words/words.ts'
import { closeNow } from '../../shared-core/day/close.ts'
import { keepId, varietyId } from '../../shared-core/ids.ts'
import { rods } from '../../shared-core/stock/left.ts'
import { at, batch, lines, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { shopWith } from '../core/support/shop.ts'

const SESAME: FateRow = { key: 'sesame', varietyId: varietyId('sesame'), name: 'Sesame', isDayOld: false, pieces: 10 }
const OLD: FateRow = { ...SESAME, key: 'sesame day-old', isDayOld: true, pieces: 4 }

describe('what becomes of what is left', () => {
  it('given fresh and day-old pieces of a rod, then they are rows of their own', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot({ pieces: 24 })] })] })
    play(state, { type: 'dayOldIn', lines: lines('sesame', 6) }, { confirmed: [] })
    const left = rods(state, at('14:00'))
    expect(fateRows(left).map(({ key, pieces }) => [key, pieces])).toEqual([
      ['sesame', 24],
      ['sesame day-old', 6],
    ])
  })

  it('given one fate set over what is there, then the other gives way', () => {
    const given = withFate(SESAME, new Map(), { given: 7 })
    expect(fateOf(SESAME, withFate(SESAME, given, { wasted: 6 }))).toEqual({ given: 4, wasted: 6 })
    expect(fateOf(SESAME, given)).toEqual({ given: 7, wasted: 0 })
  })

  it('given fewer pieces than were spoken of, since some were sold, then no more than there are is booked', () => {
    const fates = new Map([['sesame', { given: 8, wasted: 2 }]])
    expect(fateOf({ ...SESAME, pieces: 5 }, fates)).toEqual({ given: 5, wasted: 0 })
  })

  it('given all to one fate, then nothing stays', () => {
    const rows = [SESAME, OLD]
    expect(totalFates(rows, allTo(rows, 'given'))).toEqual({ given: 14, wasted: 0, stays: 0 })
    expect(totalFates(rows, allTo(rows, null))).toEqual({ given: 0, wasted: 0, stays: 14 })
  })

  it('given fates, then fresh and day-old pieces are booked by acts of their own', () => {
    const fates = new Map([
      ['sesame', { given: 3, wasted: 2 }],
      ['sesame day-old', { given: 0, wasted: 4 }],
    ])
    expect(fateActs([SESAME, OLD], fates)).toEqual([
      { type: 'remove', varietyId: 'sesame', pieces: 3, fate: 'given' },
      { type: 'remove', varietyId: 'sesame', pieces: 2, fate: 'wasted' },
      { type: 'dayOldOut', varietyId: 'sesame', pieces: 4, fate: 'wasted' },
    ])
  })

  it('given any numbers in any order, then given, wasted and what stays are what there is', () => {
    const change = fc.record({ fate: fc.constantFrom('given', 'wasted'), pieces: fc.nat(15) })
    fc.assert(
      fc.property(fc.array(change), (changes) => {
        const fates = changes.reduce<ReturnType<typeof allTo>>(
          (so, { fate, pieces }) => withFate(SESAME, so, { [fate]: Math.min(pieces, SESAME.pieces) }),
          new Map(),
        )
        const { given, wasted, stays } = totalFates([SESAME], fates)
        expect(given + wasted + stays).toBe(SESAME.pieces)
        expect(Math.min(given, wasted, stays)).toBeGreaterThanOrEqual(0)
        const last = changes[changes.length - 1]
        const said = { given, wasted }
        if (last?.fate === 'given' || last?.fate === 'wasted')
          expect(said[last.fate]).toBe(Math.min(last.pieces, SESAME.pieces))
      }),
    )
  })
})

describe('crew hours', () => {
  it.each([
    ['', { kind: 'nothing' }],
    ['17.5', { kind: 'minutes', minutes: 1_050 }],
    ['17,25', { kind: 'minutes', minutes: 1_035 }],
    ['0', { kind: 'minutes', minutes: 0 }],
    ['200', { kind: 'minutes', minutes: 12_000 }],
    ['201', { kind: 'wrong' }],
    ['-3', { kind: 'wrong' }],
    ['6 h', { kind: 'wrong' }],
  ])('given "%s", then %j', (text, expected) => {
    expect(readCrew(text)).toEqual(expected)
  })
})

describe('what is said before a close', () => {
  it('given pieces on the line, kept and uncounted, then each is a sentence, and what stands is carried on', () => {
    const words = wordsFor('en', shopWith())
    const state = stateWith({
      batches: [batch({ stage: 'boards', pieces: 12 }), batch({ id: 'b2', stage: 'chill', pieces: 30 })],
      stock: [stock('sesame', { lots: [lot({ pieces: 24 })] })],
    })
    play(state, { type: 'keep', lines: lines('sesame', 6) })
    const close = closeNow(state, at('14:00'), null)
    if (close === null) throw new Error('no day is open')
    expect(close.kept.map((kept) => keepId(kept.keepId))).toHaveLength(1)
    const said = closeWarnings(close, [varietyId('sesame')], { say: closeWords(words).close, names: words.names })
    expect(said).toEqual([
      '12 pieces still in the kettle, on boards or in the oven: the close asks about them.',
      'Not counted: Sesame.',
      '6 pieces kept for somebody: they stay kept.',
      '30 pieces proofing, chilled or on the rack: carried into tomorrow’s account.',
    ])
  })
})
