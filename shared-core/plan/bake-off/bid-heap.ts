/** So many units of a variety into a slot. */
export interface Bid {
  readonly variety: number
  readonly slot: number
  readonly units: number
  /** Money for each unit. */
  readonly gain: number
  /** How many times the variety had been given units when the gain was found. */
  readonly round: number
}

/** Bids, the highest gain first. */
export class BidHeap {
  readonly #bids: Bid[] = []

  push(bid: Bid): void {
    const bids = this.#bids
    let at = bids.length
    while (at > 0) {
      const above = (at - 1) >> 1
      const other = bids[above] as Bid
      if (other.gain >= bid.gain) break
      bids[at] = other
      at = above
    }
    bids[at] = bid
  }

  pop(): Bid | undefined {
    const bids = this.#bids
    const first = bids[0]
    const last = bids.pop()
    if (first === undefined || last === undefined || bids.length === 0) return first
    let at = 0
    for (;;) {
      let below = 2 * at + 1
      if (below >= bids.length) break
      if (below + 1 < bids.length && (bids[below + 1] as Bid).gain > (bids[below] as Bid).gain) below++
      if ((bids[below] as Bid).gain <= last.gain) break
      bids[at] = bids[below] as Bid
      at = below
    }
    bids[at] = last
    return first
  }
}
