import type { MixAsked } from '../day/dough-commands.ts'
import type { State } from '../day/state.ts'
import type { DoughId } from '../ids.ts'
import { DEFAULT_MIXER } from '../shop/default-rules.ts'
import type { DoughRoom, Formula } from '../shop/formula.ts'
import type { Dough, Shop } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import { durationMs, epochMs } from '../units.ts'
import { allergensOfFormula, namesOf } from './allergens.ts'
import type { NoonOf } from './dates.ts'
import { minuteOn, mixDateOf } from './dates.ts'
import type { Mix, MixStage } from './mix.ts'
import type { Before, MixTask, OrderRules } from './order.ts'

/** A mix to be put in order: a `Mix` of the state is one, one of a plan becomes one by `mixesToOrder`. */
export interface MixToOrder {
  readonly id: string
  readonly formula: Formula
  /** The day of boiling, YYYY-MM-DD. */
  readonly bakeDate: string
  readonly gives: readonly { readonly doughId: DoughId; readonly pieces: number }[]
}

/** One day of mixing: what `mixingOrder` takes. */
export interface MixingDay {
  /** YYYY-MM-DD, the day on which they are mixed. */
  readonly date: string
  readonly tasks: readonly MixTask[]
  readonly rules: OrderRules
}

const HOUR_MS = 3_600_000
const DAY_MS = 24 * HOUR_MS

/** Stages in which a mix that was begun still has the bench before it. */
const BEFORE_BENCH: readonly MixStage[] = ['mixing', 'rest', 'bench']

/**
 * Mixes as tasks for the order, by the day on which they are mixed (the day of boiling less the formula's days ahead).
 *
 * A mix may begin when the dough room does and its pre-ferments and soakers are ready; one that nobody has begun yet is
 * taken to be begun in time. It must be in the cooler by the room's hour. A dough that is chilled in bulk goes there after
 * its bulk ferment and is shaped on another day; what has no proof on its route goes there once it is shaped.
 * @param mixes those that nobody has begun; what stands in the state counts as being done before
 * @param nowMs nothing begins before; left out: from the beginning of the day
 * @returns by date; nothing while nobody has said how the dough room works
 */
export function mixTasks(
  state: Pick<State, 'mixes' | 'builds'>,
  shop: Shop,
  mixes: readonly MixToOrder[],
  noonOf: NoonOf,
  nowMs: EpochMs = epochMs(0),
): MixingDay[] {
  const { doughRoom: room } = shop
  if (room === null) return []
  const dates = [...new Set(mixes.map(({ formula, bakeDate }) => mixDateOf(formula, bakeDate)))].sort()
  return dates.map((date) => {
    const fromMs = epochMs(Math.max(nowMs, minuteOn(noonOf, date, room.fromMinute)))
    const dueAtMs = minuteOn(noonOf, date, room.coolerByMinute)
    const ofDay = mixes.filter(({ formula, bakeDate }) => mixDateOf(formula, bakeDate) === date)
    return {
      date,
      tasks: ofDay.map((mix) => ({
        ...stepsOf(shop, room, mix),
        id: mix.id,
        formulaId: mix.formula.id,
        allergens: namesOf(allergensOfFormula(shop, mix.formula)),
        strength: mix.formula.strength,
        earliestAtMs: readyFrom(state, mix, fromMs),
        dueAtMs,
      })),
      rules: rulesOf(state, shop, room, fromMs, minuteOn(noonOf, date, 0)),
    }
  })
}

/** The mixes of a plan, so that they can be put in order before anybody has taken the plan. Ids: date and place. */
export function mixesToOrder(shop: Shop, bakeDate: string, asked: readonly MixAsked[]): MixToOrder[] {
  return asked.flatMap(({ formulaId, gives }, place) => {
    const formula = shop.formulas.get(formulaId)
    return formula === undefined ? [] : [{ id: `${bakeDate}.${place}`, formula, bakeDate, gives }]
  })
}

type Steps = Pick<MixTask, 'mixMs' | 'waitMs' | 'benchMs' | 'proofMs' | 'trays'>

