import type { CounterRod } from '../../client/counter/counter-rods.ts'
import type { CounterSizes } from '../../client/counter/counter-sizes.ts'
import { counterSizes } from '../../client/counter/counter-sizes.ts'
import { clockText } from '../../client/live/clock-text.ts'
import { defaultSettings } from '../../client/live/device-settings.ts'
import type { CounterWords } from '../../client/words/counter.ts'
import { counterWords } from '../../client/words/counter.ts'
import { wordsFor } from '../../client/words/words.ts'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import type { Outlook } from '../../shared-core/live/outlook.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import type { Ahead } from '../../shared-core/stock/prospect.ts'
import { withProspects } from '../../shared-core/stock/prospect.ts'
import { assert } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'

/** The test shop's clock, UTC−6. */
export const CLOCK = { zone: 'America/Chicago', offsets: [{ fromMs: epochMs(0), offsetMinutes: -360 }] }

/** A ten-inch tablet on its side. */
export const GLASS = { widthPx: 1280, heightPx: 800, screenWidthPx: 1280, screenHeightPx: 800 }

export function wordsIn(language: Language, shop: Shop = shopWith()): CounterWords {
  return counterWords(wordsFor(language, shop, (atMs) => clockText(CLOCK, atMs, 12)))
}

export function tabletSizes(): CounterSizes {
  return counterSizes(defaultSettings('counter'), GLASS)
}

/** A day without an outlook. */
export const UNTIL_THREE: Ahead = { closeMs: at('15:00'), outlook: null }

/** 24 sesame for sale, counted at 6:40, with nothing to come and no known pace, unless said otherwise; open until 15:00. */
export function rod(parts: Partial<CounterRod> = {}, outlook: Outlook | null = null): CounterRod {
  const [one] = withProspects([rodParts(parts)], { ...UNTIL_THREE, outlook })
  assert(one !== undefined, 'one rod')
  return one
}

function rodParts(parts: Partial<CounterRod>): Omit<CounterRod, 'ahead'> {
  return {
    varietyId: varietyId('sesame'),
    doughId: doughId('plain'),
    name: 'Sesame',
    forSale: 24,
    likely: parts.forSale ?? 24,
    within: 0,
    dayOld: 0,
    cooling: 0,
    kept: 0,
    onTheWay: [],
    basis: { how: 'counted', atMs: at('6:40'), isNow: false },
    goneAtMs: null,
    perHour: null,
    soldToday: 0,
    goneSinceMs: null,
    ...parts,
  }
}
