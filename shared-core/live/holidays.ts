/** What the server's API says of public holidays: `/api/v1/holidays`. Names are in both languages of the screens. */

export interface NamedRegion {
  /** As ISO 3166 writes it: "US", "US-IL". */
  readonly code: string
  readonly en: string
  readonly es: string
}

export interface Country extends NamedRegion {
  /** Those parts whose holidays are known to differ. */
  readonly parts: readonly NamedRegion[]
}

export interface Holiday {
  /** Made of the English name, so that it is the same in every year: small letters, digits and dashes. */
  readonly id: string
  readonly en: string
  readonly es: string
  /** Else a day that people keep though nothing is closed. */
  readonly isPublic: boolean
  /** First and last day, YYYY-MM-DD, in order. */
  readonly spans: readonly { readonly from: string; readonly to: string }[]
}

export interface HolidaysOf {
  /** The region that the holidays are of: a part that is not known by itself has its country's. */
  readonly region: string
  readonly holidays: readonly Holiday[]
}
