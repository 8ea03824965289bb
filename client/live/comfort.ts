import type { Role, ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { minuteOfDay } from './clock-text.ts'
import type { DeviceSettings } from './device-settings.ts'
import type { ShopStore } from './shop-store.ts'

/** What the page's outermost element says of a device's comfort; styles of every screen follow `data-theme` and `data-print`. */
export interface Comfort {
  readonly theme: 'dark' | 'light'
  readonly print: 'usual' | 'large'
}

/** By the clock it is dark from the evening until a shop has daylight. Common practice, no source. */
const DARK_FROM_MINUTE = 19 * 60
const DARK_TO_MINUTE = 7 * 60
/** From here on print counts as large: who lays out by it leaves air. */
const LARGE_PERCENT = 115

export interface ComfortParts {
  readonly settings: Pick<DeviceSettings, 'theme' | 'textPercent' | 'role'>
  /** Minutes after local midnight; null while the shop's clock is not known. */
  readonly minute: number | null
  /** What the device itself asks for. */
  readonly isSystemDark: boolean
}

export function comfortOf({ settings, minute, isSystemDark }: ComfortParts): Comfort {
  const usual = usualTheme(settings.role)
  const theme = {
    usual,
    light: 'light',
    dark: 'dark',
    clock: minute === null ? usual : minute >= DARK_FROM_MINUTE || minute < DARK_TO_MINUTE ? 'dark' : 'light',
    system: isSystemDark ? 'dark' : 'light',
  } as const
  return { theme: theme[settings.theme], print: settings.textPercent >= LARGE_PERCENT ? 'large' : 'usual' }
}

/** The wall is read across a dark shop; the others stand in the light of a bench, a counter, a desk. */
function usualTheme(role: Role): Comfort['theme'] {
  return role === 'wall' ? 'dark' : 'light'
}

/** What of a page is touched. */
export interface ComfortPage {
  readonly isSystemDark: () => boolean
  readonly show: (comfort: Comfort) => void
}

/** Keeps a page as its device is set, from before the first paint on. @returns stops it */
export function keepComfort(store: Pick<ShopStore, 'getState' | 'subscribe'>, page: ComfortPage): () => void {
  const show = () => {
    const { settings, shopClock, nowMs } = store.getState()
    page.show(comfortOf({ settings, minute: minuteNow(shopClock, nowMs), isSystemDark: page.isSystemDark() }))
  }
  show()
  return store.subscribe(show)
}

function minuteNow(clock: ShopClock | null, nowMs: EpochMs): number | null {
  return clock === null ? null : minuteOfDay(clock, nowMs)
}
