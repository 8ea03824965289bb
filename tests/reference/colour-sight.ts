import { linearRgb } from '../../client/theme/contrast.ts'
import type { ThemeName } from '../../client/theme/tokens.ts'

type Light = readonly [number, number, number]
type Matrix = readonly [Light, Light, Light]

/**
 * How people see who lack one kind of cone, as matrices on linear light, severity 1.
 * Source: Machado, Oliveira and Fernandes 2009, A physiologically-based model for simulation of color vision deficiency,
 * IEEE TVCG 15(6), table of matrices.
 */
export const SIGHTS: Readonly<Record<string, Matrix>> = {
  'all cones': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  'no red cones (protanopia)': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'no green cones (deuteranopia)': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'no blue cones (tritanopia)': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
}

/** Below, a colour reads as a warm or cool grey; above, as a hue. Chosen by eye in OKLab. */
export const NEUTRAL_CHROMA_MAX = 0.075
export const HUE_CHROMA_MIN = 0.085

/** On the dark wall's paper what runs is ink, not amber: amber on paper would not reach 3. */
export function hues(theme: ThemeName): ReadonlySet<string> {
  const all = ['running', 'coming', 'trouble', 'actComing', 'actTrouble']
  return new Set(theme === 'light' ? [...all, 'actRunning'] : all)
}

export interface OkLab {
  readonly light: number
  readonly a: number
  readonly b: number
  readonly chroma: number
}

export function oklab(hex: string): OkLab {
  return fromLinear(linearRgb(hex))
}

/** A colour as a person with that sight sees it. */
export function seenBy(hex: string, sight: string): OkLab {
  const matrix = SIGHTS[sight]
  if (matrix === undefined) throw new Error(`no such sight: ${sight}`)
  return fromLinear(times(matrix, linearRgb(hex)).map((value) => Math.min(1, Math.max(0, value))))
}

function times(matrix: Matrix, [red, green, blue]: Light): number[] {
  return matrix.map(([r, g, b]) => r * red + g * green + b * blue)
}

/** Source: Björn Ottosson 2020, A perceptual color space for image processing (OKLab). */
function fromLinear([red = 0, green = 0, blue = 0]: readonly number[]): OkLab {
  const l = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue)
  const m = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue)
  const s = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue)
  const light = 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s
  const a = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s
  const b = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s
  return { light, a, b, chroma: Math.hypot(a, b) }
}
