/**
 * The bake-off: which loads go through kettle, boards and oven when. Times are minutes since local midnight, fractions
 * allowed; quantities are pieces; money is in one unit, whichever. The scored core is exactly what the planning problem
 * states; everything marked optional goes beyond it, and with none of it given the core holds as it stands.
 */
export interface BakeOff {
  /** Every line of every load is a positive multiple of it. */
  readonly unit: number
  readonly kettle: KettleGiven
  readonly boards: BoardsGiven
  readonly oven: OvenGiven
  readonly coolMin: number
  /** Varieties of one load may differ by so much in their bake. */
  readonly bakeToleranceMin: number
  readonly open: number
  readonly close: number
  readonly doughs: Readonly<Record<string, DoughGiven>>
  readonly varieties: readonly VarietyGiven[]
  readonly orders: readonly OrderGiven[]
  /** A re-plan: nothing starts before it, and customers before it do not count. */
  readonly now?: number
  /** Already in the kettle or the oven: they hold shelf, boards and kettle, and count as supply. Not in the plan. */
  readonly running?: readonly BakeLoad[]
  /** Optional: who is there. Left out, hands are no limit. */
  readonly hands?: HandsGiven
  /** Optional: loads that people have set. They are in the plan as they stand, even where they break a limit. */
  readonly pinned?: readonly BakeLoad[]
  /** Optional: what people do not want. */
  readonly forbidden?: readonly Forbidden[]
  /** Optional: when kettle water, boards and covers are changed or washed: contact before it is gone. */
  readonly washes?: readonly number[]
  /** Optional: allergens that are in the water and on the boards at `now` (or at the start). */
  readonly contactNow?: readonly string[]
  /** Optional: what one piece boiled after a contact that its variety should avoid costs in the plan's eyes. */
  readonly contactCost?: number
}

export interface KettleGiven {
  /** Pieces of a dip. */
  readonly pieces: number
  readonly cycleMin: number
  /** Optional: no dip before it. */
  readonly readyMin?: number
  /** Optional: the water comes back to the boil for so long after each dip before the next one. */
  readonly recoveryMin?: number
}

export interface BoardsGiven {
  readonly count: number
  readonly pieces: number
  readonly maxWaitMin: number
  /** Optional: a board freed at the flip is wet enough for the next pieces only after it. */
  readonly rewetMin?: number
}

export interface OvenGiven {
  readonly readyMin: number
  readonly mustBeEmptyMin: number
  readonly firstSideMin: number
  /** Between one load's out and the next one's in, on one shelf. */
  readonly handlingMin: number
  readonly shelves: readonly ShelfGiven[]
  /** Optional: a rotating oven. Its shelves come to the one door in their order, each turn taking so long. */
  readonly turnMin?: number
}

export interface ShelfGiven {
  readonly name: string
  readonly pieces: number
  /** Optional: out by then, where the shelf changes over before the oven does. */
  readonly emptyByMin?: number
  /** Optional: no load before it: a shelf out of use for a while. */
  readonly readyMin?: number
}

export interface DoughGiven {
  /** Chilled pieces on hand. */
  readonly pieces: number
  /** Optional: not into the kettle before it. */
  readonly notBeforeMin?: number
  /** Optional: what a piece that is not baked is still worth tomorrow. */
  readonly carryValue?: number
}

export interface VarietyGiven {
  readonly name: string
  readonly dough: string
  readonly bakeMin: number
  /** Pieces for sale already, since `now` (since `open` where there is none). */
  readonly onShelf: number
  readonly price: number
  readonly cost: number
  readonly salvage: number
  readonly lostSale: number
  /** Cost of a piece for each hour between being ready and being sold. */
  readonly stalePerHour: number
  readonly demand: DemandGiven
  /** Optional: its own cooling before walk-ins can have it; hot ones sell at once. */
  readonly coolMin?: number
  /** Optional: wanted on show. */
  readonly show?: ShowGiven
  /** Optional: allergens that it leaves in the water and on the boards. */
  readonly brings?: readonly string[]
  /** Optional: allergens that it should not meet there. */
  readonly avoids?: readonly string[]
}

export interface DemandGiven {
  readonly mean: number
  /** k of the negative binomial: variance = mean + mean²/k. */
  readonly dispersion: number
  /** Part of the day's demand that has come by a minute; linear between the points. */
  readonly profile: readonly (readonly [number, number])[]
}

export interface ShowGiven {
  readonly atOpen: number
  /** From the opening until `untilMin` there should be so many. */
  readonly least: number
  readonly untilMin: number
}

export interface OrderGiven {
  readonly due: number
  readonly lines: readonly BakeLine[]
  /** Optional: to pack and to drive before it is due. */
  readonly leadMin?: number
  /** Optional: cooling before it can be sliced or bagged, where that is longer than before it is sold. */
  readonly coolMin?: number
}

/** One oven hand or more, and one door. Loading ends at `in`; the flip begins at `flip`, taking out at `out`. */
export interface HandsGiven {
  readonly loadMin: number
  readonly flipMin: number
  readonly outMin: number
  /** People from a minute on, in order. With none there nothing is done; one alone boils or stands at the oven, not both. */
  readonly people: readonly (readonly [number, number])[]
}

/** No load whose `in` lies in from–to: on that shelf, with that variety; both left out means none at all. */
export interface Forbidden {
  readonly shelf?: string
  readonly variety?: string
  readonly fromMin: number
  readonly toMin: number
}

export type BakeLine = readonly [variety: string, pieces: number]

/** One filling of one shelf. */
export interface BakeLoad {
  readonly shelf: string
  readonly kettleStart: number
  readonly in: number
  readonly flip: number
  readonly out: number
  readonly lines: readonly BakeLine[]
}

/** In the order of their kettle starts. */
export interface BakePlan {
  readonly loads: readonly BakeLoad[]
}
