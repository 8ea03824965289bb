import { describe, expect, it } from 'vitest'
import { fitRingLabel, RING, ringArc } from '../../client/parts/ring-shape.ts'
import { textWidthPx } from '../../client/parts/text-width.ts'

const HOLE_RADIUS = RING.middleRadius - RING.thickness / 2

describe('a ring’s arc', () => {
  it.each([
    // left  from (x y)      large  the edge stands where a clock’s hand does after that part of a turn
    [0.75, '89.00 50.00', 1],
    [0.5, '50.00 89.00', 0],
    [0.25, '11.00 50.00', 0],
  ])('given %d left, begins at %s and ends at twelve o’clock', (fraction, from, large) => {
    expect(ringArc(fraction)).toBe(`M${from} A39 39 0 ${large} 1 50.00 11.00`)
  })

  it.each([
    [1, 'full'],
    [1.2, 'full'],
    [0.9999, 'full'],
    [0, 'empty'],
    [-3, 'empty'],
    [0.0001, 'empty'],
    [Number.NaN, 'empty'],
  ])('given %d left, is %s', (fraction, arc) => {
    expect(ringArc(fraction)).toBe(arc)
  })

  it('does not change for less than half a degree, so that a long countdown rarely repaints', () => {
    const ofFourteenMinutes = new Set(Array.from({ length: 840 }, (_, second) => ringArc(second / 840)))
    expect(ofFourteenMinutes.size).toBeLessThanOrEqual(721)
    expect(ringArc(0.5)).toBe(ringArc(0.5 + 0.2 / 720))
    expect(ringArc(0.5)).not.toBe(ringArc(0.5 + 1 / 720))
  })
})

describe('a ring’s label', () => {
  it.each([
    ['22 s', ['22 s']],
    ['12 min', ['12', 'min']],
    ['now', ['now']],
    ['late 20 s', ['late', '20 s']],
  ])('%s stands in lines %j', (text, lines) => {
    expect(fitRingLabel(text).lines).toEqual(lines)
  })

  it.each(['22 s', '8 s', '12 min', 'late 3 min', '3 min tarde', '1 h 20 min', 'in 8 min', '59 min', ''])(
    '%j lies inside the hole with all its corners',
    (text) => {
      const { lines, fontSize, baselines } = fitRingLabel(text)
      for (const [index, line] of lines.entries()) {
        const half = textWidthPx(line, fontSize, 'strong') / 2
        const baseline = baselines[index] ?? Number.NaN
        for (const y of [baseline, baseline - 0.668 * fontSize]) {
          expect(Math.hypot(half, y - RING.centre)).toBeLessThanOrEqual(HOLE_RADIUS)
        }
      }
    },
  )

  it('never parts a number from its unit except to give the number a line of its own', () => {
    expect(fitRingLabel('late 3 min').lines).not.toContain('late 3')
  })

  it('keeps its size from 10 to 9', () => {
    expect(fitRingLabel('9 s').fontSize).toBe(fitRingLabel('10 s').fontSize)
    expect(fitRingLabel('9 min').fontSize).toBe(fitRingLabel('10 min').fontSize)
  })
})
