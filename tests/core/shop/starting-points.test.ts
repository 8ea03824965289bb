import { describe, expect, it } from 'vitest'
import { pickableDoughs, pickableToppings, pickableVarieties, sizeWindows } from '../../../shared-core/shop/pickable.ts'
import { pickableCoolers, pickableKettles, pickableMixers } from '../../../shared-core/shop/pickable-equipment.ts'
import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { shopMisfits } from '../../../shared-core/shop/set-up-rules.ts'
import { startingPoint } from '../../../shared-core/shop/starting-points.ts'
import { startingSteps } from '../../../shared-core/shop/starting-steps.ts'
import { shopOf } from './set-up-file-maker.ts'

const KINDS = ['shelves', 'rotating', 'hearth'] as const

describe('a shop to begin with', () => {
  it.each(KINDS.flatMap((kind) => [[kind, 'en'] as const, [kind, 'es'] as const]))(
    '[U4] given %s in %s, then it fits, and is one that a file could have made',
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

  it('[U4] given any start, then every topping that goes on is named, every dough says what is in it, and nobody is', () => {
    for (const kind of KINDS) {
      const shop = startOf(kind, 'en')
      expect(
        [...shop.varieties.values()].filter((one) => (one.topping === 'none') !== (one.toppingId === null)),
      ).toEqual([])
      expect([...shop.doughs.values()].every(({ contains }) => contains.includes('wheat'))).toBe(true)
      expect(shop.people.size).toBe(0)
    }
  })

  it.each([
    ['shelves', -90],
    ['rotating', -75],
    ['hearth', -180],
  ] as const)(
    '[U4] given %s, then the oven is lit %d min before the first load, and the water after it',
    (kind, minutes) => {
      const opening = startingSteps(kind, 'en').filter(({ list }) => list === 'opening')
      expect(opening[0]?.offsetMs).toBe(minutes * 60_000)
      expect(opening.map(({ offsetMs }) => offsetMs)).toEqual(
        opening.map(({ offsetMs }) => offsetMs).sort((a, b) => a - b),
      )
      expect(opening.filter(({ kind: of }) => of === 'float-test')).toHaveLength(1)
    },
  )

  it('[U4] given both languages, then the same ids in the same order with other words', () => {
    const both = (['en', 'es'] as const).map((language) => startOf('hearth', language))
    const ids = both.map((shop) => [...shop.steps.keys(), ...shop.varieties.keys(), ...shop.toppings.keys()])
    expect(ids[0]).toEqual(ids[1])
    const [en = [], es = []] = both.map(({ steps }) => [...steps.values()].map(({ name }) => name))
    expect(en.filter((name) => es.includes(name))).toEqual([])
  })
})

describe('what can be picked to go with it', () => {
  it.each(['en', 'es'] as const)('[U4] given all of it in %s put into a start, then it fits', (language) => {
    for (const kind of KINDS) {
      const changes: SetUpChange[] = [
        ...pickableDoughs(language).map((value) => ({ entity: 'dough', value }) as const),
        ...pickableToppings(language).map((value) => ({ entity: 'topping', value }) as const),
        ...pickableVarieties(language).map((value) => ({ entity: 'variety', value }) as const),
        ...pickableKettles(language).map(({ part }) => ({ entity: 'kettle', value: part }) as const),
        ...pickableMixers(language, 'lb-oz').map(({ part }) => ({ entity: 'mixer', value: part }) as const),
        ...pickableCoolers(language, 'C').map(({ part }) => ({ entity: 'cooler', value: part }) as const),
      ]
      for (const change of changes.filter(({ entity }) => entity !== 'variety'))
        expect(shopMisfits(applySetUp(startOf(kind, language), [change]))).toEqual([])
      const all = applySetUp(startOf(kind, language), changes)
      expect(shopMisfits(all)).toEqual([])
      expect(shopOf(toSetUpFile(all))).toEqual(all)
    }
  })

  it('[U4] given sizes, then a mini is out before a regular one, and a large one after it (common practice, no source)', () => {
    const regular = startOf('shelves', 'en').windows.bake?.targetMs ?? 0
    expect(sizeWindows('mini').bake?.targetMs).toBeLessThan(regular)
    expect(sizeWindows('large').bake?.targetMs).toBeGreaterThan(regular)
    expect(sizeWindows('regular')).toEqual({})
    expect(new Set(pickableVarieties('en').map(({ size }) => size))).toEqual(
      new Set(['mini', 'regular', 'large', 'stick']),
    )
  })
})

function startOf(kind: (typeof KINDS)[number], language: 'en' | 'es') {
  return startingPoint(kind, { name: 'New shop', zone: 'America/Chicago', language })
}
