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

/** Ids in one request. */
export const DETAILS_IDS_MAX = 100
