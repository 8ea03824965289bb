import { useMemo } from 'preact/hooks'
import { dateAfter } from '../../../shared-core/day/label.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../../shared-core/day/state.ts'
import { fromJson } from '../../../shared-core/day/state-json.ts'
import type { Wanted } from '../../../shared-core/dough/mix.ts'
import type { DayRecordJson } from '../past/day-record.ts'
import { useGot } from '../use-got.ts'

/**
 * What was wanted a week before. A day's close puts its list away; then the record of that day has it, as it stood when
 * the day began.
 */
export function useWantedBefore(state: State, date: string): Wanted | undefined {
  const before = dateAfter(date, -7)
  const stands = state.wanted.get(before)
  const isPast = state.lastDay !== null && before <= state.lastDay.label
  const got = useGot<DayRecordJson>(stands === undefined && isPast ? `/api/v1/days/${before}` : null)
  const record = got.kind === 'got' ? got.value : null
  const listed = useMemo(() => (record === null ? undefined : wantedIn(record, before)), [record, before])
  return stands ?? listed
}

/** A record of a server that folds in another way cannot be read by this page. */
export function wantedIn(
  { foldVersion, start }: Pick<DayRecordJson, 'foldVersion' | 'start'>,
  date: string,
): Wanted | undefined {
  return foldVersion === FOLD_VERSION ? fromJson(start).wanted.get(date) : undefined
}
