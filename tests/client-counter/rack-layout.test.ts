import { describe, expect, it } from 'vitest'
import { rackRoom } from '../../client/counter/counter-board.tsx'
import { counterSizes } from '../../client/counter/counter-sizes.ts'
import { nameLinesOf, rackLayout } from '../../client/counter/rack-layout.ts'
import { rackView } from '../../client/counter/rack-view.ts'
import { defaultSettings } from '../../client/live/device-settings.ts'
import { textWidthPx } from '../../client/parts/text-width.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { bigSetUp } from '../core/shop/big-set-up.ts'
import { at } from '../core/support/make.ts'
import { GLASS, rod, tabletSizes, wordsIn } from './counter-maker.ts'

const sizes = tabletSizes()
const room = rackRoom(GLASS, sizes)
const namesOf = (count: number) => [...bigSetUp(count).varieties.values()].map((variety) => variety.name)

describe('where rods stand on a ten-inch tablet', () => {
  it.each([
    ['en', 1],
    ['en', 12],
    ['en', 28],
    ['en', 60],
    ['es', 12],
    ['es', 28],
  ] as const)(
    'given %s and %i varieties with the longest names, then all have a place and every text has room',
    (language, count) => {
      const words = wordsIn(language)
      const names = namesOf(count)
      const layout = rackLayout(names, room, sizes, words)
      expect(layout.perPage * layout.pages).toBeGreaterThanOrEqual(count)
      expect(layout.rows * layout.rowPx + (layout.rows - 1) * layout.rowGapPx).toBeLessThanOrEqual(room.heightPx)
      const arrowsPx = layout.pages > 1 ? sizes.keyPx + sizes.gapPx : 0
      expect(layout.columns * layout.cellPx + arrowsPx).toBeLessThanOrEqual(room.widthPx)
      const textPx = layout.cellPx - 2 * layout.padPx
      for (const name of names)
        for (const line of nameLinesOf(name, sizes.namePx))
          expect(textWidthPx(line, sizes.namePx, 'strong')).toBeLessThanOrEqual(textPx)
      for (const text of [
        words.counter.rod.goneAbout(at('12:59')),
        words.counter.rod.soldOut(at('12:59')),
        words.counter.rod.mayBeGone,
        words.counter.rod.noneBetween(at('12:14'), at('12:59')),
      ])
        expect(textWidthPx(text, sizes.quietPx)).toBeLessThanOrEqual(textPx)
      for (const text of [words.counter.rod.coming(144, at('12:59'), 'planned'), words.counter.rod.noMore])
        expect(textWidthPx(text, sizes.quietPx, 'strong')).toBeLessThanOrEqual(textPx)
      // A rod is still a picture: more than four names high, with places for six rings at least.
      expect(layout.rodPx.height).toBeGreaterThanOrEqual(4 * sizes.namePx)
      expect(layout.maxRings).toBeGreaterThanOrEqual(6)
      // A rod is a key.
      expect(Math.min(layout.cellPx, layout.rowPx)).toBeGreaterThanOrEqual(sizes.keyPx)
    },
  )

  it('given twelve varieties, then they stand on one page', () => {
    expect(rackLayout(namesOf(12), room, sizes, wordsIn('en'))).toMatchObject({ columns: 6, rows: 2, pages: 1 })
    expect(rackLayout(namesOf(12), room, sizes, wordsIn('es'))).toMatchObject({ pages: 1 })
  })

  it.each(['en', 'es'] as const)(
    'given a phone in %s, then all rods have a page under a thumb and nothing must be dragged',
    (language) => {
      const phone = { widthPx: 390, heightPx: 844, screenWidthPx: 390, screenHeightPx: 844 }
      const small = counterSizes(defaultSettings('counter'), phone)
      const space = rackRoom(phone, small)
      const layout = rackLayout(namesOf(28), space, small, wordsIn(language))
      expect(layout).toMatchObject({ form: 'glass', pagesLie: 'across' })
      expect(layout.columns).toBeGreaterThanOrEqual(2)
      expect(layout.rows).toBeGreaterThanOrEqual(3)
      const arrowsPx = small.keyPx + small.gapPx
      const rowsPx = layout.rows * layout.rowPx + (layout.rows - 1) * layout.rowGapPx
      expect(rowsPx + arrowsPx).toBeLessThanOrEqual(space.heightPx)
      expect(5 * small.keyPx + 4 * small.gapPx).toBeLessThanOrEqual(390)
      expect(small.keyPx).toBeGreaterThanOrEqual(48)
    },
  )

  it('given a phone of which nobody said how large it is, then it is not taken for a tablet', () => {
    const phone = { widthPx: 390, heightPx: 844, screenWidthPx: 390, screenHeightPx: 844 }
    expect(counterSizes(defaultSettings('counter'), phone).panel.diagonalInch).toBeLessThan(7)
    const told = { ...defaultSettings('counter'), diagonalInches: 5.4 }
    expect(counterSizes(told, phone).panel.diagonalInch).toBe(5.4)
  })
})

