import type { LineLoad } from './line.ts'
import type { Shop } from './shop.ts'

/** A load of a draft. Its contents never change, its times do when a draft is taken. */
export interface Load extends LineLoad {
  /** Units of each variety of the shop. */
  readonly units: Int16Array
  /** Varieties that are in it. */
  readonly varieties: readonly number[]
  readonly leastBakeMin: number
  kettleStart: number
  into: number
  out: number
  shelf: number
}

/** @param times of the load that it was made from, if its times may well stay */
export function newLoad(shop: Shop, units: Int16Array, wanted: number, times?: Load): Load {
  const { unit } = shop.given
  const varieties: number[] = []
  let pieces = 0
  let boards = 0
  let bakeMin = 0
  let leastBakeMin = Number.POSITIVE_INFINITY
  let notBeforeMin = Number.NEGATIVE_INFINITY
  for (let variety = 0; variety < units.length; variety++) {
    const count = units[variety] as number
    if (count === 0) continue
    varieties.push(variety)
    pieces += count * unit
    boards += shop.line.boardsFor(count * unit)
    const bake = shop.bakeMin[variety] as number
    if (bake > bakeMin) bakeMin = bake
    if (bake < leastBakeMin) leastBakeMin = bake
    const from = shop.notBeforeMin[shop.doughOf[variety] as number] as number
    if (from > notBeforeMin) notBeforeMin = from
  }
  const dips = shop.line.dipsFor(pieces)
  const { kettleStart, into, out, shelf } = times ?? { kettleStart: 0, into: 0, out: Number.NaN, shelf: 0 }
  return {
    units,
    varieties,
    pieces,
    boards,
    dips,
    bakeMin,
    leastBakeMin,
    notBeforeMin,
    wanted,
    kettleStart,
    into,
    out,
    shelf,
  }
}

/** The load with some units more or less of some varieties; null where it would not be one load any more. */
export function changed(
  shop: Shop,
  load: Load,
  changes: readonly (readonly [variety: number, units: number])[],
): Load | null {
  const units = load.units.slice()
  for (const [variety, more] of changes) {
    const count = (units[variety] as number) + more
    if (count < 0) return null
    units[variety] = count
  }
  const next = newLoad(shop, units, load.wanted, load)
  return fits(shop, next) ? next : null
}

export function fits({ line, given }: Shop, { pieces, dips, boards, bakeMin, leastBakeMin }: Load): boolean {
  return (
    pieces <= line.shelfPiecesMax &&
    dips <= line.dipsMax &&
    boards <= line.boardsMax &&
    (pieces === 0 || bakeMin - leastBakeMin <= given.bakeToleranceMin + 1e-9)
  )
}
