import { describe, expect, it } from 'vitest'
import { workedAfternoon } from './worked-afternoon.ts'

/** Longer ones, and under more load: `npm run reference`. */
describe('an afternoon worked by the board', () => {
  it('[M94] given a busy afternoon and a crew that does what is called for, when it is over, then waits were as quoted', () => {
    const worked = workedAfternoon(1, { orders: 30, everyMs: 75_000 })
    expect(worked).toHaveLength(30)
    const share = (isSo: (one: (typeof worked)[number]) => boolean) => worked.filter(isSo).length / worked.length
    // One in ten and as many longer as shorter, of thirty: three standard deviations.
    expect(share(({ waitedMs, carefulMs }) => waitedMs > carefulMs)).toBeLessThan(0.27)
    expect(Math.abs(share(({ waitedMs, quotedMs }) => waitedMs > quotedMs) - 0.5)).toBeLessThan(0.28)
  })
})
