import { describe, expect, it } from 'vitest'
import { rodsView } from '../../client/wall/rods-view.ts'
import { widthOf } from '../../client/wall/text-lines.ts'
import type { Stock } from '../../shared-core/day/state.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { rods } from '../../shared-core/stock/left.ts'
import { withProspects } from '../../shared-core/stock/prospect.ts'
import type { StateParts } from '../core/support/make.ts'
import { at, lines, loadOf, lot, planned, stateWith, stock, until } from '../core/support/make.ts'
import { shopWith, table, variety } from '../core/support/shop.ts'
import { LAYOUT, SIZES, setting } from './support/wall.ts'

const NOW = at('7:00')

/** So many for sale, sold at so many a quarter since six. */
function selling(name: string, pieces: number, aQuarter: number, shop = shopWith()): Stock {
  const pace = ['6:00', '6:15', '6:30', '6:45'].map((from) => ({ fromMs: at(from), pieces: aQuarter }))
  return stock(
    name,
    { lots: pieces === 0 ? [] : [lot({ id: `lot ${name}`, pieces })], pace, soldToday: 4 * aQuarter },
    shop,
  )
}

type RodsAhead = ReturnType<typeof withProspects<ReturnType<typeof rods>[number]>>

/** As `view`, with what the estimate or an outlook makes of each rod put in by hand. */
function viewOf(parts: StateParts, change: (rod: RodsAhead[number]) => RodsAhead[number]) {
  const state = stateWith(parts)
  const { rods: box, rodsForm: form } = LAYOUT
  if (box === null) throw new Error('the test wall has rods')
  const ahead = withProspects(rods(state, NOW), { closeMs: at('15:00'), outlook: null })
  return rodsView({ ...setting(state.shop ?? shopWith(), NOW), rods: ahead.map(change), box, form, lines: 3 })
}

function view(parts: StateParts, { language = 'en', lineCount = 3 }: { language?: Language; lineCount?: number } = {}) {
  const state = stateWith(parts)
  const shop = state.shop ?? shopWith()
  if (LAYOUT.rods === null) throw new Error('the test wall has rods')
  const { rods: box, rodsForm: form } = LAYOUT
  return rodsView({
    ...setting(shop, NOW, language),
    rods: withProspects(rods(state, NOW), { closeMs: at('15:00'), outlook: null }),
    box,
    form,
    lines: lineCount,
  })
}

