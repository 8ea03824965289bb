import type { Item, Problem, Residue } from './order-problem.ts'
import { bitsIn, needsWash } from './order-problem.ts'

/**
 * The dough room after some mixes, each step begun as soon as it can.
 *
 * The mixer takes the mixes in their order, with a wash where one is needed. Each rests and ferments in bulk by itself.
 * The bench takes whatever is ready first (at once ready: the one mixed first): a dough with a bulk ferment is mixed early
 * and others pass it meanwhile. Shaping begins when there is room for all of its trays, which stand there until they go
 * into the cooler. A mix that is not shaped that day needs no bench.
 */
export interface Line {
  readonly mixerFreeMs: number
  readonly benchFreeMs: number
  readonly bowl: Residue | null
  /** Allergens of the day so far. */
  readonly mask: number
  readonly contacts: number
  readonly washes: number
  /** Of those that the bench has had. */
  readonly latenessMs: number
  /** Mixed and not yet at the bench, the sooner ready first. */
  readonly waiting: readonly Waiting[]
  /** Trays that proof after the bench is free, the sooner over first; empty where there is no limit. */
  readonly proofing: readonly Proofing[]
}

export interface Waiting {
  readonly item: Item
  readonly readyMs: number
}

export interface Proofing {
  readonly untilMs: number
  readonly trays: number
}

/** Told of each mix as it goes through mixer and bench. */
export interface Teller {
  readonly mixed: (item: Item, startMs: number, isWashed: boolean, contactMask: number) => void
  readonly shaped: (item: Item, benchMs: number, coolerMs: number) => void
}

export function lineBefore({ rules, bowl, dayMask }: Problem): Line {
  return {
    mixerFreeMs: rules.mixerFromMs,
    benchFreeMs: rules.benchFromMs,
    bowl,
    mask: dayMask,
    contacts: 0,
    washes: 0,
    latenessMs: 0,
    waiting: [],
    proofing: [],
  }
}

/** The next mix in the mixer. @param notBeforeMs a beginning that somebody chose, where it is later than it could be */
export function withMixed({ rules }: Problem, line: Line, item: Item, teller?: Teller, notBeforeMs = 0): Line {
  const { earliestAtMs, mixMs, waitMs, proofMs, dueAtMs } = item.task
  const isWashed = needsWash(line.bowl, item)
  const startMs = Math.max(line.mixerFreeMs + (isWashed ? rules.washMs : 0), earliestAtMs, notBeforeMs)
  const contactMask = line.mask & ~item.mask
  const readyMs = startMs + mixMs + waitMs
  teller?.mixed(item, startMs, isWashed, contactMask)
  if (!item.isShaped) teller?.shaped(item, readyMs, readyMs + proofMs)
  // Field by field, as a spread of them all takes several times as long and the searches do little else.
  return {
    mixerFreeMs: startMs + mixMs,
    benchFreeMs: line.benchFreeMs,
    proofing: line.proofing,
    bowl: item,
    mask: line.mask | item.mask,
    contacts: line.contacts + bitsIn(contactMask),
    washes: line.washes + (isWashed ? 1 : 0),
    latenessMs: line.latenessMs + (item.isShaped ? 0 : Math.max(0, readyMs + proofMs - dueAtMs)),
    waiting: item.isShaped ? withWaiting(line.waiting, { item, readyMs }) : line.waiting,
  }
}

/** The bench takes all that is ready by then: nothing that is mixed later may be ready sooner. */
export function withShaped({ rules }: Problem, line: Line, untilMs: number, teller?: Teller): Line {
  const count = line.waiting.findIndex(({ readyMs }) => readyMs > untilMs)
  const taken = count === -1 ? line.waiting : line.waiting.slice(0, count)
  if (taken.length === 0) return line
  let { benchFreeMs, latenessMs, proofing } = line
  for (const { item, readyMs } of taken) {
    const { benchMs, proofMs, trays, dueAtMs } = item.task
    const startMs = whenRoom(proofing, rules.proofTrays, trays, Math.max(benchFreeMs, readyMs))
    benchFreeMs = startMs + benchMs
    const coolerMs = benchFreeMs + proofMs
    latenessMs += Math.max(0, coolerMs - dueAtMs)
    teller?.shaped(item, startMs, coolerMs)
    if (rules.proofTrays !== null) proofing = withProofing(proofing, { untilMs: coolerMs, trays }, benchFreeMs)
  }
  return { ...line, benchFreeMs, latenessMs, proofing, waiting: line.waiting.slice(taken.length) }
}

/** All of an order, from mixer to cooler. */
export function lineAfter(
  problem: Problem,
  order: readonly Item[],
  teller?: Teller,
  notBefore?: Map<Item, number>,
): Line {
  return lineOn(problem, lineBefore(problem), order, teller, notBefore)
}

/** What is left of an order. */
export function lineOn(
  problem: Problem,
  from: Line,
  order: readonly Item[],
  teller?: Teller,
  notBefore?: Map<Item, number>,
): Line {
  let line = from
  for (const item of order) line = withMixed(problem, line, item, teller, notBefore?.get(item))
  return withShaped(problem, line, Number.POSITIVE_INFINITY, teller)
}

/** From a time on, when so many trays more have room; a mix that alone has more than there is room for waits for all. */
function whenRoom(proofing: readonly Proofing[], most: number | null, trays: number, fromMs: number): number {
  if (most === null) return fromMs
  let standing = 0
  for (const { untilMs, trays: some } of proofing) if (untilMs > fromMs) standing += some
  let atMs = fromMs
  for (const { untilMs, trays: some } of proofing) {
    if (standing === 0 || standing + trays <= most) break
    if (untilMs <= fromMs) continue
    standing -= some
    atMs = untilMs
  }
  return atMs
}

function withWaiting(waiting: readonly Waiting[], one: Waiting): Waiting[] {
  const place = waiting.findIndex(({ readyMs }) => readyMs > one.readyMs)
  return place === -1 ? [...waiting, one] : [...waiting.slice(0, place), one, ...waiting.slice(place)]
}

function withProofing(proofing: readonly Proofing[], one: Proofing, nowMs: number): Proofing[] {
  return [...proofing, one].filter(({ untilMs }) => untilMs > nowMs).sort((a, b) => a.untilMs - b.untilMs)
}
