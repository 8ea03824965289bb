/** What lies beside the journal of an order: `GET /api/v1/orders/details?ids=…`. */
export interface DetailsTold {
  /** As it was asked for: the id of an order or of a standing order. */
  readonly id: string
  /** `Order.details` of what this is: another number there, and it is fetched anew. */
  readonly version: number
  /** Empty for the bench, as is the phone number. */
  readonly name: string
  readonly phone: string
  readonly note: string
}

/** Of what nothing was written, or of what was deleted, nothing is listed. */
export interface DetailsAnswer {
  readonly details: readonly DetailsTold[]
}

/** What lies beside the journal of somebody, also of orders that were handed over: `GET /api/v1/orders/names?text=…`. */
export interface KnownName {
  /** Of an order or a standing order. */
  readonly id: string
  /** What the order is called; null: it has ended. */
  readonly mark: string | null
  /** The order's day, YYYY-MM-DD; null: it stands. */
  readonly day: string | null
  readonly name: string
  readonly phone: string
  readonly note: string
}

export interface KnownNames {
  /** By name, at most `KNOWN_NAMES_MAX`. */
  readonly names: readonly KnownName[]
  /** How many there are, those left out too. */
  readonly found: number
}
export const KNOWN_NAMES_MAX = 200

/** Ids in one request. */
export const DETAILS_IDS_MAX = 100
