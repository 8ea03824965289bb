import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import {
  ARC_MINUTES,
  arcMinutesOf,
  CAP_HEIGHT_RATIO,
  capHeightMm,
  farthestDistanceM,
  fontPxForCap,
  mmPerCssPx,
  supportsDistance,
  wallSizes,
} from '../../client/parts/legibility.ts'
import { fontTables } from './font-tables.ts'

const WALL_43 = { diagonalInch: 43, widthPx: 1920, heightPx: 1080 }

/**
 * Capital height in mm by distance and minutes of arc, computed outside this project from h = 2·D·tan(θ/2); rounded to
 * 0.001 mm, hence the tolerance of half of that.
 */
const CAPITALS_MM: readonly (readonly [number, readonly number[]])[] = [
  [0.5, [1.454, 2.182, 2.327, 2.909, 3.2, 3.491, 4.363]],
  [1, [2.909, 4.363, 4.654, 5.818, 6.4, 6.981, 8.727]],
  [2, [5.818, 8.727, 9.308, 11.636, 12.799, 13.963, 17.453]],
  [3, [8.727, 13.09, 13.963, 17.453, 19.199, 20.944, 26.18]],
  [4, [11.636, 17.453, 18.617, 23.271, 25.598, 27.925, 34.907]],
  [5, [14.544, 21.817, 23.271, 29.089, 31.998, 34.907, 43.634]],
  [6, [17.453, 26.18, 27.925, 34.907, 38.397, 41.888, 52.36]],
]
const MINUTES = [10, 15, 16, 20, 22, 24, 30]

describe('capital height', () => {
  it.each(
    CAPITALS_MM.flatMap(([distanceM, row]) => row.map((mm, index) => [MINUTES[index] ?? 0, distanceM, mm] as const)),
  )('of %i minutes of arc at %d m is %d mm', (arcMinutes, distanceM, mm) => {
    expect(Math.abs(capHeightMm({ arcMinutes, distanceM }) - mm)).toBeLessThanOrEqual(0.5e-3 + 1e-9)
  })

  // Inches at 40, 120 and 240 inches; same origin, rounded to 1e-4 inch.
  it.each([
    [16, 40, 0.1862],
    [20, 120, 0.6981],
    [22, 240, 1.5359],
  ])('of %i minutes of arc at %i inches is %d inches', (arcMinutes, distanceInch, inches) => {
    const mm = capHeightMm({ arcMinutes, distanceM: distanceInch * 0.0254 })
    expect(Math.abs(mm / 25.4 - inches)).toBeLessThanOrEqual(0.5e-4 + 1e-9)
  })

  it('agrees with the form of NUREG-0700 rev. 2, item 1.3.1-4: 6.283 · D · MA / 21600, to 1e-4', () => {
    for (const arcMinutes of MINUTES) {
      const form = (6.283 * 3000 * arcMinutes) / 21600
      expect(Math.abs(capHeightMm({ arcMinutes, distanceM: 3 }) / form - 1)).toBeLessThan(1e-4)
    }
  })

  it('keeps to the limits of NUREG-0700: 16 at least, 20–22 preferred, 45 at most', () => {
    expect(ARC_MINUTES.min).toBeGreaterThanOrEqual(16)
    expect(ARC_MINUTES.act).toBeGreaterThanOrEqual(22)
    expect(ARC_MINUTES.count).toBeGreaterThanOrEqual(22)
    expect(ARC_MINUTES.headline).toBeLessThanOrEqual(45)
  })
})

describe('millimetres to a CSS pixel', () => {
  // Computed outside this project: 25.4 · dpr / ppi; mm to 1e-5, pixels to 0.01.
  it.each([
    [{ diagonalInch: 43, widthPx: 1920, heightPx: 1080, dpr: 1 }, 0.4958, 40.34, 28.16],
    [{ diagonalInch: 32, widthPx: 1920, heightPx: 1080, dpr: 1 }, 0.36897, 54.21, 37.84],
    [{ diagonalInch: 27, widthPx: 3840, heightPx: 2160, dpr: 2 }, 0.31132, 64.24, 44.85],
    [{ diagonalInch: 24, widthPx: 1920, heightPx: 1080, dpr: 1 }, 0.27673, 72.27, 50.46],
    [{ diagonalInch: 10.1, widthPx: 1920, heightPx: 1200, dpr: 1.5 }, 0.16996, 117.68, 82.15],
  ])('on %o', (panel, mm, px20mm, capPx) => {
    expect(Math.abs(mmPerCssPx(panel) - mm)).toBeLessThanOrEqual(0.5e-5 + 1e-9)
    expect(Math.abs(20 / mmPerCssPx(panel) - px20mm)).toBeLessThanOrEqual(0.005 + 1e-9)
    const cap = capHeightMm({ arcMinutes: 16, distanceM: 3 }) / mmPerCssPx(panel)
    expect(Math.abs(cap - capPx)).toBeLessThanOrEqual(0.005 + 1e-9)
  })

  it.each([
    { ...WALL_43, diagonalInch: 0 },
    { ...WALL_43, widthPx: -1 },
    { ...WALL_43, heightPx: Number.NaN },
    { ...WALL_43, dpr: 0 },
  ])('are refused for a screen that cannot be: %o', (panel) => {
    expect(() => mmPerCssPx(panel)).toThrow('all above 0')
  })
})

