import { describe, expect, it } from 'vitest'
import demoFile from '../../server/demo/demo-set-up.json' with { type: 'json' }
import { parseSetUpFile } from '../../shared-core/shop/set-up-file.ts'
import type { DwellWindow, Shop } from '../../shared-core/shop/shop.ts'
import { startingPoint } from '../../shared-core/shop/starting-points.ts'
import type { TimeUnit } from '../../shared-core/units.ts'
import { spanMs } from '../../shared-core/units.ts'

/** Facts of the trade that a set-up must be able to hold. All of them: common practice, no source. */

describe('an oven of 5 shelves with 12 dozen each', () => {
  const shop = startingPoint('shelves', { name: 'New shop', zone: 'America/Chicago', language: 'en' })
  const atOnce = [...shop.shelves.values()].reduce((sum, { pieces }) => sum + pieces, 0)

  it('holds 60 dozen at once (common practice, no source)', () => {
    expect(shop.shelves.size).toBe(5)
    expect(atOnce).toBe(60 * 12)
    expect(atOnce).toBe(720)
  })

  it('gives 2273 pieces an hour: each shelf turns every 18 min of bake and 1 min at the door (worked by hand)', () => {
    const turnMs = (shop.windows.bake?.targetMs ?? 0) + shop.oven.handlingMs
    // 60 / 19 = 3.158 turns of 720 pieces.
    expect(turnMs).toBe(19 * 60_000)
    expect(Math.floor((atOnce * 3_600_000) / turnMs)).toBe(2_273)
  })
})

describe('the windows of the demo, of every start and of a file that says none', () => {
  const shops: [string, Shop][] = [
    ['demo', read(demoFile)],
    ['start', startingPoint('rotating', { name: 'New shop', zone: 'America/Chicago', language: 'es' })],
    ['nothing said', read({ ...demoFile, windows: {} })],
  ]
  it.each(
    shops.flatMap(([name, { windows }]) => [
      [name, 'kettle: 30 to 45 s', windows.kettle, 30, 45, 's'] as const,
      [name, 'first side, on boards: 3 to 4 min, then the flip', windows.firstSide, 3, 4, 'min'] as const,
      [name, 'in the oven in all: 15 to 25 min', windows.bake, 15, 25, 'min'] as const,
    ]),
  )('%s: %s (common practice, no source)', (_name, _fact, window, earliest, latest, unit) => {
    expect(sides(window)).toEqual([ms(earliest, unit), ms(latest, unit)])
  })

  it.each(
    shops.flatMap(([name, { windows }]) => [
      [name, 'proof of 3 h', windows.proof, 3, 'h'] as const,
      [name, 'chill overnight, 14 h', windows.chill, 14, 'h'] as const,
      [name, 'chill a day more, 38 h', windows.chill, 38, 'h'] as const,
      [name, 'bake of 18 min', windows.bake, 18, 'min'] as const,
    ]),
  )('%s: %s lies inside (common practice, no source)', (_name, _fact, window, value, unit) => {
    const [earliest = 0, latest = 0] = sides(window)
    expect(ms(value, unit)).toBeGreaterThanOrEqual(earliest)
    expect(ms(value, unit)).toBeLessThanOrEqual(latest)
  })
})

function read(file: unknown): Shop {
  const parsed = parseSetUpFile(file, { isZone: () => true })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.shop
}

function sides(window: DwellWindow | undefined): number[] {
  return window === undefined ? [] : [window.earliestMs, window.latestMs]
}

function ms(value: number, unit: TimeUnit): number {
  return spanMs(value, unit)
}
