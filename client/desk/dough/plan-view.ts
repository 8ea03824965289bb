import type { MixAsked } from '../../../shared-core/day/dough-commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { DayPlan, DoughNeed, FormulaNeed } from '../../../shared-core/dough/day-plan.ts'
import type { Mix } from '../../../shared-core/dough/mix.ts'
import { doughOf, shapedOf } from '../../../shared-core/dough/scale.ts'
import type { DoughId, FormulaId } from '../../../shared-core/ids.ts'
import type { Formula } from '../../../shared-core/shop/formula.ts'
import { isSame } from '../../../shared-core/shop/set-up-diff.ts'
import type { Shop, Weight } from '../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { typedWeight } from './typed-weight.ts'

/** Flour by mix as somebody typed it instead of the plan's, by formula. */
export type FlourTyped = ReadonlyMap<FormulaId, readonly string[]>

/** What a change by hand comes to. */
export interface HandPlan {
  /** Null while a field cannot be read. */
  readonly mixes: readonly MixAsked[] | null
  readonly formulas: readonly HandFormula[]
}

export interface HandFormula {
  readonly need: FormulaNeed
  readonly formula: Formula
  readonly isByHand: boolean
  /** Null: cannot be read. */
  readonly mixes: readonly (HandMix | null)[]
  /** Pieces more (or, signed, fewer) than the plan's, by dough. */
  readonly changes: readonly { readonly doughId: DoughId; readonly pieces: number }[]
  readonly mixerMs: number
  readonly mixerChangeMs: number
}

export interface HandMix extends MixAsked {
  readonly doughMilligrams: number
  readonly limit: 'overMost' | 'underLeast' | null
}

/** The plan with what was changed by hand in it. */
export function handPlan(plan: DayPlan, shop: Shop, typed: FlourTyped, unit: Weight['unit']): HandPlan {
  const formulas = plan.formulas.flatMap((need): HandFormula[] => {
    const formula = shop.formulas.get(need.formulaId)
    if (formula === undefined) return []
    const planned = plan.mixes.filter(({ formulaId }) => formulaId === formula.id)
    const texts = typed.get(formula.id)
    const doughs = plan.doughs.filter((dough) => dough.formulaId === formula.id && dough.pieces > 0)
    const mixes =
      texts === undefined
        ? planned.map((mix) => ({ ...mix, limit: limitOf(need, mix.flourMilligrams) }))
        : texts.map((text) => handMix({ text, need, formula, doughs, unit }))
    const changes = doughs
      .map(({ doughId }) => ({ doughId, pieces: givenBy(mixes, doughId) - givenBy(planned, doughId) }))
      .filter(({ pieces }) => pieces !== 0)
    const mixerMs = mixes.length * formula.mixMs
    const mixerChangeMs = mixerMs - planned.length * formula.mixMs
    return [{ need, formula, isByHand: texts !== undefined, mixes, changes, mixerMs, mixerChangeMs }]
  })
  const all = formulas.flatMap(({ mixes }) => mixes)
  const read = all.filter((mix) => mix !== null)
  return { formulas, mixes: read.length < all.length ? null : read.map(asked) }
}

interface HandParts {
  readonly text: string
  readonly need: FormulaNeed
  readonly formula: Formula
  readonly doughs: readonly DoughNeed[]
  readonly unit: Weight['unit']
}

/** What so much flour gives: the plan's doughs in its proportions, what is left in pieces of which most are needed. */
function handMix({ text, need, formula, doughs, unit }: HandParts): HandMix | null {
  const weight = typedWeight(text, { bag: null, unit })
  if (weight === null || weight === 'none' || weight.thousandths === 0) return null
  const flourMilligrams = milligrams(weight)
  const doughMilligrams = doughOf(formula, flourMilligrams)
  const shaped = shapedOf(formula, doughMilligrams)
  const needed = doughs.reduce((sum, { pieces, pieceMilligrams }) => sum + pieces * pieceMilligrams, 0)
  const shares = doughs.map((dough) => {
    const pieces = needed === 0 ? 0 : Math.floor((dough.pieces * shaped) / needed)
    return { doughId: dough.doughId, pieceMilligrams: dough.pieceMilligrams, pieces }
  })
  const most = [...doughs].sort(
    (one, other) => other.pieces * other.pieceMilligrams - one.pieces * one.pieceMilligrams,
  )[0]
  const left = shaped - shares.reduce((sum, { pieces, pieceMilligrams }) => sum + pieces * pieceMilligrams, 0)
  const gives = shares.map(({ doughId, pieces, pieceMilligrams }) => {
    const isMost = doughId === most?.doughId && pieceMilligrams > 0
    return { doughId, pieces: pieces + (isMost ? Math.floor(left / pieceMilligrams) : 0) }
  })
  return {
    formulaId: formula.id,
    flourMilligrams,
    startAtMs: null,
    gives: gives.filter(({ pieces }) => pieces > 0),
    doughMilligrams,
    limit: limitOf(need, flourMilligrams),
  }
}

