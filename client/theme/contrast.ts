/**
 * How bright a colour is, from 0 (black) to 1 (white).
 *
 *   L = 0.2126 R + 0.7152 G + 0.0722 B    with c = c8 / 255, and c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055)^2.4
 *
 * Source: WCAG 2.2, relative luminance (the 0.04045 of May 2021).
 * @param hex `#rrggbb`
 * @throws RangeError for any other form
 */
export function relativeLuminance(hex: string): number {
  const [red, green, blue] = linearRgb(hex)
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/**
 * Contrast of two colours, 1 to 21, whichever way round. Never to be rounded up: 4.499 fails where 4.5 is wanted.
 *
 *   (L1 + 0.05) / (L2 + 0.05)    L1 the brighter
 *
 * Source: WCAG 2.2, contrast ratio; wanted are 4.5 for text (1.4.3), 7 for text seen from afar (1.4.6), 3 for shapes
 * that say something (1.4.11).
 * @example contrastRatio('#000000', '#ffffff') // 21
 */
export function contrastRatio(one: string, other: string): number {
  const a = relativeLuminance(one)
  const b = relativeLuminance(other)
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

/** Red, green and blue of `#rrggbb` as amounts of light, 0 to 1 each. */
export function linearRgb(hex: string): readonly [number, number, number] {
  const digits = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex)
  if (digits === null) throw new RangeError(`A colour must be written #rrggbb; this one is ${hex}.`)
  const [, red = '', green = '', blue = ''] = digits
  return [linear(red), linear(green), linear(blue)]
}

function linear(pair: string): number {
  const c = Number.parseInt(pair, 16) / 255
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
}