describe('the font', () => {
  it('has the capital height that sizes are computed with', () => {
    const tables = fontTables(readFileSync(fontFile('atkinson-hyperlegible-next-latin-wght-normal.woff2')))
    // OpenType: `head` unitsPerEm at byte 18, OS/2 sCapHeight at byte 88.
    const unitsPerEm = tables.get('head')?.readUInt16BE(18)
    const capHeight = tables.get('OS/2')?.readInt16BE(88)
    expect({ unitsPerEm, capHeight }).toEqual({ unitsPerEm: 1000, capHeight: 668 })
    expect(CAP_HEIGHT_RATIO).toBe(668 / 1000)
  })

  it.each([
    [28.16, 43],
    [66.8, 100],
    [66.81, 101],
  ])('gives capitals of %d px a size of %i px: never too small', (capPx, fontPx) => {
    expect(fontPxForCap(capPx)).toBe(fontPx)
  })
})

describe('sizes', () => {
  const screens = [
    [WALL_43, 3],
    [{ diagonalInch: 32, widthPx: 1920, heightPx: 1080 }, 2],
    [{ diagonalInch: 55, widthPx: 3840, heightPx: 2160, dpr: 2 }, 6],
    [{ diagonalInch: 10.1, widthPx: 1920, heightPx: 1200, dpr: 1.5 }, 0.5],
  ] as const
  it.each(screens)(
    'on %o at %d m: acts and counts come to 22 minutes of arc, the smallest to 16',
    (panel, distanceM) => {
      const sizes = wallSizes({ ...panel, distanceM })
      const arcs = (fontPx: number) => arcMinutesOf({ ...panel, distanceM, fontPx })
      expect(arcs(sizes.actPx)).toBeGreaterThanOrEqual(22)
      expect(arcs(sizes.countPx)).toBeGreaterThanOrEqual(22)
      expect(arcs(sizes.headlinePx)).toBeGreaterThan(arcs(sizes.actPx))
      for (const fontPx of Object.values(sizes)) expect(arcs(fontPx)).toBeGreaterThanOrEqual(16)
      // Rounded up to a whole pixel, no more.
      expect(arcs(sizes.minPx - 1)).toBeLessThan(16)
    },
  )

  it('are those of the example', () => {
    expect(wallSizes({ ...WALL_43, distanceM: 3 })).toMatchObject({ actPx: 58, minPx: 43 })
  })
})

describe('the farthest distance', () => {
  it('is where what the wall must always show still fits, at 22 minutes of arc', () => {
    // By hand: 1080 px / 9 lines / 1.25 = 96 px of font, 64.13 px of capital, 31.8 mm; 31.8 / (2·tan 11′) = 4.97 m.
    expect(farthestDistanceM(WALL_43)).toBe(4.9)
    expect(supportsDistance({ ...WALL_43, distanceM: 4.9 })).toEqual({ supported: true, farthestM: 4.9 })
    expect(supportsDistance({ ...WALL_43, distanceM: 5 })).toEqual({ supported: false, farthestM: 4.9 })
  })

  it('grows with the diagonal, does not change with the pixels, and is shorter for a wall hung upright', () => {
    expect(farthestDistanceM({ ...WALL_43, diagonalInch: 65 })).toBeGreaterThan(farthestDistanceM(WALL_43))
    expect(farthestDistanceM({ ...WALL_43, widthPx: 3840, heightPx: 2160, dpr: 2 })).toBe(farthestDistanceM(WALL_43))
    expect(farthestDistanceM({ ...WALL_43, widthPx: 1080, heightPx: 1920 })).toBeLessThan(farthestDistanceM(WALL_43))
  })
})

function fontFile(name: string): string {
  return createRequire(import.meta.url).resolve(`@fontsource-variable/atkinson-hyperlegible-next/files/${name}`)
}
