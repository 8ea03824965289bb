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
  /** In somebody's hand: its keys are a thumb's, and the foot has two rows of them. */
  readonly isPhone: boolean
  readonly marginPx: number
  readonly numberPx: number
  readonly namePx: number
  /** What explains a number: read up close, by one person. */
  readonly quietPx: number
}

/** A page narrower than this is a phone's: no tablet is, whichever way it is held. In CSS pixels. */
const PHONE_PX_MAX = 540
/** A phone's glass, where nobody has said how large it is, and how far it is held from the eyes. Common practice, no source. */
const PHONE_INCHES_MAX = 7
const PHONE_INCHES = 6.1
const PHONE_METRES = 0.38

/** The seller leans over the counter to read what explains a number; the number itself is read from where they stand. */
const QUIET_SHARE = 0.84

/** A phone is in somebody's dry hand: five keys side by side, each a thumb's width. */
const PHONE_KEYS = 5
const PHONE_KEY_MM = 9.5

export function counterSizes(settings: DeviceSettings, glass: GlassSize): CounterSizes {
  const { diagonalInches, viewingMetres, textPercent } = settings
  const { widthPx, screenWidthPx, screenHeightPx } = glass
  const isPhone = widthPx <= PHONE_PX_MAX
  const diagonalInch = isPhone && diagonalInches > PHONE_INCHES_MAX ? PHONE_INCHES : diagonalInches
  const metres = isPhone ? Math.min(viewingMetres, PHONE_METRES) : viewingMetres
  const panel = { diagonalInch, widthPx: screenWidthPx, heightPx: screenHeightPx }
  const distanceM = (metres * textPercent) / 100
  const { countPx, minPx } = wallSizes({ ...panel, distanceM })
  const mmPx = 1 / mmPerCssPx(panel)
  const gapPx = isPhone ? PHONE_GAP_PX : Math.ceil(KEY_GAP_MM_MIN * mmPx)
  return {
    panel,
    distanceM,
    mmPx,
    keyPx: isPhone ? phoneKeyPx(widthPx, mmPx) : Math.ceil(KEY_MM_MIN * mmPx),
    isPhone,
    gapPx,
    marginPx: Math.round(gapPx * 0.8),
    numberPx: Math.round(countPx * 1.15),
    namePx: minPx,
    quietPx: Math.round(minPx * QUIET_SHARE),
  }
}

/** Between two keys under a thumb. */
const PHONE_GAP_PX = 8

function phoneKeyPx(widthPx: number, mmPx: number): number {
  const room = Math.floor((widthPx - (PHONE_KEYS + 1) * PHONE_GAP_PX) / PHONE_KEYS)
  return Math.min(room, Math.ceil(PHONE_KEY_MM * mmPx))
}
