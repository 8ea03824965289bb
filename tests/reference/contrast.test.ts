import { describe, expect, it } from 'vitest'
import { contrastRatio, relativeLuminance } from '../../client/theme/contrast.ts'
import type { ThemeName, TokenName } from '../../client/theme/tokens.ts'
import { THEMES } from '../../client/theme/tokens.ts'
import { HUE_CHROMA_MIN, hues, NEUTRAL_CHROMA_MAX, oklab, SIGHTS, seenBy } from './colour-sight.ts'

/** Ratios after WCAG 2.2 (relative luminance with 0.04045), computed outside this project to 1e-6. */
const WCAG_PAIRS = [
  ['#000000', '#FFFFFF', 21],
  ['#777777', '#FFFFFF', 4.478089],
  ['#767676', '#FFFFFF', 4.542225],
  ['#949494', '#FFFFFF', 3.03347],
  ['#959595', '#FFFFFF', 2.995346],
  ['#595959', '#FFFFFF', 7.004729],
  ['#5A5A5A', '#FFFFFF', 6.896926],
  ['#FF0000', '#FFFFFF', 3.998477],
  ['#0000FF', '#FFFFFF', 8.592471],
  ['#008000', '#FFFFFF', 5.137403],
  ['#FFFF00', '#000000', 19.556],
  ['#FF0000', '#000000', 5.252],
] as const

/** The palette of Okabe and Ito (2008), luminance to 1e-8 and ratios to 1e-4, computed outside this project. */
const OKABE_ITO = [
  ['#000000', 0, 21, 1, 1.121],
  ['#E69F00', 0.41619268, 2.2523, 9.3239, 8.3176],
  ['#56B4E9', 0.40504142, 2.3075, 9.1008, 8.1187],
  ['#009E73', 0.25691524, 3.4211, 6.1383, 5.4759],
  ['#F0E442', 0.74405418, 1.3223, 15.8811, 14.1672],
  ['#0072B2', 0.1524898, 5.1854, 4.0498, 3.6127],
  ['#D55E00', 0.22151541, 3.8672, 5.4303, 4.8443],
  ['#CC79A7', 0.29302134, 3.061, 6.8604, 6.12],
  ['#999999', 0.31854678, 2.849, 7.3709, 6.5755],
] as const

describe('contrast', () => {
  it.each(WCAG_PAIRS)('of %s and %s is %d', (one, other, ratio) => {
    expect(Math.abs(contrastRatio(one, other) - ratio)).toBeLessThan(1e-6)
    expect(contrastRatio(other, one)).toBe(contrastRatio(one, other))
    expect(contrastRatio(one, one)).toBe(1)
  })

  it.each(OKABE_ITO)(
    'of %s: luminance %d, on white %d, on black %d, on #121212 %d',
    (hex, light, white, black, dark) => {
      expect(Math.abs(relativeLuminance(hex) - light)).toBeLessThan(1e-8)
      expect(Math.abs(contrastRatio(hex, '#ffffff') - white)).toBeLessThan(1e-4)
      expect(Math.abs(contrastRatio(hex, '#000000') - black)).toBeLessThan(1e-4)
      expect(Math.abs(contrastRatio(hex, '#121212') - dark)).toBeLessThan(1e-4)
    },
  )

  it.each(['#fff', 'white', '#12345g', '112233'])('of %s is refused: it is not #rrggbb', (text) => {
    expect(() => relativeLuminance(text)).toThrow('#rrggbb')
  })
})

/** WCAG 2.2: 1.4.3 text 4.5, 1.4.6 text 7, 1.4.11 shapes 3. The wall is read from afar and takes the 7. */
const TEXT_MIN = { dark: 7, light: 4.5 } as const
const SHAPE_MIN = 3

const TEXTS: readonly (readonly [TokenName, TokenName])[] = [
  ['text', 'ground'],
  ['text', 'surface'],
  ['quiet', 'ground'],
  ['quiet', 'surface'],
  ['coming', 'ground'],
  ['coming', 'surface'],
  ['trouble', 'ground'],
  ['trouble', 'surface'],
  ['actText', 'actGround'],
  ['actQuiet', 'actGround'],
  ['actComing', 'actGround'],
  ['actTrouble', 'actGround'],
]

const SHAPES: readonly (readonly [TokenName, TokenName])[] = [
  ['running', 'ground'],
  ['running', 'surface'],
  ['running', 'track'],
  ['coming', 'ground'],
  ['trouble', 'ground'],
  ['trouble', 'track'],
  ['crust', 'ground'],
  ['crust', 'surface'],
  ['crumb', 'ground'],
  ['crumb', 'surface'],
  ['line', 'ground'],
  ['line', 'surface'],
  ['actGround', 'ground'],
  ['actRunning', 'actGround'],
  ['actRunning', 'actTrack'],
  ['actTrouble', 'actGround'],
  ['actLine', 'actGround'],
]

describe.each(['dark', 'light'] as const)('the %s theme', (theme) => {
  const ratio = (one: TokenName, other: TokenName) => contrastRatio(THEMES[theme][one], THEMES[theme][other])

  it.each(TEXTS)('%s can be read on %s', (text, ground) => {
    expect(ratio(text, ground)).toBeGreaterThanOrEqual(TEXT_MIN[theme])
  })

  it.each(SHAPES)('%s can be told from %s', (shape, ground) => {
    expect(ratio(shape, ground)).toBeGreaterThanOrEqual(SHAPE_MIN)
  })

  it('has three hues, and all else is neutral', () => {
    for (const [token, hex] of Object.entries(THEMES[theme])) {
      const { chroma } = oklab(hex)
      if (hues(theme).has(token)) expect([token, chroma >= HUE_CHROMA_MIN]).toEqual([token, true])
      else expect([token, chroma <= NEUTRAL_CHROMA_MAX]).toEqual([token, true])
    }
  })

  it.each(Object.keys(SIGHTS))('keeps its hues apart for %s', (sight) => {
    expect(nearestHues(theme, sight)).toBeGreaterThanOrEqual(APART_MIN)
  })
})

/** Just noticeable is about 0.02 in OKLab; five times that is told apart across a room. Common practice, no source. */
const APART_MIN = 0.1

function nearestHues(theme: ThemeName, sight: string): number {
  const { running, coming, trouble } = THEMES[theme]
  const seen = [running, coming, trouble].map((hex) => seenBy(hex, sight))
  const pairs = seen.flatMap((one, index) => seen.slice(index + 1).map((other) => [one, other] as const))
  return Math.min(...pairs.map(([one, other]) => Math.hypot(one.light - other.light, one.a - other.a, one.b - other.b)))
}
