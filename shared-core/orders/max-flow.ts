/**
 * A flow that grows by shortest augmenting paths, found backwards from where it is wanted. What reaches one place is never
 * less after more was brought to another: paths end there and do not pass through it.
 *
 * Source: Ford & Fulkerson, Maximal flow through a network, Canadian Journal of Mathematics 8 (1956); shortest paths: Edmonds
 * & Karp, Journal of the ACM 19 (1972).
 */
export class MaxFlow {
  readonly #edgesAt: number[][]
  readonly #to: number[] = []
  /** What an edge can still take; edge e and e ^ 1 are the two ways of one. */
  readonly #left: number[] = []

  /** @param places numbered from 0; the flow comes out of place 0 */
  constructor(places: number) {
    this.#edgesAt = Array.from({ length: places }, () => [])
  }

  addEdge(from: number, to: number, most: number): void {
    this.#edgesAt[from]?.push(this.#to.length)
    this.#to.push(to)
    this.#left.push(most)
    this.#edgesAt[to]?.push(this.#to.length)
    this.#to.push(from)
    this.#left.push(0)
  }

  /** Brings as much as can be, up to `most`, from place 0 to a place where it ends. @returns how much */
  bring(to: number, most: number): number {
    let brought = 0
    while (brought < most) {
      const path = this.#pathTo(to)
      if (path === null) break
      const some = path.reduce((least, edge) => Math.min(least, this.#left[edge] ?? 0), most - brought)
      for (const edge of path) {
        this.#left[edge] = (this.#left[edge] ?? 0) - some
        this.#left[edge ^ 1] = (this.#left[edge ^ 1] ?? 0) + some
      }
      brought += some
    }
    return brought
  }

  #pathTo(end: number): readonly number[] | null {
    /** By place, the edge that leads on from it to the end. */
    const onward = new Map<number, number>()
    const queue = [end]
    for (const place of queue) {
      for (const back of this.#edgesAt[place] ?? []) {
        const [edge, from] = [back ^ 1, this.#to[back] ?? 0]
        if ((this.#left[edge] ?? 0) <= 0 || from === end || onward.has(from)) continue
        onward.set(from, edge)
        if (from === 0) return this.#along(onward, end)
        queue.push(from)
      }
    }
    return null
  }

  #along(onward: ReadonlyMap<number, number>, end: number): readonly number[] {
    const path: number[] = []
    for (let place = 0; place !== end; ) {
      const edge = onward.get(place)
      if (edge === undefined) return []
      path.push(edge)
      place = this.#to[edge] ?? end
    }
    return path
  }
}
