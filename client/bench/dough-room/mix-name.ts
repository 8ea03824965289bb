import type { Mix } from '../../../shared-core/dough/mix.ts'
import { placeAmong } from './mix-steps.ts'
import type { RoomParts } from './room-parts.ts'

/** A mix as it is called: its formula, and which of the day's it is where there are several. */
export function mixName(mix: Mix, { state, words }: Pick<RoomParts, 'state' | 'words'>): string {
  const { nth, of } = placeAmong(state, mix)
  return words.room.mix.name(mix.formula.name, nth, of)
}
