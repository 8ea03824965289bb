import { describe, expect, it } from 'vitest'
import { daySeries, dayTexts } from '../../client/desk/past/days-view.ts'
import { HOURS_PX, lanesLayout, xAt } from '../../client/desk/past/lanes-layout.ts'
import { plotBars } from '../../client/desk/past/plot-bars.ts'
import { figureTexts } from '../../client/desk/sheet/figures-view.ts'
import { daySheetWords } from '../../client/words/desk-day-sheet.ts'
import { wordsFor } from '../../client/words/words.ts'
import type { DayFigures } from '../../shared-core/day/figures.ts'
import { loadId, shelfId, varietyId } from '../../shared-core/ids.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { at, lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'

describe('lanes', () => {
  const day = {
    fromMs: at('4:00'),
    toMs: at('16:00'),
    open: { fromMs: at('6:00'), toMs: at('15:00') },
    loads: [
      {
        loadId: loadId('l1'),
        shelfId: shelfId('s1'),
        fromMs: at('5:00'),
        flippedAtMs: at('5:10'),
        toMs: at('5:20'),
        lines: lines('sesame', 36),
      },
      {
        loadId: loadId('l2'),
        shelfId: shelfId('s1'),
        fromMs: at('15:30'),
        flippedAtMs: null,
        toMs: null,
        lines: lines('sesame', 36),
      },
    ],
    gaps: [{ varietyId: varietyId('sesame'), fromMs: at('7:00'), toMs: at('8:00') }],
  }
  const layout = lanesLayout(day, [shelfId('s1'), shelfId('s2')], 1_200, -6 * 3_600_000)

  it('given twelve hours on 1200 pixels, then an hour is 100 and each thing lies where it was', () => {
    const [one, two, rod] = layout.lanes
    expect(one?.bars.map(({ x, flipX }) => [Math.round(x), flipX === null ? null : Math.round(flipX)])).toEqual([
      [100, 117],
      [1_150, null],
    ])
    expect(Math.round((one?.bars[1]?.x ?? 0) + (one?.bars[1]?.width ?? 0))).toBe(1_199)
    expect(two?.bars).toEqual([])
    expect(rod?.of).toEqual({ kind: 'rod', varietyId: 'sesame' })
    expect(rod?.bars.map(({ x, width }) => [x, width])).toEqual([[300, 100]])
    expect([layout.open.x, layout.open.width]).toEqual([200, 900])
  })

  it('given its lanes, then none lies on another and all are below the hours', () => {
    const ends = layout.lanes.map(({ y, height }) => ({ y, end: y + height }))
    expect(ends[0]?.y).toBe(HOURS_PX)
    for (const [index, { y }] of ends.entries()) if (index > 0) expect(y).toBeGreaterThan(ends[index - 1]?.end ?? 0)
    expect(layout.heightPx).toBeGreaterThanOrEqual(ends[2]?.end ?? 0)
  })

  it.each([
    [1_200, 1],
    [330, 2],
    [140, 3],
  ])('given %i pixels, then every %i. hour has its number and none stands out', (widthPx, every) => {
    const { hours } = lanesLayout(day, [], widthPx, -6 * 3_600_000)
    expect(hours).toHaveLength(13)
    const named = hours.filter(({ hasText }) => hasText)
    expect(named.every(({ x }) => x > 10 && x < widthPx - 10)).toBe(true)
    expect((named[1]?.atMs ?? 0) - (named[0]?.atMs ?? 0)).toBe(every * 3_600_000)
  })

  it('given an instant outside, then it stays within the drawing', () => {
    expect(xAt(day, 500, at('3:00'))).toBe(0)
    expect(xAt(day, 500, at('17:00'))).toBe(500)
  })
})

