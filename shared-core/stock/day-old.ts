import type { Line, State } from '../day/state.ts'
import { byVariety } from '../line/contents.ts'

/** What was left at the last close and has not been put out today, in the set-up's order. */
export function dayOldToPut({ shop, lastDay, stock }: State): readonly Line[] {
  if (shop === null || lastDay === null) return []
  return lastDay.left
    .map(({ varietyId, pieces }) => ({ varietyId, pieces: pieces - (stock.get(varietyId)?.dayOldPut ?? 0) }))
    .filter(({ varietyId, pieces }) => pieces > 0 && shop.varieties.has(varietyId))
    .sort((one, other) => byVariety(shop, one.varietyId, other.varietyId))
}
