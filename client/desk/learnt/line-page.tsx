import { useMemo, useState } from 'preact/hooks'
import type { LearntTime } from '../../../shared-core/line/learnt-times.ts'
import { takenOver } from '../../../shared-core/line/take-over.ts'
import type { OvenHeat } from '../../../shared-core/live/oven-heat.ts'
import { learntTimesWords } from '../../words/desk-learnt.ts'
import type { HistoryParts } from '../history/parts.ts'
import { Unanswered } from '../history/unanswered.tsx'
import { Panel } from '../panel.tsx'
import { useGot } from '../use-got.ts'
import { HeatPanel } from './heat-panel.tsx'
import { TimesTable } from './times-table.tsx'

interface LearntTimesJson {
  readonly days: number
  readonly times: readonly LearntTime[]
}

/** How long the line really takes, and how the oven heats. */
export function LinePage(parts: HistoryParts) {
  const { say, words, shop, state, store } = parts
  const told = useMemo(() => learntTimesWords(words), [words])
  const version = JSON.stringify([
    state.lastDay?.closedAtMs,
    state.loads.size,
    [...state.marks.values()].filter(({ kind }) => kind === 'oven'),
  ])
  const times = useGot<LearntTimesJson>('/api/v1/learnt-times', version)
  const heat = useGot<OvenHeat>('/api/v1/oven/heat', version)
  const [taken, setTaken] = useState<string | null>(null)
  const takeOver = (time: LearntTime) => {
    const change = takenOver(shop, time)
    if (change === null) return
    store.send({ type: 'changeSetUp', changes: [change] })
    setTaken(told.times.taken(told.times.what[time.what]))
  }
  return (
    <div class="desk-parts">
      <Panel part="learnt-times" title={told.times.title} isWide>
        {times.kind === 'got' ? (
          <>
            <p class="desk-quiet">{told.times.hint(times.value.days)}</p>
            {times.value.times.length === 0 ? (
              <p>{told.times.none}</p>
            ) : (
              <TimesTable told={told} words={words} shop={shop} times={times.value.times} onTakeOver={takeOver} />
            )}
            <p role="status">{taken ?? ''}</p>
          </>
        ) : (
          <Unanswered kind={times.kind} say={say} />
        )}
      </Panel>
      {heat.kind === 'got' ? (
        <HeatPanel told={told} words={words} shop={shop} heat={heat.value} />
      ) : (
        <Panel part="oven-heat" title={told.heat.title} isWide>
          <Unanswered kind={heat.kind} say={say} />
        </Panel>
      )}
    </div>
  )
}
