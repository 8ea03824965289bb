import { describe, expect, it } from 'vitest'
import type { Figure, Sounding } from '../../client/parts/sound-figures.ts'
import { FIGURE_HZ_MAX, FIGURE_HZ_MIN, FIGURE_MS_MAX, figureOf, lengthMs } from '../../client/parts/sound-figures.ts'

const ACTS: readonly Sounding[] = [
  ...(['pull', 'dip', 'lift', 'board', 'load', 'flip', 'out'] as const),
  ...(['ovenIn', 'ovenTurn', 'ovenOut', 'portionPull'] as const),
]
const ALL = ACTS.flatMap((act) => [false, true].map((isLate) => ({ act, isLate, figure: figureOf(act, isLate) })))
const pairs = ACTS.flatMap((one, index) => ACTS.slice(index + 1).map((other) => [one, other] as const))

describe('figures', () => {
  it.each(ALL)(
    'of $act, late: $isLate, lie where the ear is keen, are short and play one note at a time',
    ({ figure }) => {
      expect(figure.length).toBeGreaterThan(0)
      expect(lengthMs(figure)).toBeLessThanOrEqual(FIGURE_MS_MAX)
      for (const [index, { hz, fromMs, lengthMs: length }] of figure.entries()) {
        expect(hz).toBeGreaterThanOrEqual(FIGURE_HZ_MIN)
        expect(hz).toBeLessThanOrEqual(FIGURE_HZ_MAX)
        expect(length).toBeGreaterThanOrEqual(50)
        const next = figure[index + 1]
        if (next !== undefined) expect(next.fromMs).toBeGreaterThanOrEqual(fromMs + length)
      }
    },
  )

  it.each(pairs)('of %s and %s differ in rhythm and in pitch', (one, other) => {
    expect(rhythm(figureOf(one, false))).not.toEqual(rhythm(figureOf(other, false)))
    expect(melody(figureOf(one, false))).not.toEqual(melody(figureOf(other, false)))
  })

  it.each(ACTS)('of a late %s begin with the same shake and end with its own', (act) => {
    const own = figureOf(act, false)
    const late = figureOf(act, true)
    const shake = late.slice(0, late.length - own.length)
    expect(shake).toEqual(figureOf('out', true).slice(0, shake.length))
    expect(melody(late.slice(-own.length))).toEqual(melody(own))
    expect(shake.length).toBeGreaterThan(4)
  })
})

/** Lengths and rests in tens of milliseconds. */
function rhythm(figure: Figure): readonly number[] {
  return figure.flatMap(({ fromMs, lengthMs: length }, index) => {
    const next = figure[index + 1]
    return [length, next === undefined ? 0 : next.fromMs - fromMs - length].map((ms) => Math.round(ms / 10))
  })
}

function melody(figure: Figure): readonly number[] {
  return figure.map(({ hz }) => hz)
}
