import type { DeviceSettings } from '../live/device-settings.ts'
import type { GlassSize } from '../parts/glass-size.ts'
import type { Panel } from '../parts/legibility.ts'
import { KEY_GAP_MM_MIN, KEY_MM_MIN, mmPerCssPx, wallSizes } from '../parts/legibility.ts'

/** How large things are on the counter's glass, in CSS pixels. */
export interface CounterSizes {
  readonly panel: Panel
  readonly distanceM: number
  readonly mmPx: number
  /** Least edge of a key and space between two. */
  readonly keyPx: number
  readonly gapPx: number
  /** The page is longer than the glass, and its keys are smaller. */
  readonly isPhone: boolean
  readonly marginPx: number
  readonly numberPx: number
  readonly namePx: number
  /** What explains a number: read up close, by one person. */
  readonly quietPx: number
}

/** Narrower glass than so many keys holds no rack with its foot. */
const GLASS_KEYS_MIN = 6

/** The seller leans over the counter to read what explains a number; the number itself is read from where they stand. */
const QUIET_SHARE = 0.84

/** A narrow page is a phone in somebody's dry hand: four keys side by side. */
const PHONE_KEYS = 4.7

export function counterSizes(
  { diagonalInches, viewingMetres, textPercent }: DeviceSettings,
  { widthPx, screenWidthPx, screenHeightPx }: GlassSize,
): CounterSizes {
  const panel = { diagonalInch: diagonalInches, widthPx: screenWidthPx, heightPx: screenHeightPx }
  const distanceM = (viewingMetres * textPercent) / 100
  const { countPx, minPx } = wallSizes({ ...panel, distanceM })
  const mmPx = 1 / mmPerCssPx(panel)
  const keyPx = Math.ceil(KEY_MM_MIN * mmPx)
  const isPhone = widthPx < GLASS_KEYS_MIN * keyPx
  const gapPx = Math.ceil(KEY_GAP_MM_MIN * mmPx * (isPhone ? 0.5 : 1))
  return {
    panel,
    distanceM,
    mmPx,
    keyPx: isPhone ? Math.min(keyPx, Math.floor(widthPx / PHONE_KEYS)) : keyPx,
    isPhone,
    gapPx,
    marginPx: Math.round(gapPx * 0.8),
    numberPx: Math.round(countPx * 1.15),
    namePx: minPx,
    quietPx: Math.round(minPx * QUIET_SHARE),
  }
}
