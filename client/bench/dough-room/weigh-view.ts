import type { Mix, MixTemp, SheetLine } from '../../../shared-core/dough/mix.ts'
import { waterFor } from '../../../shared-core/dough/mix-water.ts'
import { degreesText } from '../../../shared-core/shop/temperature.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { shownDegrees } from '../../parts/shop-degrees.ts'
import { weighedWeight } from '../../parts/shop-weight.ts'
import type { TempWords } from '../../words/bench-dough.ts'
import { reckonedText } from './readings-view.ts'
import type { RoomParts } from './room-parts.ts'

/** A mix sheet as it is read at the scale. */
export interface WeighView {
  readonly lines: readonly WeighLine[]
  /** The first that is not weighed out yet; null when all are. */
  readonly next: WeighLine | null
  readonly toWeigh: number
  readonly water: WaterText | null
}

export interface WeighLine {
  readonly key: string
  readonly name: string
  readonly weight: string
  /** Of the water: its ice, and how warm it is to be; read as large as the weight. */
  readonly figures: readonly string[]
  /** A mix-in, a water's temperature, a pre-ferment that is not ripe. */
  readonly details: readonly string[]
  readonly isMixIn: boolean
  readonly isDone: boolean
  readonly isTrouble: boolean
}

export interface WaterText {
  /** "54 °F" */
  readonly degrees: string
  /** Besides the ice. */
  readonly weight: string
  /** Null: none is needed. */
  readonly ice: string | null
  /** Warm it, or what no water can reach, in words; "" where there is nothing to add. */
  readonly note: string
  readonly isTrouble: boolean
}

export function weighView(mix: Mix, parts: RoomParts): WeighView {
  const water = waterText(mix, parts)
  const lines = mix.lines.map((line) => weighLine(line, water, parts))
  return {
    lines,
    next: lines.find(({ isDone }) => !isDone) ?? null,
    toWeigh: lines.filter(({ isDone }) => !isDone).length,
    water,
  }
}

/** The water line's weight and the ice of it, and how warm it should be. */
export function waterText(mix: Mix, { state, shop, words }: RoomParts): WaterText | null {
  const plan = mix.stage === 'planned' ? (waterFor(state, shop, mix) ?? mix.water) : mix.water
  if (plan === null) return null
  const { temperature, weight } = shop.profile
  const { temps } = words.room
  return {
    degrees: shownDegrees(plan.milliCelsius, temperature),
    weight: weighedWeight(plan.waterMilligrams, weight),
    ice: plan.iceMilligrams === 0 ? null : weighedWeight(plan.iceMilligrams, weight),
    note: temps.reach(plan.reach, shownDegrees(plan.doughMilliCelsius, temperature)),
    isTrouble: plan.reach === 'tooCold' || plan.reach === 'tooWarm',
  }
}

function weighLine(line: SheetLine, water: WaterText | null, parts: RoomParts): WeighLine {
  const { shop, words } = parts
  const say = words.room
  const ingredient = line.ingredientId === null ? undefined : shop.ingredients.get(line.ingredientId)
  const ofWater = ingredient?.kind === 'water' && line.at === 'start' ? water : null
  const build = line.preparationId === null ? null : buildText(line, parts)
  const weight = weighedWeight(line.milligrams, shop.profile.weight)
  return {
    key: line.key,
    name: ingredient?.name ?? preparationName(line, parts),
    weight: ofWater?.weight ?? weight,
    figures: ofWater === null ? [] : waterFigures(ofWater, say.temps),
    details: [
      ...(ofWater === null ? [] : [ofWater.note]),
      ...(line.at === 'mixIn' ? [say.mix.mixIn] : []),
      ...(build === null ? [] : [build]),
    ].filter((text) => text !== ''),
    isMixIn: line.at === 'mixIn',
    isDone: line.weighedAtMs !== null,
    isTrouble: ofWater?.isTrouble === true,
  }
}

function waterFigures({ ice, degrees }: WaterText, say: TempWords): readonly string[] {
  return [...(ice === null ? [] : [say.ice(ice)]), say.water(degrees)]
}

function preparationName({ preparationId, key }: SheetLine, { shop }: RoomParts): string {
  return preparationId === null ? key : (shop.preparations.get(preparationId)?.name ?? key)
}

/** What a preparation's line has to say of what was made: none, or not ripe yet; null while one is ripe. */
function buildText({ preparationId }: SheetLine, { state, nowMs, words }: RoomParts): string | null {
  const made = [...state.builds.values()].filter((one) => one.preparationId === preparationId && !one.dropped)
  if (made.length === 0) return words.room.mix.noneMade
  const ripeAtMs = epochMs(Math.min(...made.map(({ ready }) => ready.earliestAtMs)))
  return ripeAtMs <= nowMs ? null : words.room.mix.unripe(ripeAtMs)
}

export interface TempView {
  readonly temp: MixTemp
  readonly name: string
  readonly text: string
  readonly isRead: boolean
}

/** Temperatures that the water is reckoned from; a pre-ferment's only where the formula has one. */
export function tempViews(mix: Mix, parts: RoomParts, which: readonly MixTemp[]): readonly TempView[] {
  const { shop, words } = parts
  const { temps } = words.room
  const hasPreferment = mix.formula.preparations.some(
    ({ preparationId }) => shop.preparations.get(preparationId)?.kind === 'preferment',
  )
  return which
    .filter((temp) => temp !== 'preferment' || hasPreferment)
    .map((temp) => {
      const read = mix.temps[temp]
      const text = read === null ? (reckonedText(temp, parts) ?? temps.notRead) : degreesText(read)
      return { temp, name: temps.names[temp], text, isRead: read !== null }
    })
}
