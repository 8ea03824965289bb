import { EventHeap } from './event-heap.ts'

/** What a kitchen has and what waits in it, in plain values; instants in ms of any clock, spans in ms. */
export interface SimGiven {
  /** By station: when each of its hands is free. A station without hands never makes anything. */
  readonly hands: readonly (readonly number[])[]
  /** By shelf: when each of its places is free. */
  readonly shelves: readonly (readonly number[])[]
  /** Between two things at one place of the oven. */
  readonly handlingMs: number
  /** What stands first goes first wherever both could begin. */
  readonly jobs: readonly SimJob[]
  /** As soon as the ends of these jobs are known the rest is left undone; left out: all is done. */
  readonly watched?: ReadonlySet<number>
}

export interface SimJob {
  readonly readyMs: number
  /** One after the other. */
  readonly steps: readonly SimStep[]
}

export interface SimStep {
  /** Index of the station; `OVEN`: in the oven. */
  readonly station: number
  readonly takesMs: number
  /** Places of one shelf. */
  readonly slots: number
  /** It cannot begin before, -Infinity: whenever its job is that far. */
  readonly fromMs: number
}
export const OVEN = -1

export interface Simulated {
  /** By job and step: when it begins and ends; Infinity: never, as there is nowhere to make it. */
  readonly startMs: readonly Float64Array[]
  /** By job: when its last step ends; when it is ready where it has no step. */
  readonly endMs: Float64Array
}

/**
 * Lets a kitchen run: whenever a hand or places of the oven come free, the first job in order that can use them begins.
 * Nothing is broken off, and a job that does not fit into the oven yet lets others go first.
 *
 * With one station, times drawn from an exponential distribution and jobs in order of arrival this is the queue M/M/c,
 * with one time for all M/D/c; tests/reference/queueing.test.ts holds it to their values.
 * @returns times in the order of `given.jobs`
 */
export function simulate(given: SimGiven): Simulated {
  return new Run(given).result()
}

/** Events of one instant are taken in together before anything begins: who comes free and who waits is then known. */
class Run {
  readonly #given: SimGiven
  readonly #events = new EventHeap()
  readonly #idle: Int32Array
  readonly #free: Int32Array
  /** By station, and the oven last: jobs that wait, first ones first. */
  readonly #waiting: readonly EventHeap[]
  readonly #step: Int32Array
  readonly #startMs: Float64Array[]
  readonly #endMs: Float64Array
  #left: number

  constructor(given: SimGiven) {
    const { hands, shelves, jobs } = given
    this.#given = given
    this.#left = given.watched?.size ?? Number.POSITIVE_INFINITY
    this.#idle = new Int32Array(hands.length)
    this.#free = new Int32Array(shelves.length)
    this.#waiting = Array.from({ length: hands.length + 1 }, () => new EventHeap())
    this.#step = new Int32Array(jobs.length)
    this.#startMs = jobs.map(({ steps }) => new Float64Array(steps.length).fill(Number.POSITIVE_INFINITY))
    this.#endMs = new Float64Array(jobs.length).fill(Number.POSITIVE_INFINITY)
    hands.forEach((some, station) => {
      for (const freeMs of some) this.#events.push(freeMs, codeOf('hand', station))
    })
    shelves.forEach((some, shelf) => {
      for (const freeMs of some) this.#events.push(freeMs, codeOf('place', shelf))
    })
    jobs.forEach(({ readyMs }, job) => {
      this.#arrive(job, readyMs)
    })
  }

  result(): Simulated {
    const touched = new Set<number>()
    while (this.#events.size > 0 && this.#left > 0) {
      const atMs = this.#events.firstAt
      while (this.#events.size > 0 && this.#events.firstAt === atMs) touched.add(this.#take(this.#events.pop()))
      for (const queue of touched) this.#begin(queue, atMs)
      touched.clear()
    }
    return { startMs: this.#startMs, endMs: this.#endMs }
  }

  /** @returns the queue at which something may begin now */
  #take(code: number): number {
    const { index, what } = partsOf(code)
    if (what === 'hand') {
      this.#idle[index] = (this.#idle[index] ?? 0) + 1
      return index
    }
    const oven = this.#given.hands.length
    if (what === 'place') {
      this.#free[index] = (this.#free[index] ?? 0) + 1
      return oven
    }
    const station = this.#given.jobs[index]?.steps[this.#step[index] ?? 0]?.station ?? OVEN
    const queue = station === OVEN ? oven : station
    this.#waiting[queue]?.push(index, index)
    return queue
  }

  #arrive(job: number, readyMs: number): void {
    const step = this.#given.jobs[job]?.steps[this.#step[job] ?? 0]
    if (step === undefined) {
      this.#endMs[job] = readyMs
      if (this.#given.watched?.has(job) === true) this.#left -= 1
    } else this.#events.push(Math.max(readyMs, step.fromMs), codeOf('job', job))
  }

  #begin(queue: number, atMs: number): void {
    const waiting = this.#waiting[queue]
    if (waiting === undefined) return
    if (queue === this.#given.hands.length) this.#fillOven(waiting, atMs)
    else
      while ((this.#idle[queue] ?? 0) > 0 && waiting.size > 0) {
        this.#idle[queue] = (this.#idle[queue] ?? 0) - 1
        const endMs = this.#start(waiting.pop(), atMs)
        this.#events.push(endMs, codeOf('hand', queue))
      }
  }

  #fillOven(waiting: EventHeap, atMs: number): void {
    const later: number[] = []
    while (waiting.size > 0 && this.#free.some((free) => free > 0)) {
      const job = waiting.pop()
      const slots = this.#given.jobs[job]?.steps[this.#step[job] ?? 0]?.slots ?? 1
      const shelf = this.#tightest(slots)
      if (shelf === -1) {
        later.push(job)
        continue
      }
      this.#free[shelf] = (this.#free[shelf] ?? 0) - slots
      const freeMs = this.#start(job, atMs) + this.#given.handlingMs
      for (let slot = 0; slot < slots; slot += 1) this.#events.push(freeMs, codeOf('place', shelf))
    }
    for (const job of later) waiting.push(job, job)
  }

  /** The shelf that has just room enough: what needs much room still finds some. */
  #tightest(slots: number): number {
    let best = -1
    for (let shelf = 0; shelf < this.#free.length; shelf += 1) {
      const free = this.#free[shelf] ?? 0
      if (free >= slots && (best === -1 || free < (this.#free[best] ?? 0))) best = shelf
    }
    return best
  }

  #start(job: number, atMs: number): number {
    const step = this.#step[job] ?? 0
    const starts = this.#startMs[job]
    if (starts !== undefined) starts[step] = atMs
    const endMs = atMs + (this.#given.jobs[job]?.steps[step]?.takesMs ?? 0)
    this.#step[job] = step + 1
    this.#arrive(job, endMs)
    return endMs
  }
}

/** What an event is of, in one number: the heap holds numbers only. */
const KINDS = ['job', 'hand', 'place'] as const
function codeOf(what: (typeof KINDS)[number], index: number): number {
  return index * KINDS.length + KINDS.indexOf(what)
}
function partsOf(code: number): { index: number; what: (typeof KINDS)[number] } {
  return { index: Math.floor(code / KINDS.length), what: KINDS[code % KINDS.length] ?? 'job' }
}
