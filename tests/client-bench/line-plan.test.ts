import { describe, expect, it } from 'vitest'
import { benchLayout } from '../../client/bench/layout.ts'
import { HEADING_EM, linePlan, TEXT_EM } from '../../client/bench/line-plan.ts'
import { lineView } from '../../client/bench/line-view.ts'
import { mmPerCssPx, wallSizes } from '../../client/parts/legibility.ts'
import { at, batch, lines, planned, stateWith, until } from '../core/support/make.ts'
import { ALL_STATIONS, shopWith, table } from '../core/support/shop.ts'
import { wordsOf } from './support.ts'

function planOf({ inches = 10.1, shelves = 3, stations = ALL_STATIONS, boards = 24 } = {}) {
  const panel = { diagonalInch: inches, widthPx: 1280, heightPx: 800 }
  const sizes = wallSizes({ ...panel, distanceM: 0.6 })
  const shop = shopWith({ stations: table(stations), boards: { ...shopWith().boards, count: boards } })
  const stages = ['rack', 'chill', 'proof'] as const
  const batches = stages.flatMap((stage) =>
    ['plain', 'rye'].map((dough) =>
      batch({ id: `${stage}-${dough}`, stage, dough, pieces: 96, until: until('6:00', '6:20', '6:30') }),
    ),
  )
  const state = stateWith({ shop, batches, planned: [planned({ lines: lines('sesame', 36) })] })
  const line = lineView({
    state,
    plan: null,
    shop,
    nowMs: at('6:41'),
    words: wordsOf(shop),
    stationId: null,
    free: null,
  })
  const layout = benchLayout({
    ...panel,
    mmPx: 1 / mmPerCssPx(panel),
    shelves,
    topHeightPx: Math.ceil(3 * sizes.minPx * TEXT_EM),
    headingPx: Math.ceil(sizes.minPx * HEADING_EM),
    actWidthPx: 125,
  })
  return { plan: linePlan(line, layout, sizes), layout, line, sizes }
}

describe('[B2, B3] given the line’s stations left of the oven', () => {
  const cases = [7, 8, 10.1, 11, 13.3, 15.6].flatMap((inches) =>
    [1, 3, 4, 5, 8, 9, 12].flatMap((shelves) =>
      [[], ALL_STATIONS, ALL_STATIONS.slice(0, 2)].map((stations) => ({ inches, shelves, stations })),
    ),
  )
  it.each(cases)('on $inches inches with $shelves shelves, when planned, then keys are whole and all fits', (parts) => {
    const { plan, layout, line, sizes } = planOf(parts)
    if (layout.form === 'stacked') return
    expect(plan.stationKeyPx).toBeGreaterThanOrEqual(layout.keyPx)
    expect(plan.stationHeightPx).toBeGreaterThanOrEqual(layout.keyPx)
    expect(plan.kettleHeightPx).toBeGreaterThanOrEqual(layout.keyPx * 0.8)
    const textPx = sizes.minPx * TEXT_EM
    const boardsPx = textPx + (plan.boards.stripPx ?? 0)
    const key = plan.stationHeightPx + layout.gapPx / 2
    if (plan.isSideBySide) {
      const right = 2 * sizes.minPx * HEADING_EM + plan.kettleHeightPx + boardsPx + (line.boardKey === null ? 0 : key)
      expect(right).toBeLessThanOrEqual(layout.lineHeightPx)
      return
    }
    const keyRows = plan.isPaired ? 1 : [line.pull, line.boardKey].filter((one) => one !== null).length
    const high = keyRows * (key + layout.gapPx / 2) + plan.kettleHeightPx + layout.gapPx + boardsPx
    expect(high).toBeLessThanOrEqual(layout.lineHeightPx)
  })

  it('when there is no room for all that stands, then as many as fit, and a row for how many more', () => {
    const { plan } = planOf({ shelves: 12 })
    expect(plan.standingShown).toBe(1)
    expect(planOf({ inches: 8, shelves: 8 }).plan.standingShown).toBe(0)
    expect(planOf({ shelves: 3 }).plan.standingShown).toBe(3)
    expect(planOf({ shelves: 12, stations: [] }).plan.standingShown).toBeGreaterThan(plan.standingShown)
  })

  it('when three keys do not fit below each other, then pull and board share a row', () => {
    expect(planOf({ inches: 8, shelves: 6 }).plan.isPaired).toBe(true)
    expect(planOf({ inches: 10.1, shelves: 6 }).plan.isPaired).toBe(false)
  })

  it.each([
    [12, true],
    [24, true],
    [60, true],
    [300, false],
  ])('when there are %s boards, then they are drawn or only counted', (boards, drawn) => {
    expect(planOf({ boards }).plan.boards.stripPx !== null).toBe(drawn)
  })
})
