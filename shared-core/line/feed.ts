import type { Batch, State } from '../day/state.ts'
import type { DoughId } from '../ids.ts'
import type { BatchStage, Shop } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { Need } from './dips.ts'
import { byWindow } from './route.ts'

/** Where the dough of a need stands: what is ready for the kettle, and what must first be pulled out of the cooler. */
export interface Fed {
  readonly need: Need
  /** Batches at the stage before the kettle that it uses. */
  readonly ready: readonly Batch[]
  /** Chilled batches of which trays must be pulled for it; empty when there is enough on the rack. */
  readonly chilled: readonly Batch[]
  readonly pullPieces: number
  readonly pullTrays: number
}

/**
 * Finds the dough for each need in turn: from the stage before the kettle, then from the cooler in whole trays; what a
 * tray holds more than was needed is there for the next need. Never more than the board knows to be in the cooler.
 */
export function feed(state: State, shop: Shop, needs: readonly Need[]): readonly Fed[] {
  const pool = [...state.batches.values()].sort(byWindow(state)).map((batch) => ({ batch, left: batch.pieces }))
  const spare = new Map<string, number>()
  return needs.map((need) => {
    const dough = must(shop.doughs, need.doughId)
    const before = stageBefore(shop, need.doughId)
    const mine = pool.filter(({ batch }) => isFor(batch, need))
    const ready = draw(mine, before, need.pieces)
    const key = `${need.doughId} ${need.varietyId ?? ''}`
    const spared = Math.min(spare.get(key) ?? 0, need.pieces - ready.pieces)
    const short = need.pieces - ready.pieces - spared
    const trays = Math.ceil(short / dough.trayPieces)
    const pulled = before === 'rack' ? draw(mine, 'chill', trays * dough.trayPieces) : { batches: [], pieces: 0 }
    spare.set(key, (spare.get(key) ?? 0) - spared + Math.max(0, pulled.pieces - short))
    return {
      need,
      ready: ready.batches,
      chilled: pulled.batches,
      pullPieces: pulled.pieces,
      pullTrays: Math.ceil(pulled.pieces / dough.trayPieces),
    }
  })
}

/** Where a dough waits for the kettle, or for the oven where it is not boiled. */
export function stageBefore(shop: Shop, doughId: DoughId): BatchStage | null {
  const { route } = must(shop.doughs, doughId)
  const at = route.findIndex((stage) => stage === 'kettle' || stage === 'boards' || stage === 'oven')
  return route[at - 1] ?? null
}

/** Plain dough serves any variety of it; where the mixer decided, only what was mixed so, or what nobody named. */
function isFor(batch: Batch, need: Need): boolean {
  return batch.doughId === need.doughId && (batch.varietyId === null || batch.varietyId === need.varietyId)
}

interface Pooled {
  readonly batch: Batch
  left: number
}

function draw(pool: readonly Pooled[], stage: BatchStage | null, pieces: number): { batches: Batch[]; pieces: number } {
  const batches: Batch[] = []
  let drawn = 0
  for (const pooled of pool) {
    const got = pooled.batch.stage === stage ? Math.min(pooled.left, pieces - drawn) : 0
    if (got <= 0) continue
    pooled.left -= got
    drawn += got
    batches.push(pooled.batch)
  }
  return { batches, pieces: drawn }
}
