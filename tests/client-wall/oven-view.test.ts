import { describe, expect, it } from 'vitest'
import { ovenView } from '../../client/wall/oven-view.ts'
import { shelfKeys } from '../../shared-core/line/shelf-keys.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { StateParts } from '../core/support/make.ts'
import { at, lines, loadOf, planned, stateWith, until } from '../core/support/make.ts'
import { shelf, shopWith, table } from '../core/support/shop.ts'
import { LAYOUT, SIZES, setting } from './support/wall.ts'

const FLIP_AT_643 = { loadedAt: at('6:40'), flip: until('6:43', '6:43:30', '6:45') }

function oven(parts: StateParts, nowMs: EpochMs, language: Language = 'en') {
  const state = stateWith(parts)
  const shop = state.shop ?? shopWith()
  return ovenView({
    ...setting(shop, nowMs, language),
    keys: shelfKeys(state, nowMs),
    loads: state.loads,
    box: LAYOUT.oven,
  })
}

const shelves = (count: number, name = (n: number) => String(n)): Partial<Shop> => ({
  shelves: table(Array.from({ length: count }, (_, n) => shelf({ id: `s${n + 1}`, order: n, name: name(n + 1) }))),
})

const full = (count: number, name?: (n: number) => string): StateParts => {
  const shop = shopWith(shelves(count, name))
  const loaded = Array.from({ length: count }, (_, n) =>
    loadOf(
      {
        id: `l${n + 1}`,
        shelf: `s${n + 1}`,
        phase: 'second-side',
        out: until('6:50', `6:5${n % 10}:${10 + n}`, '7:10'),
      },
      lines('sesame', 24, 'poppy', 24),
      shop,
    ),
  )
  return { shop, loaded }
}

describe('a shelf on the wall', () => {
  it.each([
    ['minutes before its flip', at('6:41'), 'plain', 'running', 'Flip 1', 'in 3 min'],
    ['within a minute of it', at('6:42:50'), 'act', 'act', 'Flip 1', 'in 40 s'],
    ['when it is due', at('6:44'), 'act', 'act', 'Flip 1', 'now'],
    ['after its latest', at('6:46:30'), 'late', 'late', 'Flip 1,', '3 min late'],
  ] as const)('[G3] given a load %s, then row, ring and words say so', (_, nowMs, state, ring, what, when) => {
    const [row] = oven({ loaded: [loadOf(FLIP_AT_643, lines('sesame', 48))] }, nowMs).rows
    expect(row).toMatchObject({ state, what, when, contents: 'Sesame 48' })
    expect(row?.ring.state).toBe(ring)
  })

  it('given half of the first side gone, then half of the ring is left', () => {
    const [row] = oven({ loaded: [loadOf(FLIP_AT_643, lines('sesame', 48))] }, at('6:41:45')).rows
    expect(row?.ring.fraction).toBeCloseTo(0.5)
  })

  it('given a variety that is topped after the flip, then the flip says so', () => {
    const [row] = oven({ loaded: [loadOf(FLIP_AT_643, lines('sesame', 24, 'cheddar', 24))] }, at('6:41')).rows
    expect(row?.contents).toBe('Sesame 24, Cheddar 24, then top Cheddar')
  })

  it('given more varieties than there is room for, then the topping stands first and is not counted with them', () => {
    const inside = lines('sesame', 12, 'poppy', 12, 'plain', 12, 'cheddar', 12)
    const [row] = oven({ loaded: [loadOf(FLIP_AT_643, inside)] }, at('6:41')).rows
    expect(row?.contents).toMatch(/^then top Cheddar, .*\d more$/)
  })

  it('given the flip, then what is topped is said for a minute more, and then no longer', () => {
    const flipped = {
      ...FLIP_AT_643,
      phase: 'second-side',
      flippedAt: at('6:43:30'),
      out: until('6:55', '7:00', '7:05'),
    } as const
    const contents = (clock: string) =>
      oven({ loaded: [loadOf(flipped, lines('sesame', 24, 'cheddar', 24))] }, at(clock)).rows[0]?.contents
    expect(contents('6:44:29')).toBe('Sesame 24, Cheddar 24, now top Cheddar')
    expect(contents('6:44:30')).toBe('Sesame 24, Cheddar 24')
  })

  it('given a free shelf, then it says so and what comes next; given nothing planned, only that', () => {
    const free = oven({ day: null, planned: [planned({ lines: lines('poppy', 48) })] }, at('6:41')).rows
    expect(free[0]).toMatchObject({ what: '1 free', when: '', contents: 'next Poppy 48', state: 'plain' })
    expect(free[1]).toMatchObject({ what: '2 free', contents: '' })
  })

  it('given Spanish, then act and time are in it', () => {
    const [row] = oven({ loaded: [loadOf(FLIP_AT_643, lines('sesame', 48))] }, at('6:42:50'), 'es').rows
    expect(row).toMatchObject({ what: 'Voltear 1', when: 'en 40 s' })
  })
})

