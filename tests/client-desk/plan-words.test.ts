import { describe, expect, it } from 'vitest'
import { costOf } from '../../client/desk/plan/tried-bar.tsx'
import {
  askable,
  changeOf,
  isSensible,
  usualAmount,
  WHAT_IFS,
  whatIfRows,
} from '../../client/desk/plan/what-if-view.ts'
import { clockText } from '../../client/live/clock-text.ts'
import { deskWords } from '../../client/words/desk.ts'
import { bakePlanWords } from '../../client/words/desk-plan.ts'
import { wordsFor } from '../../client/words/words.ts'
import { doughId, plannedId, varietyId } from '../../shared-core/ids.ts'
import type { ContactPlace, PlanCannot, PlanLimit, PlanWhy } from '../../shared-core/live/plan.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import { CLOCK } from '../client-counter/counter-maker.ts'
import { at } from '../core/support/make.ts'
import { planWith } from '../core/support/plan.ts'
import { shopWith } from '../core/support/shop.ts'

const SESAME = varietyId('sesame')
const PLACES: readonly ContactPlace[] = ['kettle', 'boards', 'trays', 'peel', 'stone']
const LIMITS: readonly PlanLimit[] = ['kettle', 'boards', 'shelf', 'oven', 'dough', 'hands']

const say = (language: Language) =>
  bakePlanWords(deskWords(wordsFor(language, shopWith(), (atMs) => clockText(CLOCK, atMs, 12))))

const WHYS: readonly PlanWhy[] = [
  { varietyId: SESAME, kind: 'runsOut', atMs: at('8:52'), kettleByMs: at('8:17') },
  { varietyId: SESAME, kind: 'runsOut', atMs: at('8:52'), kettleByMs: null },
  { varietyId: SESAME, kind: 'opening' },
  { varietyId: SESAME, kind: 'order', dueAtMs: at('8:15'), pieces: 36 },
  { varietyId: SESAME, kind: 'afternoon', untilMs: at('15:00') },
  { varietyId: SESAME, kind: 'fresh' },
  { varietyId: SESAME, kind: 'show', least: 6 },
  { varietyId: SESAME, kind: 'room' },
  { varietyId: SESAME, kind: 'pinned' },
]

const CANNOTS: readonly PlanCannot[] = [
  { kind: 'order-short', varietyId: SESAME, dueAtMs: at('8:15'), pieces: 12 },
  ...LIMITS.map((limit) => ({ kind: 'pinned-over' as const, loadId: plannedId('p'), limit })),
  { kind: 'show-short', varietyId: SESAME, pieces: 3 },
  { kind: 'dough-short', doughId: doughId('plain'), pieces: 24 },
  { kind: 'no-time' },
]

