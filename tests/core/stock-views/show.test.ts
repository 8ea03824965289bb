import { describe, expect, it } from 'vitest'
import { varietyId } from '../../../shared-core/ids.ts'
import type { Rod } from '../../../shared-core/stock/left.ts'
import { withProspects } from '../../../shared-core/stock/prospect.ts'
import { rodsThatMatter } from '../../../shared-core/stock/show.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at, batch } from '../support/make.ts'
import { goneBy, lookingAt, outlookWith } from '../support/outlook.ts'

const rod = (id: string, forSale: number, parts: Partial<Rod> = {}): Rod => ({
  varietyId: varietyId(id),
  doughId: batch().doughId,
  name: id,
  forSale,
  likely: forSale,
  within: 0,
  dayOld: 0,
  cooling: 0,
  kept: 0,
  onTheWay: [],
  known: { how: 'nothing', atMs: null },
  goneAtMs: null,
  perHour: null,
  soldToday: 10,
  goneSinceMs: null,
  ...parts,
})
const more = (clock: string) => ({ onTheWay: [{ pieces: 24, readyAtMs: at(clock), from: 'oven' as const }] })
const gone = (clock: string) => ({ goneAtMs: at(clock) })
const matter = (rods: readonly Rod[], most: number, clock = '8:00') =>
  rodsThatMatter(withProspects(rods, { closeMs: null, outlook: null }), at(clock), most)
const shown = (rods: readonly Rod[], most: number, clock = '8:00') =>
  matter(rods, most, clock).rods.map((one) => one.varietyId)

describe('the rods that matter', () => {
  it('[S25] given rods of all kinds, then gone ones stand first, then what runs out before more comes, then the lowest', () => {
    const all = [
      rod('high', 40),
      rod('low', 4, more('8:30')),
      rod('covered', 6, { ...gone('9:00'), ...more('8:30') }),
      rod('later', 20, gone('8:50')),
      rod('soon', 30, { ...gone('8:20'), ...more('8:30') }),
      rod('none', 0, { soldToday: 12 }),
    ]
    expect(shown(all, 9)).toEqual(['none', 'soon', 'later', 'low', 'covered', 'high'])
    expect(shown(all, 2)).toEqual(['none', 'soon'])
  })

  it('[S25] given equal rods, then they stand in the order of the set-up', () => {
    expect(shown([rod('b', 12), rod('a', 12), rod('c', 12)], 3)).toEqual(['b', 'a', 'c'])
  })

  it('[S25] given equal counts, then one with something on the way stands first', () => {
    expect(shown([rod('b', 12), rod('a', 12, more('8:30'))], 2)).toEqual(['a', 'b'])
  })

  it('[S25] given run-out times within five minutes of each other, then they keep their places from second to second', () => {
    const seconds = Array.from({ length: 60 }, (_none, n) => n)
    const orders = seconds.map((second) => {
      const wobble = (clock: string, ms: number) => ({ goneAtMs: epochMs(at(clock) + second * ms) })
      return shown([rod('a', 9, wobble('8:23', 900)), rod('b', 9, wobble('8:22', 1_100))], 2)
    })
    expect(new Set(orders.map(String))).toEqual(new Set(['a,b']))
  })

  it('[S25] given a run-out more than two hours ahead, then the count decides', () => {
    expect(shown([rod('far', 40, gone('10:30')), rod('low', 3)], 2)).toEqual(['low', 'far'])
  })

  it('[S25] given a variety of which there is nothing, nothing comes and nothing was sold, then it is left out', () => {
    expect(shown([rod('never', 0, { soldToday: 0 }), rod('a', 12)], 2)).toEqual(['a'])
    expect(shown([rod('first', 0, { soldToday: 0, ...more('8:30') })], 2)).toEqual(['first'])
  })

  it('[S26] given more rods than room, then the others that have pieces are counted, with the first end among them', () => {
    const all = [rod('a', 2), rod('b', 20, gone('11:30')), rod('c', 30, gone('10:45')), rod('d', 40), rod('e', 0)]
    const { othersFine } = matter(all, 2)
    expect(othersFine).toEqual({ count: 3, untilMs: at('10:45') })
    expect(matter(all, 9).othersFine).toEqual({ count: 0, untilMs: null })
    expect(matter([rod('a', 2), rod('d', 40)], 1).othersFine).toEqual({ count: 1, untilMs: null })
  })

  it('[S26] given more gone rods than room, then those not shown are not called fine', () => {
    expect(matter([rod('a', 0), rod('b', 0), rod('c', 5)], 1).othersFine.count).toBe(1)
  })

  it('[Q141] given an outlook, then what likely runs out stands before what may, that before low counts, the pace aside', () => {
    const all = [rod('low', 3), rod('may', 30), rod('will', 40), rod('fast', 50, gone('8:10'))]
    const looks = [
      lookingAt('low'),
      lookingAt('may', { beforeClosePercent: 30, gone: goneBy('8:40', null, null) }),
      lookingAt('will', { beforeClosePercent: 80, gone: goneBy('8:30', '9:10', '10:00') }),
      lookingAt('fast'),
    ]
    const rods = withProspects(all, { closeMs: at('15:00'), outlook: outlookWith(looks) })
    const { rods: shownRods, othersFine } = rodsThatMatter(rods, at('8:00'), 3)
    expect(shownRods.map((one) => one.varietyId)).toEqual(['will', 'may', 'low'])
    expect(othersFine).toEqual({ count: 1, untilMs: null })
    // What may be gone is not fine past that hour, wherever it stands.
    expect(rodsThatMatter(rods, at('8:00'), 1).othersFine).toEqual({ count: 3, untilMs: at('8:40') })
  })
})
