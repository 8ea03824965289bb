import type { LineAct } from '../../shared-core/shop/shop.ts'
import { enSettings } from './en-settings.ts'
import { esSettings } from './es-settings.ts'
import type { Words } from './words.ts'

/** What a screen says where it is set up: its name, its size, its sounds, its pedals. */
export interface SettingsWords {
  readonly title: string
  readonly close: string
  readonly name: string
  readonly nameHint: string
  readonly station: string
  readonly allStations: string
  readonly language: string
  readonly asShop: string
  readonly diagonal: string
  /** @example "43 inches" */
  inches(inches: number): string
  readonly distance: string
  /** @example "3 m" */
  metres(metres: number): string
  /** How far the wall's least can be read. @example "This screen can be read from up to 4.9 m." */
  readableTo(metres: number): string
  /** @example "From 6 m there is room for less than the line needs: hang a larger screen or come nearer." */
  tooFar(metres: number): string
  readonly volume: string
  /** @example "80 %" */
  percent(percent: number): string
  readonly tryOut: string
  readonly quiet: string
  readonly quietHint: string
  readonly quietOff: string
  readonly from: string
  readonly to: string
  readonly earlier: string
  readonly later: string
  readonly pedals: string
  readonly pedalsHint: string
  /** The acts of a station. @example "dip, lift" */
  acts(acts: readonly LineAct[]): string
  readonly coming: string
  readonly comingHint: string
  readonly learn: string
  readonly pressNow: string
  readonly cancel: string
  readonly forget: string
  /** @example "key F13" */
  key(code: string): string
  readonly waiting: string
  readonly version: string
  readonly newVersion: string
  /** Leads to the page on which this device is another screen, or leaves. */
  readonly anotherScreen: string
  readonly less: string
  readonly more: string
  readonly comfort: ComfortWords
  readonly least: string
  readonly most: string
}

/** How a screen looks, who stands at it, and the glass that must be wiped. */
export interface ComfortWords {
  readonly theme: string
  readonly themes: { readonly [choice in 'usual' | 'light' | 'dark' | 'clock' | 'system']: string }
  readonly themeHint: string
  readonly print: string
  readonly prints: { readonly usual: string; readonly large: string; readonly largest: string }
  readonly printHint: string
  /** Who works at this screen. */
  readonly person: string
  readonly nobody: string
  readonly personHint: string
  readonly noPeople: string
  readonly look: string
  /** The glass, locked for a moment so that it can be wiped. */
  readonly wipe: string
  readonly wipeDetail: string
  /** @example "Glass locked 12 s" */
  locked(seconds: number): string
  readonly hold: string
}

export function settingsWords(words: Words): SettingsWords {
  return words.language === 'en' ? enSettings(words) : esSettings(words)
}

/** Which version the server has, and whether this page is still to follow. @example "Version 1.2.0" */
export function versionText(say: SettingsWords, live: { readonly version: string; readonly isOutdated: boolean }) {
  return `${say.version} ${live.version}${live.isOutdated ? ` · ${say.newVersion}` : ''}`
}
