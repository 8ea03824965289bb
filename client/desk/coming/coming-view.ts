import type { State } from '../../../shared-core/day/state.ts'
import type { Wanted, WantedLine } from '../../../shared-core/dough/mix.ts'
import type { DoughId } from '../../../shared-core/ids.ts'
import type { ComingDay, ComingDough } from '../../../shared-core/plan/coming-day.ts'
import type { Dough, Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { typedPieces } from '../dough/wanted-view.ts'

/** What is typed over the advice, by dough. */
export type Yours = ReadonlyMap<DoughId, string>

/** Pieces of a dough that stand for the counter, whatever they become; null: nothing of it is wanted yet. */
export function standingPieces(wanted: Wanted | undefined, doughId: DoughId): number | null {
  const lines = wanted?.lines.filter((line) => line.doughId === doughId) ?? []
  const pieces = lines.reduce((sum, line) => sum + line.pieces, 0)
  return pieces === 0 && lines.every(({ advised }) => advised === undefined) ? null : pieces
}

/** Of the pieces that are ordered of a dough: what was typed for the day, besides the orders on the board. */
export function typedBesides(wanted: Wanted | undefined, doughId: DoughId): number {
  const lines = wanted?.lines.filter((line) => line.doughId === doughId) ?? []
  return lines.reduce((sum, { ordered }) => sum + ordered, 0)
}

/** What the field shows: what was typed, else what stands, else what is advised. */
export function yoursText(coming: ComingDough, wanted: Wanted | undefined, yours: Yours): string {
  return yours.get(coming.doughId) ?? String(standingPieces(wanted, coming.doughId) ?? advisedText(coming))
}

/** Nothing where nothing is known: no advice is not the advice to make none. */
function advisedText({ basis, counter }: ComingDough): string {
  return basis === 'nothing' ? '' : String(counter)
}

/** @returns null while it cannot be read */
export function yoursPieces(coming: ComingDough, wanted: Wanted | undefined, yours: Yours): number | null {
  return typedPieces(yoursText(coming, wanted, yours))
}

/**
 * What taking over would make of the day's list: a line a dough, with the advice beside it. Orders stay as they are; a
 * dough whose pieces stay what they were keeps its lines by variety.
 * @returns null while a field cannot be read
 */
export function linesToTake(day: ComingDay, wanted: Wanted | undefined, yours: Yours): readonly WantedLine[] | null {
  const advised = new Set(day.doughs.map(({ doughId }) => doughId))
  const others = (wanted?.lines ?? []).filter(({ doughId }) => !advised.has(doughId))
  const lines: WantedLine[] = []
  for (const dough of day.doughs) {
    const pieces = yoursPieces(dough, wanted, yours)
    if (pieces === null) return null
    const before = (wanted?.lines ?? []).filter(({ doughId }) => doughId === dough.doughId)
    const isSame = standingPieces(wanted, dough.doughId) === pieces
    const byVariety = before.filter(({ varietyId }) => varietyId !== null)
    if (isSame && byVariety.some((line) => line.pieces > 0)) lines.push(...before)
    else lines.push(...taken(dough, pieces, before))
  }
  return [...lines, ...others]
}

function taken({ doughId, counter, basis }: ComingDough, pieces: number, before: readonly WantedLine[]): WantedLine[] {
  const ordered = before.find(({ varietyId }) => varietyId === null)?.ordered ?? 0
  const byName = before.filter(({ varietyId, ordered: some }) => varietyId !== null && some > 0)
  const own = { doughId, varietyId: null, pieces, ordered, ...(basis === 'nothing' ? {} : { advised: counter }) }
  return [
    // Nothing advised and nothing typed: no line for it.
    ...(pieces + ordered + counter === 0 ? [] : [own]),
    ...byName.map((line) => ({ doughId, varietyId: line.varietyId, pieces: 0, ordered: line.ordered })),
  ]
}

/** Whether taking over changes what stands. The advice beside it counts only where pieces change. */
export function changesWanted(lines: readonly WantedLine[], wanted: Wanted | undefined): boolean {
  const told = (some: readonly WantedLine[]) =>
    some
      .filter(({ pieces, ordered }) => pieces + ordered > 0)
      .map(({ doughId, varietyId, pieces, ordered }) => `${doughId}/${varietyId} ${pieces} ${ordered}`)
      .sort()
      .join()
  return told(lines) !== told(wanted?.lines ?? [])
}

/** How many doughs have another number than the advised one. */
export function differing(day: ComingDay, wanted: Wanted | undefined, yours: Yours): number {
  return day.doughs.filter((dough) => isAdvised(dough) && yoursPieces(dough, wanted, yours) !== dough.counter).length
}

function isAdvised({ basis }: ComingDough): boolean {
  return basis !== 'nothing'
}

export function advisedTexts(day: ComingDay): Yours {
  return new Map(day.doughs.filter(isAdvised).map((dough) => [dough.doughId, advisedText(dough)]))
}

/** Doughs of whose formula mixes for the day stand already, planned or begun. */
export function decidedDoughs(
  { mixes }: Pick<State, 'mixes'>,
  { doughs }: Pick<Shop, 'doughs'>,
  date: string,
): ReadonlySet<DoughId> {
  const formulas = new Set([...mixes.values()].flatMap((mix) => (mix.bakeDate === date ? [mix.formula.id] : [])))
  const isDecided = ({ formulaId }: Dough) => formulaId !== null && formulas.has(formulaId)
  return new Set([...doughs.values()].filter(isDecided).map(({ id }) => id))
}

interface Decision {
  readonly atMs: EpochMs
  readonly doughIds: readonly DoughId[]
}

/** Doughs of the soonest hour by which something must still be decided. @returns null where there is none */
export function soonestDecision(day: ComingDay, decided: ReadonlySet<DoughId>): Decision | null {
  const open = day.doughs.filter(({ doughId }) => !decided.has(doughId))
  const hours = open.flatMap(({ decideAtMs }) => (decideAtMs === null ? [] : [decideAtMs]))
  if (hours.length === 0) return null
  const atMs = epochMs(Math.min(...hours))
  return { atMs, doughIds: open.filter((one) => one.decideAtMs === atMs).map(({ doughId }) => doughId) }
}