describe('a plot by day', () => {
  const room = { widthPx: 100, heightPx: 60 }
  it('given values on both sides of nought, then bars stand up and hang down on one scale', () => {
    const { bars, zeroY, highest, lowest } = plotBars([20, -10, null, 0], room)
    expect([zeroY, highest, lowest]).toEqual([40, 20, -10])
    expect(bars.map(({ y, height, isNegative }) => [y, height, isNegative])).toEqual([
      [0, 40, false],
      [40, 20, true],
    ])
  })

  it('given nothing known, then there are no bars and nought lies at the foot', () => {
    expect(plotBars([null, null], room)).toEqual({ bars: [], zeroY: 60, highest: 0, lowest: 0 })
    expect(plotBars([], room).bars).toEqual([])
  })
})

const FIGURES: DayFigures = {
  missed: {
    pieces: 18,
    cents: 3_150,
    first: { varietyId: varietyId('sesame'), fromMs: at('8:52'), forMs: 24 * 60_000 },
    byVariety: [],
  },
  left: {
    dayOld: { pieces: 20, cents: 3_000, costCents: 900 },
    given: { pieces: 6, cents: 900, costCents: 270 },
    wasted: { pieces: 4, cents: 600, costCents: 180 },
  },
  onTime: { atOpen: { there: 9, of: 12 }, orders: null, ovenEmptyByMs: 4 * 60_000 },
  baked: { pieces: 1_200, crewMinutes: 1_050, dozensPerCrewHour: 5.7 },
  unexplained: { signed: -3, absolute: 11, thrownDough: 0 },
}
const NOTHING: DayFigures = {
  missed: null,
  left: null,
  onTime: { atOpen: null, orders: null, ovenEmptyByMs: null },
  baked: { pieces: 0, crewMinutes: null, dozensPerCrewHour: null },
  unexplained: { signed: 0, absolute: 0, thrownDough: 0 },
}

function texts(figures: DayFigures, language: Language) {
  const words = wordsFor(language, shopWith(), (atMs) => (atMs === at('8:52') ? '8:52' : '?'))
  return figureTexts(figures, daySheetWords(words), words.names)
}

describe('the five figures in words', () => {
  it('given a day, then each says its value and what it rests on', () => {
    expect(texts(FIGURES, 'en').map(({ name, value, details }) => [name, value, ...details])).toEqual([
      ['Missed', 'about 18 pieces, 31.50', 'first sold out: Sesame at 8:52, for 24 min'],
      ['Left at close', '30 pieces', '20 day-old, 6 given away, 4 wasted', 'making them cost 13.50'],
      [
        'On time',
        '9/12',
        '9 of 12 varieties there at opening',
        'oven empty 4 min late',
        'orders on time are not reckoned yet',
      ],
      ['Dozens a crew hour', '5.7', '1200 pieces baked', 'in 17.5 crew hours'],
      ['Unexplained', '−3', '11 pieces in all gaps, whichever way', 'no dough thrown'],
    ])
  })

  it.each(['en', 'es'] as const)(
    'given a day of which nothing is known, in %s, then it says so and shows no nought',
    (language) => {
      const all = texts(NOTHING, language)
      expect(all).toHaveLength(5)
      expect(all.slice(0, 4).map(({ value }) => value)).toEqual(['–', '–', '–', '–'])
      expect(all.every(({ details }) => details.every((detail) => detail !== ''))).toBe(true)
    },
  )

  it('given days newest first, then their plots run from the oldest, and rows tell what is not known', () => {
    const [left, unexplained, missed] = daySeries([{ figures: FIGURES }, { figures: null }, { figures: NOTHING }])
    expect(left?.values).toEqual([null, null, 30])
    expect(unexplained?.values).toEqual([0, null, -3])
    expect(missed?.values).toEqual([null, null, 18])
    expect(dayTexts({ figures: FIGURES }, { notKnown: '–' })).toEqual(['18', '30', '9/12', '5.7', '−3'])
    expect(dayTexts({ figures: null }, { notKnown: '–' })).toEqual(['–', '–', '–', '–', '–'])
  })
})
