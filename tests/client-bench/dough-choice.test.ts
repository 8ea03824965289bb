import { describe, expect, it } from 'vitest'
import { doughAct, doughChoices, firstPieces } from '../../client/bench/sheets/dough-choice.ts'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import { at, batch, stateWith, until } from '../core/support/make.ts'
import { dough, shopWith, table, variety } from '../core/support/shop.ts'

const SHOP = shopWith({
  doughs: table([
    dough({ id: 'plain', order: 1, trayPieces: 15 }),
    dough({ id: 'sweet', order: 2, route: ['chill', 'rack', 'kettle', 'boards', 'oven'] }),
    dough({ id: 'roll', order: 3, route: ['proof', 'oven'] }),
    dough({ id: 'gone', order: 4, retired: true }),
  ]),
  varieties: table([
    variety({ id: 'sesame', order: 1 }),
    variety({ id: 'raisin', order: 2, doughId: doughId('sweet'), decidedAt: 'mixer' }),
    variety({ id: 'berry', order: 3, doughId: doughId('sweet'), decidedAt: 'mixer' }),
    variety({ id: 'onion-plain', order: 4, decidedAt: 'mixer' }),
    variety({ id: 'roll', order: 5, doughId: doughId('roll') }),
  ]),
})

const kinds = (state: ReturnType<typeof stateWith>, job: Parameters<typeof doughChoices>[2]) =>
  doughChoices(state, SHOP, job).map(({ doughId: id, varietyId: mixed, atHand }) => `${id} ${mixed ?? '-'} ${atHand}`)

describe('given doughs with their routes', () => {
  it('when something is pulled, then those that are pulled at all: what stands chilled first, mixed ones by name', () => {
    const state = stateWith({
      shop: SHOP,
      batches: [
        batch({ id: 'a', dough: 'sweet', variety: 'berry', stage: 'chill', pieces: 30 }),
        batch({ id: 'b', dough: 'plain', stage: 'rack', pieces: 60 }),
      ],
    })
    expect(kinds(state, 'pull')).toEqual(['sweet berry 30', 'plain - 0', 'plain onion-plain 0', 'sweet raisin 0'])
    expect(kinds(state, 'dip')[0]).toBe('plain - 60')
  })

  it('when some of it proofs yet, then a pull offers what is chilled and tells the rest apart', () => {
    const chilled = batch({ id: 'a', stage: 'chill', pieces: 30 })
    const state = stateWith({ shop: SHOP, batches: [chilled, batch({ id: 'b', stage: 'proof', pieces: 45 })] })
    const [plain] = doughChoices(state, SHOP, 'pull')
    expect([plain?.atHand, plain?.proofing]).toEqual([30, 45])
    const [dipped] = doughChoices(state, SHOP, 'dip')
    expect([dipped?.atHand, dipped?.proofing]).toEqual([75, 0])
  })

  it('when chilled doughs are pulled, then the one whose window ends first stands first, and the end of its first trays is told', () => {
    const of = (id: string, dough: string, ends: string) =>
      batch({
        id,
        dough,
        variety: dough === 'sweet' ? 'berry' : null,
        stage: 'chill',
        pieces: 30,
        until: until('4:00', '5:00', ends),
      })
    const state = stateWith({
      shop: SHOP,
      batches: [of('a', 'plain', '18:00'), of('b', 'sweet', '9:00'), of('c', 'plain', '16:00')],
    })
    const atHand = doughChoices(state, SHOP, 'pull').filter((one) => one.atHand > 0)
    expect(atHand.map(({ doughId: id, varietyId: mixed, useByMs }) => [id, mixed, useByMs])).toEqual([
      ['sweet', 'berry', at('9:00')],
      ['plain', null, at('16:00')],
      ['plain', 'onion-plain', at('16:00')],
    ])
  })

  it('when trays are typed in, then every dough in use, each to where its route begins', () => {
    const choices = doughChoices(stateWith({ shop: SHOP }), SHOP, 'carryIn')
    expect(choices.map(({ doughId: id }) => id)).toEqual(['plain', 'plain', 'sweet', 'sweet', 'roll'])
    expect(choices[0]?.stages).toEqual(['proof', 'chill', 'rack'])
    expect(choices[4]?.stages).toEqual(['proof'])
  })
})

it.each([
  // job, at hand, first number
  ['pull', 0, 15],
  ['pull', 120, 15],
  ['pull', 9, 9],
  ['dip', 0, 36],
  ['dip', 20, 20],
  ['shape', 0, 15],
] as const)('given a %s with %s at hand, when it begins, then with %s pieces', (job, atHand, pieces) => {
  const [choice] = doughChoices(stateWith({ shop: SHOP }), SHOP, job)
  expect(choice && firstPieces({ ...choice, atHand }, job, SHOP)).toBe(pieces)
})

it('given a choice, when it is taken, then the act says what, where and since when', () => {
  const [plain] = doughChoices(stateWith({ shop: SHOP }), SHOP, 'carryIn')
  if (plain === undefined) throw new Error('no dough')
  const putting = { pieces: 30, stage: 'chill', hours: 12, nowMs: at('6:00') } as const
  expect(doughAct('pull', plain, putting)).toEqual({ type: 'pull', doughId: 'plain', varietyId: null, pieces: 30 })
  const put = { doughId: doughId('plain'), varietyId: null, pieces: 30, stage: 'chill' }
  expect(doughAct('shape', plain, putting)).toEqual({ type: 'shape', ...put })
  expect(doughAct('carryIn', plain, putting)).toEqual({ type: 'carryIn', ...put, sinceMs: at('18:00', -1) })
  expect(doughAct('carryIn', { ...plain, varietyId: varietyId('onion-plain') }, { ...putting, hours: 0 })).toEqual({
    type: 'carryIn',
    ...put,
    varietyId: 'onion-plain',
    sinceMs: null,
  })
})
