/**
 * A flow that grows by augmenting paths, found backwards from where it is wanted. What reaches one place is never less after
 * more was brought to another: paths end there and do not pass through it. A place to which once no path led has none for
 * good, as all that leads there is full and stays so; it is not looked at again.
 *
 * Source: Ford & Fulkerson, Maximal flow through a network, Canadian Journal of Mathematics 8 (1956).
 */
export class MaxFlow {
  /** By place, its last edge; by edge, the one before it at the same place. */
  readonly #last: Int32Array
  readonly #before: Int32Array
  readonly #to: Int32Array
  /** What an edge can still take; edge e and e ^ 1 are the two ways of one. */
  readonly #left: Int32Array
  #edges = 0
  /** By place, the search that saw it last; `CUT_OFF`: nothing leads there. */
  readonly #seen: Int32Array
  /** By place, the edge that leads on from it to the end. */
  readonly #onward: Int32Array
  readonly #stack: Int32Array
  #search = 0

  /** @param places numbered from 0; the flow comes out of place 0 */
  constructor(places: number, edgesMax: number) {
    this.#last = new Int32Array(places).fill(-1)
    this.#seen = new Int32Array(places)
    this.#onward = new Int32Array(places)
    this.#stack = new Int32Array(places)
    this.#before = new Int32Array(2 * edgesMax)
    this.#to = new Int32Array(2 * edgesMax)
    this.#left = new Int32Array(2 * edgesMax)
  }

  /** @returns its number */
  addEdge(from: number, to: number, most: number): number {
    this.#add(from, to, most)
    this.#add(to, from, 0)
    return this.#edges - 2
  }

  /** What goes along an edge. */
  along(edge: number): number {
    return this.#left[edge ^ 1] ?? 0
  }

  #add(from: number, to: number, most: number): void {
    const edge = this.#edges++
    this.#to[edge] = to
    this.#left[edge] = most
    this.#before[edge] = this.#last[from] ?? -1
    this.#last[from] = edge
  }

  /** Brings as much as can be, up to `most`, from place 0 to a place where it ends. @returns how much */
  bring(end: number, most: number): number {
    let brought = 0
    while (brought < most && this.#findPath(end)) {
      let some = most - brought
      for (let place = 0; place !== end; place = this.#to[this.#onward[place] as number] as number)
        some = Math.min(some, this.#left[this.#onward[place] as number] as number)
      for (let place = 0; place !== end; ) {
        const edge = this.#onward[place] as number
        this.#left[edge] = (this.#left[edge] as number) - some
        this.#left[edge ^ 1] = (this.#left[edge ^ 1] as number) + some
        place = this.#to[edge] as number
      }
      brought += some
    }
    return brought
  }

  /** Depth first; where it comes to nothing, all that it saw is cut off. */
  #findPath(end: number): boolean {
    this.#search += 1
    let size = 0
    this.#stack[size++] = end
    this.#seen[end] = this.#search
    while (size > 0) {
      const place = this.#stack[--size] as number
      for (let back = this.#last[place] as number; back !== -1; back = this.#before[back] as number) {
        const from = this.#to[back] as number
        const seen = this.#seen[from] as number
        if (seen === this.#search || seen === CUT_OFF || (this.#left[back ^ 1] as number) <= 0) continue
        this.#seen[from] = this.#search
        this.#onward[from] = back ^ 1
        if (from === 0) return true
        this.#stack[size++] = from
      }
    }
    this.#cutOff()
    return false
  }

  #cutOff(): void {
    for (let place = 0; place < this.#seen.length; place += 1)
      if (this.#seen[place] === this.#search) this.#seen[place] = CUT_OFF
  }
}

const CUT_OFF = -1
