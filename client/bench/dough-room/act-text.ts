import type { RoomAct } from '../../../shared-core/dough/room-acts.ts'
import { mixName } from './mix-name.ts'
import type { RoomParts } from './room-parts.ts'

/** What to do next there, verb first, without its time. */
export function actText(act: RoomAct, parts: RoomParts): string {
  const { state, shop, words } = parts
  const { acts } = words.room
  const mix = act.mixId === null ? undefined : state.mixes.get(act.mixId)
  const ofMix = mix === undefined ? '' : mixName(mix, parts)
  const preparation = act.preparationId === null ? '' : (shop.preparations.get(act.preparationId)?.name ?? '')
  const dough = act.doughId === null ? '' : words.bench.station.amount(words.names.dough(act.doughId), act.pieces)
  switch (act.kind) {
    case 'prepare':
      return acts.begin(preparation)
    case 'feed':
      return acts.feed(preparation)
    case 'startMix':
      return acts.mix(ofMix)
    case 'mixIns':
      return acts.mixIn(ofMix)
    case 'mixerOff':
      return acts.mixerOff(ofMix)
    case 'restOver':
      return acts.restOver(ofMix)
    case 'fold':
      return acts.fold(act.fold, mix?.formula.bulk?.foldsMs.length ?? act.fold, ofMix)
    case 'bulkOver':
    case 'bulkChillOver':
      return acts.bulkOver(ofMix)
    case 'chill':
      return acts.chill(dough)
    case 'use':
      return acts.use(dough)
  }
}
