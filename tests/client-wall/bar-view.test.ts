import { describe, expect, it } from 'vitest'
import { barMarkPx, barView } from '../../client/wall/bar-view.ts'
import { widthOf } from '../../client/wall/text-lines.ts'
import type { Line } from '../../shared-core/day/state.ts'
import { doughId, shelfId } from '../../shared-core/ids.ts'
import type { ActParts, LineActDue } from '../../shared-core/line/act-due.ts'
import { actDue } from '../../shared-core/line/act-due.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { at, lines } from '../core/support/make.ts'
import { dough, shelf, shopWith, table } from '../core/support/shop.ts'
import { LAYOUT, SIZES, setting } from './support/wall.ts'

const NOW = at('6:47')
const act = (parts: Partial<ActParts> & Pick<ActParts, 'act'>): LineActDue =>
  actDue({ key: parts.act, atMs: NOW, lines: [], pieces: 36, ...parts }, NOW)
const LIFT = act({ act: 'lift', atMs: at('6:47:22') })
const FLIP = act({ act: 'flip', shelfId: shelfId('s2'), atMs: at('6:47:40') })
const PULL = act({ act: 'pull', doughId: doughId('plain'), trays: 3, atMs: at('6:55') })

const LONG_SHOP = shopWith({
  doughs: table([dough({ id: 'plain', name: 'Sun-dried Tomato & Basil' })]),
  shelves: table([shelf({ id: 's2', name: 'Hearth02' })]),
})

const bar = (
  acts: readonly LineActDue[],
  parts: { shop?: typeof LONG_SHOP; language?: Language; flash?: string } = {},
) =>
  barView({
    ...setting(parts.shop ?? shopWith(), NOW, parts.language ?? 'en'),
    acts,
    flash: parts.flash ?? null,
    box: LAYOUT.bar,
  })

describe('the bar across the room', () => {
  it('given acts, then the first stands as a headline and the others follow in their order', () => {
    const view = bar([LIFT, FLIP, PULL])
    expect(view.lines).toEqual([{ strong: 'Lift', rest: 'in 22 s' }])
    expect(view.fontPx).toBe(SIZES.headlinePx)
    expect(view.after).toBe('then flip 2, then pull 3 trays Plain')
    expect(view.onShow).toEqual(['lift', 'flip', 'pull'])
  })

  it('given a hearth, then its acts are named by the first variety of their load; given two floors, by both', () => {
    const flip = (n: number, inside: readonly Line[]) =>
      act({ key: `f${n}`, act: 'flip', shelfId: shelfId('h'), lines: inside, atMs: at(`6:5${n}`) })
    const acts = [flip(1, lines('sesame', 36, 'poppy', 12)), flip(2, lines('poppy', 24))]
    const oven = { ...shopWith().oven, kind: 'hearth' } as const
    const floor = (id: string, name: string) => shelf({ id, name })
    const one = bar(acts, { shop: shopWith({ oven, shelves: table([floor('h', 'Hearth')]) }) })
    expect([one.lines[0]?.strong, one.after]).toEqual(['Flip Sesame 36', 'then flip Poppy 24'])
    const two = bar(acts, { shop: shopWith({ oven, shelves: table([floor('h', 'Left'), floor('i', 'Right')]) }) })
    expect(two.lines[0]?.strong).toBe('Flip Left Sesame 36')
  })

  it('given nothing to do, then it says so and shows nothing to a pedal', () => {
    expect(bar([])).toMatchObject({ state: 'none', onShow: [], after: '' })
  })

  it('[G3] given a late act, then the bar is late, in words too', () => {
    const late = act({ act: 'flip', shelfId: shelfId('s2'), atMs: at('6:43:30'), latestAtMs: at('6:45') })
    expect(bar([late])).toMatchObject({ state: 'late', lines: [{ strong: 'Flip 2,', rest: '3 min late' }] })
  })

  it('given an act hours ahead, then its clock time is said', () => {
    expect(bar([act({ act: 'pull', doughId: doughId('plain'), trays: 3, atMs: at('9:30') })]).lines).toEqual([
      { strong: 'Pull 3 trays Plain', rest: 'at 9:30' },
    ])
  })

  it.each(['en', 'es'] as const)(
    '[G1, G2] given the longest names in %s, then the act is whole, at least at the size of acts, and all fits',
    (language) => {
      const acts = [
        act({ act: 'pull', doughId: doughId('plain'), trays: 12, atMs: at('5:07'), latestAtMs: at('5:30') }),
        act({ act: 'flip', shelfId: shelfId('s2'), atMs: at('6:59') }),
        act({ act: 'dip', doughId: doughId('plain'), atMs: at('6:59') }),
      ]
      for (const [first, ...rest] of [acts, acts.slice(1), acts.slice(2)]) {
        if (first === undefined) continue
        const view = bar([first, ...rest], { shop: LONG_SHOP, language })
        expect(view.fontPx).toBeGreaterThanOrEqual(SIZES.actPx)
        const lineWidths = view.lines.map(
          ({ strong, rest: time }) => widthOf(strong, view.fontPx, 'strong') + widthOf(time, view.fontPx),
        )
        const allPx = barMarkPx(SIZES) + Math.max(...lineWidths) + widthOf(view.after, SIZES.minPx) + SIZES.minPx
        expect(allPx).toBeLessThanOrEqual(LAYOUT.bar.width)
        expect(view.lines.length * view.fontPx * 1.14).toBeLessThanOrEqual(LAYOUT.bar.height)
        expect(JSON.stringify(view)).not.toContain('…')
      }
    },
  )

  it('[G5] given a following act that has no room, then it is not on show', () => {
    const view = bar([act({ act: 'pull', doughId: doughId('plain'), trays: 12 }), FLIP, PULL], {
      shop: LONG_SHOP,
      language: 'es',
    })
    expect(view.onShow.length).toBeLessThan(3)
    expect(view.after.split('luego').length - 1).toBe(view.onShow.length - 1)
  })

  it('given what a pedal has just done, then that stands in the bar for a moment, and no act with it', () => {
    expect(bar([LIFT], { flash: 'Done: flip 2' })).toMatchObject({
      state: 'done',
      lines: [{ strong: 'Done: flip 2' }],
      onShow: [],
    })
  })
})
