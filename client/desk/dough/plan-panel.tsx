import { useMemo, useState } from 'preact/hooks'
import type { State } from '../../../shared-core/day/state.ts'
import type { DayPlan } from '../../../shared-core/dough/day-plan.ts'
import { dayPlan } from '../../../shared-core/dough/day-plan.ts'
import type { WantedLine } from '../../../shared-core/dough/mix.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { withinOf } from './pages.ts'
import { PlanDoughs } from './plan-doughs.tsx'
import { PlanMixes } from './plan-mixes.tsx'
import type { FlourTyped } from './plan-view.ts'
import { handPlan, standing } from './plan-view.ts'
import type { RoomParts } from './room.ts'
import { clockOf, dayOf } from './room-times.ts'

export interface PlanProps extends RoomParts {
  readonly date: string
  /** What would be saved; null: something typed cannot be read. */
  readonly lines: readonly WantedLine[] | null
  /** Numbers are typed and not saved. */
  readonly isTyped: boolean
  readonly onSaved: () => void
}

/** What the day comes to: pieces to shape and why, mixes, and what a change by hand costs. */
export function PlanPanel(props: PlanProps) {
  const { state, shop, room, words, say, date, lines, isTyped } = props
  const unit = shop.profile.weight === 'g' ? 'kg' : 'lb'
  const plan = useMemo(
    () => dayPlan(lines === null ? state : withWanted(state, date, lines), shop, date, room.noonOf),
    [state, shop, date, lines, room],
  )
  const [typed, setTyped] = useState<FlourTyped>(new Map())
  const hand = handPlan(plan, shop, typed, unit)
  const isEmpty = plan.doughs.length === 0
  const { kind } = standing(state, shop, date, hand.mixes ?? [])
  return (
    <Panel part="plan" title={say.plan.title(words.times.date(date))}>
      {isEmpty ? <p>{say.plan.nothing}</p> : <p class="desk-quiet">{say.plan.hint}</p>}
      {plan.isClosed && <p class="desk-even">! {say.plan.closedDay}</p>}
      {isTyped && lines !== null && <p class="desk-even">{say.plan.preview}</p>}
      <DecideBy {...props} plan={plan} isDecided={kind === 'same' || kind === 'earlierFormula'} />
      {!isEmpty && (
        <>
          <PlanDoughs {...props} plan={plan} />
          <PlanMixes {...props} hand={hand} typed={typed} onTyped={setTyped} unit={unit} />
        </>
      )}
      <UsePlan {...props} mixes={lines === null ? null : hand.mixes} onUsed={() => setTyped(new Map())} />
    </Panel>
  )
}

function withWanted(state: State, date: string, lines: readonly WantedLine[]): State {
  return { ...state, wanted: new Map([...state.wanted, [date, { date, lines }]]) }
}

function DecideBy({ plan, isDecided, ...parts }: PlanProps & { readonly plan: DayPlan; readonly isDecided: boolean }) {
  const { live, say } = parts
  const { decideAtMs } = plan
  if (decideAtMs === null || isDecided) return null
  const isPast = live.nowMs > decideAtMs
  const first = plan.formulas.filter((formula) => formula.decideAtMs === decideAtMs)
  const names = first.map(({ formulaId }) => parts.shop.formulas.get(formulaId)?.name ?? say.unknown)
  return (
    <p class={isPast ? 'desk-trouble' : undefined}>
      {[
        say.plan.decideBy(names, dayOf(decideAtMs, parts), clockOf(decideAtMs, parts)),
        isPast ? say.plan.decideLate : '',
      ]
        .join(' ')
        .trim()}
    </p>
  )
}

interface UseProps extends PlanProps {
  readonly mixes: ReturnType<typeof handPlan>['mixes']
  readonly onUsed: () => void
}

function UsePlan({ store, state, shop, say, date, lines, isTyped, onSaved, mixes, onUsed }: UseProps) {
  const now = standing(state, shop, date, mixes ?? [])
  const isSame = now.kind === 'same' || (now.kind === 'none' && mixes?.length === 0)
  const planIt = () => {
    if (mixes === null || lines === null) return
    if (isTyped && store.send({ type: 'setWanted', date, lines }) === null) return
    if (isTyped) onSaved()
    if (store.send({ type: 'planMixes', date, mixes }) !== null) onUsed()
  }
  return (
    <>
      <p role="status">{say.plan.stands(now.kind, now.begun)}</p>
      <div class="desk-line">
        <button type="button" class="desk-strong" disabled={mixes === null || (isSame && !isTyped)} onClick={planIt}>
          {isTyped ? say.plan.saveAndUse : say.plan.use}
        </button>
        {now.kind !== 'none' && (
          <>
            <a href={addressOf('dough', withinOf('order'))}>{say.plan.toOrder}</a>
            <a href={addressOf('dough', withinOf('sheets', date))}>{say.plan.toSheets}</a>
          </>
        )}
      </div>
    </>
  )
}
