import type { State } from '../day/state.ts'
import { taught } from '../ferment/teach.ts'
import { proofedBy } from '../ferment/until-of.ts'
import type { DoughId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import type { Teaching } from './mix.ts'

/**
 * What a float or poke test teaches of a dough's pace: how far its ripest pieces had proofed by then, in thousandths of
 * the target of their proof window. Those that proof speak first, else chilled ones of which the proof is known.
 * @returns null where no such pieces stand, or nothing says how long they should proof
 */
export function floatTeaches(
  state: State,
  shop: Shop,
  { doughId, atMs, passed }: { readonly doughId: DoughId; readonly atMs: EpochMs; readonly passed: boolean },
): Teaching | null {
  if (shop.doughRoom === null) return null
  const its = [...state.batches.values()].filter((batch) => batch.doughId === doughId)
  const proofing = its.filter(({ stage }) => stage === 'proof')
  const chilled = its.filter(({ stage, fermentedMs }) => stage === 'chill' && fermentedMs !== undefined)
  const shares = (proofing.length > 0 ? proofing : chilled).flatMap((batch) => {
    const asked = windowOf(shop, 'proof', doughId, batch.varietyId)?.targetMs ?? 0
    return asked === 0 ? [] : [Math.round((1_000 * proofedBy(state, batch, atMs)) / asked)]
  })
  if (shares.length === 0) return null
  return taught(state.teachings.get(doughId), { doughId, atMs, share: Math.max(...shares), passed })
}
