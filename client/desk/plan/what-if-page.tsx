import { useState } from 'preact/hooks'
import type { VarietyId } from '../../../shared-core/ids.ts'
import type { PlanFigures } from '../../../shared-core/live/plan.ts'
import type { WhatIfAnswer } from '../../../shared-core/plan/what-if.ts'
import { hoursOn } from '../../../shared-core/shop/hours.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { instantOfMinute } from '../../live/clock-text.ts'
import type { WhatIfKind } from '../../words/desk-plan.ts'
import { call } from '../call.ts'
import { Panel } from '../panel.tsx'
import { useDayPlan } from './day-plan.ts'
import { tightestText } from './head-panel.tsx'
import type { PlanParts } from './parts.ts'
import { costOf } from './tried-bar.tsx'
import { askable, changeOf, isSensible, usualAmount, whatIfRows } from './what-if-view.ts'
import { minuteOf, TimeField } from './wishes-panel.tsx'

type Answer =
  | { readonly kind: 'none' | 'asking' | 'failed' | 'unreadable' | 'nothing-known' }
  | { readonly kind: 'got'; readonly before: PlanFigures; readonly after: PlanFigures }

/** The server's word for a day of which nothing is known. */
const NOTHING_KNOWN = 409

/** The same day with one thing another way. */
export function WhatIfPage(parts: PlanParts) {
  const { say, shop, words, date, room } = parts
  const got = useDayPlan(parts)
  const plan = got.kind === 'got' ? got.value.plan : null
  const [kind, setKind] = useState<WhatIfKind>('shelf')
  const [answer, setAnswer] = useState<Answer>({ kind: 'none' })
  const [typed, setTyped] = useState<string | null>(null)
  const [variety, setVariety] = useState<VarietyId | null>(null)
  const [clock, setClock] = useState('08:15')
  const varieties = inUse(shop.varieties)
  const usual = usualAmount(kind, Math.round(shop.kettle.cycleMs / 1_000))
  const ask = async () => {
    const amount = Number(typed ?? usual)
    const minute = minuteOf(clock)
    const of = variety ?? varieties[0]?.id
    if (!isSensible(kind, amount) || minute === null || of === undefined) return setAnswer({ kind: 'unreadable' })
    const dueAtMs = instantOfMinute(room.clock, minute, room.noonOf(date))
    setAnswer({ kind: 'asking' })
    const change = changeOf(kind, { amount, varietyId: of, dueAtMs })
    const done = await call<WhatIfAnswer>('POST', '/api/v1/plan/what-if', { date, change })
    if (done.kind === 'done') return setAnswer({ kind: 'got', ...done.value })
    setAnswer({ kind: done.kind === 'refused' && done.status === NOTHING_KNOWN ? 'nothing-known' : 'failed' })
  }
  const choose = (next: WhatIfKind) => {
    setKind(next)
    setTyped(null)
    setAnswer({ kind: 'none' })
  }
  const amountLabel = kind === 'order' ? say.whatIf.orderPieces : say.whatIf.amounts[kind]
  return (
    <Panel part="plan-what-if" title={`${say.whatIf.title}: ${words.times.date(date)}`} isWide>
      <p class="desk-quiet">{say.whatIf.hint}</p>
      <fieldset class="desk-field plan-kinds" aria-label={say.whatIf.title}>
        {askable(shop, hoursOn(shop, date)).map((one) => (
          <label key={one} class="desk-line">
            <input type="radio" name="what-if" checked={one === kind} onChange={() => choose(one)} />
            {say.whatIf.changes[one]}
          </label>
        ))}
      </fieldset>
      <form
        class="desk-form"
        onSubmit={(event) => {
          event.preventDefault()
          void ask()
        }}
      >
        {amountLabel !== null && (
          <label class="desk-field">
            {amountLabel}
            <input
              type="number"
              value={typed ?? String(usual)}
              onInput={(event) => setTyped(event.currentTarget.value)}
            />
          </label>
        )}
        {kind === 'order' && (
          <>
            <label class="desk-field">
              {say.whatIf.orderOf}
              <select
                value={variety ?? varieties[0]?.id ?? ''}
                onChange={(event) =>
                  setVariety(varieties.find(({ id }) => id === event.currentTarget.value)?.id ?? null)
                }
              >
                {varieties.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
            <TimeField label={say.whatIf.orderAt} value={clock} on={setClock} />
          </>
        )}
        <button type="submit" class="desk-strong" disabled={answer.kind === 'asking'}>
          {say.whatIf.ask}
        </button>
      </form>
      {plan !== null && <p>{tightestText(plan, say)}</p>}
      <AnswerText {...parts} answer={answer} />
    </Panel>
  )
}

function AnswerText({ answer, say, words }: PlanParts & { readonly answer: Answer }) {
  const { whatIf } = say
  if (answer.kind === 'none') return null
  if (answer.kind !== 'got') {
    const { asking, failed, unreadable } = whatIf
    const text = { asking, failed, unreadable, 'nothing-known': say.nothingKnown }[answer.kind]
    return (
      <p class={answer.kind === 'asking' ? 'desk-quiet' : 'desk-trouble'} role="status">
        {text}
      </p>
    )
  }
  const { before, after } = answer
  const rows = whatIfRows(before, after, { whatIf, clock: (atMs) => words.times.clock(epochMs(atMs)) })
  return (
    <>
      <p role="status">
        <strong>{whatIf.answer(costOf(before, after))}</strong>
      </p>
      <table class="plan-answer">
        <thead>
          <tr>
            <th>{whatIf.columns.figure}</th>
            <th class="desk-number">{whatIf.columns.before}</th>
            <th class="desk-number">{whatIf.columns.after}</th>
            <th class="desk-number">{whatIf.columns.difference}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <th scope="row">{whatIf.rows[row.key]}</th>
              <td class="desk-number">{row.before}</td>
              <td class="desk-number">{row.after}</td>
              <td class="desk-number">{row.difference}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}
