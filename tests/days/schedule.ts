/**
 * Virtual time: things happen at instants, in order, and the clock jumps from one to the next. What the server does
 * between two of them (its turn, its append) is let finish before the next begins, so that a run depends on its seed
 * only and never on the machine.
 */
export class Schedule {
  readonly #heap: Planned[] = []
  #nowMs: number
  #made = 0
  #owes = false
  readonly #work: Promise<unknown>[] = []

  constructor(nowMs: number) {
    this.#nowMs = nowMs
  }

  get nowMs(): number {
    return this.#nowMs
  }

  /** Plans something; at the same instant, what was planned first happens first. */
  in(afterMs: number, run: () => void): void {
    this.#made += 1
    this.#push({ atMs: this.#nowMs + Math.max(0, afterMs), order: this.#made, run })
  }

  /**
   * What happens now has begun something that goes on by promises: it is let finish before the next thing happens.
   * @param work what takes more than promises, such as copying a real file
   */
  owe(work?: Promise<unknown>): void {
    this.#owes = true
    if (work !== undefined) this.#work.push(work)
  }

  /** @param goesOn asked after each thing that happened */
  async runUntil(untilMs: number, goesOn: () => boolean): Promise<void> {
    for (let next = this.#heap[0]; next !== undefined && next.atMs <= untilMs; next = this.#heap[0]) {
      this.#pop()
      this.#nowMs = Math.max(this.#nowMs, next.atMs)
      next.run()
      if (this.#owes) await this.#settled()
      if (!goesOn()) return
    }
    this.#nowMs = untilMs
  }

  /** Lets every promise that can go on go on: a turn of the real event loop, in which no time passes in the day. */
  async #settled(): Promise<void> {
    this.#owes = false
    await Promise.all(this.#work.splice(0))
    await new Promise((resolve) => {
      setImmediate(resolve)
    })
  }

  #push(planned: Planned): void {
    const heap = this.#heap
    heap.push(planned)
    for (let at = heap.length - 1; at > 0; ) {
      const parent = (at - 1) >> 1
      if (!isBefore(heap[at], heap[parent])) return
      swap(heap, at, parent)
      at = parent
    }
  }

  #pop(): void {
    const heap = this.#heap
    const last = heap.pop()
    if (last === undefined || heap.length === 0) return
    heap[0] = last
    for (let at = 0; ; ) {
      const [left, right] = [2 * at + 1, 2 * at + 2]
      const least = isBefore(heap[right], heap[left]) ? right : left
      if (!isBefore(heap[least], heap[at])) return
      swap(heap, at, least)
      at = least
    }
  }
}

interface Planned {
  readonly atMs: number
  readonly order: number
  readonly run: () => void
}

function isBefore(one: Planned | undefined, other: Planned | undefined): boolean {
  if (one === undefined) return false
  if (other === undefined) return true
  return one.atMs < other.atMs || (one.atMs === other.atMs && one.order < other.order)
}

function swap(heap: Planned[], at: number, with_: number): void {
  const [one, other] = [heap[at], heap[with_]]
  if (one === undefined || other === undefined) return
  heap[at] = other
  heap[with_] = one
}