describe('the rods of a page', () => {
  const rods = Array.from({ length: 28 }, (_, n) => rod({ varietyId: varietyId(`v${n}`), name: `Variety ${n}` }))
  const layout = rackLayout(
    rods.map((one) => one.name),
    room,
    sizes,
    wordsIn('en'),
  )
  const view = (page: number, hand = [{ varietyId: varietyId('v1'), pieces: 2 }]) =>
    rackView({
      rods,
      time: { nowMs: at('8:00'), closeMs: null, day: 'running' },
      hand,
      layout,
      sizes,
      words: wordsIn('en'),
      page,
    })

  it('given two pages or more, then each rod is on one of them, in the set-up’s order', () => {
    const shown = Array.from({ length: layout.pages }, (_, page) => view(page).cells.map((cell) => cell.varietyId))
    expect(layout.pages).toBeGreaterThan(1)
    expect(shown.flat()).toEqual(rods.map((one) => one.varietyId))
  })

  it('given a page that is gone, then the last one is shown', () => {
    expect(view(99).page).toBe(layout.pages - 1)
  })

  it('given a rod in hand, then it says so', () => {
    expect(
      view(0)
        .cells.filter((cell) => cell.inHandText !== '')
        .map((cell) => [cell.varietyId, cell.inHandText]),
    ).toEqual([['v1', 'in hand 2']])
  })

  it('given several arrivals, then the dashed rings are the next one, as the text says', () => {
    const arriving = rod({
      onTheWay: [
        { pieces: 36, readyAtMs: at('9:04'), from: 'oven' },
        { pieces: 48, readyAtMs: at('10:00'), from: 'planned' },
      ],
    })
    const time = { nowMs: at('8:00'), closeMs: null, day: 'running' } as const
    const [cell] = rackView({ rods: [arriving], time, hand: [], layout, sizes, words: wordsIn('en'), page: 0 }).cells
    expect(cell).toMatchObject({ onTheWay: 36, isPlanned: false, more: '36 about 9:04' })
    expect(cell?.spoken).toBe('Sesame: 24 for sale, counted 6:40, 0 kept, 36 on the way, 48 planned')
  })

  it('[I77] given only dough for an advised load, when the next one is drawn, then its rings say that they are planned', () => {
    const dough = rod({ onTheWay: [{ pieces: 48, readyAtMs: at('10:00'), from: 'planned' }] })
    const time = { nowMs: at('8:00'), closeMs: null, day: 'running' } as const
    const [cell] = rackView({ rods: [dough], time, hand: [], layout, sizes, words: wordsIn('en'), page: 0 }).cells
    expect(cell).toMatchObject({ onTheWay: 48, isPlanned: true })
    expect(cell?.spoken).toBe('Sesame: 24 for sale, counted 6:40, 0 kept, 0 on the way, 48 planned')
  })
})
