import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shelfId, varietyId } from '../../../shared-core/ids.ts'
import { adjustByBoards, offer, swapVariety } from '../../../shared-core/line/differs.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { batch, lines, planned, stateWith } from '../support/make.ts'
import { shopWith, table, variety } from '../support/shop.ts'

const SHOP = shopWith()
const adjust = (some: readonly (string | number)[], id: string, boards: 1 | -1, mostPieces: number | null = 48) =>
  adjustByBoards(SHOP, lines(...some), { varietyId: varietyId(id), boards, mostPieces })

describe('a board more or less', () => {
  it.each([
    // lines                          variety   by   then
    [['sesame', 36], 'sesame', 1, ['sesame', 42]],
    [['sesame', 36], 'sesame', -1, ['sesame', 30]],
    [['sesame', 10], 'sesame', 1, ['sesame', 12]],
    [['sesame', 10], 'sesame', -1, ['sesame', 6]],
    [['sesame', 6, 'poppy', 12], 'sesame', -1, ['poppy', 12]],
    [['sesame', 24], 'poppy', 1, ['sesame', 24, 'poppy', 6]],
    [['sesame', 24], 'poppy', -1, ['sesame', 24]],
    [['sesame', 36, 'poppy', 12], 'poppy', 1, ['sesame', 30, 'poppy', 18]],
    [['sesame', 24, 'poppy', 24], 'plain', 1, ['sesame', 24, 'poppy', 18, 'plain', 6]],
    [['sesame', 44, 'poppy', 4], 'poppy', 1, ['sesame', 42, 'poppy', 6]],
    [['sesame', 48], 'sesame', 1, ['sesame', 54]],
    [['sesame', 6, 'poppy', 48], 'poppy', 1, ['poppy', 54]],
    [['sesame', 36, 'poppy', 36], 'poppy', -1, ['sesame', 36, 'poppy', 30]],
  ] as const)('[L35] given %j on a shelf of 48, when %s changes by %i board, then %j', (some, id, by, then) => {
    expect(adjust(some, id, by)).toEqual(lines(...then))
  })

  it('[L35] given nothing that limits, then no other line gives boards', () => {
    expect(adjust(['sesame', 36, 'poppy', 12], 'poppy', 1, null)).toEqual(lines('sesame', 36, 'poppy', 18))
  })

  it('[L35] given any lines that fit, when a board is added, then they fit still unless that line fills the shelf alone', () => {
    const some = fc.array(fc.integer({ min: 1, max: 16 }), { minLength: 1, maxLength: 4 })
    const ids = ['sesame', 'poppy', 'plain', 'cheddar']
    fc.assert(
      fc.property(some, fc.nat(3), (pieces, chosen) => {
        const before = lines(...pieces.flatMap((sum, n) => [ids[n] ?? 'rye', sum * 3]))
        fc.pre(piecesOf(before) <= 48)
        const id = varietyId(ids[chosen] ?? 'rye')
        const after = adjustByBoards(SHOP, before, { varietyId: id, boards: 1, mostPieces: 48 })
        const of = (all: typeof after) => all.find((line) => line.varietyId === id)?.pieces ?? 0
        expect(of(after)).toBeGreaterThan(of(before))
        expect(of(after) % 6).toBe(0)
        if (of(after) <= 48) expect(piecesOf(after)).toBeLessThanOrEqual(48)
        expect(after.every((line) => line.pieces > 0)).toBe(true)
      }),
    )
  })
})

describe('another variety', () => {
  it.each([
    [['sesame', 36, 'poppy', 12], 'sesame', 'plain', ['plain', 36, 'poppy', 12]],
    [['sesame', 36, 'poppy', 12], 'sesame', 'poppy', ['poppy', 48]],
    [['sesame', 36], 'poppy', 'plain', ['sesame', 36]],
  ] as const)('[L35] given %j, when %s becomes %s, then %j', (some, from, to, then) => {
    expect(swapVariety(lines(...some), varietyId(from), varietyId(to))).toEqual(lines(...then))
  })
})

describe('what is offered', () => {
  const order = (parts: Parameters<typeof stateWith>[0]) =>
    offer(stateWith(parts), shelfId('s1')).map((one) => one.varietyId)

  it('[L36] given a plan and topped pieces at hand, then these stand first, then the planned dough, then the rest', () => {
    const planned1 = [planned({ lines: lines('poppy', 24) })]
    const rye = batch({ id: 'r', dough: 'rye', variety: 'rye', stage: 'boards', pieces: 12 })
    expect(order({ planned: planned1, batches: [rye] })).toEqual([
      'poppy',
      'rye',
      'sesame',
      'plain',
      'focaccia',
      'cheddar',
    ])
  })

  it('[L36] given a plan and another plain dough on boards, then the planned dough stands before it', () => {
    const rye = batch({ id: 'r', dough: 'rye', stage: 'boards', pieces: 12 })
    const parts = { planned: [planned({ lines: lines('poppy', 24) })], batches: [rye] }
    expect(order(parts)).toEqual(['poppy', 'sesame', 'plain', 'focaccia', 'cheddar', 'rye'])
  })

  it('[L36] given no plan, then varieties of the dough nearest the oven stand first', () => {
    const rye = batch({ id: 'r', dough: 'rye', stage: 'boards', pieces: 12 })
    const plain = batch({ id: 'p', stage: 'rack', pieces: 36 })
    expect(order({ batches: [rye, plain] })[0]).toBe('rye')
    expect(order({})).toEqual(['sesame', 'poppy', 'plain', 'focaccia', 'cheddar', 'rye'])
  })

  it('[L36] given pieces at hand, then it says how many could become each', () => {
    const batches = [
      batch({ id: 'a', stage: 'boards', variety: 'sesame', pieces: 12 }),
      batch({ id: 'b', stage: 'kettle', pieces: 36 }),
      batch({ id: 'c', stage: 'chill', pieces: 200 }),
    ]
    const offered = offer(stateWith({ batches, planned: [planned({ lines: lines('poppy', 24) })] }), shelfId('s1'))
    expect(offered[0]).toEqual({ varietyId: 'poppy', planned: true, atHand: 36 })
    expect(offered.find((one) => one.varietyId === 'sesame')).toMatchObject({ planned: false, atHand: 48 })
    expect(offered.find((one) => one.varietyId === 'rye')).toMatchObject({ atHand: 0 })
  })

  it('[L36] given a retired variety, then it is offered only where it is planned', () => {
    const shop = shopWith({
      varieties: table([variety({ id: 'sesame' }), variety({ id: 'old', order: 2, retired: true })]),
    })
    expect(order({ shop })).toEqual(['sesame'])
    expect(order({ shop, planned: [planned({ lines: lines('old', 12) })] })).toEqual(['old', 'sesame'])
  })
})
