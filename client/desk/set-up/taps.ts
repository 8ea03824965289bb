import { stationId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import type { LineAct, Shop, Station } from '../../../shared-core/shop/shop.ts'
import { LINE_ACTS } from '../../../shared-core/shop/stages.ts'
import { startingPoint } from '../../../shared-core/shop/starting-points.ts'
import { STATIONS } from './lists.ts'

/** Ways to share out the taps, the one with the fewest first. */
export const TAP_PRESETS = ['oven', 'kettle', 'all'] as const
export type Preset = (typeof TAP_PRESETS)[number]

const ACTS: {
  readonly [preset in Preset]: { readonly kettle: readonly LineAct[]; readonly oven: readonly LineAct[] }
} = {
  oven: { kettle: [], oven: ['load', 'flip', 'out'] },
  kettle: { kettle: ['dip', 'lift'], oven: ['load', 'flip', 'out'] },
  all: { kettle: ['pull', 'dip', 'lift', 'board'], oven: ['load', 'flip', 'out'] },
}

/** The preset that the stations in use come to; `own` where they are none of them. */
export function presetOf(shop: Shop): Preset | 'own' {
  const used = inUse(shop.stations)
  const tapped = new Set(used.flatMap(({ acts }) => acts))
  const isOurs = used.every(({ id }) => id === KETTLE || id === OVEN)
  return TAP_PRESETS.find((preset) => isOurs && isSame(tapped, actsOf(preset))) ?? 'own'
}

/** The two stations of the starting point with the acts of a preset; others are retired. */
export function withPreset(shop: Shop, preset: Preset): SetUpChange[] {
  const start = startingPoint(shop.oven.kind, shop.profile).stations
  const named = [KETTLE, OVEN].flatMap((id): Station[] => {
    const station = shop.stations.get(id) ?? start.get(id)
    if (station === undefined) return []
    const acts = id === KETTLE ? ACTS[preset].kettle : ACTS[preset].oven
    return [{ ...station, acts, retired: acts.length === 0 }]
  })
  const others = inUse(shop.stations).filter(({ id }) => id !== KETTLE && id !== OVEN)
  return [
    ...named.filter(({ id, retired }) => !retired || shop.stations.has(id)),
    ...others.map((station) => ({ ...station, retired: true })),
  ].map(STATIONS.change)
}

const KETTLE = stationId('kettle')
const OVEN = stationId('oven')

function actsOf(preset: Preset): ReadonlySet<LineAct> {
  return new Set([...ACTS[preset].kettle, ...ACTS[preset].oven])
}

function isSame(one: ReadonlySet<LineAct>, other: ReadonlySet<LineAct>): boolean {
  return LINE_ACTS.every((act) => one.has(act) === other.has(act))
}
