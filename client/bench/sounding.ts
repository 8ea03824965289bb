import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { LiveState } from '../live/shop-store.ts'
import { roomSound, soundingAct } from '../parts/calls.ts'
import { soundingKitchenAct } from '../parts/kitchen-calls.ts'
import type { BenchWords } from '../words/bench.ts'
import type { BenchView } from './view.ts'

/** What sounds now and "coming" would quiet, by its key, and what it is called beside that word. */
export interface Sounding {
  readonly key: string
  readonly name: string
}

/** The line's first: an oven waits for nobody. */
export function soundingNow(
  { acts, roomActs, kitchenActs }: Pick<BenchView, 'acts' | 'roomActs' | 'kitchenActs'>,
  { coming, nowMs }: Pick<LiveState, 'coming' | 'nowMs'>,
  words: BenchWords,
): Sounding | null {
  const ofLine = soundingAct(acts, coming, nowMs)
  if (ofLine !== null) return { key: ofLine.key, name: words.acts.name(ofLine) }
  const ofKitchen = soundingKitchenAct(kitchenActs, coming, nowMs)
  if (ofKitchen !== null) return { key: ofKitchen.key, name: words.bench.more.kitchen }
  const isSounding = (act: RoomAct) =>
    roomSound(act) !== null && act.atMs <= nowMs && (coming.get(act.key) ?? 0) <= nowMs
  const ofRoom = roomActs.find(isSounding)
  return ofRoom === undefined ? null : { key: ofRoom.key, name: words.bench.more.doughRoom }
}
