import { describe, expect, it } from 'vitest'
import { addressOf, PLACES, whereOf } from '../../client/desk/place.ts'
import { isLocal } from '../../client/desk/screens/address-field.tsx'
import { withHere } from '../../client/desk/screens/use-addresses.ts'
import { linkFor, nameInLink, withoutName } from '../../client/live/name-in-link.ts'

describe('the desk’s places', () => {
  it.each(PLACES)('given %s, then its address leads there, within or not', (place) => {
    expect(whereOf(addressOf(place))).toEqual({ place, within: '' })
    expect(whereOf(addressOf(place, '2026-11-24/17'))).toEqual({ place, within: '2026-11-24/17' })
  })

  it.each(['', '#', '#nowhere', '#day'])('given "%s", then it is today', (hash) => {
    expect(whereOf(hash)).toEqual({ place: 'today', within: '' })
  })
})

describe('a screen’s link', () => {
  it.each(['Boiler wall', 'Pared nº 2 & más', '100% “quoted”?#'])(
    'given the name %s, then the screen reads it',
    (name) => {
      const link = new URL(linkFor('http://shop.local:4610/', 'wall', name))
      expect(link.pathname).toBe('/wall')
      expect(nameInLink(link.search)).toBe(name)
    },
  )

  it('given no name, then the link has none', () => {
    expect(linkFor('http://shop.local:4610', 'bench', '  ')).toBe('http://shop.local:4610/bench')
    expect(nameInLink('?name=%20')).toBeNull()
  })

  it('given other parts of the address, then only the name leaves it', () => {
    const url = new URL('http://shop.local/desk?name=Office&other=1#past/2026-11-24')
    expect(withoutName(url)).toBe('/desk?other=1#past/2026-11-24')
    expect(withoutName(new URL('http://shop.local/desk?name=Office'))).toBe('/desk')
  })
})

describe('the addresses to open', () => {
  const known = [{ url: 'http://shop.local:4610', kind: 'name' }] as const

  it('given a page opened by another one, then that one is listed last', () => {
    expect(withHere(known, 'http://10.0.0.7:4610')).toEqual([...known, { url: 'http://10.0.0.7:4610', kind: 'here' }])
  })

  it('given a page opened by one that is known, then nothing is added', () => {
    expect(withHere(known, 'http://SHOP.local:4610/')).toEqual(known)
  })

  it.each([
    ['http://localhost:4610', true],
    ['http://127.0.0.1:4610/', true],
    ['http://[::1]:4610', true],
    ['http://localhost.example:4610', false],
    ['http://192.168.1.7:4610', false],
  ])('given %s, then it leads nowhere from elsewhere: %s', (url, expected) => {
    expect(isLocal(url)).toBe(expected)
  })
})
