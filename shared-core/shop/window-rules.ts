import { spanText } from './human-time.ts'
import type { Misfit, Whose } from './misfit.ts'
import { broken } from './misfit.ts'
import type { DwellWindow, Windows } from './shop.ts'
import { WINDOW_STAGES } from './stages.ts'

/**
 * Earliest, target and latest of each window in this order; the flip comes before the load is done.
 * @param whose the shop's own windows, a dough's or a variety's
 * @param prefix what stands before the stage in a misfit's field
 */
export function windowMisfits(whose: Whose, windows: Windows, prefix: string): Misfit[] {
  const unordered = WINDOW_STAGES.flatMap((stage) => {
    const window = windows[stage]
    const wrong = window === undefined ? null : unorderedWindow(window)
    if (wrong === null) return []
    return broken(whose, [[true, `${prefix}${stage}`, wrong, 'None longer than the next: earliest, target, latest.']])
  })
  const late = flipsTooLate(windows.firstSide, windows.bake)
  const right = 'The whole time in the oven: longer than the first side.'
  return [...unordered, ...broken(whose, [[late !== null, `${prefix}bake`, late ?? '', right]])]
}

/** What is wrong when the flip would be due after the end of the bake; null when it is not. */
export function flipsTooLate(firstSide: DwellWindow | undefined, bake: DwellWindow | undefined): string | null {
  if (firstSide === undefined || bake === undefined || firstSide.targetMs < bake.targetMs) return null
  const [flip, out] = [spanText(firstSide.targetMs, firstSide.unit), spanText(bake.targetMs, bake.unit)]
  return `The flip is due after ${flip}, the end of the bake after ${out}.`
}

/** What is wrong with a window whose ends are not in their order; null when they are. */
export function unorderedWindow({ earliestMs, targetMs, latestMs, unit }: DwellWindow): string | null {
  if (earliestMs <= targetMs && targetMs <= latestMs) return null
  const [earliest, target, latest] = [earliestMs, targetMs, latestMs].map((ms) => spanText(ms, unit))
  return `Earliest, target and latest are ${earliest}, ${target} and ${latest}.`
}
