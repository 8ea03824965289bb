import { describe, expect, it } from 'vitest'
import { boardsInUse, clipped, pictureView } from '../../client/desk/plan/picture-view.ts'
import { supplyView, thatMatter } from '../../client/desk/plan/supply-view.ts'
import { textWidthPx } from '../../client/parts/text-width.ts'
import { shelfId, varietyId } from '../../shared-core/ids.ts'
import type { PlanLoad, PlanSupply } from '../../shared-core/live/plan.ts'
import { at, lines } from '../core/support/make.ts'
import { planLoad } from '../core/support/plan.ts'

const CYCLE_MS = 90_000

function supply(variety: string, parts: Partial<PlanSupply> = {}): PlanSupply {
  return { varietyId: varietyId(variety), forSale: 0, ready: [], asked: [], lost: 0, left: 0, ...parts }
}

/** Ten hours on a thousand pixels: 100 px an hour. */
function picture(loads: readonly PlanLoad[]) {
  return pictureView({
    fromMs: at('4:00'),
    toMs: at('14:00'),
    widthPx: 1_000,
    fontPx: 12,
    shelfIds: [shelfId('s1'), shelfId('s2')],
    loads: loads.map((load) => ({ key: load.id, load })),
    cycleMs: CYCLE_MS,
    boards: { count: 24, pieces: 6 },
    isOnBoards: (id) => id !== varietyId('focaccia'),
    nameOf: (id) => id,
  })
}

describe('the line over the day', () => {
  const shelf = { shelfId: shelfId('s2') }
  const sixty = lines('sesame', 36, 'poppy', 24)
  const one = planLoad('6:00', 1, { ...shelf, lines: sixty, dips: 2, kettleAtMs: at('5:56'), flipAtMs: at('6:03:30') })

  it('[I64] given a load, then it lies in its shelf’s lane from in to out, its dips in the kettle’s', () => {
    const { loads, shelves, heightPx } = picture([one])
    const [drawn] = loads
    expect(drawn).toMatchObject({ x: 200, flipX: 206, y: shelves[1]?.top, height: shelves[1]?.height })
    expect((drawn?.x ?? 0) + (drawn?.width ?? 0)).toBeCloseTo(226.5, 1)
    // First dip at 5:56, two of a minute and a half.
    expect(drawn?.dips).toEqual([194.5, 197])
    expect(heightPx).toBeGreaterThan((shelves[1]?.top ?? 0) + (shelves[1]?.height ?? 0))
  })

  it('[I64] given a load on a shelf that the shop does not have, then it is not drawn over another one', () => {
    expect(picture([{ ...one, shelfId: shelfId('gone') }]).loads).toEqual([])
  })

  it('[I65] given boards, then they are in use from the end of the first dip to the flip; one freed is free at once', () => {
    const next = planLoad('6:06', 2, { lines: sixty, kettleAtMs: at('6:02'), flipAtMs: at('6:09:30') })
    const steps = boardsInUse({
      loads: [one, next].map((load) => ({ key: load.id, load })),
      cycleMs: CYCLE_MS,
      boards: { count: 24, pieces: 6 },
      isOnBoards: () => true,
    })
    // 36 and 24 pieces, six a board: ten boards; the next ten are taken at the very instant of the flip.
    expect(steps).toEqual([
      { atMs: at('5:57:30'), inUse: 10 },
      { atMs: at('6:03:30'), inUse: 0 },
      { atMs: at('6:03:30'), inUse: 10 },
      { atMs: at('6:09:30'), inUse: 0 },
    ])
    expect(picture([one, next]).boards.most).toBe(10)
  })

  it('[I65] given what lies on pans, or is never flipped, then it takes no board', () => {
    const onPans = { ...one, lines: lines('focaccia', 24) }
    expect(picture([onPans, { ...one, flipAtMs: null }]).boards.most).toBe(0)
  })

  it('[I64] given little room, then a name is cut short and its number stays', () => {
    expect(clipped('36 Everything', 60, 12)).toMatch(/^36 E\w+…$/)
    expect(textWidthPx(clipped('36 Everything', 60, 12), 12)).toBeLessThanOrEqual(60)
    expect(clipped('36 Everything', 14, 12)).toBe('36')
    expect(clipped('36 Everything', 200, 12)).toBe('36 Everything')
    const full = { ...one, lines: lines('sesame', 12, 'poppy', 12, 'plain', 12, 'cheddar', 12) }
    expect(picture([full]).loads[0]?.rows).toEqual(['12 sesame', '12 poppy', '+2'])
  })

  it('[I64] given another load soon after on the shelf, then text ends before it', () => {
    const soon = planLoad('6:20', 2, shelf)
    const [first] = picture([one, soon]).loads
    expect(first?.rows.every((text) => textWidthPx(text, 12) <= 34)).toBe(true)
  })
})

describe('there and asked for', () => {
  const sesame = supply('sesame', {
    forSale: 10,
    ready: [[at('8:00'), 40]],
    asked: [
      [at('6:00'), 0, 0, 0],
      [at('10:00'), 30, 50, 80],
    ],
  })

  it('[I66] given supply and demand, then there in steps up to the most that either reaches', () => {
    const view = supplyView(sesame, { fromMs: at('6:00'), toMs: at('10:00'), widthPx: 400, heightPx: 80 })
    expect(view.most).toBe(80)
    expect(view.supply).toBe('M0 70H200V30H400')
    expect(view.asked).toBe('M0 80L400 30')
    expect(view.band).toBe('M0 80L400 50L400 0L0 80Z')
  })

  it('[I66] given many varieties, then those first of which most is asked for in vain or left', () => {
    const few = thatMatter(
      [supply('a', { left: 5 }), supply('b', { lost: 4 }), supply('c'), supply('d', { left: 7 })],
      3,
    )
    expect(few.map((one) => one.varietyId)).toEqual(['b', 'd', 'a'])
  })
})
