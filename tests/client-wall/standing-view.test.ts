import { describe, expect, it } from 'vitest'
import { standingView } from '../../client/wall/standing-view.ts'
import type { Batch } from '../../shared-core/day/state.ts'
import { standingNow } from '../../shared-core/line/quiet.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { at, batch, stateWith, until } from '../core/support/make.ts'
import { dough, shopWith, table } from '../core/support/shop.ts'
import { LAYOUT, SIZES, setting } from './support/wall.ts'

const NOW = at('4:10')

function view(batches: readonly Batch[], shop = shopWith(), language: Language = 'en') {
  const standing = standingNow(stateWith({ shop, batches }), NOW)
  return standingView({ ...setting(shop, NOW, language), standing, box: LAYOUT.middle })
}

const CHILLED = batch({
  id: 'c',
  stage: 'chill',
  pieces: 240,
  since: at('16:00', -1),
  until: until('0:00', '6:00', '16:00'),
})
const RACK = batch({ id: 'r', stage: 'rack', pieces: 45, until: until('3:40', '4:00', '4:40') })
const RYE = batch({ id: 'y', dough: 'rye', stage: 'rack', pieces: 24, until: until('4:20', '4:30', '4:50') })
const PROOF = batch({ id: 'p', stage: 'proof', pieces: 60, until: until('4:40', '5:40', '6:40') })

describe('what stands while the line is quiet', () => {
  it('given dough in three stages, then each stage is a block in the order of the line, and empty ones are left out', () => {
    const { columns, namePx } = view([RACK, CHILLED, PROOF])
    expect(columns.flat().map((block) => block.title)).toEqual(['Proofing', 'Chilled', 'On the rack'])
    expect(columns).toHaveLength(2)
    expect(namePx).toBe(SIZES.actPx)
  })

  it('given ready and waiting dough, then ready comes first, with how long it is good and how many trays', () => {
    const [rack] = view([RYE, RACK]).columns.flat()
    expect(rack?.items.map(({ name, count, detail }) => `${name} ${count} ${detail}`)).toEqual([
      'Plain 45 ready, good to 4:40',
      'Rye 24 ready at 4:20',
    ])
    expect(rack?.items.map(({ trays }) => [trays?.all, trays?.ready])).toEqual([
      [3, 3],
      [2, 0],
    ])
  })

  it('given dough that has stood too long, then it comes first and is trouble', () => {
    const over = batch({ id: 'o', stage: 'rack', dough: 'rye', pieces: 24, until: until('2:00', '2:30', '3:50') })
    const [rack] = view([RACK, over]).columns.flat()
    expect(rack?.items[0]).toMatchObject({ name: 'Rye', detail: 'over since 3:50', isTrouble: true })
  })

  it('given Spanish, then what is said of a dough agrees with it', () => {
    const over = batch({ id: 'o', stage: 'chill', dough: 'rye', pieces: 24, until: until('2:00', '2:30', '3:50') })
    const items = view([RACK, RYE, over, CHILLED], shopWith(), 'es')
      .columns.flat()
      .flatMap((block) => block.items)
    const said = items.map(({ detail }) => detail).sort()
    expect(said).toEqual(['lista a las 4:20', 'lista, bien hasta las 4:40', 'lista', 'pasada desde las 3:50'].sort())
  })

  it('[G2] given sixteen doughs with the longest names everywhere, then what has no room is counted and all fits', () => {
    const doughs = table(
      Array.from({ length: 16 }, (_, n) => dough({ id: `d${n}`, order: n, name: 'Sun-dried Tomato & Basil' })),
    )
    const stages = ['proof', 'chill', 'rack'] as const
    const batches = stages.flatMap((stage) =>
      [...doughs.keys()].map((id) =>
        batch({ id: `${stage} ${id}`, dough: id, stage, pieces: 96, until: until('3:00', '3:30', '4:40') }),
      ),
    )
    const { columns, columnPx, itemPx } = view(batches, shopWith({ doughs }))
    for (const column of columns) {
      const lines = column.reduce((sum, block) => sum + block.items.length + (block.rest === '' ? 0 : 1), 0)
      expect(lines * itemPx + column.length * 1.3 * SIZES.minPx).toBeLessThanOrEqual(LAYOUT.middle.height)
      for (const block of column) {
        expect(Number.parseInt(block.rest, 10) + block.items.length).toBe(16)
        for (const item of block.items) expect(item.name).toBe('Sun-dried Tomato & Basil')
      }
    }
    expect(columns.flat()).toHaveLength(3)
    expect(2 * columnPx).toBeLessThan(LAYOUT.middle.width)
  })
})
