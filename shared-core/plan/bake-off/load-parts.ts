import type { BakeLine, BakeOff, OrderGiven, VarietyGiven } from './bake-off.ts'

export function piecesIn(lines: readonly BakeLine[]): number {
  return lines.reduce((sum, [, pieces]) => sum + pieces, 0)
}

/** Kettle-fulls of a load. */
export function dipsOf({ kettle }: BakeOff, lines: readonly BakeLine[]): number {
  return Math.ceil(piecesIn(lines) / kettle.pieces - 1e-9)
}

/** Boards under a load: each line begins one of its own. */
export function boardsOf({ boards }: BakeOff, lines: readonly BakeLine[]): number {
  return lines.reduce((sum, [, pieces]) => sum + Math.ceil(pieces / boards.pieces - 1e-9), 0)
}

/** A load bakes as long as its slowest variety. */
export function bakeMinOf(given: BakeOff, lines: readonly BakeLine[]): number {
  return Math.max(0, ...lines.map(([name]) => varietyOf(given, name)?.bakeMin ?? 0))
}

export function doughOf(given: BakeOff, name: string): string {
  return varietyOf(given, name)?.dough ?? ''
}

export function varietyOf({ varieties }: BakeOff, name: string): VarietyGiven | undefined {
  return varieties.find((variety) => variety.name === name)
}

/** When an order takes its pieces: packing, driving and the cooling that slicing asks for come before it is due. */
export function dueOf({ coolMin }: BakeOff, { due, leadMin = 0, coolMin: own = 0 }: OrderGiven): number {
  return due - leadMin - Math.max(0, own - coolMin)
}

/** Minutes from the oven to the counter. */
export function coolMinOf({ coolMin }: BakeOff, variety: VarietyGiven): number {
  return variety.coolMin ?? coolMin
}
