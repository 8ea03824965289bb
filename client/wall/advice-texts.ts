import type { Line, State } from '../../shared-core/day/state.ts'
import type { PlannedId } from '../../shared-core/ids.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { changeNow, lastDipNear, lastLines, mainWhy, planLoad } from '../parts/advice.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { AdviceWords } from '../words/advice.ts'
import type { StatusView } from './status-view.ts'
import { fits } from './text-lines.ts'

export interface AdviceSetting {
  /** Null: loads are not advised. */
  readonly plan: Plan | null
  readonly advice: AdviceWords
  readonly nowMs: EpochMs
}

/**
 * Why the dip is called for, from all of it to the shortest: of what its pieces become, for the name of another variety
 * below the dip would read as a mistake. None where nothing is known.
 */
export function reasonTexts(
  id: PlannedId | null,
  becomes: readonly Line[],
  { plan, advice }: AdviceSetting,
): readonly string[] {
  const load = planLoad(plan, id)
  if (load === null || load.isPinned) return []
  const dipped = new Set(becomes.map(({ varietyId }) => varietyId))
  const why = mainWhy({ why: load.why.filter(({ varietyId }) => dipped.has(varietyId)) })
  return why === null ? [] : [advice.why(why), advice.whyShort(why)]
}

/** When the first dip of the load is due; "" once that has gone by, or where nothing is known. */
export function firstDipText(id: PlannedId | null, { plan, advice, nowMs }: AdviceSetting): string {
  const atMs = planLoad(plan, id)?.kettleAtMs ?? null
  return atMs === null || atMs <= nowMs ? '' : advice.firstDip(atMs, nowMs)
}

/**
 * What the whole room should know of the plan, from all of it to the shortest: what is another about the next load, else
 * the last dip in its hour, with what the last loads carry.
 */
export function roomTexts(state: State, { plan, advice, nowMs }: AdviceSetting): readonly string[] {
  const change = changeNow(plan, state, nowMs)
  if (change !== null) return [advice.change(change), advice.changeShort(change)]
  const dipByMs = lastDipNear(plan, nowMs)
  if (dipByMs === null) return []
  const dip = advice.lastDip(dipByMs, nowMs)
  const { lines, others } = lastLines(plan)
  return lines.length === 0 ? [dip] : [`${dip} · ${advice.carries(lines, others)}`, dip]
}

/** It in one quiet line across the wall; null while there is nothing to say, or no room for it. */
export function adviceStatus(
  state: State,
  set: AdviceSetting & { readonly page: { readonly widthPx: number }; readonly sizes: TextSizes },
): StatusView | null {
  const { page, sizes } = set
  const room = { roomPx: page.widthPx - 2.4 * sizes.minPx, fontPx: sizes.minPx, weight: 'strong' } as const
  const text = roomTexts(state, set).find((one) => fits(one, room))
  return text === undefined ? null : { text, isTrouble: false }
}
