import type { Formula } from '../shop/formula.ts'
import { bakedOf } from './cost.ts'
import type { AllowedVariation } from './package-weight-table.ts'
import { allowedVariation } from './package-weight-table.ts'
import { tOf } from './student-t.ts'

/**
 * What a sample of packages says against the weight on their label, by the two rules that US inspectors use. A help to see
 * trouble coming, never a verdict of law: ask your weights-and-measures office.
 *
 *   error = weight − label        SEL = t(97.5 %, n − 1) · s / √n
 *
 * **Individual packages**: a minus error larger than the maximum allowable variation (MAV) is unreasonable; a sample may
 * have none of them up to 24 packages and one with 48 (the latter from memory).
 * **Average**: passes when the average error is not negative, or negative by less than the sample error limit (SEL).
 *
 * Source: NIST Handbook 133 (2026), chapter 2, Category A. Its sample correction factor is t/√n to rounding. Bread and
 * bagels have no moisture allowance there.
 */
export interface PackageCheck {
  readonly packages: number
  readonly labelMilligrams: number
  readonly averageErrorMilligrams: number
  /** Standard deviation (n − 1); null with one package. */
  readonly spreadMilligrams: number | null
  readonly errorLimitMilligrams: number | null
  /** Null: the label is above the table. */
  readonly allowed: AllowedVariation | null
  /** Packages that are further below their label than is allowed, and how many may be. */
  readonly tooLight: number
  readonly tooLightMost: number
  readonly verdict: PackageVerdict
}

/**
 * `passes`: both rules. `failsAverage`, `failsPackages`, `failsBoth`. `tooFew`: fewer than an inspector would take, so
 * nothing is said. `notInTable`: nobody told the board what is allowed for such a label.
 */
export type PackageVerdict = 'passes' | 'failsAverage' | 'failsPackages' | 'failsBoth' | 'tooFew' | 'notInTable'

/** The handbook's sample for lots of 12 to 250 packages. */
export const PACKAGES_LEAST = 12
const PACKAGES_OF_ONE_TOO_LIGHT = 48

export function packageCheck(labelMilligrams: number, milligrams: readonly number[]): PackageCheck {
  const errors = milligrams.map((weight) => weight - labelMilligrams)
  const packages = errors.length
  const average = packages === 0 ? 0 : errors.reduce((sum, error) => sum + error, 0) / packages
  const squares = errors.reduce((sum, error) => sum + (error - average) * (error - average), 0)
  const spread = packages < 2 ? null : Math.sqrt(squares / (packages - 1))
  const limit = spread === null ? null : (tOf(packages - 1) * spread) / Math.sqrt(packages)
  const allowed = allowedVariation(labelMilligrams)
  const tooLight = allowed === null ? 0 : errors.filter((error) => -error > allowed.milligrams).length
  const tooLightMost = packages >= PACKAGES_OF_ONE_TOO_LIGHT ? 1 : 0
  const figures = {
    packages,
    labelMilligrams,
    averageErrorMilligrams: average,
    spreadMilligrams: spread,
    errorLimitMilligrams: limit,
    allowed,
    tooLight,
    tooLightMost,
  }
  return { ...figures, verdict: verdictOf(figures) }
}

/**
 * Pieces weighed as dough, as what they should weigh when they are baked: the check then says what the divider's setting
 * leads to, and only weighing baked pieces tells what they came to.
 */
export function expectedBaked(
  formula: Pick<Formula, 'bakeLossPercent'>,
  toppingMilligrams: number,
  dough: readonly number[],
): number[] {
  return dough.map((weight) => bakedOf(formula, weight) + toppingMilligrams)
}

function verdictOf(check: Omit<PackageCheck, 'verdict'>): PackageVerdict {
  const {
    packages,
    averageErrorMilligrams: average,
    errorLimitMilligrams: limit,
    allowed,
    tooLight,
    tooLightMost,
  } = check
  if (packages < PACKAGES_LEAST || limit === null) return 'tooFew'
  if (allowed === null) return 'notInTable'
  // Exactly at the limit is not below it, and fails.
  const isShort = average < 0 && -average >= limit
  const isLight = tooLight > tooLightMost
  if (isShort) return isLight ? 'failsBoth' : 'failsAverage'
  return isLight ? 'failsPackages' : 'passes'
}
