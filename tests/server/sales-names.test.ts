import { describe, expect, it } from 'vitest'
import { ownMeaning, suggestMeaning } from '../../server/sales/suggest-meaning.ts'
import { varietyId } from '../../shared-core/ids.ts'
import type { Variety } from '../../shared-core/shop/shop.ts'

const named = (id: string, name: string, size: Variety['size'] = 'regular') => ({ id: varietyId(id), name, size })
const MENU = [
  named('plain', 'Plain'),
  named('sesame', 'Sesame'),
  named('everything', 'Everything'),
  named('wheat', 'Whole wheat'),
  named('wheat-every', 'Whole wheat everything'),
  named('raisin', 'Cinnamon raisin'),
  named('jalapeno', 'Jalapeño cheddar'),
  named('mini-plain', 'Mini plain', 'mini'),
  named('mini-sesame', 'Mini sesame', 'mini'),
]
const of = (id: string, pieces = 1) => ({ kind: 'variety', varietyId: id, pieces })
const any = (pieces: number, among: readonly string[] | null = null) => ({ kind: 'unnamed', pieces, among })

describe('what a till’s name probably means', () => {
  it.each([
    ['Sesame Bagel', of('sesame')],
    ['SESAME BGL', of('sesame')],
    ['Sesmae', of('sesame')],
    ['Whole Wheat', of('wheat')],
    ['Everything - whole wheat', of('wheat-every')],
    ['Jalapeno Cheddar Bagel', of('jalapeno')],
    ['Mini sesame', of('mini-sesame')],
    ['Plain bagel w/ butter', of('plain')],
    ['Half Doz. Sesame', of('sesame', 6)],
    ['Docena de Sesame', of('sesame', 12)],
    ['2x Plain', of('plain', 2)],
    ['3 x SESAME', of('sesame', 3)],
    ['2× half dozen sesame', of('sesame', 12)],
    ['Sesame bagel x4', of('sesame', 4)],
    ['Dozen', any(12)],
    ['Baker’s dozen bagels', any(13)],
    ['Media docena surtida', any(6)],
    ['6 Pack', any(6)],
    ['Box of 24', any(24)],
    ['2 dozen mini', any(24, ['mini-plain', 'mini-sesame'])],
    ['Bagel with cream cheese', any(1)],
    ['Egg & cheese sandwich on everything', { kind: 'kitchen', varietyId: 'everything', pieces: 1 }],
    ['BLT', { kind: 'kitchen', varietyId: null, pieces: 1 }],
    ['Iced coffee 16oz', { kind: 'nothing' }],
    ['Gift Card', { kind: 'nothing' }],
    // A tub, not a bagel.
    ['Plain cream cheese tub', null],
    ['Pumpernickel', null],
  ])('[Q68] given "%s", then %s is offered', (name, meaning) => {
    expect(suggestMeaning(name, MENU)).toEqual(meaning)
  })

  it('[Q68] given a variety’s own name, then it needs nobody’s word; given any other, it does', () => {
    expect(ownMeaning('JALAPENO  CHEDDAR', MENU)).toEqual(of('jalapeno'))
    for (const name of ['Sesame bagel', 'Sesam', 'Dozen']) expect(ownMeaning(name, MENU)).toBeNull()
    expect(ownMeaning('Plain', [...MENU, named('other', 'plain')])).toBeNull()
  })
})
