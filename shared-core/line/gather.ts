import type { Case } from '../day/decision.ts'
import { happen, raise } from '../day/decision.ts'
import type { Presumed, Take } from '../day/events.ts'
import type { Batch } from '../day/state.ts'
import { untilOf } from '../ferment/until-of.ts'
import type { BatchId, DoughId, VarietyId } from '../ids.ts'
import { batchId } from '../ids.ts'
import type { BatchStage } from '../shop/shop.ts'
import { BATCH_STAGES } from '../shop/stages.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { actsBetween, byWindow, isBefore, outOfTime } from './route.ts'

/** Pieces that an act says it has in hand. `varietyId` null: still plain dough. */
export interface Want {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
}

export interface Gathered {
  /** For each want, in order. */
  readonly takes: readonly (readonly Take[])[]
  readonly presumed: readonly Presumed[]
  /** Pieces of each want that the board knew nothing of. */
  readonly found: readonly number[]
  /** When the last of the batches taken came to where it stood. */
  readonly sinceMs: readonly EpochMs[]
  /** Which windows an act at an instant breaks: early or late by the tap, not by when the tap arrived. */
  readonly over: (atMs: EpochMs) => readonly ('too-early' | 'too-late')[]
}

/**
 * Finds the pieces that an act speaks of, among those that stand before `to` on the line. What an act presumes follows:
 * pieces taken from further back must have been pulled, dipped and lifted on the way.
 *
 * Order: nearest stage first; there, pieces already of the variety before plain dough; the oldest window first. When
 * plain dough runs short, pieces topped as another variety of the same dough are taken: what is in the baker's hand is
 * right and the earlier tap was not. What is missing even then is found (see `bookFound`).
 */
export function gather(oneCase: Case, wants: readonly Want[], to: BatchStage): Gathered {
  const bench = new Bench(oneCase, to)
  const takes = wants.map((): Take[] => [])
  const short = wants.map((want) => want.pieces)
  for (const rule of [isSame, isPlain, isSameDough]) {
    for (const stage of NEAREST_FIRST) {
      wants.forEach((want, index) => {
        const got = bench.take(stage, (batch) => rule(batch, want, bench), short[index] ?? 0)
        takes[index]?.push(...got)
        short[index] = (short[index] ?? 0) - got.reduce((sum, one) => sum + one.pieces, 0)
      })
    }
  }
  return { takes: takes.map(merged), found: short, ...bench.told(takes, wants) }
}

const NEAREST_FIRST = [...BATCH_STAGES].reverse()

type Rule = (batch: Batch, want: Want, bench: Bench) => boolean
const isSame: Rule = (batch, want) => batch.doughId === want.doughId && batch.varietyId === want.varietyId
const isPlain: Rule = (batch, want) => batch.doughId === want.doughId && batch.varietyId === null
const isSameDough: Rule = (batch, want, bench) =>
  batch.doughId === want.doughId && want.varietyId !== null && bench.isToppedOnTheLine(batch)

/** The batches before a stage and how many pieces of each are still to be had. */
class Bench {
  readonly #case: Case
  readonly #to: BatchStage
  readonly #batches: readonly Batch[]
  readonly #left: Map<BatchId, number>

  constructor(oneCase: Case, to: BatchStage) {
    const { state, command } = oneCase
    const boarding = command.type === 'board'
    this.#case = oneCase
    this.#to = to
    // Boarding says what the plain pieces on the boards become, so these stand before it too.
    this.#batches = [...state.batches.values()]
      .filter((batch) => isBefore(batch.stage, to) || (boarding && batch.stage === to && batch.varietyId === null))
      .sort(byWindow(state))
    this.#left = new Map(this.#batches.map((batch) => [batch.id, batch.pieces]))
  }

  isToppedOnTheLine(batch: Batch): boolean {
    return batch.varietyId !== null && this.#case.shop.varieties.get(batch.varietyId)?.decidedAt === 'line'
  }

