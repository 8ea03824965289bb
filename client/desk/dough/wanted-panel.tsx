import { useState } from 'preact/hooks'
import type { Wanted } from '../../../shared-core/dough/mix.ts'
import { Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { RoomParts } from './room.ts'
import { useWantedBefore } from './use-wanted-before.ts'
import { WantedRows } from './wanted-rows.tsx'
import type { Typed, WantedGroup } from './wanted-view.ts'
import { allCleared, changesIn, copiedFrom, linesToSave, raisedBy, rowPieces } from './wanted-view.ts'

export interface WantedProps extends RoomParts {
  readonly date: string
  readonly groups: readonly WantedGroup[]
  readonly typed: Typed
  readonly onTyped: (typed: Typed) => void
}

/** Pieces wanted for one day of boiling, for the counter and for orders: a table for the keyboard. */
export function WantedPanel(props: WantedProps) {
  const { store, state, words, say, date, groups, typed, onTyped } = props
  const wanted = state.wanted.get(date)
  const before = useWantedBefore(state, date)
  const lines = linesToSave(groups, wanted, typed)
  const changes = changesIn(groups, wanted, typed)
  const save = () => {
    if (lines !== null && store.send({ type: 'setWanted', date, lines }) !== null) onTyped(new Map())
  }
  const all = groups.flatMap(({ dough, varieties }) => [dough, ...varieties])
  const total = all.reduce((sum, { key }) => sum + (rowPieces(wanted, typed, key) ?? 0), 0)
  return (
    <Panel part="wanted" title={say.wanted.title(words.times.date(date))}>
      <p class="desk-quiet">{say.wanted.hint}</p>
      <WantedTools {...props} wanted={wanted} before={before} />
      <form
        onSubmit={(event) => {
          event.preventDefault()
          save()
        }}
      >
        <Sideways name={say.wanted.title(words.times.date(date))}>
          <table class="dough-wanted">
            <thead>
              <tr>
                <th>{say.wanted.columns.what}</th>
                {before !== undefined && <th class="desk-number">{say.wanted.columns.lastWeek}</th>}
                <th>{say.wanted.columns.pieces}</th>
                <th>{say.wanted.columns.ordered}</th>
                <th class="desk-number">{say.wanted.columns.sum}</th>
              </tr>
            </thead>
            <WantedRows {...props} wanted={wanted} before={before} />
            <tfoot>
              <tr>
                <th colSpan={before === undefined ? 3 : 4}>{say.wanted.total}</th>
                <td class="desk-number">{total}</td>
              </tr>
            </tfoot>
          </table>
        </Sideways>
        <div class="desk-line">
          <button type="submit" class="desk-strong" disabled={lines === null || changes === 0}>
            {say.wanted.save(words.times.date(date))}
          </button>
          {changes > 0 && (
            <button type="button" onClick={() => onTyped(new Map())}>
              {say.wanted.forget}
            </button>
          )}
          <span class={lines === null ? 'desk-trouble' : 'desk-quiet'} role="status">
            {lines === null ? say.wanted.unreadable : changes > 0 ? say.wanted.unsaved(changes) : say.wanted.saved}
          </span>
        </div>
      </form>
    </Panel>
  )
}

interface ToolsProps extends WantedProps {
  readonly wanted: Wanted | undefined
  readonly before: Wanted | undefined
}

/** A day is seldom typed from nothing: it is like another one, a little more or less. */
function WantedTools({ state, words, say, date, groups, typed, onTyped, wanted, before }: ToolsProps) {
  const [percent, setPercent] = useState('')
  const number = /^[+\-−]?\d{1,3}$/.test(percent.trim()) ? Number(percent.trim().replace('−', '-')) : null
  const others = [...state.wanted.values()]
    .filter((one) => one.date !== date && one.lines.length > 0)
    .sort((one, other) => (one.date < other.date ? 1 : -1))
  return (
    <div class="desk-line">
      {before !== undefined && before.lines.length > 0 && (
        <button type="button" onClick={() => onTyped(copiedFrom(groups, before))}>
          {say.wanted.likeLastWeek(words.times.date(before.date))}
        </button>
      )}
      {others.length > 0 && (
        <select
          aria-label={say.wanted.like}
          value=""
          onChange={(event) => {
            const from = state.wanted.get(event.currentTarget.value)
            if (from !== undefined) onTyped(copiedFrom(groups, from))
            event.currentTarget.value = ''
          }}
        >
          <option value="">{say.wanted.like}</option>
          {others.map((one) => (
            <option key={one.date} value={one.date}>
              {words.times.date(one.date)}
            </option>
          ))}
        </select>
      )}
      <span class="desk-line">
        <input
          class="desk-short"
          inputMode="text"
          placeholder="+10 %"
          aria-label={say.wanted.percent}
          value={percent}
          onInput={(event) => setPercent(event.currentTarget.value.replace('%', ''))}
        />
        <button
          type="button"
          disabled={number === null || number < -100}
          onClick={() => {
            if (number !== null) onTyped(raisedBy(number, groups, wanted, typed))
            setPercent('')
          }}
        >
          {say.wanted.raise}
        </button>
      </span>
      <button type="button" onClick={() => onTyped(allCleared(groups))}>
        {say.wanted.clear}
      </button>
    </div>
  )
}
