import type { Chance } from './chance.ts'
import type { Draft } from './draft.ts'
import type { Load } from './load.ts'
import { changed, fits, newLoad } from './load.ts'
import type { Shop } from './shop.ts'

/** Other loads to try, and the varieties of which units have been changed. */
export interface Move {
  readonly loads: readonly Load[]
  readonly varieties: readonly number[]
}

type Propose = (shop: Shop, draft: Draft, chance: Chance) => Move | null

/** What to try, and how often. */
const KINDS: readonly (readonly [Propose, number])[] = [
  [shiftUnits, 100],
  [swapUnits, 30],
  [addUnits, 10],
  [dropUnits, 3],
  [exchangeVariety, 8],
  [retime, 12],
  [retimeFrom, 2],
  [newOwnLoad, 12],
  [split, 6],
  [merge, 3],
  [swapOrder, 1],
]
/** There is no shop with so many loads a day; it keeps tables small. */
const LOADS_MAX = 200
const WHOLE = KINDS.reduce((sum, [, share]) => sum + share, 0)

export function propose(shop: Shop, draft: Draft, chance: Chance): Move | null {
  let at = chance.part() * WHOLE
  for (const [kind, share] of KINDS) {
    at -= share
    if (at < 0) return kind(shop, draft, chance)
  }
  return null
}

function pick<T>(list: readonly T[], chance: Chance): T | undefined {
  return list[chance.index(list.length)]
}

function few(chance: Chance, most: number): number {
  const drawn = chance.part()
  return Math.max(1, Math.min(most, drawn < 0.65 ? 1 : drawn < 0.85 ? 2 : 1 + chance.index(most)))
}

/** The loads with some replaced by others, in place; empty ones fall out. */
function withLoads(loads: readonly Load[], replaced: readonly (readonly [Load, Load])[]): Load[] {
  const next: Load[] = []
  for (const load of loads) {
    let now = load
    for (const [old, other] of replaced) if (old === load) now = other
    if (now.pieces > 0) next.push(now)
  }
  return next
}

/** A load nearby in the order more often than one far away. */
function other(loads: readonly Load[], from: number, chance: Chance): number {
  if (loads.length < 2) return -1
  const far = 1 + Math.floor(chance.part() ** 2 * (loads.length - 1))
  const to = chance.part() < 0.5 ? from - far : from + far
  return to >= 0 && to < loads.length
    ? to
    : from + from - to >= 0 && from + from - to < loads.length
      ? from + from - to
      : -1
}

function shiftUnits(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const from = chance.index(loads.length)
  const to = other(loads, from, chance)
  const [source, target] = [loads[from], loads[to]]
  if (source === undefined || target === undefined) return null
  const variety = pick(source.varieties, chance) ?? 0
  const units = few(chance, source.units[variety] as number)
  const more = changed(shop, target, [[variety, units]])
  if (more === null) return null
  const less = changed(shop, source, [[variety, -units]])
  if (less === null) return null
  return {
    loads: withLoads(loads, [
      [source, less],
      [target, more],
    ]),
    varieties: [variety],
  }
}

function swapUnits(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const from = chance.index(loads.length)
  const to = other(loads, from, chance)
  const [source, target] = [loads[from], loads[to]]
  if (source === undefined || target === undefined) return null
  const there = pick(source.varieties, chance) ?? 0
  const back = pick(target.varieties, chance) ?? 0
  if (there === back) return null
  const units = few(chance, Math.min(source.units[there] as number, target.units[back] as number))
  const more = changed(shop, target, [
    [there, units],
    [back, -units],
  ])
  const less = changed(shop, source, [
    [there, -units],
    [back, units],
  ])
  if (more === null || less === null) return null
  return {
    loads: withLoads(loads, [
      [source, less],
      [target, more],
    ]),
    varieties: [there, back],
  }
}

function addUnits(shop: Shop, { loads, doughLeft }: Draft, chance: Chance): Move | null {
  const load = pick(loads, chance)
  const variety = chance.index(shop.values.length)
  const left = doughLeft[shop.doughOf[variety] as number] as number
  if (load === undefined || left < 1) return null
  const more = changed(shop, load, [[variety, few(chance, Math.min(left, 6))]])
  return more === null ? null : { loads: withLoads(loads, [[load, more]]), varieties: [variety] }
}

function dropUnits(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const load = pick(loads, chance)
  if (load === undefined) return null
  const variety = pick(load.varieties, chance) ?? 0
  const less = changed(shop, load, [[variety, -few(chance, load.units[variety] as number)]])
  return less === null ? null : { loads: withLoads(loads, [[load, less]]), varieties: [variety] }
}