  take(stage: BatchStage, fits: (batch: Batch) => boolean, pieces: number): readonly Take[] {
    const takes: Take[] = []
    let short = pieces
    for (const batch of this.#batches) {
      const left = this.#left.get(batch.id) ?? 0
      if (short === 0) break
      if (left === 0 || batch.stage !== stage || !fits(batch)) continue
      const got = Math.min(left, short)
      takes.push({ batchId: batch.id, pieces: got })
      this.#left.set(batch.id, left - got)
      short -= got
    }
    return takes
  }

  /** @param takes for each want, in order */
  told(takes: readonly (readonly Take[])[], wants: readonly Want[]): Pick<Gathered, 'presumed' | 'sinceMs' | 'over'> {
    const taken = takes.flatMap((its, index) =>
      its.map(({ batchId: id, pieces }) => ({ batch: must(this.#case.state.batches, id), pieces, want: wants[index] })),
    )
    const presumed = taken.flatMap(({ batch, pieces, want }) => this.#presumed(batch, pieces, want))
    const over = (atMs: EpochMs) =>
      [...new Set(taken.flatMap(({ batch }) => outOfTime(untilOf(this.#case.state, batch), atMs)))].sort()
    return { presumed: summed(presumed), sinceMs: taken.map(({ batch }) => batch.sinceMs), over }
  }

  #presumed(batch: Batch, pieces: number, want: Want | undefined): readonly Presumed[] {
    const dough = must(this.#case.shop.doughs, batch.doughId)
    const acts: Presumed['act'][] = [...actsBetween(dough, batch.stage, this.#to)]
    const becomesVariety = want !== undefined && want.varietyId !== batch.varietyId
    if (this.#to === 'oven' && becomesVariety) acts.push('board')
    return acts.map((act) => ({ act, doughId: batch.doughId, pieces }))
  }
}

/**
 * Books the pieces that nobody knew of as found on the rack, so that they can be taken from there: the account shows
 * them as unexplained, and dry hands are asked.
 */
export function bookFound(
  oneCase: Case,
  wants: readonly Want[],
  gathered: Gathered,
  atMs: EpochMs,
): readonly (readonly Take[])[] {
  return wants.map(({ doughId, varietyId }, index) => {
    const takes = gathered.takes[index] ?? []
    const pieces = gathered.found[index] ?? 0
    if (pieces === 0) return takes
    const id = batchId(oneCase.newId())
    const found = {
      id,
      doughId,
      varietyId,
      pieces,
      stage: 'rack',
      loadId: null,
      sinceMs: atMs,
      until: null,
      presumed: true,
    } as const
    happen(oneCase, atMs, { type: 'piecesFound', batch: found })
    raise(oneCase, atMs, { kind: 'found', doughId, pieces })
    return [...takes, { batchId: id, pieces }]
  })
}

/** Raises a question for each presumed act that the shop means to tap; where nobody taps it, presuming is the plan. */
export function raisePresumed(oneCase: Case, presumed: readonly Presumed[], atMs: EpochMs): void {
  for (const one of presumed) {
    if (oneCase.tapped.has(one.act)) raise(oneCase, atMs, { kind: 'presumed', ...one })
  }
}

function merged(takes: readonly Take[]): readonly Take[] {
  const pieces = new Map<BatchId, number>()
  for (const take of takes) pieces.set(take.batchId, (pieces.get(take.batchId) ?? 0) + take.pieces)
  return [...pieces].map(([id, sum]) => ({ batchId: id, pieces: sum }))
}

function summed(all: readonly Presumed[]): readonly Presumed[] {
  const sums = new Map<string, Presumed>()
  for (const one of all) {
    const key = `${one.act} ${one.doughId}`
    sums.set(key, { ...one, pieces: one.pieces + (sums.get(key)?.pieces ?? 0) })
  }
  return [...sums.values()]
}
