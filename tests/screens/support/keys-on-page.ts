import type { Page } from '@playwright/test'

/** A key as it lies on the glass, in CSS pixels. */
export interface PaintedKey {
  readonly name: string
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** All keys that can be touched on a page, off its own layout: nothing is taken from our code. */
export function keysOn(page: Page): Promise<PaintedKey[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('button, input')].map((key) => {
      const { left, top, width, height } = key.getBoundingClientRect()
      return { name: key.getAttribute('aria-label') ?? key.textContent ?? '', left, top, width, height }
    }),
  )
}

/** Keys that are too small. @param leastPx CSS pixels; a tenth is lost to rounding */
export function tooSmall(keys: readonly PaintedKey[], leastPx: number): readonly string[] {
  return keys
    .filter(({ width, height }) => Math.min(width, height) < leastPx - 0.1)
    .map(({ name, width, height }) => `"${name}" is ${width.toFixed(1)} × ${height.toFixed(1)}`)
}

/** Pairs of keys with less between them than asked for, across or down, whichever is more. */
export function tooClose(keys: readonly PaintedKey[], leastPx: number): readonly string[] {
  return keys.flatMap((one, index) =>
    keys.slice(index + 1).flatMap((other) => {
      const across = Math.max(one.left, other.left) - Math.min(one.left + one.width, other.left + other.width)
      const down = Math.max(one.top, other.top) - Math.min(one.top + one.height, other.top + other.height)
      const apart = Math.max(across, down)
      return apart < leastPx - 0.1 ? [`"${one.name}" and "${other.name}": ${apart.toFixed(1)}`] : []
    }),
  )
}

/** Keys of which a part lies outside the page. */
export function offPage(keys: readonly PaintedKey[], size: { readonly width: number; readonly height: number }) {
  return keys
    .filter(
      ({ left, top, width, height }) =>
        left < -0.5 || top < -0.5 || left + width > size.width + 0.5 || top + height > size.height + 0.5,
    )
    .map(({ name }) => name)
}
