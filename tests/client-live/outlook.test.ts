import { describe, expect, it } from 'vitest'
import { lookingAt, outlookWith } from '../core/support/outlook.ts'
import { fakeScreen } from './support/fake-screen.ts'
import { LittleShop } from './support/little-shop.ts'

const outlook = (lost: number) => outlookWith([lookingAt('sesame', { lost })])
const told = (basedOnSeq: number, lost: number | null) =>
  ({ type: 'outlook', basedOnSeq, engine: 1, outlook: lost === null ? null : outlook(lost) }) as const

function linked() {
  const [screen, shop] = [fakeScreen(), new LittleShop()]
  screen.link.up()
  screen.link.say(shop.welcome(null))
  const lost = () => screen.sync.view().outlook?.varieties[0]?.lost ?? null
  return { screen, shop, lost }
}

describe('the outlook on a screen', () => {
  it('[Q108] given outlooks, when told, then the newest is shown; one of an earlier state is not', () => {
    const { screen, lost } = linked()
    expect(lost()).toBeNull()
    screen.link.say(told(10, 1))
    screen.link.say(told(12, 2))
    screen.link.say(told(11, 3))
    expect(lost()).toBe(2)
    // Time alone has passed: the same state, looked at later.
    screen.link.say(told(12, 4))
    expect(lost()).toBe(4)
    screen.link.say(told(12, null))
    expect(screen.sync.view().outlook).toBeNull()
  })

  it('[Q108] given a link that was lost, when it is back, then what was shown stays until it is told anew', () => {
    const { screen, shop, lost } = linked()
    screen.link.say(told(12, 2))
    screen.link.down()
    screen.link.up()
    screen.link.say(shop.welcome(shop.state.seq))
    expect(lost()).toBe(2)
  })

  it('[Q108] given another course of the journal, when welcomed, then the old outlook is gone and its first one shown', () => {
    const { screen, shop, lost } = linked()
    screen.link.say(told(12, 2))
    screen.link.down()
    screen.link.up()
    screen.link.say(shop.welcome(null, { course: 'another' }))
    expect(screen.sync.view().outlook).toBeNull()
    screen.link.say(told(3, 5))
    expect(lost()).toBe(5)
  })
})