function stepsOf(shop: Shop, room: DoughRoom, { formula, gives }: Pick<MixToOrder, 'formula' | 'gives'>): Steps {
  const { mixMs, restMs, bulk } = formula
  const waitMs = durationMs(restMs + (bulk?.window.targetMs ?? 0))
  if (bulk !== null && bulk.chill !== null)
    return { mixMs, waitMs, benchMs: durationMs(0), proofMs: durationMs(0), trays: 0 }
  const doughs = gives.flatMap(({ doughId, pieces }) => {
    const dough = shop.doughs.get(doughId)
    return dough === undefined ? [] : [{ dough, pieces }]
  })
  const proofing = doughs.filter(({ dough }) => dough.route.includes('proof'))
  return {
    mixMs,
    waitMs,
    benchMs: durationMs(doughs.reduce((sum, { dough, pieces }) => sum + shapingMs(room, dough, pieces), 0)),
    proofMs: durationMs(
      Math.max(0, ...proofing.map(({ dough }) => windowOf(shop, 'proof', dough.id, null)?.targetMs ?? 0)),
    ),
    trays: proofing.reduce((sum, { dough, pieces }) => sum + Math.ceil(pieces / dough.trayPieces), 0),
  }
}

/** By divider where the dough is divided and there is one, else by all rollers at once. */
function shapingMs(
  { dividerPiecesPerHour, handPiecesPerHour, rollers }: DoughRoom,
  dough: Dough,
  pieces: number,
): number {
  const byHand = handPiecesPerHour * Math.max(1, rollers)
  const anHour = dough.shapedBy === 'divider' ? (dividerPiecesPerHour ?? byHand) : byHand
  return anHour > 0 ? (pieces * HOUR_MS) / anHour : 0
}

/** When the last of its pre-ferments and soakers may be used, of those that were made; each by its ripest. */
function readyFrom({ builds }: Pick<State, 'builds'>, { formula, bakeDate }: MixToOrder, fromMs: EpochMs): EpochMs {
  const made = [...builds.values()].filter(
    ({ dropped, forDate }) => !dropped && (forDate === null || forDate === bakeDate),
  )
  const readyMs = formula.preparations.flatMap(({ preparationId }) => {
    const ripe = made.filter((build) => build.preparationId === preparationId).map(({ ready }) => ready.earliestAtMs)
    return ripe.length === 0 ? [] : [Math.min(...ripe)]
  })
  return epochMs(Math.max(fromMs, ...readyMs))
}

/** What was begun on that day comes before: its allergens, what it left in the bowl, and its turn at the bench. */
function rulesOf(
  { mixes }: Pick<State, 'mixes'>,
  shop: Shop,
  room: DoughRoom,
  fromMs: EpochMs,
  midnightMs: EpochMs,
): OrderRules {
  const begun = [...mixes.values()]
    .flatMap((mix) => (mix.mixedAtMs === null ? [] : [{ ...mix, mixedAtMs: mix.mixedAtMs }]))
    .filter(({ mixedAtMs }) => mixedAtMs >= midnightMs && mixedAtMs < midnightMs + DAY_MS)
    .sort((a, b) => a.mixedAtMs - b.mixedAtMs || (a.id < b.id ? -1 : 1))
  const mixing = begun.filter(({ stage }) => stage === 'mixing')
  return {
    washMs: (shop.mixer ?? DEFAULT_MIXER).washMs,
    mixerFromMs: epochMs(Math.max(fromMs, ...mixing.map(({ mixedAtMs, formula }) => mixedAtMs + formula.mixMs))),
    benchFromMs: benchFrom(shop, room, begun, fromMs),
    proofTrays: room.proofTrays,
    before: beforeOf(shop, begun),
  }
}

interface Begun extends Mix {
  readonly mixedAtMs: EpochMs
}

function benchFrom(shop: Shop, room: DoughRoom, begun: readonly Begun[], fromMs: EpochMs): EpochMs {
  let freeMs = fromMs
  for (const mix of begun) {
    if (!BEFORE_BENCH.includes(mix.stage) || mix.formula.bulk !== null) continue
    const { mixMs, waitMs, benchMs } = stepsOf(shop, room, mix)
    const readyMs = mix.stage === 'bench' ? mix.sinceMs : mix.mixedAtMs + mixMs + waitMs
    freeMs = epochMs(Math.max(freeMs, readyMs + benchMs))
  }
  return freeMs
}

function beforeOf(shop: Shop, begun: readonly Begun[]): Before | null {
  const last = begun[begun.length - 1]
  if (last === undefined) return null
  const allergens = (formula: Formula) => namesOf(allergensOfFormula(shop, formula))
  return {
    allergens: allergens(last.formula),
    strength: last.formula.strength,
    dayAllergens: [...new Set(begun.flatMap(({ formula }) => allergens(formula)))],
  }
}
