import type { Stock } from '../day/state.ts'
import type { EpochMs } from '../units.ts'

/** While there was none, instants. */
export interface Gone {
  readonly fromMs: number
  readonly toMs: number
}

/**
 * When there was none of a variety for sale, followed from change to change of its stock, from the day's opening entry
 * on. Lots become ready by time without an event, so that a stretch between two changes is divided where the next lot is
 * ready. Unlike the sell-outs of the day's figures, the time before the first load counts too: who asked then went
 * without.
 */
export class TimesGone {
  #stock: Stock | null = null
  #atMs: number
  #gone: Gone[] = []

  /** Of a variety of which there is nothing until then. @param fromMs when the day was opened */
  constructor(fromMs: EpochMs) {
    this.#atMs = fromMs
  }

  get stock(): Stock | null {
    return this.#stock
  }

  /** @param isBack it was taken back that it had gone: what is there now was there all along */
  change(stock: Stock | null, atMs: EpochMs, isBack: boolean): void {
    this.goOn(atMs)
    this.#stock = stock
    if (!isBack) return
    const sinceMs = readyFrom(stock)
    this.#gone = this.#gone
      .map(({ fromMs, toMs }) => ({ fromMs, toMs: Math.min(toMs, Math.max(fromMs, sinceMs)) }))
      .filter(({ fromMs, toMs }) => fromMs < toMs)
  }

  goOn(toMs: EpochMs): void {
    if (toMs <= this.#atMs) return
    this.#gone = this.goneBy(toMs)
    this.#atMs = toMs
  }

  /** The stretches until an instant, in order, without overlap; asking does not go on to it. */
  goneBy(endMs: EpochMs): Gone[] {
    const readyMs = Math.min(readyFrom(this.#stock), endMs)
    if (readyMs <= this.#atMs) return this.#gone
    const last = this.#gone[this.#gone.length - 1]
    if (last?.toMs === this.#atMs) return [...this.#gone.slice(0, -1), { fromMs: last.fromMs, toMs: readyMs }]
    return [...this.#gone, { fromMs: this.#atMs, toMs: readyMs }]
  }
}

function readyFrom(stock: Stock | null): number {
  return (stock?.lots ?? []).reduce((first, lot) => Math.min(first, lot.readyAtMs), Number.POSITIVE_INFINITY)
}
