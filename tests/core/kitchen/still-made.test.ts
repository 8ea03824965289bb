import { describe, expect, it } from 'vitest'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import { menuItemId, portionId, varietyId } from '../../../shared-core/ids.ts'
import { portionsNow } from '../../../shared-core/kitchen/portions-now.ts'
import { stillMade } from '../../../shared-core/kitchen/still-made.ts'
import { Afternoon } from '../support/kitchen-play.ts'
import { at, lot, minuteToMs, stock } from '../support/make.ts'
import { shopWith } from '../support/shop.ts'
import { inOven, kitchenParts, menuItem } from '../support/shop-kitchen.ts'

describe('what is still made', () => {
  it.each([
    ['9:00', 'changeover'],
    // Ready as promised, 8 minutes, when the second menu can bake: it may be ordered a little before.
    ['11:51', 'changeover'],
    ['11:53', null],
    ['14:50', null],
    ['14:56', 'ovenCloses'],
  ])(
    '[M90] given the changeover to 12:00 and the close at 15:00, when it is %s, then a flatbread is taken or %s',
    (clock, why) => {
      const kitchen = new Afternoon({ stock: [stock('sesame', { lots: [lot({ pieces: 3 })] })] })
      expect(madeAt(kitchen, clock, 'flatbread')).toMatchObject({ why, isTaken: why === null })
      expect(madeAt(kitchen, clock, 'coffee').why).toBeNull()
    },
  )

  it('[M93] given what bakes like bagels do, when the second menu is not there yet, then it is made all the same', () => {
    const parts = kitchenParts()
    const bakeAt = { degrees: 480, unit: 'F' } as const
    const toast = menuItem({ id: 'toast', steps: [inOven('oven', 120, { at: { degrees: 250, unit: 'C' } })] })
    const oven = { kind: 'shelves', handlingMs: shopWith().oven.handlingMs, bakeAt, secondAt: null } as const
    const kitchen = new Afternoon({
      shop: shopWith({ ...parts, oven, menu: new Map([...parts.menu, [toast.id, toast]]) }),
    })
    expect(madeAt(kitchen, '9:00', 'toast').why).toBeNull()
    expect(madeAt(kitchen, '9:00', 'flatbread').why).toBe('changeover')
  })

  it('[M91] given portions counted, when orders take them, then those are spoken for until they are begun, then taken', () => {
    const kitchen = new Afternoon().count('12:00', 'ball', 5).count('12:00', 'cheese', 9)
    const ball = () => portionsNow(kitchen.state).find(({ portionId: id }) => id === 'ball')
    kitchen.slip('12:30', '41', 'flatbread', 'long')
    expect(ball()).toMatchObject({ left: 5, spokenFor: 3, free: 2 })
    kitchen.move('12:31', 'begun', [['41', 2, 0]])
    expect(ball()).toMatchObject({ left: 3, spokenFor: 1, free: 2 })
    expect(portionsNow(kitchen.state).find(({ portionId: id }) => id === 'sauce')).toMatchObject({
      left: null,
      free: null,
    })
    expect(madeAt(kitchen, '12:32', 'long')).toMatchObject({ left: 1, why: null })
    kitchen.slip('12:32', '42', 'flatbread', 'flatbread')
    expect(madeAt(kitchen, '12:33', 'flatbread')).toMatchObject({ left: 0, why: 'noPortions', missing: ['ball'] })
    const without = { itemId: menuItemId('flatbread'), without: [portionId('ball')], more: [portionId('cheese')] }
    kitchen.slip('12:33', '43', without)
    // 9 less the begun long one's 2; 1 + 2 of the flatbreads, and 2 of the one with more.
    expect(portionsNow(kitchen.state).find(({ portionId: id }) => id === 'cheese')).toMatchObject({
      left: 7,
      spokenFor: 5,
    })
  })

  it('[M91] given bagels, when things on them are ordered, then the last is spoken for and no other is made on one', () => {
    const sesame = stock('sesame', { lots: [lot({ pieces: 2 })] })
    const kitchen = new Afternoon({ stock: [sesame] })
    expect(madeAt(kitchen, '12:30', 'lox')).toMatchObject({ left: 2, why: null })
    kitchen.slip('12:30', '41', 'lox on sesame', { itemId: menuItemId('melt'), varietyId: varietyId('sesame') })
    expect(madeAt(kitchen, '12:31', 'lox')).toMatchObject({ left: 0, why: 'noBagels' })
    expect(madeAt(kitchen, '12:31', 'coffee')).toMatchObject({ left: null, why: null })
  })
})

function madeAt(kitchen: Afternoon, clock: string, item: string) {
  const ruler = rulerOf(kitchen.state, at(clock), minuteToMs)
  const made = stillMade(kitchen.state, at(clock), ruler).find(({ itemId }) => itemId === item)
  if (made === undefined) throw new Error(`${item} is not on the menu`)
  return made
}
