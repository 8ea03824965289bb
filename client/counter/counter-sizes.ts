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
  readonly marginPx: number
  readonly numberPx: number
  readonly namePx: number
  /** What explains a number: read up close, by one person. */
  readonly quietPx: number
}

/** The seller leans over the counter to read what explains a number; the number itself is read from where they stand. */
const QUIET_SHARE = 0.84

export function counterSizes(
  { diagonalInches, viewingMetres, textPercent }: DeviceSettings,
  { screenWidthPx, screenHeightPx }: Pick<GlassSize, 'screenWidthPx' | 'screenHeightPx'>,
): CounterSizes {
  const panel = { diagonalInch: diagonalInches, widthPx: screenWidthPx, heightPx: screenHeightPx }
  const distanceM = (viewingMetres * textPercent) / 100
  const { countPx, minPx } = wallSizes({ ...panel, distanceM })
  const mmPx = 1 / mmPerCssPx(panel)
  const gapPx = Math.ceil(KEY_GAP_MM_MIN * mmPx)
  return {
    panel,
    distanceM,
    mmPx,
    keyPx: Math.ceil(KEY_MM_MIN * mmPx),
    gapPx,
    marginPx: Math.round(gapPx * 0.8),
    numberPx: Math.round(countPx * 1.15),
    namePx: minPx,
    quietPx: Math.round(minPx * QUIET_SHARE),
  }
}
