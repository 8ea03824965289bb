import type { Chance } from './chance.ts'
import type { Draft } from './draft.ts'
import { propose } from './moves.ts'
import type { Shop } from './shop.ts'

/** Simulated annealing on a draft until the work has been done: from `hot` money a step down to `cold`. */
export function anneal(shop: Shop, draft: Draft, chance: Chance, { hot, cold }: { hot: number; cold: number }): void {
  const { work } = shop
  const begun = work.done
  while (work.done < work.limit) {
    work.done += 5
    const move = propose(shop, draft, chance)
    if (move === null) continue
    const gain = draft.gainOf(move.loads, move.varieties)
    const warmth = hot * (cold / hot) ** ((work.done - begun) / (work.limit - begun))
    if (gain > 1e-9 || gain > warmth * Math.log(chance.part() + 1e-12)) draft.take()
  }
}
