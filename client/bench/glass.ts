import type { DeviceSettings } from '../live/device-settings.ts'
import type { GlassSize } from '../parts/glass-size.ts'
import type { Panel, TextSizes } from '../parts/legibility.ts'
import { mmPerCssPx, wallSizes } from '../parts/legibility.ts'

export interface BenchSizes extends TextSizes {
  readonly panel: Panel
  readonly distanceM: number
  /** CSS pixels to a millimetre. */
  readonly mmPx: number
}

/** How large text and millimetres are here: from the diagonal and distance that the device is set to. */
export function benchSizes(
  { diagonalInches, viewingMetres, textPercent }: DeviceSettings,
  { screenWidthPx, screenHeightPx }: GlassSize,
): BenchSizes {
  const panel = { diagonalInch: diagonalInches, widthPx: screenWidthPx, heightPx: screenHeightPx }
  const distanceM = (viewingMetres * textPercent) / 100
  return { ...wallSizes({ ...panel, distanceM }), panel, distanceM, mmPx: 1 / mmPerCssPx(panel) }
}
