import { describe, expect, it } from 'vitest'
import type { Yours } from '../../client/desk/coming/coming-view.ts'
import {
  advisedTexts,
  changesWanted,
  decidedDoughs,
  differing,
  linesToTake,
  soonestDecision,
  standingPieces,
  yoursText,
} from '../../client/desk/coming/coming-view.ts'
import { comingWords } from '../../client/words/desk-coming.ts'
import type { Wanted, WantedLine } from '../../shared-core/dough/mix.ts'
import { doughId, formulaId, varietyId } from '../../shared-core/ids.ts'
import type { ComingDay, ComingDough } from '../../shared-core/plan/coming-day.ts'
import type { Why } from '../../shared-core/plan/why.ts'
import { must } from '../../shared-core/support.ts'
import { wordsIn } from '../client-counter/counter-maker.ts'
import { doughShop, TOMORROW } from '../core/dough/plan-make.ts'
import { mix } from '../core/dough/room-mix.ts'
import { at, stateWith } from '../core/support/make.ts'

const PLAIN = doughId('plain')
const RYE = doughId('rye')

function dough(parts: Partial<ComingDough> & Pick<ComingDough, 'doughId'>): ComingDough {
  const likely = { likely: 120, careful: 140, plenty: 170, basis: 'many' as const }
  const amount = { counter: 150, ordered: 0, carried: 0, toMake: 150, why: [] }
  return { ...likely, ...amount, decideAtMs: null, varieties: [], ...parts }
}

const DAY: ComingDay = {
  date: TOMORROW,
  isClosed: false,
  doughs: [
    dough({ doughId: PLAIN, decideAtMs: at('10:00') }),
    dough({ doughId: RYE, counter: 32, decideAtMs: at('9:00') }),
  ],
}
const line = (parts: Partial<WantedLine> = {}): WantedLine => ({
  doughId: PLAIN,
  varietyId: null,
  pieces: 0,
  ordered: 0,
  ...parts,
})
const wanted = (...lines: readonly WantedLine[]): Wanted => ({ date: TOMORROW, lines })
const typed = (id: typeof PLAIN, text: string): Yours => new Map([[id, text]])

