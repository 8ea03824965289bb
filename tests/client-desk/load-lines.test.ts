import { describe, expect, it } from 'vitest'
import { readLoadLines } from '../../client/desk/load-lines.ts'
import { deskWords } from '../../client/words/desk.ts'
import { wordsFor } from '../../client/words/words.ts'
import { shopWith } from '../core/support/shop.ts'

const shop = shopWith()
const { mistakes } = deskWords(wordsFor('en', shop)).desk
const read = (text: string) => readLoadLines(text, shop, mistakes)

describe('a load list as people type it', () => {
  it.each([
    [
      'all of it',
      '5:10 1 Sesame 36, Poppy 12',
      {
        in: '5:10',
        shelf: '1',
        lines: [
          ['Sesame', 36],
          ['Poppy', 12],
        ],
      },
    ],
    ['no shelf', '5:10 Sesame 48', { in: '5:10', shelf: null, lines: [['Sesame', 48]] }],
    ['no time', '3 Cheddar 24', { in: null, shelf: '3', lines: [['Cheddar', 24]] }],
    ['neither', 'rye 36', { in: null, shelf: null, lines: [['Rye', 36]] }],
    ['small letters and spaces', '  05:10   2  sesame   6 , ', { in: '05:10', shelf: '2', lines: [['Sesame', 6]] }],
  ])('given %s, then it is a load', (_what, text, load) => {
    expect(read(text)).toEqual({ ok: true, file: { loads: [load] } })
  })

  it.each([
    ['9:10 pm', '21:10'],
    ['9:10pm', '21:10'],
    ['9:10 P. M.', '21:10'],
    ['9 pm', '21:00'],
    ['12:05 am', '0:05'],
    ['12:05 pm', '12:05'],
    ['5:10 AM', '5:10'],
    ['21:10', '21:10'],
  ])('given the time %s, then the load goes in at %s', (typed, at) => {
    const load = { in: at, shelf: null, lines: [['Poppy', 12]] }
    expect(read(`${typed} Poppy 12`)).toEqual({ ok: true, file: { loads: [load] } })
  })

  it('given empty lines between, then each other line is a load', () => {
    const result = read('5:10 1 Sesame 36\n\n5:20 2 Rye 36\n')
    expect(result.ok && result.file.loads.map((load) => load.in)).toEqual(['5:10', '5:20'])
  })

  it.each([
    ['25:00 Sesame 6', '“25:00” is no time.', 'Hours and minutes: 5:10 am, 9:10 pm or 21:10.'],
    ['5:7 Sesame 6', '“5:7” is no time.', 'Hours and minutes: 5:10 am, 9:10 pm or 21:10.'],
    ['9:1x Sesame 6', '“9:1x” is no time.', 'Hours and minutes: 5:10 am, 9:10 pm or 21:10.'],
    ['13:10 pm Sesame 6', '“13:10 pm” is no time.', 'Hours and minutes: 5:10 am, 9:10 pm or 21:10.'],
    ['9:70 pm Sesame 6', '“9:70 pm” is no time.', 'Hours and minutes: 5:10 am, 9:10 pm or 21:10.'],
    ['9 Sesame 6', 'The oven has no shelf “9”.', 'One of: 1, 2, 3.'],
    ['Sesme 6', 'The shop has no variety “Sesme”.', 'Sesame?'],
    ['Zzz 6', 'The shop has no variety “Zzz”.', 'One of: Sesame, Poppy, Plain, Focaccia, Cheddar, Rye.'],
    [
      'Sesame',
      '“Sesame” is no variety with a number of pieces.',
      'A variety and its pieces, separated by commas: Sesame 36, Poppy 24.',
    ],
    [
      '5:10 1',
      '“1” is no variety with a number of pieces.',
      'A variety and its pieces, separated by commas: Sesame 36, Poppy 24.',
    ],
    ['Sesame 0', '0 pieces of one variety in one load are too many.', 'A whole number from 1 to 5000.'],
  ])(
    'given "%s" in the second line, then it says where, what is wrong and what would be right',
    (text, wrong, right) => {
      expect(read(`Rye 6\n${text}`)).toEqual({ ok: false, problems: [{ path: '2', wrong, right }] })
    },
  )

  it('given nothing, then it says so', () => {
    expect(read(' \n ')).toMatchObject({ ok: false, problems: [{ path: '', wrong: 'The list is empty.' }] })
  })

  it('given a shelf’s name that begins a variety’s, then the variety is meant', () => {
    const shelves = new Map(shop.shelves)
    const [first] = shelves.values()
    if (first === undefined) throw new Error('no shelf')
    shelves.set(first.id, { ...first, name: 'Rye' })
    const result = readLoadLines('Rye 36', { ...shop, shelves }, mistakes)
    expect(result).toMatchObject({ ok: true, file: { loads: [{ shelf: null, lines: [['Rye', 36]] }] } })
  })
})
