import type { State } from '../../shared-core/day/state.ts'
import type { Today } from '../../shared-core/demand/today.ts'
import { todayOf } from '../../shared-core/demand/today-of.ts'
import type { LineToday } from '../../shared-core/plan/line-today.ts'
import { lineToday } from '../../shared-core/plan/line-today.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { History } from '../history/history.ts'

/** The open day as the thread is asked about it. */
export interface DayNow {
  readonly today: Today
  readonly line: LineToday
  readonly noonMs: EpochMs
  readonly seq: number
  /** Advice on loads is switched on. */
  readonly isAdvised: boolean
}

/**
 * Looks at the day that is open, as far as the history's fold has come.
 * @param wished the state with what people would set instead; left out: as it stands
 * @returns null when none is open
 */
export function dayNow(
  history: Pick<History, 'today'>,
  nowMs: EpochMs,
  wished: (state: State) => State = (state) => state,
): DayNow | null {
  return history.today((state, sales) => {
    const today = todayOf(state, sales, nowMs)
    if (today === null || state.shop === null) return null
    const { noonMs } = sales
    const line = lineToday(wished(state), { nowMs, noonMs, date: today.date })
    return { today, line, noonMs, seq: state.seq, isAdvised: state.shop.baking.advice }
  })
}
