import type { VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Stock } from './state.ts'

/** A first sale a minute ago is no pace of sixty an hour. Common practice, no source. */
const FOR_SALE_MS_MIN = 30 * 60_000
/** Less than this nobody was sent away for. Common practice, no source. */
const SOLD_OUT_MS_MIN = 60_000

/** While the shop is open to customers. */
export interface OpenSpan {
  readonly fromMs: EpochMs
  readonly toMs: EpochMs
}

/** A stretch of opening hours in which there was none of a variety that there had been before. */
export interface SellOut {
  readonly fromMs: EpochMs
  readonly toMs: EpochMs
  /** Pieces that would have been sold, at the pace until then; not rounded. */
  readonly missed: number
}

interface Gap {
  readonly fromMs: number
  readonly pace: number
  toMs: number
  soldIn: number
}

/**
 * When one variety was for sale and when it was sold out, followed from change to change of its stock. Lots become ready
 * by time without an event, so that each stretch between two changes is divided where the next lot is ready.
 */
export class SoldOutOf {
  readonly varietyId: VarietyId
  #stock: Stock | null = null
  #atMs: number
  #sold = 0
  #forSaleMs = 0
  #wasThere = false
  #gap: Gap | null = null
  #gaps: Gap[] = []

  /** Of a variety of which there is nothing until then. */
  constructor(varietyId: VarietyId, atMs: EpochMs) {
    this.varietyId = varietyId
    this.#atMs = atMs
  }

  get stock(): Stock | null {
    return this.#stock
  }

  /** Pieces sold to whoever came in. */
  get sold(): number {
    return this.#sold
  }

  isForSaleAt(atMs: EpochMs): boolean {
    return readyFrom(this.#stock) <= atMs
  }

  /** Goes on to an instant at which the stock is another; one from before the last change counts from there. */
  change(stock: Stock | null, atMs: EpochMs, open: OpenSpan): void {
    this.goOn(atMs, open)
    const sold = soldBetween(this.#stock, stock)
    this.#sold += sold
    if (this.#gap !== null) this.#gap.soldIn += sold
    this.#stock = stock
    if (this.#gap !== null && readyFrom(stock) <= this.#gap.fromMs) this.#wereThereAllAlong(this.#gap)
  }

  /** Pieces that left without a sale being told, where the shop counts by sweeps only. */
  foundGone(pieces: number): void {
    this.#sold += pieces
  }

  goOn(toMs: EpochMs, open: OpenSpan): void {
    if (toMs <= this.#atMs) return
    const fromMs = this.#atMs
    const readyMs = Math.min(Math.max(readyFrom(this.#stock), fromMs), toMs)
    this.#lackFrom(clip(fromMs, open), clip(readyMs, open))
    if (readyFrom(this.#stock) <= toMs) {
      this.#gap = null
      this.#wasThere = true
      this.#forSaleMs += clip(toMs, open) - clip(readyMs, open)
    }
    this.#atMs = toMs
  }

  /** The sell-outs until an instant; asking does not go on to it. */
  sellOutsBy(endMs: EpochMs, open: OpenSpan): readonly SellOut[] {
    const copy = new SoldOutOf(this.varietyId, epochMs(this.#atMs))
    copy.#stock = this.#stock
    copy.#wasThere = this.#wasThere
    copy.#sold = this.#sold
    copy.#forSaleMs = this.#forSaleMs
    copy.#gaps = this.#gaps.map((gap) => ({ ...gap }))
    copy.#gap = this.#gap === null ? null : (copy.#gaps[copy.#gaps.length - 1] ?? null)
    copy.goOn(endMs, open)
    return copy.#gaps.flatMap(sellOutOf)
  }

  /** What seemed to end them was taken back. */
  #wereThereAllAlong(gap: Gap): void {
    this.#forSaleMs += gap.toMs - gap.fromMs
    this.#gaps = this.#gaps.filter((one) => one !== gap)
    this.#gap = null
  }

  #lackFrom(fromMs: number, toMs: number): void {
    if (!this.#wasThere || toMs <= fromMs) return
    if (this.#gap === null) {
      const pace = this.#sold / Math.max(this.#forSaleMs, FOR_SALE_MS_MIN)
      this.#gap = { fromMs, toMs, pace, soldIn: 0 }
      this.#gaps.push(this.#gap)
    }
    this.#gap.toMs = toMs
  }
}

function sellOutOf({ fromMs, toMs, pace, soldIn }: Gap): readonly SellOut[] {
  if (toMs - fromMs < SOLD_OUT_MS_MIN) return []
  const missed = Math.max(0, pace * (toMs - fromMs) - soldIn)
  return [{ fromMs: epochMs(fromMs), toMs: epochMs(toMs), missed }]
}

function clip(atMs: number, { fromMs, toMs }: OpenSpan): number {
  return Math.min(Math.max(atMs, fromMs), toMs)
}

function readyFrom(stock: Stock | null): number {
  return (stock?.lots ?? []).reduce((first, lot) => Math.min(first, lot.readyAtMs), Number.POSITIVE_INFINITY)
}

/** A box that is fetched was sold before; what was kept says nothing about who came in. */
function soldBetween(before: Stock | null, after: Stock | null): number {
  const sold = (after?.soldToday ?? 0) - (before?.soldToday ?? 0)
  const kept = (after?.kept ?? 0) - (before?.kept ?? 0)
  return sold === -kept ? 0 : sold
}
