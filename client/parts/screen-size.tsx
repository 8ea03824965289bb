import type { ComponentChildren } from 'preact'
import { createContext } from 'preact'
import { useMemo } from 'preact/hooks'
import type { ThemeName } from '../theme/tokens.ts'
import type { Panel, TextSizes } from './legibility.ts'
import { mmPerCssPx, wallSizes } from './legibility.ts'
import type { Press } from './press-guard.ts'

/** What all keys of one screen share: how large a millimetre is, and the last touch that any of them took. */
export interface Glass {
  /** CSS pixels to a millimetre. */
  readonly mmPx: number
  last: Press | null
}

/** A screen whose size nobody has set: CSS's own idea of a millimetre. */
const NOMINAL_MM_PX = 96 / 25.4

export const GlassContext = createContext<Glass>({ mmPx: NOMINAL_MM_PX, last: null })

export interface ScreenSizeProps {
  readonly panel: Panel
  /** From the eyes to the glass, in metres: 2–6 for a wall, about 0.5 for a tablet at the line. */
  readonly distanceM: number
  /** Left out: as the page is, which follows the device's settings. */
  readonly theme?: ThemeName | undefined
  readonly children: ComponentChildren
}

/**
 * The outermost element of every screen. Sets, for all styles inside: `--mm` (a millimetre of this glass) and the text
 * sizes `--size-headline`, `--size-count`, `--size-act`, `--size-label`, `--size-min`, all CSS lengths.
 */
export function ScreenSize({ panel, distanceM, theme, children }: ScreenSizeProps) {
  const { diagonalInch, widthPx, heightPx, dpr } = panel
  const mmPx = 1 / mmPerCssPx({ diagonalInch, widthPx, heightPx, dpr })
  const glass = useMemo<Glass>(() => ({ mmPx, last: null }), [mmPx])
  const style = { '--mm': `${mmPx.toFixed(4)}px`, ...sizeVariables(wallSizes({ ...panel, distanceM })) }
  return (
    <GlassContext.Provider value={glass}>
      <div class="screen" data-theme={theme} style={style}>
        {children}
      </div>
    </GlassContext.Provider>
  )
}

function sizeVariables({ headlinePx, countPx, actPx, labelPx, minPx }: TextSizes) {
  return {
    '--size-headline': `${headlinePx}px`,
    '--size-count': `${countPx}px`,
    '--size-act': `${actPx}px`,
    '--size-label': `${labelPx}px`,
    '--size-min': `${minPx}px`,
  }
}
