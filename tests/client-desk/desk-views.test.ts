import { describe, expect, it } from 'vitest'
import { accountRows, accountTotal, carriedOn, gaps, signed } from '../../client/desk/account-view.ts'
import { deviceName } from '../../client/desk/device-name.ts'
import { distanceAnswer, usualDistances } from '../../client/desk/distance-view.ts'
import { doneRows } from '../../client/desk/done-view.ts'
import { outcomeOf } from '../../client/desk/post.ts'
import type { TrayForm } from '../../client/desk/trays-view.ts'
import { readTrays, standingTrays, trayStuff } from '../../client/desk/trays-view.ts'
import { deskWords } from '../../client/words/desk.ts'
import { wordsFor } from '../../client/words/words.ts'
import type { State } from '../../shared-core/day/state.ts'
import { deviceId, varietyId } from '../../shared-core/ids.ts'
import { CLOCK } from '../client-counter/counter-maker.ts'
import { at, batch, lines, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { shopWith } from '../core/support/shop.ts'

const words = deskWords(wordsFor('en', shopWith(), () => '6:47'))

/** 36 plain on the rack, 24 sesame out, 6 of them sold, 2 wasted, 10 counted where 16 were known. */
function morning(): State {
  const state = stateWith({ batches: [batch()], stock: [stock('sesame', { lots: [lot({ pieces: 24 })] })] })
  play(state, { type: 'sell', lines: lines('sesame', 6) })
  play(state, { type: 'remove', varietyId: varietyId('sesame'), pieces: 2, fate: 'wasted' })
  play(state, { type: 'count', varietyId: varietyId('sesame'), pieces: 10 })
  play(state, { type: 'keep', lines: lines('sesame', 4) })
  return state
}

describe('the day’s account', () => {
  it('given a morning, then what came in is where it is or went', () => {
    const [plain, ...others] = accountRows(morning())
    expect(others).toEqual([])
    expect(plain).toEqual({
      doughId: 'plain',
      shaped: 0,
      carriedIn: 60,
      onTheLine: 36,
      forSale: 6,
      kept: 4,
      sold: 6,
      kitchen: 0,
      wasted: 2,
      given: 0,
      dayOld: 0,
      unexplained: 6,
    })
    expect(gaps(morning())).toEqual([])
  })

  it('given a piece that is nowhere, then the gap is told', () => {
    const state = morning()
    state.batches.clear()
    expect(gaps(state)).toEqual([{ doughId: 'plain', pieces: 36 }])
  })

  it('given two doughs, then the last line is their sum', () => {
    const state = stateWith({ batches: [batch(), batch({ id: 'b2', dough: 'rye', pieces: 15, stage: 'chill' })] })
    const rows = accountRows(state)
    expect(rows.map((row) => row.onTheLine)).toEqual([36, 15])
    expect(accountTotal(rows)).toMatchObject({ carriedIn: 51, onTheLine: 51 })
  })

  it('given a closed day, then what went on is what came in less what went', () => {
    const state = morning()
    play(state, { type: 'closeDay' })
    const [closed] = state.lastDay?.account ?? []
    if (closed === undefined) throw new Error('nothing closed')
    const present = [...state.batches.values()].reduce((sum, one) => sum + one.pieces, 0)
    const stocked = [...state.stock.values()].reduce((sum, one) => sum + one.kept, 0)
    expect(carriedOn(closed.account)).toBe(present + stocked)
  })

  it.each([
    [3, '+3'],
    [0, '0'],
    [-3, '−3'],
  ])('given %i unexplained, then it is written %s', (pieces, text) => {
    expect(signed(pieces)).toBe(text)
  })
})

describe('trays by hand', () => {
  const shop = shopWith()
  const form: TrayForm = { how: 'carriedIn', stage: 'chill', number: 3, unit: 'trays', daysAgo: 1, clock: '18:00' }
  const plain = trayStuff(shop)[0]
  const read = (change: Partial<TrayForm>) => {
    if (plain === undefined) throw new Error('no dough')
    return readTrays({ ...form, ...change }, plain, { clock: CLOCK, nowMs: at('6:47') })
  }

  it('given a dough that the mixer decides, then its variety is named; another is plain dough', () => {
    expect(
      trayStuff(shop).map(({ name, doughId: dough, varietyId: variety, stages }) => ({ name, dough, variety, stages })),
    ).toEqual([
      { name: 'Plain', dough: 'plain', variety: null, stages: ['proof', 'chill', 'rack'] },
      { name: 'Rye', dough: 'rye', variety: 'rye', stages: ['proof', 'chill'] },
    ])
  })

  it('given three trays since yesterday evening, then 45 pieces since then', () => {
    const act = {
      type: 'carryIn',
      doughId: 'plain',
      varietyId: null,
      pieces: 45,
      stage: 'chill',
      sinceMs: at('18:00', -1),
    }
    expect(read({})).toEqual({ ok: true, pieces: 45, act })
  })

  it('given that nobody knows since when, then no time is claimed', () => {
    expect(read({ daysAgo: null })).toMatchObject({ act: { sinceMs: null } })
  })

  it('given pieces shaped now, then they are shaped and not carried in', () => {
    expect(read({ how: 'shaped', unit: 'pieces', number: 96, stage: 'proof' })).toEqual({
      ok: true,
      pieces: 96,
      act: { type: 'shape', doughId: 'plain', varietyId: null, pieces: 96, stage: 'proof' },
    })
  })

  it.each([
    [{ number: 0 }, 'number'],
    [{ number: 2.5, unit: 'pieces' }, 'number'],
    [{ number: 5_001, unit: 'pieces' }, 'number'],
    [{ daysAgo: 0, clock: '6:48' }, 'later'],
  ] as const)('given %o, then it is refused for its %s', (change, why) => {
    expect(read(change)).toEqual({ ok: false, why })
  })

  it('given trays in several stages, then they are listed stage by stage, oldest first', () => {
    const state = stateWith({
      batches: [
        batch({ id: 'rack', stage: 'rack' }),
        batch({ id: 'young', stage: 'chill', since: at('5:00') }),
        batch({ id: 'old', stage: 'chill', since: at('18:00', -1) }),
        batch({ id: 'boiling', stage: 'kettle' }),
      ],
    })
    expect(standingTrays(state).map((one) => one.id)).toEqual(['old', 'young', 'rack'])
  })
})

describe('what a device is called', () => {
  it.each([
    ['en', 'bench efe4', 'Bench efe4'],
    ['es', 'bench efe4', 'Línea efe4'],
    ['es', 'bench left', 'bench left'],
    ['es', 'Left oven', 'Left oven'],
  ] as const)('given %s and "%s", then %s', (language, name, called) => {
    const said = deskWords(wordsFor(language, shopWith()))
    expect(deviceName({ deviceId: deviceId('efe41234'), role: 'bench', name }, said)).toBe(called)
  })
})

describe('what was done', () => {
  it('given acts of two screens, then newest first, each with who and whether it can be taken back', () => {
    const rows = doneRows(morning(), { deviceId: deviceId('desk-1'), screens: [], words })
    expect(rows.map(({ text, by }) => [text, by])).toEqual([
      ['6:47 kept Sesame 4', 'bench-1'],
      ['6:47 counted Sesame 10', 'bench-1'],
      ['6:47 took off Sesame 2', 'bench-1'],
      ['6:47 sold Sesame 6', 'bench-1'],
    ])
    expect(rows.map((row) => row.refusal === null)).toEqual([true, false, false, false])
    expect(rows[3]?.refusal).toContain('Cannot be taken back')
  })
})

describe('an answer of the API', () => {
  it.each([
    [
      { commandId: 'c', answer: { kind: 'taken', seq: 4 } },
      { kind: 'taken', seq: 4 },
    ],
    [
      { commandId: 'c', answer: { kind: 'ask', asks: [{ code: 'retires-in-use', params: { id: 'rye', pieces: 6 } }] } },
      { kind: 'ask', asks: [{ code: 'retires-in-use', params: { id: 'rye', pieces: 6 } }] },
    ],
    [
      { commandId: 'c', answer: { kind: 'refused', refusal: { code: 'not-your-role', params: {} } } },
      { kind: 'refused', refusal: { code: 'not-your-role', params: {} } },
    ],
    [
      { title: 'Mistakes', detail: 'no', errors: [{ path: '/a', wrong: 'W.', right: 'R.' }, 'nonsense'] },
      { kind: 'mistakes', problems: [{ path: '/a', wrong: 'W.', right: 'R.' }] },
    ],
    [
      { title: 'Too many', detail: 'At most 600 a minute.' },
      { kind: 'failed', detail: 'At most 600 a minute.' },
    ],
    ['nonsense', { kind: 'failed', detail: '' }],
  ])('given %j, then it is read', (body, outcome) => {
    expect(outcomeOf(body)).toEqual(outcome)
  })
})

describe('how far a wall can be read', () => {
  it('given a larger screen, then from further away', () => {
    const distances = usualDistances().map((one) => one.farthestM)
    expect(distances).toEqual([...distances].sort((one, other) => one - other))
    expect(distanceAnswer({ diagonalInch: 43, widthPx: 1920, heightPx: 1080, metres: 3 })?.supported).toBe(true)
    expect(distanceAnswer({ diagonalInch: 24, widthPx: 1920, heightPx: 1080, metres: 6 })?.supported).toBe(false)
  })

  it('given a number that makes no sense, then no answer', () => {
    expect(distanceAnswer({ diagonalInch: Number.NaN, widthPx: 1920, heightPx: 1080, metres: 3 })).toBeNull()
    expect(distanceAnswer({ diagonalInch: 43, widthPx: 0, heightPx: 1080, metres: 3 })).toBeNull()
  })
})
