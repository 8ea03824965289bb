import { clockText } from '../../../client/live/clock-text.ts'
import { defaultSettings } from '../../../client/live/device-settings.ts'
import { NO_KITCHEN } from '../../../client/parts/kitchen-calls.ts'
import { wallSizes } from '../../../client/parts/legibility.ts'
import { namingOf } from '../../../client/wall/act-name.ts'
import { wallLayout } from '../../../client/wall/layout.ts'
import * as looks from '../../../client/wall/looks.ts'
import type { SlowInput, WallInput, WallView } from '../../../client/wall/view.ts'
import { slowView, wallView } from '../../../client/wall/view.ts'
import { adviceWords } from '../../../client/words/advice.ts'
import { wallWords } from '../../../client/words/wall.ts'
import { wallDoughWords } from '../../../client/words/wall-dough.ts'
import { wallKitchenWords } from '../../../client/words/wall-kitchen.ts'
import { wordsFor } from '../../../client/words/words.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { Language, Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'

/** The wall that the sketch is drawn for: 43 inches of full HD, seen from 3 m. */
export const PANEL = { diagonalInch: 43, widthPx: 1920, heightPx: 1080 }
export const DISTANCE_M = 3
export const SIZES = wallSizes({ ...PANEL, distanceM: DISTANCE_M })
export const LAYOUT = wallLayout({ ...PANEL, sizes: SIZES, hasStatus: false, noteWidthPx: 0 })
export const CHICAGO = { zone: 'America/Chicago', offsets: [{ fromMs: epochMs(0), offsetMinutes: -360 }] }

export const localTime = (atMs: EpochMs) => clockText(CHICAGO, atMs, 12)

/** What the parts of the view are given, for a shop. */
export function setting(shop: Shop, nowMs: EpochMs, language: Language = 'en') {
  const words = wordsFor(language, shop, localTime)
  const dough = wallDoughWords(words)
  return {
    nowMs,
    plan: null,
    advice: adviceWords(words),
    words,
    wall: wallWords(words),
    dough,
    made: wallKitchenWords(words),
    shop,
    shown: null,
    kitchen: NO_KITCHEN,
    kitchenActs: [],
    room: [],
    naming: namingOf(shop),
    layout: LAYOUT,
    sizes: SIZES,
  }
}

/** The wall's whole view of a state; linked, silent about sound, on the test wall, unless said otherwise. */
export function viewOf(
  shown: State | null,
  nowMs: EpochMs,
  parts: Partial<WallInput['live']> &
    Partial<Pick<SlowInput, 'outlook' | 'plan'>> &
    Partial<Pick<WallInput, 'flash' | 'sound' | 'panel'>> = {},
): WallView {
  const { flash = null, sound = 'on', panel = PANEL, outlook = null, ...live } = parts
  const whole: WallInput['live'] = {
    shown,
    connection: { phase: shown === null ? 'connecting' : 'live', sinceMs: nowMs },
    notices: [],
    nowMs,
    shopClock: CHICAGO,
    demo: null,
    plan: null,
    settings: defaultSettings('wall'),
    ...live,
  }
  const slow = slowView({ ...whole, outlook }, looks)
  return wallView({ live: whole, slow, localTime, panel, page: panel, flash, sound })
}
