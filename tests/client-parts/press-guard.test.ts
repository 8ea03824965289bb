import { describe, expect, it } from 'vitest'
import type { Press } from '../../client/parts/press-guard.ts'
import { FAST_TAP_MS, isOwnTouch } from '../../client/parts/press-guard.ts'

/** Five pixels to a millimetre: 12 mm are 60 px. */
const glass = { mmPx: 5 }
const last: Press = { atMs: 1_000, place: { x: 100, y: 100 } }

describe('a touch', () => {
  it.each([
    // after, at,                 own?
    [0, { x: 100, y: 100 }, false],
    [249, { x: 100, y: 100 }, false],
    [250, { x: 100, y: 100 }, true],
    [30, { x: 142, y: 142 }, false], // 59 px away: the knuckle's other side
    [30, { x: 143, y: 143 }, true], // 61 px away: another hand
    [30, null, true], // a keyboard is no echo of a touch
  ])('%i ms after the last one, at %o, is one of its own: %s', (afterMs, place, own) => {
    expect(isOwnTouch(last, { atMs: last.atMs + afterMs, place }, glass)).toBe(own)
  })

  it('is one of its own when it is the first', () => {
    expect(isOwnTouch(null, last, glass)).toBe(true)
  })

  it('of a keyboard echoes a keyboard, not a finger', () => {
    const key: Press = { atMs: 1_000, place: null }
    expect(isOwnTouch(key, { atMs: 1_100, place: null }, glass)).toBe(false)
    expect(isOwnTouch(key, { ...last, atMs: 1_100 }, glass)).toBe(true)
  })

  it('on a key that counts may come faster', () => {
    const press = { atMs: last.atMs + FAST_TAP_MS, place: last.place }
    expect(isOwnTouch(last, press, glass)).toBe(false)
    expect(isOwnTouch(last, press, { ...glass, withinMs: FAST_TAP_MS })).toBe(true)
  })
})
