import { Fragment } from 'preact'
import type { ComingDough } from '../../../shared-core/plan/coming-day.ts'
import { localDate } from '../../live/clock-text.ts'
import { typedPieces } from '../dough/wanted-view.ts'
import { momentOf } from '../moment.ts'
import { Panel } from '../panel.tsx'
import { decidedDoughs, soonestDecision, typedBesides, yoursText } from './coming-view.ts'
import { LikelyCells, LikelyHeads, WhyButton } from './likely-cells.tsx'
import type { ComingParts } from './parts.ts'
import { TakeOver } from './take-over.tsx'
import { useOpened } from './use-opened.ts'
import { WhyList } from './why-list.tsx'

/** Columns of the table, for a line that goes across. */
const COLUMNS = 10

/** How much dough of each kind: decided ahead, on what all its varieties are asked for together. */
export function DoughPanel(props: ComingParts) {
  const { day, say, words, date } = props
  const opened = useOpened<string>()
  const { columns } = say
  return (
    <Panel part="dough" title={say.dough.title(words.times.date(date))} isWide>
      <p class="desk-quiet">{say.dough.hint}</p>
      <DecideBy {...props} />
      <table class="coming">
        <thead>
          <tr>
            <th>{columns.dough}</th>
            <LikelyHeads say={say} />
            <th class="desk-number">{columns.advised}</th>
            <th class="desk-number">{columns.yours}</th>
            <th class="desk-number">{columns.orders}</th>
            <th class="desk-number">{columns.there}</th>
            <th class="desk-number">{columns.toMake}</th>
            <th />
          </tr>
        </thead>
        <tbody>
          {day.doughs.map((dough) => (
            <Fragment key={dough.doughId}>
              <DoughRow {...props} dough={dough} isOpen={opened.isOpen(dough.doughId)} onToggle={opened.toggle} />
              {opened.isOpen(dough.doughId) && (
                <tr class="coming-opened">
                  <td colSpan={COLUMNS}>
                    <WhyList {...props} why={dough.why} unit="tray" />
                  </td>
                </tr>
              )}
            </Fragment>
          ))}
        </tbody>
      </table>
      <p class="desk-quiet desk-small">{say.legend}</p>
      <TakeOver {...props} />
    </Panel>
  )
}

interface RowProps extends ComingParts {
  readonly dough: ComingDough
  readonly isOpen: boolean
  readonly onToggle: (doughId: string) => void
}

function DoughRow({ dough, isOpen, onToggle, ...parts }: RowProps) {
  const { say, words, state, date, yours, onYours } = parts
  const { columns } = say
  const name = words.names.dough(dough.doughId)
  const text = yoursText(dough, state.wanted.get(date), yours)
  const pieces = typedPieces(text)
  const besides = typedBesides(state.wanted.get(date), dough.doughId)
  const isOwn = dough.basis !== 'nothing' && pieces !== dough.counter
  return (
    <tr>
      <th scope="row">
        {name} {dough.basis !== 'nothing' && <span class="coming-basis">{say.basis[dough.basis]}</span>}
      </th>
      <LikelyCells of={dough} say={say} />
      <td class="desk-number" data-label={columns.advised}>
        {dough.basis === 'nothing' ? '–' : <strong>{dough.counter}</strong>}
      </td>
      <td class="desk-number" data-label={columns.yours}>
        <input
          class={isOwn ? 'coming-yours coming-own' : 'coming-yours'}
          inputMode="numeric"
          autocomplete="off"
          aria-label={say.yoursOf(name)}
          aria-invalid={pieces === null}
          value={text}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) => onYours(new Map([...yours, [dough.doughId, event.currentTarget.value]]))}
        />
      </td>
      <td class="desk-number" data-label={columns.orders}>
        {dough.ordered}
        {besides > 0 && dough.ordered > besides && (
          <span class="coming-basis">{say.ordered(dough.ordered - besides, besides)}</span>
        )}
      </td>
      <td class="desk-number" data-label={columns.there}>
        {dough.carried}
      </td>
      <td class="desk-number" data-label={columns.toMake}>
        {pieces === null ? '?' : Math.max(0, pieces + dough.ordered - dough.carried)}
      </td>
      <td>
        {dough.why.length > 0 && (
          <WhyButton name={name} isOpen={isOpen} say={say} onToggle={() => onToggle(dough.doughId)} />
        )}
      </td>
    </tr>
  )
}

function DecideBy({ day, live, state, shop, words, say, room, date: ofDate }: ComingParts) {
  const first = soonestDecision(day, decidedDoughs(state, shop, ofDate))
  if (first === null) return null
  const { atMs } = first
  const date = localDate(room.clock, atMs)
  const isToday = date === room.today
  const { clock } = momentOf(atMs, { ...live, shop, words })
  const isPast = live.nowMs > atMs
  const names = first.doughIds.map((id) => words.names.dough(id))
  const by = say.decideBy(names, isToday ? say.today : words.times.date(date), clock)
  return <p class={isPast ? 'desk-trouble' : 'desk-even'}>{isPast ? `${by} ${say.decideLate}` : by}</p>
}
