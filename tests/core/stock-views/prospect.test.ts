import { describe, expect, it } from 'vitest'
import { varietyId } from '../../../shared-core/ids.ts'
import type { VarietyOutlook } from '../../../shared-core/live/outlook.ts'
import type { Prospect } from '../../../shared-core/stock/prospect.ts'
import { withProspects } from '../../../shared-core/stock/prospect.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { at } from '../support/make.ts'
import { goneBy, lookingAt, outlookWith } from '../support/outlook.ts'

const MORE = [{ pieces: 24, readyAtMs: at('9:04'), from: 'oven' as const }]

function prospect(
  look: VarietyOutlook | null,
  { goneAtMs = null, onTheWay = [] }: { goneAtMs?: EpochMs | null; onTheWay?: typeof MORE } = {},
): Prospect | undefined {
  const rod = { varietyId: varietyId('sesame'), goneAtMs, onTheWay }
  const outlook = look === null ? null : outlookWith([look])
  return withProspects([rod], { closeMs: at('15:00'), outlook })[0]?.ahead
}

describe('how a rod goes on', () => {
  it.each([
    [
      'lasts',
      { beforeClosePercent: 19, gone: goneBy('14:10', null, null) },
      { lasts: true, goneAtMs: null, doubt: null },
    ],
    [
      'may be gone',
      { beforeClosePercent: 20, gone: goneBy('13:10', null, null) },
      { lasts: false, goneAtMs: null, doubt: { before: 'close', fromMs: at('13:10') } },
    ],
    [
      'may be gone in two hours, with more to come',
      { beforeClosePercent: 40, gone: goneBy('10:00', null, null), moreAtMs: at('9:04'), beforeMorePercent: 1 },
      { lasts: false, goneAtMs: null, doubt: null },
    ],
    [
      'may be gone sooner, with more to come',
      { beforeClosePercent: 40, gone: goneBy('9:59', null, null), moreAtMs: at('9:04'), beforeMorePercent: 1 },
      { lasts: false, doubt: { before: 'close', fromMs: at('9:59') } },
    ],
    [
      'is likely gone',
      { beforeClosePercent: 50, gone: goneBy('11:10', '12:30', null) },
      { goneAtMs: at('12:30'), isGap: false, between: { fromMs: at('11:10'), toMs: null }, doubt: null },
    ],
    [
      'is likely gone for a while, though later loads last',
      { beforeClosePercent: 10, gone: goneBy('9:10', '9:50', null), moreAtMs: at('9:04'), beforeMorePercent: 2 },
      { goneAtMs: at('9:50'), isGap: false, lasts: false },
    ],
    [
      'may not reach what comes',
      { beforeMorePercent: 20, moreAtMs: at('9:04'), beforeClosePercent: 5 },
      { goneAtMs: null, lasts: false, doubt: { before: 'more' } },
    ],
    [
      'is likely gone before more comes',
      { beforeMorePercent: 62, moreAtMs: at('9:04'), shortAtMs: at('8:51'), beforeClosePercent: 5 },
      { goneAtMs: at('8:51'), isGap: true, doubt: null },
    ],
  ] as const)('[Q140] given an outlook in which it %s, then the prospect says so', (_what, parts, expected) => {
    expect(prospect(lookingAt('sesame', parts))).toMatchObject({ by: 'sales', leftAtClose: 8, ...expected })
  })

  it('[Q140] given an outlook, then it counts and not the pace; one that rests on guesses says that', () => {
    const fast = { goneAtMs: at('8:20') }
    expect(prospect(lookingAt('sesame'), fast)).toMatchObject({ by: 'sales', lasts: true, goneAtMs: null })
    expect(prospect(lookingAt('sesame', { basis: 'guess' }), fast)).toMatchObject({ by: 'guess', lasts: true })
  })

  it('[Q140] given no outlook, or none of this variety, then the pace counts as far as the close', () => {
    for (const look of [null, lookingAt('poppy')]) {
      expect(prospect(look)).toMatchObject({ by: 'pace', goneAtMs: null, lasts: false })
      expect(prospect(look, { goneAtMs: at('9:40') })).toMatchObject({ by: 'pace', goneAtMs: at('9:40'), isGap: false })
      expect(prospect(look, { goneAtMs: at('15:00') })).toMatchObject({ goneAtMs: null, lasts: true })
      expect(prospect(look, { goneAtMs: at('9:00'), onTheWay: MORE })).toMatchObject({ isGap: true })
    }
  })
})