function limitOf({ mixer }: FormulaNeed, flour: number): HandMix['limit'] {
  if (mixer === null) return null
  return flour > mixer.mostMilligrams ? 'overMost' : flour < mixer.leastMilligrams ? 'underLeast' : null
}

function givenBy(mixes: readonly (Pick<MixAsked, 'gives'> | null)[], dough: DoughId): number {
  return mixes.reduce((sum, mix) => {
    return sum + (mix?.gives.find(({ doughId }) => doughId === dough)?.pieces ?? 0)
  }, 0)
}

function asked({ formulaId, flourMilligrams, startAtMs, gives }: MixAsked): MixAsked {
  return { formulaId, flourMilligrams, startAtMs, gives }
}

/** Flour evenly in another number of mixes, as it would be typed. @example evenly(50_000_000, 2, 'kg') // ['25', '25'] */
export function evenly(flourMilligrams: number, mixes: number, unit: 'kg' | 'lb'): readonly string[] {
  const perUnit = milligrams({ thousandths: 1_000, unit })
  return Array.from({ length: mixes }, () => flourText(flourMilligrams / mixes, perUnit))
}

export function flourText(flourMilligrams: number, perUnit: number): string {
  return String(Number((flourMilligrams / perUnit).toFixed(3)))
}

export interface Standing {
  /** `earlierFormula`: the same pieces, by a formula that has changed since. */
  readonly kind: 'none' | 'same' | 'earlierFormula' | 'differs'
  /** Mixes of that day that somebody has begun; they stay as they are. */
  readonly begun: number
}

/** How what stands for that day compares with what would be planned. */
export function standing(
  { mixes }: Pick<State, 'mixes'>,
  shop: Pick<Shop, 'formulas'>,
  date: string,
  asked: readonly MixAsked[],
): Standing {
  const ofDay = [...mixes.values()].filter((mix) => mix.bakeDate === date)
  const planned = ofDay.filter(({ stage }) => stage === 'planned')
  const begun = ofDay.length - planned.length
  if (planned.length === 0) return { kind: asked.length === 0 && begun > 0 ? 'same' : 'none', begun }
  const [one, other] = [planned.map(signOf).sort(), asked.map(signOfAsked).sort()]
  const isAlike = one.length === other.length && one.every((sign, index) => sign === other[index])
  if (!isAlike) return { kind: 'differs', begun }
  return { kind: planned.some((mix) => isOfEarlierFormula(shop, mix)) ? 'earlierFormula' : 'same', begun }
}

/** Whether a mix was planned by its formula as it was before a change; what is only its place in a list is no change. */
export function isOfEarlierFormula({ formulas }: Pick<Shop, 'formulas'>, { formula }: Pick<Mix, 'formula'>): boolean {
  const now = formulas.get(formula.id)
  return now !== undefined && !isSame({ ...now, order: 0 }, { ...formula, order: 0 })
}

/** What a mix gives says how much it is; its weights are rounded to the scale. */
function signOf({ formula, gives }: Mix): string {
  return signOfAsked({ formulaId: formula.id, gives })
}

function signOfAsked({ formulaId, gives }: Pick<MixAsked, 'formulaId' | 'gives'>): string {
  const given = gives.map(({ doughId, pieces }) => `${doughId} ${pieces}`).sort()
  return `${formulaId}: ${given.join(', ')}`
}