function exchangeVariety(shop: Shop, { loads, doughLeft }: Draft, chance: Chance): Move | null {
  const load = pick(loads, chance)
  if (load === undefined) return null
  const from = pick(load.varieties, chance) ?? 0
  const to = chance.index(shop.values.length)
  const units = few(chance, load.units[from] as number)
  if (from === to) return null
  const dough = shop.doughOf[to] as number
  if (dough !== shop.doughOf[from] && (doughLeft[dough] as number) < units) return null
  const next = changed(shop, load, [
    [from, -units],
    [to, units],
  ])
  return next === null ? null : { loads: withLoads(loads, [[load, next]]), varieties: [from, to] }
}

/** The load as wanted at another time, at its place in the order. */
function placed(loads: readonly Load[], load: Load): Load[] {
  const next = loads.slice()
  let at = 0
  while (at < next.length && (next[at] as Load).wanted <= load.wanted) at++
  next.splice(at, 0, load)
  return next
}

function drift(chance: Chance): number {
  const size = chance.part() ** 3 * 60
  return chance.part() < 0.5 ? -size : size
}

function retime(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const load = pick(loads, chance)
  if (load === undefined) return null
  const next = newLoad(shop, load.units, Math.max(shop.line.earliestIn, load.wanted + drift(chance)))
  return {
    loads: placed(
      loads.filter((one) => one !== load),
      next,
    ),
    varieties: load.varieties,
  }
}

/** A row of loads, all earlier or all later. */
function retimeFrom(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const from = chance.index(loads.length)
  const to = from + 1 + chance.index(Math.min(8, loads.length - from))
  const by = drift(chance) / 2
  const next = loads.map((load, index) =>
    index < from || index >= to
      ? load
      : newLoad(shop, load.units, Math.max(shop.line.earliestIn, load.wanted + by), load),
  )
  next.sort((a, b) => a.wanted - b.wanted)
  return { loads: next, varieties: [] }
}

/** Some units of a variety into a load of their own, from a load or from the dough. */
function newOwnLoad(shop: Shop, { loads, doughLeft }: Draft, chance: Chance): Move | null {
  if (loads.length >= LOADS_MAX) return null
  const { line } = shop
  const variety = chance.index(shop.values.length)
  const wanted =
    line.earliestIn + chance.part() * Math.max(0, line.emptyMin - (shop.bakeMin[variety] as number) - line.earliestIn)
  const holders = loads.filter(({ units }) => (units[variety] as number) > 0)
  const isFresh = holders.length === 0 || chance.part() < 0.4
  const units = new Int16Array(shop.values.length)
  if (isFresh) {
    const left = doughLeft[shop.doughOf[variety] as number] as number
    if (left < 1) return null
    units[variety] = few(chance, Math.min(left, 6))
    const own = newLoad(shop, units, wanted)
    return fits(shop, own) ? { loads: placed(loads, own), varieties: [variety] } : null
  }
  const source = pick(holders, chance) as Load
  units[variety] = few(chance, source.units[variety] as number)
  const own = newLoad(shop, units, wanted)
  const less = changed(shop, source, [[variety, -(units[variety] as number)]])
  return less === null || !fits(shop, own)
    ? null
    : { loads: placed(withLoads(loads, [[source, less]]), own), varieties: [variety] }
}

function split(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const load = pick(loads, chance)
  if (load === undefined || loads.length >= LOADS_MAX) return null
  const keeps = load.units.slice()
  const goes = new Int16Array(load.units.length)
  const isByVariety = chance.part() < 0.5
  for (const variety of load.varieties) {
    const has = load.units[variety] as number
    const part = isByVariety ? (chance.part() < 0.5 ? has : 0) : Math.floor(has / 2 + chance.part())
    goes[variety] = part
    keeps[variety] = has - part
  }
  const kept = newLoad(shop, keeps, load.wanted, load)
  const gone = newLoad(shop, goes, Math.max(shop.line.earliestIn, load.wanted + drift(chance)))
  if (kept.pieces === 0 || gone.pieces === 0) return null
  return { loads: placed(withLoads(loads, [[load, kept]]), gone), varieties: load.varieties }
}

function merge(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const from = chance.index(loads.length)
  const to = other(loads, from, chance)
  const [source, target] = [loads[from], loads[to]]
  if (source === undefined || target === undefined) return null
  const both = changed(
    shop,
    target,
    source.varieties.map((variety) => [variety, source.units[variety] as number] as const),
  )
  if (both === null) return null
  return {
    loads: withLoads(
      loads.filter((one) => one !== source),
      [[target, both]],
    ),
    varieties: source.varieties,
  }
}

function swapOrder(shop: Shop, { loads }: Draft, chance: Chance): Move | null {
  const from = chance.index(loads.length - 1)
  const [first, second] = [loads[from], loads[from + 1]]
  if (first === undefined || second === undefined) return null
  const next = loads.slice()
  next[from] = newLoad(shop, second.units, first.wanted)
  next[from + 1] = newLoad(shop, first.units, second.wanted)
  return { loads: next, varieties: [] }
}
