import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rodPlaces } from '../../client/parts/rod-stack.ts'

describe('a rod', () => {
  it.each([
    [{ pieces: 0, onTheWay: 0 }, ''],
    [{ pieces: 6, onTheWay: 0 }, 's6'],
    [{ pieces: 3, onTheWay: 0 }, 's3'],
    [{ pieces: 13, onTheWay: 0 }, 's6 s6 s1'],
    [{ pieces: 9, onTheWay: 24 }, 's6 s3 c6 c6 c6 c6'],
    [{ pieces: 8, onTheWay: 7, kept: 12 }, 'k6 k6 s6 s2 c6 c1'],
    [{ pieces: 60, onTheWay: 0 }, 's6 s6 s6 s6 s6 s6 s6 s6 s6 s6'],
    // One place is the break: 62 pieces are eleven rings, two below it, seven above, and the twelve pieces in it.
    [{ pieces: 62, onTheWay: 0 }, 's6 s6 (s12) s6 s6 s6 s6 s6 s6 s2'],
    [{ pieces: 600, onTheWay: 6 }, 's6 s6 (s552) s6 s6 s6 s6 s6 s6 c6'],
    [{ pieces: 12, onTheWay: 120 }, 's6 s6 c6 c6 (c78) c6 c6 c6 c6 c6'],
    [{ pieces: 120, onTheWay: 120, kept: 120 }, 'k6 (k108) k6 s6 s6 (s102) s6 c6 (c108) c6'],
  ])('given %o and ten places, shows %s', (stock, places) => {
    expect(written(rodPlaces({ ...stock, maxRings: 10 }))).toBe(places)
  })

  const counts = fc.nat({ max: 2_000 })
  const stock = fc.record({ pieces: counts, onTheWay: counts, kept: counts, maxRings: fc.integer({ min: 6, max: 30 }) })

  it('never has more places than there are, and accounts for every piece', () => {
    fc.assert(
      fc.property(stock, (rod) => {
        const places = rodPlaces(rod)
        const sum = (kind: string) => places.filter((p) => p.kind === kind).reduce((all, p) => all + p.pieces, 0)
        expect(places.length).toBeLessThanOrEqual(rod.maxRings)
        expect([sum('kept'), sum('for-sale'), sum('coming')]).toEqual([rod.kept, rod.pieces, rod.onTheWay])
      }),
    )
  })

  it('shows of each kind the topmost ring, and a break only where rings are left out', () => {
    fc.assert(
      fc.property(stock, (rod) => {
        const places = rodPlaces(rod)
        for (const [kind, pieces] of [
          ['kept', rod.kept],
          ['for-sale', rod.pieces],
          ['coming', rod.onTheWay],
        ] as const) {
          const own = places.filter((place) => place.kind === kind)
          const top = own[own.length - 1]
          if (pieces === 0) expect(own).toEqual([])
          else expect(top).toMatchObject({ hidden: false, pieces: pieces % 6 === 0 ? 6 : pieces % 6 })
          expect(own.filter(({ hidden }) => hidden).length).toBe(own.length < Math.ceil(pieces / 6) ? 1 : 0)
        }
      }),
    )
  })

  it.each([
    [{ pieces: -1, onTheWay: 0, maxRings: 10 }, 'whole pieces'],
    [{ pieces: 1.5, onTheWay: 0, maxRings: 10 }, 'whole pieces'],
    [{ pieces: 1, onTheWay: Number.NaN, maxRings: 10 }, 'whole pieces'],
    [{ pieces: 1, onTheWay: 0, maxRings: 5 }, 'at least 6 places'],
  ])('refuses %o', (stock, words) => {
    expect(() => rodPlaces(stock)).toThrow(words)
  })
})

function written(places: ReturnType<typeof rodPlaces>): string {
  const letter = { kept: 'k', 'for-sale': 's', coming: 'c' } as const
  return places
    .map(({ kind, pieces, hidden }) => (hidden ? `(${letter[kind]}${pieces})` : letter[kind] + pieces))
    .join(' ')
}
