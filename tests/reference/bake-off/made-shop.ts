import type { BakeLoad, BakeOff, OrderGiven, VarietyGiven } from '../../../shared-core/plan/bake-off/bake-off.ts'

/** A shop of one variety and one shelf; a test names what it is about. Open 360–900, oven 270–660. */
export function madeShop(own: Partial<BakeOff> = {}): BakeOff {
  return {
    unit: 6,
    kettle: { pieces: 36, cycleMin: 1.5 },
    boards: { count: 24, pieces: 6, maxWaitMin: 8 },
    oven: {
      readyMin: 270,
      mustBeEmptyMin: 660,
      firstSideMin: 3.5,
      handlingMin: 1,
      shelves: [{ name: '1', pieces: 72 }],
    },
    coolMin: 15,
    bakeToleranceMin: 2,
    open: 360,
    close: 900,
    doughs: { plain: { pieces: 600 } },
    varieties: [madeVariety()],
    orders: [],
    ...own,
  }
}

/** Nobody walks in for it unless a mean is given; demand is even over the day. */
export function madeVariety(own: Partial<VarietyGiven> & { mean?: number; dispersion?: number } = {}): VarietyGiven {
  const { mean = 0, dispersion = 8, ...rest } = own
  return {
    name: 'Plain',
    dough: 'plain',
    bakeMin: 16,
    onShelf: 0,
    price: 2,
    cost: 0.5,
    salvage: 0.1,
    lostSale: 0.6,
    stalePerHour: 0.06,
    demand: {
      mean,
      dispersion,
      profile: [
        [360, 0],
        [900, 1],
      ],
    },
    ...rest,
  }
}

/** A load of Plain that is ready to sell at a minute: 15 to cool, 16 in the oven, in the kettle just before. */
export function loadReadyAt(readyAt: number, pieces: number, shelf = '1'): BakeLoad {
  const out = readyAt - 15
  const into = out - 16
  const kettleStart = into - Math.ceil(pieces / 36) * 1.5
  return { shelf, kettleStart, in: into, flip: into + 3.5, out, lines: [['Plain', pieces]] }
}

export function orderOf(due: number, pieces: number, variety = 'Plain'): OrderGiven {
  return { due, lines: [[variety, pieces]] }
}
