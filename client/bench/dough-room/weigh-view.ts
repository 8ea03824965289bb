import type { Mix, MixTemp, SheetLine } from '../../../shared-core/dough/mix.ts'
import { waterFor } from '../../../shared-core/dough/mix-water.ts'
import { degreesText } from '../../../shared-core/shop/temperature.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { shownDegrees } from '../../parts/shop-degrees.ts'
import { weighedWeight } from '../../parts/shop-weight.ts'
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
  /** A mix-in, a water's temperature, a pre-ferment that is not ripe. */
  readonly details: readonly string[]
  readonly isMixIn: boolean
  readonly isDone: boolean
  readonly isTrouble: boolean
}

export interface WaterText {
  /** "54 °F" */
  readonly degrees: string
  /** "5.2 kg and 1.1 kg ice" */
  readonly amounts: string
  /** What no water can reach, in words; "" when this reaches it. */
  readonly trouble: string
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
  const ice = plan.iceMilligrams === 0 ? null : weighedWeight(plan.iceMilligrams, weight)
  const { temps } = words.room
  return {
    degrees: shownDegrees(plan.milliCelsius, temperature),
    amounts: temps.amounts(weighedWeight(plan.waterMilligrams, weight), ice),
    trouble: temps.reach(plan.reach, shownDegrees(plan.doughMilliCelsius, temperature)),
  }
}

function weighLine(line: SheetLine, water: WaterText | null, parts: RoomParts): WeighLine {
  const { shop, words } = parts
  const say = words.room
  const ingredient = line.ingredientId === null ? undefined : shop.ingredients.get(line.ingredientId)
  const isWater = ingredient?.kind === 'water' && line.at === 'start'
  const build = line.preparationId === null ? null : buildText(line, parts)
  const weight = weighedWeight(line.milligrams, shop.profile.weight)
  return {
    key: line.key,
    name: ingredient?.name ?? preparationName(line, parts),
    weight: isWater && water !== null ? water.amounts : weight,
    details: [
      ...(isWater && water !== null ? [say.temps.water(water.degrees), water.trouble] : []),
      ...(line.at === 'mixIn' ? [say.mix.mixIn] : []),
      ...(build === null ? [] : [build]),
    ].filter((text) => text !== ''),
    isMixIn: line.at === 'mixIn',
    isDone: line.weighedAtMs !== null,
    isTrouble: isWater && water !== null && water.trouble !== '',
  }
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
      const text = read === null ? temps.notRead : degreesText(read)
      return { temp, name: temps.names[temp], text, isRead: read !== null }
    })
}
