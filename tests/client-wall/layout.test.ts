import { describe, expect, it } from 'vitest'
import { farthestDistanceM, wallSizes } from '../../client/parts/legibility.ts'
import type { Box, WallLayout } from '../../client/wall/layout.ts'
import { roomySizes, wallLayout } from '../../client/wall/layout.ts'
import { PANEL } from './support/wall.ts'

const PANELS = [
  { name: '43 inches full HD', ...PANEL },
  { name: '32 inches full HD', ...PANEL, diagonalInch: 32 },
  { name: '24 inches 1366 × 768', diagonalInch: 24, widthPx: 1366, heightPx: 768 },
  { name: '55 inches 4K', diagonalInch: 55, widthPx: 3840, heightPx: 2160 },
]
const DISTANCES_M = [1.5, 2, 3, 4, 5, 6]

const layouts = PANELS.flatMap((panel) =>
  DISTANCES_M.filter((distanceM) => distanceM <= farthestDistanceM(panel)).flatMap((distanceM) =>
    [false, true].map((hasStatus) => {
      const sizes = wallSizes({ ...panel, distanceM })
      const layout = wallLayout({ ...panel, sizes, hasStatus, noteWidthPx: 300 })
      return { title: `${panel.name} at ${distanceM} m${hasStatus ? ', in trouble' : ''}`, panel, layout, sizes }
    }),
  ),
)

describe('the wall’s places', () => {
  it.each(layouts)('[G2] given $title, then no two places overlap and none leaves the screen', ({ panel, layout }) => {
    const boxes = boxesOf(layout)
    for (const [name, box] of boxes) {
      expect(box.left, name).toBeGreaterThanOrEqual(0)
      expect(box.top, name).toBeGreaterThanOrEqual(0)
      expect(box.left + box.width, name).toBeLessThanOrEqual(panel.widthPx)
      expect(box.top + box.height, name).toBeLessThanOrEqual(panel.heightPx)
    }
    boxes.forEach(([name, box], index) => {
      for (const [other, that] of boxes.slice(index + 1)) expect(overlap(box, that), `${name} and ${other}`).toBe(false)
    })
  })

  it('given 43 inches at 3 m, then day, drawn rods and three shelves with their contents have room', () => {
    const sizes = wallSizes({ ...PANEL, distanceM: 3 })
    const layout = wallLayout({ ...PANEL, sizes, hasStatus: false, noteWidthPx: 0 })
    expect(layout.ruler).not.toBeNull()
    expect(layout.rodsForm).toBe('drawn')
    expect(layout.rodLines).toBe(3)
    expect(layout.oven.height).toBeGreaterThanOrEqual(3 * 130)
  })

  it('given it is too far for all, then the day goes before the rods, and kettle, oven, clock and bar stay', () => {
    const at = (distanceM: number) =>
      wallLayout({ ...PANEL, sizes: wallSizes({ ...PANEL, distanceM }), hasStatus: false, noteWidthPx: 0 })
    const far = [3, 3.5, 4, 4.5, 5, 6].map(at)
    const shown = far.map(({ ruler, rods }) => Number(ruler !== null) + Number(rods !== null))
    expect(shown).toEqual([...shown].sort((a, b) => b - a))
    expect(far.some(({ ruler, rods }) => ruler === null && rods !== null)).toBe(true)
    for (const { kettle, bar } of far) expect(kettle.height > 0 && bar.height > 0).toBe(true)
  })

  it('given trouble to tell, then the shelves keep their rows: the rods give a line', () => {
    const sizes = wallSizes({ ...PANEL, distanceM: 3 })
    const calm = wallLayout({ ...PANEL, sizes, hasStatus: false, noteWidthPx: 0 })
    const trouble = wallLayout({ ...PANEL, sizes, hasStatus: true, noteWidthPx: 0 })
    expect(trouble.status?.width).toBe(PANEL.widthPx)
    expect(trouble.rodLines).toBe(calm.rodLines - 1)
  })
})

describe('text sizes', () => {
  const sizesAt = (distanceM: number) => (scale: number) => wallSizes({ ...PANEL, distanceM: distanceM * scale })

  it('[G1] given any distance, then text is never smaller than the distance asks for', () => {
    for (const distanceM of DISTANCES_M) {
      expect(roomySizes(PANEL, 3, sizesAt(distanceM)).minPx).toBeGreaterThanOrEqual(sizesAt(distanceM)(1).minPx)
    }
  })

  it('given room to spare, then text grows, and less so with more shelves to show', () => {
    const near = roomySizes(PANEL, 3, sizesAt(1.5))
    const nearMany = roomySizes(PANEL, 12, sizesAt(1.5))
    expect(near.minPx).toBeGreaterThan(sizesAt(1.5)(1).minPx)
    expect(nearMany.minPx).toBeLessThan(near.minPx)
  })
})

function boxesOf({ clock, ruler, status, kettle, oven, rods, bar }: WallLayout): readonly (readonly [string, Box])[] {
  const all: readonly (readonly [string, Box | null])[] = [
    ['clock', clock],
    ['ruler', ruler],
    ['status', status],
    ['kettle', kettle],
    ['oven', oven],
    ['rods', rods],
    ['bar', bar],
  ]
  return all.flatMap(([name, box]) => (box === null ? [] : [[name, box] as const]))
}

function overlap(a: Box, b: Box): boolean {
  const across = a.left < b.left + b.width && b.left < a.left + a.width
  return across && a.top < b.top + b.height && b.top < a.top + a.height
}
