import type { KitchenStationId, PersonId, StationId } from '../../shared-core/ids.ts'
import {
  kitchenStationId as toKitchenStationId,
  personId as toPersonId,
  stationId as toStationId,
} from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { SavedText } from './saved-text.ts'
import { readJson } from './saved-text.ts'

/** What this device is and how it shows things; kept on the device, one set for each role that it is opened in. */
export interface DeviceSettings {
  readonly name: string
  readonly role: Role
  /** The station whose acts this screen taps; null: all of them. */
  readonly stationId: StationId | null
  /** Null: as the shop's set-up says. */
  readonly language: Language | null
  readonly diagonalInches: number
  readonly viewingMetres: number
  /** 0–100. */
  readonly volumePercent: number
  /** Minutes after local midnight between which nothing sounds; may run over midnight. Null: always. */
  readonly quiet: { readonly fromMinute: number; readonly toMinute: number } | null
  /** Pedals and one-key pads act as keyboards: `KeyboardEvent.code` → the station whose next act the key does. */
  readonly keys: Readonly<Record<string, StationId>>
  /** 80–160; 100 is what the screen's size asks for. */
  readonly textPercent: number
  readonly theme: ThemeChoice
  /** Who works at this screen: whoever does a step of a list here did it. Null: nobody has said. */
  readonly personId: PersonId | null
  /** Where things are made to order that this screen is for; none: it is for the line, and shows all of them when asked. */
  readonly kitchen: readonly KitchenStationId[]
}

/** `usual`: as screens of this kind are drawn. `clock`: dark in the hours of the night. `system`: as the device itself is. */
export type ThemeChoice = 'usual' | 'light' | 'dark' | 'clock' | 'system'
const THEME_CHOICES: readonly ThemeChoice[] = ['usual', 'light', 'dark', 'clock', 'system']

const ROLE_DEFAULTS: {
  readonly [role in Role]: Pick<DeviceSettings, 'diagonalInches' | 'viewingMetres' | 'volumePercent'>
} = {
  wall: { diagonalInches: 43, viewingMetres: 3, volumePercent: 80 },
  bench: { diagonalInches: 10.1, viewingMetres: 0.6, volumePercent: 60 },
  // A counter talks to customers, and a desk is far from the oven: silent unless somebody wants otherwise.
  counter: { diagonalInches: 10.1, viewingMetres: 0.6, volumePercent: 0 },
  desk: { diagonalInches: 15, viewingMetres: 0.6, volumePercent: 0 },
}

/** What a device is set to before anybody has set it; an empty name is told by role and id. */
export function defaultSettings(role: Role): DeviceSettings {
  return {
    name: '',
    role,
    stationId: null,
    language: null,
    quiet: null,
    keys: {},
    textPercent: 100,
    theme: 'usual',
    personId: null,
    kitchen: [],
    ...ROLE_DEFAULTS[role],
  }
}

/** Settings as they were kept on this device; what is missing or makes no sense is as by default. */
export function loadSettings(saved: SavedText, role: Role): DeviceSettings {
  const kept = readJson(saved, settingsKey(role))
  return changedSettings(defaultSettings(role), typeof kept === 'object' && kept !== null ? kept : {})
}

export function saveSettings(saved: SavedText, settings: DeviceSettings): boolean {
  return saved.write(settingsKey(settings.role), JSON.stringify(settings))
}

/** Settings with a change; a value outside its range is left as it was. The role is the page's and stays. */
export function changedSettings(
  settings: DeviceSettings,
  change: { readonly [field in keyof DeviceSettings]?: unknown },
): DeviceSettings {
  const { name, stationId, language, quiet, keys, personId, kitchen } = change
  return {
    role: settings.role,
    name: typeof name === 'string' ? name.trim().slice(0, DEVICE_NAME_MAX) : settings.name,
    stationId: stationId === null ? null : typeof stationId === 'string' ? toStationId(stationId) : settings.stationId,
    language: language === null || language === 'en' || language === 'es' ? language : settings.language,
    diagonalInches: inRange(change.diagonalInches, 4, 120, settings.diagonalInches),
    viewingMetres: inRange(change.viewingMetres, 0.2, 20, settings.viewingMetres),
    volumePercent: inRange(change.volumePercent, 0, 100, settings.volumePercent),
    quiet: quiet === null ? null : isQuiet(quiet) ? quiet : settings.quiet,
    keys: isKeys(keys) ? keys : settings.keys,
    textPercent: inRange(change.textPercent, 80, 160, settings.textPercent),
    theme: THEME_CHOICES.find((choice) => choice === change.theme) ?? settings.theme,
    personId: personId === null ? null : typeof personId === 'string' ? toPersonId(personId) : settings.personId,
    kitchen: isTexts(kitchen) ? kitchen.map(toKitchenStationId) : settings.kitchen,
  }
}

/** What a device's name may measure; the server holds the same. */
export const DEVICE_NAME_MAX = 40

function settingsKey(role: Role): string {
  return `boilboard.${role}.settings`
}

function inRange(value: unknown, least: number, most: number, otherwise: number): number {
  return typeof value === 'number' && value >= least && value <= most ? value : otherwise
}

function isQuiet(value: unknown): value is { fromMinute: number; toMinute: number } {
  if (typeof value !== 'object' || value === null || !('fromMinute' in value) || !('toMinute' in value)) return false
  return isMinute(value.fromMinute) && isMinute(value.toMinute)
}

function isMinute(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < 1_440
}

function isTexts(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((text) => typeof text === 'string')
}

function isKeys(value: unknown): value is Record<string, StationId> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false
  return Object.values(value).every((station) => typeof station === 'string')
}
