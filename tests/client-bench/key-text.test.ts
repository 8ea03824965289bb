import { describe, expect, it } from 'vitest'
import type { KeyRoom, KeyRow, KeyWords } from '../../client/bench/key-text.ts'
import { firstFitting, keyText, wrapped } from '../../client/bench/key-text.ts'
import { textWidthPx } from '../../client/parts/text-width.ts'

const ROOM: KeyRoom = {
  widthPx: 320,
  heightPx: 104,
  actPx: 34,
  minPx: 25,
  moreText: (count) => `+${count}`,
  allText: '48, 3 kinds',
}

function words(parts: Partial<KeyWords> = {}): KeyWords {
  return { what: 'Flip 2', when: 'in 40 s', contents: ['Sesame 36', 'Poppy 12'], notes: [], ...parts }
}

function texts(rows: readonly KeyRow[]): readonly string[] {
  return rows.map((row) =>
    row.kind === 'act' ? [row.strong, row.rest].filter((text) => text !== '').join(' ') : row.text,
  )
}

const LONG = ['Pumpernickel with Onions 36', 'Cinnamon Raisin & Walnut 24', 'Jalapeño Cheddar Special 12']

describe('[B3] given words for a key, when set', () => {
  it.each([
    ['all fit', words(), {}, ['Flip 2 in 40 s', 'Sesame 36, Poppy 12']],
    ['no time is known', words({ when: '' }), {}, ['Flip 2', 'Sesame 36, Poppy 12']],
    ['the time needs a row of its own', words(), { widthPx: 190 }, ['Flip 2', 'in 40 s', 'Sesame 36, +1']],
    [
      'a note is to be told',
      words({ notes: ['at the door'] }),
      {},
      ['Flip 2 in 40 s', 'Sesame 36, Poppy 12', 'at the door'],
    ],
    [
      'a note does not fit',
      words({ notes: ['more than the shelf takes on any day'] }),
      {},
      ['Flip 2 in 40 s', 'Sesame 36, Poppy 12'],
    ],
    [
      'name and time would be read as one number',
      words({ what: 'Plain 1 of 2', when: '7 min', contents: ['resting'] }),
      {},
      ['Plain 1 of 2', '7 min', 'resting'],
    ],
    ['names are long', words({ contents: LONG }), {}, ['Flip 2 in 40 s', 'Pumpernickel with Onions', '36, +2']],
    ['names are long and rows few', words({ contents: LONG }), { heightPx: 76 }, ['Flip 2 in 40 s', '48, 3 kinds']],
    [
      'nothing is planned',
      words({ what: 'Load 1', when: '', contents: ['choose what'] }),
      {},
      ['Load 1', 'choose what'],
    ],
  ] as const)('and %s, then so', (_case, said, room, rows) => {
    expect(texts(keyText(said, { ...ROOM, ...room }).rows)).toEqual(rows)
  })

  it('and a word of the act is too wide for its size, then a smaller one breaks none', () => {
    const said = words({ what: 'Cinnamon raisin', when: '', contents: ['Mixer off'] })
    const narrow = keyText(said, { ...ROOM, actPx: 27, widthPx: Math.ceil(textWidthPx('Cinnamon', 26, 'strong')) })
    expect(texts(narrow.rows)).toEqual(['Cinnamon', 'raisin', 'Mixer off'])
  })

  it('and a word with a hyphen is too wide, then it breaks there', () => {
    expect(wrapped('Pre-ferment', 25, textWidthPx('Pre-ferm', 25, 'strong'), 'strong')).toEqual(['Pre-', 'ferment'])
  })

  it('and only smaller rows show what it is done to, then these', () => {
    const said = words({ what: 'Voltear Horno-12', when: 'en 40 s', contents: ['Sésamo 36'] })
    const narrow = keyText(said, { ...ROOM, widthPx: 160 })
    expect(narrow.actPx).toBe(ROOM.minPx)
    expect(texts(narrow.rows)).toEqual(['Voltear', 'Horno-12', 'en 40 s', 'Sésamo 36'])
  })

  it('and not even the time fits, then the act alone', () => {
    const said = words({ what: 'Out of Deck-002', when: '12 min late' })
    expect(texts(keyText(said, { ...ROOM, widthPx: 130, heightPx: 54 }).rows)).toEqual(['Out of', 'Deck-002'])
  })

  it('for any width, height and words, then no row is wider and all are no higher than the room', () => {
    for (let widthPx = 130; widthPx <= 460; widthPx += 11) {
      for (const heightPx of [104, 120, 136, 160]) {
        for (const said of [
          words(),
          words({ contents: LONG, notes: ['not confirmed yet'] }),
          words({ when: '12 min late' }),
        ]) {
          const { rows, actPx, rowEm } = keyText(said, { ...ROOM, widthPx, heightPx })
          const high = rows.reduce((sum, row) => sum + (row.kind === 'act' ? actPx : ROOM.minPx) * rowEm, 0)
          expect(high).toBeLessThanOrEqual(heightPx)
          for (const row of rows) expect(widthOf(row, actPx)).toBeLessThanOrEqual(widthPx)
        }
      }
    }
  })
})

function widthOf(row: KeyRow, actPx: number): number {
  if (row.kind !== 'act') return textWidthPx(row.text, ROOM.minPx)
  const rest = row.rest === '' ? 0 : textWidthPx(` ${row.rest}`, actPx)
  return textWidthPx(row.strong, actPx, 'strong') + rest
}

it('given a word that is wider than the room, when broken, then no letter is lost', () => {
  const word = 'Cinnamonraisinwalnutdough'
  const rows = wrapped(word, 25, 120, 'regular')
  expect(rows.length).toBeGreaterThan(1)
  expect(rows.join('')).toBe(word)
  for (const row of rows) expect(textWidthPx(row, 25)).toBeLessThanOrEqual(120)
})

it('given a sentence and a short form of it, when only the short one fits, then that one whole', () => {
  const long = '6:46 loaded 3: Pumpernickel with Onions 36, Cinnamon Raisin & Walnut 24'
  expect(firstFitting([long, '6:46 loaded 3'], { ...ROOM, heightPx: 30 }).join(' ')).toBe('6:46 loaded 3')
  expect(firstFitting([long, '6:46 loaded 3'], { ...ROOM, heightPx: 120 }).join(' ')).toBe(long)
  expect(firstFitting([long], { ...ROOM, heightPx: 30 })).toEqual([])
})
