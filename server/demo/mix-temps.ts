import type { Mix, MixTemp } from '../../shared-core/dough/mix.ts'
import type { Degrees } from '../../shared-core/shop/formula.ts'
import { milliCelsiusOf } from '../../shared-core/shop/temperature.ts'
import type { Draw } from './draw.ts'
import { drawFor } from './draw.ts'
import type { RoomScene } from './mix-work.ts'

/**
 * What the demo's thermometer shows, in °F to the half degree. The mixer's true friction is a little more than the set-up
 * says, so that there is something to learn: the dough comes out of the sum of temperatures turned round
 * (`dough/water.ts`). Once in a while somebody reads it wrong.
 */
const TRUE_FRICTION_MORE = 3
const FRICTION_WITHIN = 1.2
const MISREAD_ONCE_IN = 25
const MISREAD_BY = 9

export function mixTemp(mix: Mix, temp: MixTemp, scene: RoomScene): Degrees {
  const draw = drawFor(scene.seed, `temp:${mix.id}:${temp}`)
  return { thousandths: Math.round(fahrenheitOf(mix, temp, scene, draw) * 2) * 500, unit: 'F' }
}

function fahrenheitOf(mix: Mix, temp: MixTemp, scene: RoomScene, draw: Draw): number {
  if (temp === 'flour') return 71 + draw.between(-1, 1.5)
  if (temp === 'tap') return 61.5 + draw.between(-1, 1)
  if (temp === 'preferment') return 73 + draw.between(-1.5, 1.5)
  if (temp === 'room') return roomFahrenheit(scene)
  if (temp === 'water') return inFahrenheit(mix.water?.milliCelsius ?? 18_000) + draw.between(-0.5, 0.5)
  return doughFahrenheit(mix, scene, draw)
}

function doughFahrenheit(mix: Mix, scene: RoomScene, draw: Draw): number {
  const { temps, formula } = mix
  const known = [temps.flour, temps.preferment, temps.water ?? temps.tap].flatMap((read) =>
    read === null ? [] : [inFahrenheit(milliCelsiusOf(read))],
  )
  const friction = (formula.friction.thousandths / 1_000) * (formula.friction.unit === 'C' ? 1.8 : 1)
  const parts = [...known, roomFahrenheit(scene), friction + TRUE_FRICTION_MORE]
  const dough = parts.reduce((sum, part) => sum + part, 0) / (parts.length - 1)
  const read = dough + draw.between(-FRICTION_WITHIN, FRICTION_WITHIN) / 3
  return draw.oneIn(MISREAD_ONCE_IN) ? read + MISREAD_BY : read
}

/** As somebody has read it last, else as the set-up assumes. */
function roomFahrenheit({ state, shop }: RoomScene): number {
  const read = state.readings.get('room')?.read ?? shop.doughRoom?.roomAt ?? { thousandths: 74_000, unit: 'F' }
  return inFahrenheit(milliCelsiusOf(read))
}

function inFahrenheit(milliCelsius: number): number {
  return (milliCelsius / 1_000) * 1.8 + 32
}