describe('taking advice over', () => {
  it('[Q58] given nothing typed, when it is taken over, then the advised pieces, with the advice beside them', () => {
    expect(linesToTake(DAY, undefined, new Map())).toEqual([
      line({ pieces: 150, advised: 150 }),
      line({ doughId: RYE, pieces: 32, advised: 32 }),
    ])
  })

  it('[Q58] given another number typed, when it is taken over, then that one, and the advice is remembered', () => {
    const lines = linesToTake(DAY, undefined, typed(PLAIN, '10d'))
    expect(lines?.[0]).toEqual(line({ pieces: 120, advised: 150 }))
    expect(differing(DAY, undefined, typed(PLAIN, '10d'))).toBe(1)
    expect(linesToTake(DAY, undefined, typed(PLAIN, 'many'))).toBeNull()
  })

  it('[Q58] given orders and doughs that nothing is advised for, when it is taken over, then these stay', () => {
    const named = line({ varietyId: varietyId('sesame'), pieces: 60, ordered: 24 })
    const other = line({ doughId: doughId('mini'), pieces: 48 })
    const stands = wanted(line({ ordered: 12 }), named, other)
    expect(linesToTake(DAY, stands, typed(PLAIN, '150'))).toEqual([
      line({ pieces: 150, ordered: 12, advised: 150 }),
      line({ varietyId: varietyId('sesame'), ordered: 24 }),
      line({ doughId: RYE, pieces: 32, advised: 32 }),
      other,
    ])
  })

  it('[Q58] given pieces that stand by variety, when they are not changed, then they stay by variety', () => {
    const stands = wanted(
      line({ varietyId: varietyId('sesame'), pieces: 90 }),
      line({ varietyId: varietyId('poppy'), pieces: 50 }),
    )
    expect(standingPieces(stands, PLAIN)).toBe(140)
    expect(yoursText(DAY.doughs[0] ?? dough({ doughId: PLAIN }), stands, new Map())).toBe('140')
    expect(linesToTake(DAY, stands, new Map())?.slice(0, 2)).toEqual(stands.lines)
  })

  it('[Q58] given what was taken over, when it is looked at again, then nothing is new until a number is typed', () => {
    const stands = wanted(...(linesToTake(DAY, undefined, typed(PLAIN, '120')) ?? []))
    expect(changesWanted(linesToTake(DAY, stands, new Map()) ?? [], stands)).toBe(false)
    expect(changesWanted(linesToTake(DAY, stands, advisedTexts(DAY)) ?? [], stands)).toBe(true)
    // A dough of which none is wanted, against the advice, stays at none.
    const none = wanted(...(linesToTake(DAY, undefined, typed(PLAIN, '0')) ?? []))
    expect(standingPieces(none, PLAIN)).toBe(0)
  })

  it('[Q58] given a dough of which nothing is known, when it is taken over, then what is typed, with no advice beside it', () => {
    const none = { likely: 0, careful: 0, plenty: 0, counter: 0, toMake: 0 }
    const day = { ...DAY, doughs: [dough({ doughId: PLAIN }), dough({ doughId: RYE, ...none, basis: 'nothing' })] }
    expect(yoursText(day.doughs[1] ?? dough({ doughId: PLAIN }), undefined, new Map())).toBe('')
    expect(linesToTake(day, undefined, new Map())).toEqual([line({ pieces: 150, advised: 150 })])
    expect(linesToTake(day, undefined, typed(RYE, '40'))?.[1]).toEqual(line({ doughId: RYE, pieces: 40 }))
    expect(differing(day, undefined, typed(RYE, '40'))).toBe(0)
    expect([...advisedTexts(day).keys()]).toEqual([PLAIN])
  })

  it('[Q58] given mixes that stand for a dough, when it is told what must be decided, then only the others', () => {
    expect(soonestDecision(DAY, new Set())).toEqual({ atMs: at('9:00'), doughIds: [RYE] })
    const shop = doughShop()
    const planned = mix('planned', at('8:00'), { formula: must(shop.formulas, formulaId('rye')), bakeDate: TOMORROW })
    const state = stateWith({ shop })
    state.mixes.set(planned.id, planned)
    const decided = decidedDoughs(state, shop, TOMORROW)
    expect([...decided]).toEqual([RYE])
    expect(soonestDecision(DAY, decided)).toEqual({ atMs: at('10:00'), doughIds: [PLAIN] })
    expect(soonestDecision(DAY, new Set([PLAIN, RYE]))).toBeNull()
  })
})

describe.each(['en', 'es'] as const)('reasons in %s', (language) => {
  const say = comingWords(wordsIn(language))
  const reasons: readonly Why[] = [
    { code: 'usual', pieces: 100 },
    { code: 'weekday', pieces: 30, factor: 1.3 },
    { code: 'special', pieces: 26, factor: 1.2 },
    { code: 'sure', pieces: 14, isAssumed: true, underCents: 120, overCents: 35, coveredPercent: 78 },
    { code: 'orders', pieces: 12 },
    { code: 'carried', pieces: -31 },
    { code: 'unit', pieces: 4, unit: 15 },
  ]

  it('[Q51] given every reason, when it is said, then its figures are in it, and no two are the same', () => {
    const said = reasons.map((why) => say.reason(why, { weekday: 6, named: ['Street fair'], unit: 'tray' }))
    expect(new Set(said).size).toBe(reasons.length)
    expect(said[1]).toContain('1.30')
    expect(said[2]).toContain('Street fair')
    for (const figure of ['1.20', '0.35', '78']) expect(said[3]).toContain(figure)
    expect(said[6]).toContain('15')
    expect(say.reason({ code: 'unit', pieces: 4, unit: 6 }, { weekday: 6, named: [], unit: 'board' })).not.toBe(said[6])
    expect(say.signed(-31)).toBe('−31')
  })
})