describe('the rods on the wall', () => {
  it('given one that runs out within the hour with nothing coming, then it is trouble, in words too', () => {
    const [rod] = view({ stock: [selling('sesame', 6, 6)] }).rods
    expect(rod).toMatchObject({ pieces: 6, isTrouble: true, detail: 'gone 7:15', more: 'no more coming' })
  })

  it('given more that comes before it runs out, then it is no trouble and says how many and when', () => {
    const loaded = loadOf({ phase: 'second-side', out: until('6:54', '6:58', '7:10') }, lines('sesame', 24))
    const [rod] = view({ stock: [selling('sesame', 30, 6)], loaded: [loaded] }).rods
    expect(rod).toMatchObject({ isTrouble: false, more: '24 at 7:15', onTheWay: 24 })
  })

  it('[I77] given a load in the oven and more that is dough, when rods are drawn, then only what comes next, dots while it is dough', () => {
    const loaded = loadOf({ phase: 'second-side', out: until('6:54', '6:58', '7:10') }, lines('sesame', 24))
    const dough = planned({ inAt: at('8:00'), shelf: 's2', lines: lines('sesame', 36) })
    const stock = [selling('sesame', 6, 6)]
    const [both] = view({ stock, loaded: [loaded], planned: [dough] }).rods
    expect(both).toMatchObject({ onTheWay: 24, isPlanned: false })
    const [alone] = view({ stock, planned: [dough] }).rods
    expect(alone).toMatchObject({ onTheWay: 36, isPlanned: true })
  })

  it('[G3] given more that comes only after it has run out, then from when to when there is none is said', () => {
    const loaded = loadOf({ phase: 'second-side', out: until('7:14', '7:18', '7:30') }, lines('sesame', 24))
    const rod = (language: Language) =>
      view({ stock: [selling('sesame', 6, 6)], loaded: [loaded] }, { language }).rods[0]
    expect(rod('en')).toMatchObject({ isTrouble: true, detail: 'none 7:15–7:33', more: '24 at 7:33' })
    expect(rod('es')?.detail).toBe('no hay 7:15–7:33')
  })

  it('given none since a time, then it says since when; given none yet, so', () => {
    const gone = stock('sesame', { goneSinceMs: at('6:50'), soldToday: 12 })
    expect(view({ stock: [gone] }).rods[0]).toMatchObject({ pieces: 0, isTrouble: true, detail: 'gone since 6:50' })
    const first = view({ planned: [planned({ lines: lines('poppy', 24) })] }).rods[0]
    expect(first).toMatchObject({ pieces: 0, isTrouble: false, detail: 'none yet' })
  })

  it('given some on record that have likely left unseen, then it may be gone, which is trouble, and no “none yet”', () => {
    const [rod] = viewOf({ stock: [selling('sesame', 6, 6)] }, (one) => ({ ...one, likely: 0 })).rods
    expect(rod).toMatchObject({ pieces: 0, isTrouble: true, detail: 'may be gone', more: 'no more coming' })
  })

  it('given nothing at all, then words stand in place of rods', () => {
    expect(view({})).toMatchObject({ rods: [], text: 'Nothing for sale' })
  })

  const many = (count: number, name: (n: number) => string) =>
    shopWith({
      varieties: table(Array.from({ length: count }, (_, n) => variety({ id: `v${n}`, order: n, name: name(n) }))),
    })
  const LONG = [
    'Sun-dried Tomato & Basil',
    'Cinnamon Raisin & Walnut',
    'Blueberry Lemon Crumbled',
    'Pumpernickel with Onions',
  ]

  it('given others of which one may be gone any minute, then they are counted and not called fine', () => {
    const shop = many(12, (n) => LONG[n % LONG.length] ?? '')
    const stocked = { shop, stock: [...shop.varieties.keys()].map((id, n) => selling(id, n < 11 ? 6 : 300, 6, shop)) }
    const others = (clock: string) =>
      viewOf(stocked, (rod) =>
        rod.likely < 300 ? rod : { ...rod, ahead: { ...rod.ahead, doubt: { before: 'close', fromMs: at(clock) } } },
      ).others
    expect(others('9:30')).toHaveLength(2)
    expect(others('6:59')).toEqual(others('9:30').slice(0, 1))
  })

  it.each([
    ['en', 12],
    ['en', 28],
    ['es', 12],
    ['es', 28],
  ] as const)(
    '[G2] given %s and %i varieties with the longest names, then the rods fit, names whole, and the others are counted',
    (language, count) => {
      const shop = many(count, (n) => LONG[n % LONG.length] ?? '')
      const stocks = [...shop.varieties.keys()].map((id, n) => selling(id, 5 + 7 * n, 1 + n, shop))
      for (const lineCount of [2, 3, 4]) {
        const { rods: shown, rodPx, gapPx, others } = view({ shop, stock: stocks }, { language, lineCount })
        expect(shown.length).toBeGreaterThanOrEqual(2)
        const rodsPx = shown.reduce((sum, rod) => sum + rodPx.width + 0.3 * SIZES.minPx + rod.textPx + gapPx, -gapPx)
        const othersPx = Math.max(0, ...others.map((line) => widthOf(line, SIZES.minPx)))
        expect(rodsPx + othersPx).toBeLessThanOrEqual(LAYOUT.middle.width)
        for (const rod of shown) expect(LONG).toContain(rod.nameLines.join(' '))
        expect(Number.parseInt(others[0] ?? '', 10)).toBe(count - shown.length)
        for (const rod of shown) {
          const said = [rod.detail, rod.more].filter((text) => text !== '').length
          expect(rod.nameLines.length + said).toBeLessThanOrEqual(lineCount)
        }
      }
    },
  )

  it('given room for one line beside the name only, then of one that is gone it is what comes that is said', () => {
    const gone = stock('sesame', { goneSinceMs: at('6:50'), soldToday: 12 })
    const loaded = loadOf({ phase: 'second-side', out: until('6:54', '6:58', '7:10') }, lines('sesame', 24))
    const [rod] = view({ stock: [gone], loaded: [loaded] }, { lineCount: 2 }).rods
    expect(rod).toMatchObject({ detail: '', more: '24 at 7:15' })
  })
})
