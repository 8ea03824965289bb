import { describe, expect, it } from 'vitest'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { shopMisfits } from '../../../shared-core/shop/set-up-rules.ts'
import { startingPoint } from '../../../shared-core/shop/starting-points.ts'
import { shopOf } from './set-up-file-maker.ts'

const KINDS = ['shelves', 'rotating', 'hearth'] as const

describe('a shop to begin with', () => {
  it.each(KINDS.flatMap((kind) => [[kind, 'en'] as const, [kind, 'es'] as const]))(
    'given %s in %s, then it fits, and is one that a file could have made',
    (kind, language) => {
      const shop = startingPoint(kind, { name: 'New shop', zone: 'America/Chicago', language })
      expect(shop.oven.kind).toBe(kind)
      expect(shop.profile).toMatchObject({ name: 'New shop', zone: 'America/Chicago', language })
      expect(shopMisfits(shop)).toEqual([])
      expect(shopOf(toSetUpFile(shop))).toEqual(shop)
    },
  )

  it('given shelves, then five of 12 dozen; given a hearth, then one floor in boards', () => {
    const of = (kind: (typeof KINDS)[number]) =>
      [...startingPoint(kind, { name: 'New shop', zone: 'America/Chicago', language: 'en' }).shelves.values()].map(
        ({ pieces, floorBoards }) => [pieces, floorBoards],
      )
    expect(of('shelves')).toEqual(Array(5).fill([144, null]))
    expect(of('hearth')).toEqual([[120, 20]])
  })
})
