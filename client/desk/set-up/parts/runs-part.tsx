import { runId } from '../../../../shared-core/ids.ts'
import type { Run } from '../../../../shared-core/shop/kitchen.ts'
import { LOAD_MS_MAX, STOP_MS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import { spanMs } from '../../../../shared-core/units.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import { RUNS } from '../lists.ts'
import { minuteSaid, spanSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { ListPart } from './list-part.tsx'

/** The van's rounds: when each leaves, how long it drives, how long it is loaded. */
export function RunsPart(props: SetUpProps) {
  const { say, words, draft } = props
  const telling = { say, words, shop: draft }
  const like: Run = {
    id: runId('new'),
    name: '',
    order: 0,
    leavesMinute: Math.min(draft.hours.closeMinute, draft.hours.openMinute + HOUR_MINUTES),
    stopMs: spanMs(10, 'min'),
    loadMs: spanMs(10, 'min'),
    retired: false,
  }
  const line = ({ leavesMinute, stopMs }: Run) =>
    say.kitchen.runLine(minuteSaid(leavesMinute, telling), spanSaid(stopMs, telling))
  return (
    <ListPart kind={RUNS} parts={props} like={like} line={line}>
      {(run, set) => (
        <>
          <ClockField
            label={say.fields.run.leavesMinute}
            minute={run.leavesMinute}
            say={say}
            onChange={(leavesMinute) => set({ ...run, leavesMinute })}
          />
          <SpanField
            label={say.fields.run.stopMs}
            ms={run.stopMs}
            minMs={0}
            maxMs={STOP_MS_MAX}
            units={['min', 'h']}
            words={words}
            say={say}
            onChange={(stopMs) => set({ ...run, stopMs })}
          />
          <p class="setup-hint">{say.kitchen.stopHint}</p>
          <SpanField
            label={say.fields.run.loadMs}
            ms={run.loadMs}
            minMs={0}
            maxMs={LOAD_MS_MAX}
            units={['min', 'h']}
            words={words}
            say={say}
            onChange={(loadMs) => set({ ...run, loadMs })}
          />
          <p class="setup-hint">{say.kitchen.loadHint}</p>
        </>
      )}
    </ListPart>
  )
}

const HOUR_MINUTES = 60
