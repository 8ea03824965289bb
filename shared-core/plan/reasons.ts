import { partBy } from '../demand/exposure.ts'
import { varietyId } from '../ids.ts'
import type { PlanWhy } from '../live/plan.ts'
import type { BakeOff, VarietyGiven } from './bake-off/bake-off.ts'
import { coolMinOf, dipsOf, varietyOf } from './bake-off/load-parts.ts'
import type { PlanAsked } from './plan-asked.ts'
import { instantOf } from './plan-asked.ts'
import { quantileNear } from './supply-of.ts'
import type { Named } from './told-plan.ts'

const STEP_MIN = 5
/** A piece that is ready so long before it is missed goes in now because there is no room later. */
const ROOM_MIN = 75
/** Walk-ins come after that: what is ready by then is for the opening. */
const AT_OPENING_MIN = 5

interface Arrival {
  readonly id: string
  readonly readyMin: number
  readonly pieces: number
}

/** Why each line is in its load: what would happen without it, all else as planned, with as many customers as are likely. */
export class Reasons {
  readonly #asked: PlanAsked
  readonly #given: BakeOff
  /** By variety, soonest first. */
  readonly #arrivals = new Map<string, Arrival[]>()
  readonly #asks = new Map<string, readonly number[]>()

  constructor(asked: PlanAsked, given: BakeOff, named: readonly Named[]) {
    this.#asked = asked
    this.#given = given
    const running = (given.running ?? []).filter((load) => named.every((one) => one.load !== load))
    for (const { id, load } of [...running.map((load) => ({ id: '', load })), ...named]) {
      for (const [name, pieces] of load.lines) {
        const variety = varietyOf(given, name)
        if (variety === undefined) continue
        const readyMin = load.out + coolMinOf(given, variety)
        this.#arrivals.set(name, [...(this.#arrivals.get(name) ?? []), { id, readyMin, pieces }])
      }
    }
    for (const of of this.#arrivals.values()) of.sort((one, other) => one.readyMin - other.readyMin)
  }

  /** One for each line, in their order. */
  of(named: Named): readonly PlanWhy[] {
    return named.load.lines.map(([name, pieces]) => {
      const variety = varietyOf(this.#given, name)
      const id = varietyId(name)
      if (named.isPinned || variety === undefined) return { varietyId: id, kind: 'pinned' }
      return { varietyId: id, ...this.#why(named, variety, pieces) }
    })
  }

  #why({ id, load }: Named, variety: VarietyGiven, pieces: number): Why {
    const { given, asked } = { given: this.#given, asked: this.#asked }
    const readyMin = load.out + coolMinOf(given, variety)
    const others = (this.#arrivals.get(variety.name) ?? []).filter((one) => one.id !== id)
    const order = this.#orderShort(variety, others, readyMin)
    if (order !== null)
      return { kind: 'order', dueAtMs: instantOf(asked, order.due), pieces: Math.min(pieces, order.short) }
    const isFirst = variety.onShelf === 0 && others.every((one) => one.readyMin > readyMin)
    if (isFirst && readyMin <= given.open + AT_OPENING_MIN) return { kind: 'opening' }
    const goneMin = this.#goneWithout(variety, others, readyMin)
    const isLater = others.some((one) => one.readyMin > readyMin)
    const isAfternoon = given.oven.mustBeEmptyMin < given.close && !isLater
    if (goneMin === null) {
      const { show } = variety
      if (show !== undefined && readyMin <= show.untilMin) return { kind: 'show', least: show.least }
      return isAfternoon ? { kind: 'afternoon', untilMs: instantOf(asked, given.close) } : { kind: 'fresh' }
    }
    if (isAfternoon && goneMin > given.oven.mustBeEmptyMin)
      return { kind: 'afternoon', untilMs: instantOf(asked, given.close) }
    if (goneMin - readyMin > ROOM_MIN) return { kind: 'room' }
    const takes = coolMinOf(given, variety) + (load.out - load.in) + dipsOf(given, load.lines) * given.kettle.cycleMin
    const kettleByMin = goneMin - takes
    const isInTime = kettleByMin >= load.kettleStart
    return {
      kind: 'runsOut',
      atMs: instantOf(asked, goneMin),
      kettleByMs: isInTime ? instantOf(asked, kettleByMin) : null,
    }
  }

  /** The first order for which the pieces are short without the line, and how many it lacks. */
  #orderShort(
    variety: VarietyGiven,
    others: readonly Arrival[],
    readyMin: number,
  ): { due: number; short: number } | null {
    let ordered = 0
    for (const { due, lines } of [...this.#given.orders].sort((one, other) => one.due - other.due)) {
      const pieces = lines.reduce((sum, [name, some]) => (name === variety.name ? sum + some : sum), 0)
      ordered += pieces
      if (pieces === 0 || due < readyMin) continue
      const there = others.reduce((sum, one) => (one.readyMin <= due ? sum + one.pieces : sum), variety.onShelf)
      if (there < ordered) return { due, short: ordered - there }
    }
    return null
  }

  /**
   * When the variety is probably gone without the line: the first time after it would be ready, or since when, where it
   * already is by then. Who finds none goes without: later pieces are not for them. Null: it lasts to the close.
   */
  #goneWithout({ onShelf, demand, name }: VarietyGiven, others: readonly Arrival[], readyMin: number): number | null {
    const { open, close, now } = this.#given
    const from = Math.max(open, now ?? open)
    const asked = this.#askedBy(name, demand, from)
    let [stock, arrived, step] = [onShelf, 0, 0]
    let goneMin: number | null = null
    for (let minute = from; minute < close; minute += STEP_MIN) {
      for (let next = others[arrived]; next !== undefined && next.readyMin <= minute; next = others[arrived]) {
        stock += next.pieces
        arrived += 1
      }
      stock = Math.max(0, stock - this.#dueAt(name, minute))
      const want = (asked[step + 1] ?? 0) - (asked[step] ?? 0)
      step += 1
      const isGone = stock < want - 0.5 || stock === 0
      goneMin = isGone ? (goneMin ?? minute) : null
      if (goneMin !== null && minute + STEP_MIN >= readyMin) return goneMin
      stock = Math.max(0, stock - want)
    }
    return null
  }

  /** Pieces that are likely asked for by each step from a minute on, the first of them none: the same for all its lines. */
  #askedBy(name: string, { mean, dispersion, profile }: VarietyGiven['demand'], from: number): readonly number[] {
    const known = this.#asks.get(name)
    if (known !== undefined) return known
    const came = partBy(profile, from)
    const steps = Math.max(0, Math.ceil((this.#given.close - from) / STEP_MIN)) + 1
    const asks = Array.from({ length: steps }, (_, n) =>
      quantileNear(mean * Math.max(0, partBy(profile, from + n * STEP_MIN) - came), dispersion, 0),
    )
    this.#asks.set(name, asks)
    return asks
  }

  #dueAt(name: string, minute: number): number {
    return this.#given.orders
      .filter(({ due }) => due > minute - STEP_MIN && due <= minute)
      .flatMap(({ lines }) => lines)
      .reduce((sum, [of, pieces]) => (of === name ? sum + pieces : sum), 0)
  }
}

type Why = PlanWhy extends infer One ? (One extends PlanWhy ? Omit<One, 'varietyId'> : never) : never