describe('an oven that is larger than its place', () => {
  it('given three shelves, then each has a row with its contents', () => {
    const view = oven(full(3), at('6:47'))
    expect(view).toMatchObject({ columns: 1, others: '' })
    expect(view.rows.map((row) => row.form)).toEqual(Array(3).fill('wide'))
    expect(view.rows.map((row) => row.contents)).toEqual(Array(3).fill('Sesame 24, Poppy 24'))
  })

  it('given four or five, then what is in each stands beside its time', () => {
    for (const count of [4, 5]) {
      const view = oven(full(count), at('6:47'))
      expect(view.rows.map(({ form, contents }) => [form, contents])).toEqual(
        Array(count).fill(['beside', 'Sesame 24, Poppy 24']),
      )
    }
  })

  it('[G3] given six, then those that call for somebody say what is in them, and the others may keep to their time', () => {
    const rows = (clock: string) => oven(full(6), at(clock)).rows
    expect(rows('6:47').map(({ form, contents }) => [form, contents])).toEqual(Array(6).fill(['tall', '']))
    const [first, second] = rows('6:49:30')
    expect(first).toMatchObject({ state: 'act', what: 'Out of 1', when: 'in 40 s', form: 'wide' })
    expect(first?.contents).toMatch(/^Sesame 24/)
    expect(second).toMatchObject({ state: 'plain', form: 'tall', contents: '' })
    const [late] = rows('7:10:30')
    expect(late).toMatchObject({ state: 'late', what: 'Out of 1,', when: 'late', form: 'wide' })
    expect(late?.contents).toMatch(/^Sesame 24/)
  })

  it('[G2] given twelve, then those due soonest are shown in the oven’s order, and the others are counted with their first time', () => {
    const view = oven(full(12), at('6:47'))
    expect(view.rows.length).toBeLessThan(12)
    expect(view.others).toMatch(/^\d others, first in \d+ min$/)
    expect(Number.parseInt(view.others, 10) + view.rows.length).toBe(12)
    const numbers = view.rows.map((row) => Number(/\d+/.exec(row.what)?.[0]))
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b))
    // Shelf 11 is out at 6:50:20, shelf 1 at 6:50:10: sooner than any other.
    expect(numbers).toContain(1)
    expect(numbers).toContain(11)
  })

  it('[G2] given twelve shelves with the longest names, then nothing is wider than its column', () => {
    const view = oven(
      full(12, (n) => `Hearth${String(n).padStart(2, '0')}`),
      at('6:47'),
      'es',
    )
    expect(view.rows.length).toBeGreaterThanOrEqual(3)
    expect(view.columns * view.rowPx).toBeGreaterThan(0)
    for (const row of view.rows) expect(row.what).toMatch(/^Sacar Hearth\d\d/)
  })

  it('given rows that do not fit the height, then none is painted below the place', () => {
    for (const count of [1, 3, 4, 5, 6, 8, 12]) {
      const view = oven(full(count), at('6:47'))
      const rows = Math.ceil(view.rows.length / view.columns)
      const heightPx = rows * view.rowPx + (rows - 1) * view.gapPx + 1.3 * SIZES.minPx
      expect(heightPx, `${count} shelves`).toBeLessThanOrEqual(LAYOUT.oven.height + 1)
    }
  })
})

describe('a hearth', () => {
  it('given a mixed load, then its row says the rest beside its name; given a name too long for it, all of it', () => {
    const row = (shop: Shop) => {
      const inside = loadOf({ shelf: 'h' }, lines('sesame', 48, 'poppy', 24), shop)
      const [first] = oven({ shop, loaded: [inside] }, at('6:41')).rows
      return [first?.what, first?.contents]
    }
    expect(row(hearth)).toEqual(['Flip Sesame 48', 'Poppy 24'])
    const name = 'Sun-dried Tomato & Basil'
    const long = { ...hearth, varieties: new Map([...hearth.varieties].map(([id, one]) => [id, { ...one, name }])) }
    expect(row(long)[0]).toBe('Flip Hearth')
    expect(row(long)[1]).toContain(`${name} 48`)
  })

  const hearth = shopWith({
    oven: { ...shopWith().oven, kind: 'hearth' },
    shelves: table([shelf({ id: 'h', name: 'Hearth', pieces: 240, floorBoards: 40 })]),
  })

  it('given several loads on one floor, then each row is named by its first variety: nothing else tells them apart', () => {
    const loaded = [1, 2].map((n) =>
      loadOf({ id: `l${n}`, shelf: 'h' }, lines(n === 1 ? 'sesame' : 'poppy', 48), hearth),
    )
    const view = oven({ shop: hearth, loaded }, at('6:41'))
    expect(view.rows.slice(0, 2).map((row) => row.what)).toEqual(['Flip Sesame 48', 'Flip Poppy 48'])
  })
})

it('given what is shown, then its acts are on show by the core’s keys, and free shelves that nobody calls for are not', () => {
  const view = oven({ day: null, loaded: [loadOf(FLIP_AT_643, lines('sesame', 48))], planned: [planned()] }, at('6:41'))
  expect(view.onShow).toEqual(['flip:l1'])
})