describe.each(['en', 'es'] as const)('the plan in words, %s', (language) => {
  const words = say(language)
  const texts = [
    ...WHYS.map((why) => words.why(why)),
    ...CANNOTS.map((cannot) => words.cannot(cannot, () => 'LOAD')),
    ...PLACES.map((place) => words.contact({ varietyId: SESAME, allergens: ['egg', 'milk'], where: [place] })),
  ]

  it('[I67] given every reason, contact and limit, then each has a sentence of its own, without a gap', () => {
    expect(new Set(texts).size).toBe(texts.length)
    for (const text of texts) expect(text).not.toMatch(/undefined|NaN|\s{2}|\[object/)
  })

  it('[I67] given contact, then who comes after what and where is said, and nothing is promised', () => {
    for (const text of texts) expect(text).not.toMatch(/free from|libre de|sin alérgenos/i)
    const text = words.contact({ varietyId: SESAME, allergens: ['egg'], where: ['kettle', 'boards'] })
    expect(text).toContain(
      language === 'en' ? 'Sesame comes after egg: in the water and on the boards' : 'en las tablas',
    )
  })

  it('[I68] given a change, then its cost is told in money and pieces', () => {
    const [costly, gain, none] = [
      { profitCents: -340, lost: 2.04, missing: 0, left: -1 },
      { profitCents: 120, lost: -3, missing: 1, left: 0.04 },
      { profitCents: 0.4, lost: 0, missing: 0, left: 0 },
    ].map((cost) => words.tried.costs(cost))
    expect([costly, gain, none]).toEqual(
      language === 'en'
        ? [
            'Costs 3.40, by the forecast; 2 more asked for in vain, 1 fewer left.',
            'Gains 1.20, by the forecast; 3 fewer asked for in vain, 1 more missing in orders.',
            'No money either way; no more or fewer pieces lost or left.',
          ]
        : [
            'Cuesta 3.40, según el pronóstico; 2 más se piden en vano, 1 menos quedan.',
            'Gana 1.20, según el pronóstico; 3 menos se piden en vano, 1 más faltan en pedidos.',
            'Da el mismo dinero; no cambian las piezas que faltan o sobran.',
          ],
    )
  })
})

describe('another day than it is', () => {
  const day = planWith([]).figures
  const before = { ...day, profitCents: 81_240, lost: 6.2, left: 14.4, firstKettleAtMs: at('4:30'), crewMinutes: 720 }
  const after = { ...before, profitCents: 82_000, lost: 2, left: 16.4, firstKettleAtMs: at('4:20'), crewMinutes: null }
  const { whatIf } = say('en')

  it('[I68] given two plans, then the cost is the difference from the one that stands', () => {
    expect(costOf(before, after)).toEqual({ profitCents: 760, lost: 2 - 6.2, missing: 0, left: 16.4 - 14.4 })
  })

  it('[I69] given an answer, then both days and the difference, of what both know', () => {
    const rows = whatIfRows(before, after, { whatIf, clock: (atMs) => clockText(CLOCK, epochMs(atMs), 12) })
    expect(rows.map(({ key, difference }) => [key, difference])).toEqual([
      ['profit', '+7.60'],
      ['lost', '−4'],
      ['left', '+2'],
      ['firstDip', '−10 min'],
      ['age', '0 min'],
    ])
    expect(rows[3]).toMatchObject({ before: '4:30', after: '4:20' })
  })

  it('[I69] given a number that makes no sense, then it is not asked', () => {
    expect(isSensible('changeover', -15)).toBe(true)
    for (const [kind, amount] of [
      ['changeover', 0],
      ['boards', -1],
      ['people', 1.5],
      ['kettle', 0],
      ['opening', 500],
      ['order', Number.NaN],
    ] as const)
      expect(isSensible(kind, amount)).toBe(false)
    for (const kind of WHAT_IFS) expect(isSensible(kind, usualAmount(kind, 90))).toBe(true)
  })

  it('[I69] given a shop of which nobody said who is there, or one without a changeover, then these are not asked', () => {
    const shop = shopWith()
    const staffed = { baking: { ...shop.baking, people: [{ fromMinute: 0, people: 2 }] } }
    expect(askable(staffed, shop.hours)).toEqual(WHAT_IFS)
    expect(askable(shop, shop.hours)).not.toContain('people')
    expect(askable(staffed, { ...shop.hours, changeoverFromMinute: null })).not.toContain('changeover')
  })

  it('[I69] given each question, then it is asked in minutes, pieces and people as typed', () => {
    const asked = WHAT_IFS.map((kind) => changeOf(kind, { amount: 30, varietyId: SESAME, dueAtMs: at('8:15') }))
    expect(new Set(asked.map(({ kind }) => kind)).size).toBe(WHAT_IFS.length)
    expect(asked).toContainEqual({ kind: 'changeover', byMs: 1_800_000 })
    expect(asked).toContainEqual({
      kind: 'order',
      dueAtMs: at('8:15'),
      lines: [{ varietyId: SESAME, pieces: 30 }],
    })
  })
})
