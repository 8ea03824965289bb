/**
 * Maximum allowable variations for packages labelled by weight: how much one package may weigh less than its label says.
 *
 * Source: NIST Handbook 133, Table 2-5. Two cells were read in chapter 2 of the 2026 edition (7.2 g at 113 g, 31.7 g at
 * 907 g); the others are from memory (`seen: false`) and want a look into the handbook before anybody relies on them.
 */
export interface AllowedVariation {
  /** Labelled weights up to this, in milligrams. */
  readonly upToMilligrams: number
  readonly milligrams: number
  readonly seen: boolean
}

const POUND_MILLIGRAMS = 453_592.37
const pounds = (upTo: number, grams: number, seen = false): AllowedVariation => ({
  upToMilligrams: Math.round(upTo * POUND_MILLIGRAMS),
  milligrams: Math.round(grams * 1_000),
  seen,
})

/** Below the first row a tenth of the label is allowed (from memory). */
const TENTH_UP_TO_MILLIGRAMS = Math.round(0.08 * POUND_MILLIGRAMS)

const ROWS: readonly AllowedVariation[] = [
  pounds(0.12, 3.6),
  pounds(0.18, 5.4),
  pounds(0.26, 7.2, true),
  pounds(0.34, 9),
  pounds(0.46, 10.8),
  pounds(0.58, 12.7),
  pounds(0.7, 14.5),
  pounds(0.84, 16.3),
  pounds(0.94, 18.1),
  pounds(1.08, 19.9),
  pounds(1.26, 21.7),
  pounds(1.4, 23.5),
  pounds(1.54, 25.4),
  pounds(1.7, 27.2),
  pounds(1.88, 29),
  pounds(2.14, 31.7, true),
  pounds(2.48, 35.3),
  pounds(2.76, 39),
  pounds(3.2, 42.6),
  pounds(3.9, 49),
  pounds(4.7, 54),
  pounds(5.8, 63),
]

/** @returns null for labels above the table. @example allowedVariation(113_000) // 7_200, seen */
export function allowedVariation(labelMilligrams: number): AllowedVariation | null {
  if (labelMilligrams <= TENTH_UP_TO_MILLIGRAMS)
    return { upToMilligrams: TENTH_UP_TO_MILLIGRAMS, milligrams: Math.round(labelMilligrams / 10), seen: false }
  return ROWS.find(({ upToMilligrams }) => labelMilligrams <= upToMilligrams) ?? null
}
