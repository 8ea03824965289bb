import { describe, expect, it } from 'vitest'
import type { Slip } from '../../client/counter/orders/slip.ts'
import {
  EMPTY_SLIP,
  lacksBagel,
  slipCommand,
  withAllergy,
  withAnother,
  withBagel,
  withChosen,
  withDigit,
  withOneLess,
  withPortionTurned,
  withThing,
  withToasted,
} from '../../client/counter/orders/slip.ts'
import { quoteText } from '../../client/counter/orders/slip-sheet.tsx'
import { counterOrderWords } from '../../client/words/counter-orders.ts'
import { menuItemId, portionId, varietyId } from '../../shared-core/ids.ts'
import { TIMES_MAX } from '../../shared-core/orders/order-limits.ts'
import { durationMs } from '../../shared-core/units.ts'
import { askedItem, orderShop } from '../core/orders/order-makers.ts'
import { wordsIn } from './counter-maker.ts'

const touched = (...things: readonly string[]) =>
  things.reduce<Slip>((slip, thing) => withThing(slip, menuItemId(thing)), EMPTY_SLIP)

describe('[M136] given a slip', () => {
  it('when a thing is touched twice, then there are two of it, and another thing has a line of its own', () => {
    expect(touched('flatbread', 'flatbread', 'coffee')).toEqual({
      items: [askedItem('flatbread', { times: 2 }), askedItem('coffee')],
      chosen: 1,
    })
  })

  it('when it is touched on and on, then it stops at what a command takes', () => {
    const many = Array.from({ length: TIMES_MAX + 3 }, () => 'coffee')
    expect(touched(...many).items[0]?.times).toBe(TIMES_MAX)
  })

  it('when options are touched, then they change the chosen thing alone', () => {
    const two = touched('lox', 'coffee')
    const lox = withChosen(two, 0)
    const said = withAllergy(withToasted(withBagel(lox, varietyId('sesame'))), 'fish')
    expect(said.items).toEqual([
      askedItem('lox', { varietyId: varietyId('sesame'), toasted: true, allergies: ['fish'] }),
      askedItem('coffee'),
    ])
    expect(withAllergy(said, 'fish').items[0]?.allergies).toEqual([])
  })

  it('when a filling is touched, then it is left out, more of it, as it was; one that is not in it can only be added', () => {
    const cheese = portionId('cheese')
    const turn = (slip: Slip) => withPortionTurned(slip, cheese, true)
    const begun = touched('flatbread')
    expect(turn(begun).items[0]).toMatchObject({ without: [cheese], more: [] })
    expect(turn(turn(begun)).items[0]).toMatchObject({ without: [], more: [cheese] })
    expect(turn(turn(turn(begun)))).toEqual(begun)
    const added = withPortionTurned(begun, portionId('lox'), false)
    expect(added.items[0]).toMatchObject({ without: [], more: ['lox'] })
    expect(withPortionTurned(added, portionId('lox'), false)).toEqual(begun)
  })

  it('when another of the same is touched, then it begins on the same bagel with nothing said of it', () => {
    const one = withAllergy(withBagel(touched('lox'), varietyId('rye')), 'egg')
    const two = withAnother(one)
    expect(two.items[1]).toEqual(askedItem('lox', { varietyId: varietyId('rye') }))
    expect(two.chosen).toBe(1)
    expect(withOneLess(two)).toEqual(one)
  })

  it('when one less is touched, then the last of it takes its line along', () => {
    expect(withOneLess(touched('coffee', 'coffee')).items[0]?.times).toBe(1)
    expect(withOneLess(touched('coffee'))).toEqual(EMPTY_SLIP)
  })

  it('when a thing on a bagel has none, then it is the one that is asked about', () => {
    const shop = orderShop()
    const slip = touched('coffee', 'lox')
    expect(lacksBagel(slip, shop)?.id).toBe('lox')
    expect(lacksBagel(withBagel(slip, varietyId('sesame')), shop)).toBeNull()
  })

  it('when it is started, then the next number is given, or the one that was typed', () => {
    const slip = touched('flatbread', 'flatbread')
    expect(slipCommand(slip, null)).toMatchObject({ mark: null, way: 'here', dueAtMs: null, isPaid: true })
    expect(slipCommand(slip, '41').type === 'takeOrder' && slipCommand(slip, '41')).toMatchObject({ mark: '41' })
    expect(slipCommand(slip, '')).toMatchObject({ mark: null })
    expect(['0', '4', '1', '7', '7', '7'].reduce(withDigit, '')).toBe('4177')
  })

  it('when the wait is told, then usual and careful in whole minutes, with a word where it is longer than is promised', () => {
    const shop = orderShop({ madeInMs: durationMs(8 * 60_000) })
    const say = counterOrderWords(wordsIn('en', shop))
    const quote = (minutes: number) => ({
      medianMs: durationMs(minutes * 60_000 - 20_000),
      carefulMs: durationMs((minutes + 3) * 60_000),
    })
    expect(quoteText(quote(6), shop, say)).toBe('about 6, up to 9 min')
    expect(quoteText(quote(9), shop, say)).toBe('about 9, up to 12 min: more than the 8 min that we tell')
    expect(quoteText({ cannot: 'ovenCloses' }, shop, say)).toBe('too late for the oven')
  })
})
