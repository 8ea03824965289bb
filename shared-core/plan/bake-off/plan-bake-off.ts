import type { BakeOff, BakePlan } from './bake-off.ts'
import { Chance } from './chance.ts'
import { Draft } from './draft.ts'
import { evenSlots, filled } from './first-plan.ts'
import { demandByMinute, fluidLoss } from './fluid-loss.ts'
import { anneal } from './improve.ts'
import type { Shop } from './shop.ts'
import { shopOf } from './shop.ts'

const WORK = 900_000
/** Of a plan made again during the morning, for which nobody wants to wait. */
const WORK_AGAIN = 430_000
/** Of the work: what the first loads may take, and what looking at more than one size of loads may. */
const FIRST_SHARE = 0.55
const SIZES_SHARE = 0.165
/** Steps in which a variety's mean demand is given out to the first loads, and the work of one step for each load. */
const STEPS = 12
const STEPS_MIN = 3
const WORK_OF_BID = 25
const SLOTS_MIN = 20
/** A slot costs work: the pieces lost that it should make good. */
const PIECES_PER_SLOT = 0.2
/** Money that a step may lose when annealing begins, where there is so much work for each unit of the plan. */
const HOT = 0.05
const WORK_OF_UNIT = 8_000
const COOLING = 0.06
const SEED = 20

/** @param effort times the usual work, which is some 35 ms for a large shop and less for a plan made again */
export function planBakeOff(given: BakeOff, effort = 1): BakePlan {
  const shop = shopOf(given)
  const nothing = new Draft(shop)
  const limit = (given.now === undefined ? WORK : WORK_AGAIN) * effort
  shop.work.limit = limit
  const draft = firstDraft(shop, limit)
  const units = draft.loads.reduce((sum, { pieces }) => sum + pieces / given.unit, 1)
  const hot = HOT * Math.max(0.6, Math.min(3, (limit - shop.work.done) / units / WORK_OF_UNIT))
  anneal(shop, draft, new Chance(SEED), { hot, cold: hot * COOLING })
  return planOf(shop, draft.worth > nothing.worth ? draft : nothing)
}

/**
 * The best of fillings with loads of different sizes, as long as there is work to spend on them. The size with which the
 * line is likely to lose the fewest customers comes first, and of these the one with the fewest loads.
 */
function firstDraft(shop: Shop, workLimit: number): Draft {
  const { line, given, work } = shop
  const limit = workLimit * FIRST_SHARE
  const slotsMax = Math.max(SLOTS_MIN, limit / (WORK_OF_BID * STEPS * given.varieties.length))
  const gapMin = (line.emptyMin - line.earliestIn) / slotsMax
  const demand = demandByMinute(shop)
  const fillings = loadSizes(shop).flatMap((pieces) =>
    [...new Set([gapMin, 0])].map((gap) => {
      const slots = evenSlots(shop, pieces, gap)
      return { slots, lost: fluidLoss(demand, slots, given.coolMin) + slots.length * PIECES_PER_SLOT }
    }),
  )
  fillings.sort((a, b) => a.lost - b.lost)
  let best = new Draft(shop)
  let cost = 0
  for (const { slots } of fillings) {
    if (cost > 0 && work.done + cost > workLimit * SIZES_SHARE) break
    const before = work.done
    const steps = limit / (WORK_OF_BID * slots.length * given.varieties.length)
    const draft = filled(shop, slots, Math.max(STEPS_MIN, Math.min(STEPS, steps)))
    if (draft.worth > best.worth) best = draft
    cost = work.done - before
  }
  return best
}

/** Pieces of full dips, and of so few boards that two or three loads have them at once. */
function loadSizes({ line, given: { unit, kettle, boards } }: Shop): number[] {
  const most = Math.min(line.shelfPiecesMax, line.dipsMax * kettle.pieces, boards.count * boards.pieces)
  const sizes = [2, 3].map((loads) => Math.floor(boards.count / loads) * boards.pieces)
  for (let dips = 1; dips <= line.dipsMax; dips++) sizes.push(dips * kettle.pieces)
  return [...new Set(sizes.map((size) => Math.floor(Math.min(most, size) / unit) * unit))].filter((size) => size > 0)
}

function planOf({ given }: Shop, { loads }: Draft): BakePlan {
  return {
    loads: loads.map(({ kettleStart, into, out, shelf, units, varieties }) => ({
      shelf: given.oven.shelves[shelf]?.name ?? '',
      kettleStart,
      in: into,
      flip: into + given.oven.firstSideMin,
      out,
      lines: inDipOrder(given, varieties).map(
        (variety) => [given.varieties[variety]?.name ?? '', (units[variety] as number) * given.unit] as const,
      ),
    })),
  }
}

/** Those that should avoid something before those that may bring it. */
function inDipOrder(given: BakeOff, varieties: readonly number[]): number[] {
  const isCareful = (variety: number) => (given.varieties[variety]?.avoids ?? []).length > 0
  return [...varieties.filter(isCareful), ...varieties.filter((variety) => !isCareful(variety))]
}
