import { dateAfter } from '../day/label.ts'
import type { Batch, Until } from '../day/state.ts'
import { untilOf } from '../ferment/until-of.ts'
import type { DoughId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'
import { boilingOn, minuteOn, mixDateOf } from './dates.ts'
import type { NeedCode } from './day-plan.ts'
import type { Mix, MixPieces } from './mix.ts'
import { leftOf } from './mix-left.ts'
import type { Looked } from './plan-days.ts'
import { shapedOf } from './scale.ts'

/** Pieces of one dough that are there, or will be, with when they may be boiled. `left` goes down as days take of them. */
export interface Supply {
  readonly doughId: DoughId
  /** The day that their mix is for: no earlier one takes of them. Null: nobody knows any more. */
  readonly madeFor: string | null
  readonly isShaped: boolean
  /** The date on which they were mixed, as far as it is known: from that night on they take room in the cooler. */
  readonly mixDate: string | null
  readonly fromMs: number
  readonly untilMs: number
  readonly id: string
  left: number
}

/** What is proofing, in the cooler, and still to be shaped of begun mixes. */
export function suppliesNow({ state, shop, noonOf }: Looked): Supply[] {
  const batches = [...state.batches.values()].filter(({ stage }) => stage === 'proof' || stage === 'chill')
  const shaped = batches.map((batch) => {
    const mix = batch.mixId === undefined ? undefined : state.mixes.get(batch.mixId)
    return shapedSupply(shop, batch, mix?.bakeDate ?? null, untilOf(state, batch))
  })
  const mixes = [...state.mixes.values()].filter(({ mixedAtMs, stage }) => mixedAtMs !== null && stage !== 'ended')
  return [
    ...shaped,
    ...mixes.flatMap((mix) => {
      const ofIt = batches.filter(({ mixId }) => mixId === mix.id)
      return mixSupplies(shop, mix, stillToShape(mix, ofIt), noonOf)
    }),
  ]
}

/**
 * A batch at proof will be chilled when it is ready and is then inside its chill window; one whose dough is not chilled is
 * boiled while its proof lasts. Without a window nothing is known against it.
 */
function shapedSupply(shop: Shop, batch: Batch, madeFor: string | null, until: Until | null): Supply {
  const { id, doughId, varietyId, pieces, stage } = batch
  const known = { id, doughId, left: pieces, madeFor, isShaped: true, mixDate: null }
  const chill = windowOf(shop, 'chill', doughId, varietyId)
  const isToBeChilled = stage === 'proof' && shop.doughs.get(doughId)?.route.includes('chill') === true
  if (!isToBeChilled)
    return { ...known, fromMs: until?.earliestAtMs ?? 0, untilMs: until?.latestAtMs ?? Number.POSITIVE_INFINITY }
  const chilledMs = until?.targetAtMs ?? batch.sinceMs
  return {
    ...known,
    fromMs: chilledMs + (chill?.earliestMs ?? 0),
    untilMs: chilledMs + (chill?.latestMs ?? Number.POSITIVE_INFINITY),
  }
}

/**
 * Pieces that a mix will still give: what its plan says less what stands shaped of it, and not more than its dough is left
 * for, in shares.
 */
function stillToShape(mix: Mix, shaped: readonly Batch[]): MixPieces[] {
  const open = mix.gives.map((one) => {
    const done = shaped.reduce((sum, { doughId, pieces }) => (doughId === one.doughId ? sum + pieces : sum), 0)
    return { ...one, pieces: Math.max(0, one.pieces - done) }
  })
  const weight = open.reduce((sum, { pieces, pieceMilligrams }) => sum + pieces * pieceMilligrams, 0)
  const left = shapedOf(mix.formula, leftOf(mix))
  if (weight <= left || weight === 0) return open
  return open.map((one) => ({ ...one, pieces: Math.floor((one.pieces * left) / weight) }))
}

/** Pieces of a mix that are not shaped yet: in the cooler by the end of its day of mixing, as far as anybody knows. */
export function mixSupplies(
  shop: Shop,
  mix: Pick<Mix, 'formula' | 'bakeDate'> & { readonly id: string },
  gives: readonly Pick<MixPieces, 'doughId' | 'pieces'>[],
  noonOf: NoonOf,
): Supply[] {
  const mixDate = mixDateOf(mix.formula, mix.bakeDate)
  return gives
    .filter(({ pieces }) => pieces > 0)
    .map(({ doughId, pieces }) => ({
      id: `${mix.id}/${doughId}`,
      doughId,
      left: pieces,
      madeFor: mix.bakeDate,
      isShaped: false,
      mixDate,
      ...keeps(shop, doughId, { mixDate, bakeDate: mix.bakeDate, noonOf }),
    }))
}

const EVENING_MINUTE = 1_080

function keeps(
  shop: Shop,
  doughId: DoughId,
  on: { readonly mixDate: string; readonly bakeDate: string; readonly noonOf: NoonOf },
): Pick<Supply, 'fromMs' | 'untilMs'> {
  const chill = windowOf(shop, 'chill', doughId, null)
  const boiling = boilingOn(shop, on.bakeDate, on.noonOf)
  if (shop.doughs.get(doughId)?.route.includes('chill') !== true || chill === null)
    return { fromMs: boiling.fromMs, untilMs: boiling.toMs }
  const chilledMs = minuteOn(on.noonOf, on.mixDate, shop.doughRoom?.coolerByMinute ?? EVENING_MINUTE)
  return { fromMs: chilledMs + chill.earliestMs, untilMs: chilledMs + chill.latestMs }
}

/** Until when pieces mixed for a date may be boiled; a dough without a formula is taken for mixed the day before. */
export function keptUntilOf(shop: Shop, doughId: DoughId, bakeDate: string, noonOf: NoonOf): number {
  const formulaId = shop.doughs.get(doughId)?.formulaId ?? null
  const formula = formulaId === null ? undefined : shop.formulas.get(formulaId)
  const mixDate = formula === undefined ? dateAfter(bakeDate, -1) : mixDateOf(formula, bakeDate)
  return keeps(shop, doughId, { mixDate, bakeDate, noonOf }).untilMs
}

/** A day of boiling as far as pieces are taken for it. */
export interface BoilingDay {
  readonly date: string
  readonly fromMs: EpochMs
  readonly toMs: EpochMs
}

export interface Taken {
  readonly supply: Supply
  readonly code: NeedCode
  readonly pieces: number
}

/**
 * Takes pieces for one day out of what is there: those made for it or for no day that is still to come, inside their window
 * while the shop boils that day; whose window closes first goes first.
 */
export function takeFor(supplies: readonly Supply[], doughId: DoughId, day: BoilingDay, pieces: number): Taken[] {
  let missing = pieces
  return fitting(supplies, doughId, day).flatMap((supply) => {
    const some = Math.min(missing, supply.left)
    if (some <= 0) return []
    supply.left -= some
    missing -= some
    const code = supply.madeFor === day.date ? 'begun' : supply.isShaped ? 'chilled' : 'earlier'
    return [{ supply, code, pieces: some }]
  })
}

/** What may be boiled on a day, the first to go over first. */
export function fitting(supplies: readonly Supply[], doughId: DoughId, day: BoilingDay): Supply[] {
  return supplies
    .filter((supply) => supply.doughId === doughId && supply.left > 0 && isForDay(supply, day))
    .sort((one, other) => compare(one.untilMs, other.untilMs) || (one.id < other.id ? -1 : 1))
}

function isForDay({ madeFor, fromMs, untilMs }: Supply, day: BoilingDay): boolean {
  if (madeFor === day.date) return true
  if (madeFor !== null && madeFor > day.date) return false
  return fromMs <= day.toMs && untilMs >= day.fromMs
}

function compare(one: number, other: number): number {
  return one < other ? -1 : one > other ? 1 : 0
}
