/**
 * How large things must be drawn, from what a person sees and not from what a screen has pixels for. Text is asked for
 * in minutes of arc of its capital letters at the distance that people stand; keys in millimetres of glass. The board
 * knows each device's diagonal, pixels and distance, since a browser does not tell how large its screen is.
 */

/** A screen as set up for the device. `widthPx` and `heightPx` are the panel's own pixels, not CSS pixels. */
export interface Panel {
  readonly diagonalInch: number
  readonly widthPx: number
  readonly heightPx: number
  /** Panel pixels to one CSS pixel (`devicePixelRatio`). 1 when left out. */
  readonly dpr?: number | undefined
}

/**
 * Capital height of the font divided by its em: 668 / 1000, sCapHeight in its OS/2 table over unitsPerEm in `head`,
 * the same at every weight. `tests/reference/legibility.test.ts` reads both out of the font file.
 */
export const CAP_HEIGHT_RATIO = 0.668

/** Minutes of arc of capital height. 16 is the least and 20–22 what is preferred: ISO 9241-3, NUREG-0700 1.3.1-4. */
export const ARC_MINUTES = {
  /** The next act, across the room. Whole lines of text should stay under 45 (NUREG-0700 1.3.1-4). */
  headline: 32,
  count: 28,
  act: 22,
  label: 18,
  min: 16,
} as const

/** Fingertip keys get no better above 20 mm: Colle & Hiszem 2004, Ergonomics 47:1406. */
export const KEY_MM_MIN = 20
/** A dead zone between keys, so that a knuckle on the edge is not a guess. Common practice, no source. */
export const KEY_GAP_MM_MIN = 3

/**
 * What the wall can never do without: the ruler and time, the kettle beside two shelves of two lines each, a line of
 * stock, and the act bar's two; across, the longest act with a time ("Out of 3 in 14 min") beside the kettle's ring.
 */
const WALL_LEAST = { lines: 9, columns: 30 }
const LINE_HEIGHT = 1.25
/** Mean advance of the font's letters and spaces in running English or Spanish, in em; measured, weight 700. */
const MEAN_ADVANCE = 0.53
const MM_PER_INCH = 25.4

/**
 * Height of a capital letter that covers so many minutes of arc.
 *
 *   h = 2 · D · tan(θ / 2)
 *
 * Source: the definition of visual angle; NUREG-0700 rev. 2 item 1.3.1-4 has it as 6.283 · D · MA / 21600, which is
 * the same to 1e-4.
 * @returns millimetres
 * @example capHeightMm({ arcMinutes: 22, distanceM: 3 }) // 19.199
 */
export function capHeightMm({ arcMinutes, distanceM }: { arcMinutes: number; distanceM: number }): number {
  return 2 * distanceM * 1000 * Math.tan(radians(arcMinutes) / 2)
}

/**
 * Millimetres of glass to one CSS pixel.
 *
 *   25.4 · dpr / ppi    with ppi = √(w² + h²) / diagonal
 *
 * @throws RangeError unless all are above 0
 * @example mmPerCssPx({ diagonalInch: 43, widthPx: 1920, heightPx: 1080 }) // 0.4958
 */
export function mmPerCssPx({ diagonalInch, widthPx, heightPx, dpr = 1 }: Panel): number {
  if (!(diagonalInch > 0 && widthPx > 0 && heightPx > 0 && dpr > 0)) {
    throw new RangeError('A screen needs a diagonal in inches, a width and height in pixels, all above 0.')
  }
  return (MM_PER_INCH * dpr * diagonalInch) / Math.hypot(widthPx, heightPx)
}

/** The CSS font size whose capitals are so many CSS pixels high, rounded up to a whole pixel: never too small. */
export function fontPxForCap(capPx: number): number {
  return Math.ceil(capPx / CAP_HEIGHT_RATIO - 1e-9)
}

/** Minutes of arc that the capitals of a font size cover: the way back, for tests of a painted screen. */
export function arcMinutesOf({ fontPx, distanceM, ...panel }: Panel & { fontPx: number; distanceM: number }): number {
  const capMm = fontPx * CAP_HEIGHT_RATIO * mmPerCssPx(panel)
  return degrees(2 * Math.atan(capMm / (2 * distanceM * 1000))) * 60
}

export interface TextSizes {
  readonly headlinePx: number
  readonly countPx: number
  readonly actPx: number
  readonly labelPx: number
  readonly minPx: number
}

/**
 * CSS font sizes for a screen seen from a distance. Acts, countdowns and counts come to at least 22 minutes of arc,
 * and nothing to under 16. What does not fit at these sizes is left out, not shrunk: see `fit.ts`.
 * @example wallSizes({ diagonalInch: 43, widthPx: 1920, heightPx: 1080, distanceM: 3 }) // actPx 58, minPx 43
 */
export function wallSizes({ distanceM, ...panel }: Panel & { readonly distanceM: number }): TextSizes {
  const size = (arcMinutes: number) => fontPxForCap(capHeightMm({ arcMinutes, distanceM }) / mmPerCssPx(panel))
  return {
    headlinePx: size(ARC_MINUTES.headline),
    countPx: size(ARC_MINUTES.count),
    actPx: size(ARC_MINUTES.act),
    labelPx: size(ARC_MINUTES.label),
    minPx: size(ARC_MINUTES.min),
  }
}

/** Whether a wall can still show at this distance what it must never leave out, and from how far it could. */
export function supportsDistance({ distanceM, ...panel }: Panel & { readonly distanceM: number }): {
  readonly supported: boolean
  readonly farthestM: number
} {
  const farthestM = farthestDistanceM(panel)
  return { supported: distanceM <= farthestM, farthestM }
}

/**
 * The farthest that the wall's least fits at 22 minutes of arc, rounded down to 0.1 m.
 * @example farthestDistanceM({ diagonalInch: 43, widthPx: 1920, heightPx: 1080 }) // 4.9
 */
export function farthestDistanceM(panel: Panel): number {
  const mmPerPanelPx = mmPerCssPx({ ...panel, dpr: 1 })
  const capMmByHeight = ((panel.heightPx * mmPerPanelPx) / WALL_LEAST.lines / LINE_HEIGHT) * CAP_HEIGHT_RATIO
  const capMmByWidth = ((panel.widthPx * mmPerPanelPx) / WALL_LEAST.columns / MEAN_ADVANCE) * CAP_HEIGHT_RATIO
  const capMm = Math.min(capMmByHeight, capMmByWidth)
  return Math.floor(capMm / (2 * Math.tan(radians(ARC_MINUTES.act) / 2)) / 100) / 10
}

function radians(arcMinutes: number): number {
  return (arcMinutes / 60) * (Math.PI / 180)
}

function degrees(angle: number): number {
  return angle * (180 / Math.PI)
}
