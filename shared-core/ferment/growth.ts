/**
 * How fast yeast works at a temperature: the cardinal temperature model with inflection. Only + − × ÷, so that it is the
 * same number on every engine.
 *
 *   γ(T) = (T − Tmax)(T − Tmin)² / { (Topt − Tmin) · [ (Topt − Tmin)(T − Topt) − (Topt − Tmax)(Topt + Tmin − 2T) ] }
 *
 * between Tmin and Tmax, else 0.
 *
 * Which model, and why. The proof runs by it over the room's readings: it holds in the warm, where rules of "twice as fast
 * for 10 °C" (or 17 °F) say much the same between 20 and 30 °C, and it has a top, which they have not. The chill runs by
 * it too, while a piece cools. A rule of a constant factor would ferment on at 3 °C with a quarter of the pace, 2.5 h of
 * proof in a night, against what bakers do: dough chills overnight or two days and is good. What a cold piece does change
 * by (enzymes, acids, a drying skin) is not yeast's growth: for that the dough's own chill window stands.
 *
 * Doubt: the model is of growing cells in broth, and gas in dough is not the same; published rules for dough differ by a
 * factor of two over 10 °C. So only ratios near the temperature at which the shop's own window holds are used, and float
 * tests teach each dough's pace.
 *
 * Source: Rosso, Lobry & Flandrois, J. Theor. Biol. 162 (1993) 447.
 */
export interface Cardinal {
  /** °C, least < best < most. */
  readonly least: number
  readonly best: number
  readonly most: number
}

/**
 * Saccharomyces cerevisiae. Best and most: Salvadó et al., Appl. Environ. Microbiol. 77 (2011) 2292 (wine and wild
 * strains, growth). Least: they give 1.3 to 4.3 °C for the genus; 2.8 is the middle, assumed. It matters in the cooler
 * only, where all of the three come to less than an hour of proof in a night.
 */
export const YEAST: Cardinal = { least: 2.8, best: 32.3, most: 45.4 }

/**
 * The pace at a temperature in parts of the best, 0 to 1; continuous, rising to the best and falling from there.
 * @example growth(24) // 0.788
 */
export function growth(celsius: number, { least, best, most }: Cardinal = YEAST): number {
  if (celsius <= least || celsius >= most) return 0
  const rise = celsius - least
  const inflection = (best - least) * (celsius - best) - (best - most) * (best + least - 2 * celsius)
  return ((celsius - most) * rise * rise) / ((best - least) * inflection)
}
