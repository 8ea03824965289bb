/** The oven's places and what waits for them, in plain values: instants in ms of any clock, spans in ms. */
export interface SlotsGiven {
  readonly nowMs: number
  /** What would come out after it is not put in; null: nothing closes the oven. */
  readonly stopMs: number | null
  readonly shelves: readonly SlotShelf[]
  /** Between two things at one place. */
  readonly handlingMs: number
  readonly orders: readonly SlotOrder[]
  readonly parts: readonly SlotPart[]
}

export interface SlotShelf {
  readonly id: string
  /** When each of its places is free. */
  readonly freeMs: readonly number[]
}

export interface SlotOrder {
  readonly id: string
  readonly dueMs: number
  /** When all of it that is not among the parts is ready; the order is complete with the last of all. */
  readonly otherReadyMs: number
}

export interface SlotPart {
  readonly id: string
  readonly orderId: string
  /** It cannot go in before. */
  readonly readyMs: number
  readonly bakeMs: number
  /** Places that it takes on one shelf. */
  readonly slots: number
  /** What is still to be done with it after the oven. */
  readonly afterMs: number
  /** Parts of one group go in at one moment where the oven can hold them all; null: it goes by itself. */
  readonly group: string | null
}

export interface SlotsPlan {
  /** In the order of their starts. */
  readonly starts: readonly SlotStart[]
  /** Parts that would not be out by `stopMs`, or need more places than any shelf has. */
  readonly tooLate: readonly string[]
  /** By order: when it is complete; those with a part in `tooLate` are left out. */
  readonly complete: readonly { readonly orderId: string; readonly atMs: number }[]
  /** Sum over these orders of how long after their due time they are complete. */
  readonly latenessMs: number
}

export interface SlotStart {
  readonly partId: string
  readonly shelfId: string
  /** Index of each place that it takes. */
  readonly places: readonly number[]
  readonly atMs: number
  readonly endMs: number
}
