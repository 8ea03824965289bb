import { useState } from 'preact/hooks'
import { dateAfter } from '../../../shared-core/day/label.ts'
import type { StandingId } from '../../../shared-core/ids.ts'
import type { StandingOrder } from '../../../shared-core/orders/order.ts'
import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { LinesField } from './lines-field.tsx'
import { NextDates } from './next-dates.tsx'
import { withinOf } from './pages.ts'
import type { OrdersParts } from './parts.ts'
import { RecurrenceField } from './recurrence-field.tsx'
import type { StandingDraft } from './standing-draft.ts'
import { newStanding, setStanding, standingMissing, standingTyped } from './standing-draft.ts'
import { WayFields } from './when-fields.tsx'
import { isOnItsWay } from './who.ts'
import { WhoFields } from './who-fields.tsx'

interface OneStandingProps extends OrdersParts {
  /** Null: a new one. */
  readonly standingId: StandingId | null
}

/** One standing order: how it comes, what it is, for whom; with its next days. */
export function OneStandingPage(props: OneStandingProps) {
  const { store, standingId, state, shop, say, room, book } = props
  const before = standingId === null ? null : (state.standing.get(standingId) ?? null)
  const [draft, setDraft] = useState<StandingDraft>(() =>
    before === null ? newStanding(dateAfter(room.today, 1)) : standingTyped(before, shop.orders.dozenPieces),
  )
  const [typed, setTyped] = useState<OrderDetails | null>(null)
  const back = addressOf('orders', withinOf({ kind: 'standing' }))
  if (standingId !== null && before === null)
    return (
      <p>
        {say.standing.unknown} <a href={back}>{say.form.back}</a>
      </p>
    )
  const known = before === null ? null : book.of(before)
  const missing = standingMissing(draft)
  const change = (some: Partial<StandingDraft>) => setDraft({ ...draft, ...some })
  const save = () => {
    if (missing.length > 0 || store.send(setStanding(draft, standingId, { typed, known })) === null) return
    window.location.hash = back
  }
  return (
    <>
      <p>
        <a href={back}>← {say.form.back}</a>
      </p>
      <Panel
        part="one-standing"
        title={before === null ? say.standing.newTitle : say.standing.title(before.mark)}
        isWide
      >
        <div class="orders-compose">
          <div class="orders-form">
            <RecurrenceField {...props} draft={draft} onChange={change}>
              <WayFields {...props} ways={['pickUp', 'delivery']} draft={draft} onChange={change} />
            </RecurrenceField>
            <NextDates {...props} draft={draft} />
            <LinesField {...props} lines={draft.lines} onChange={(lines) => change({ lines })} />
            <WhoFields
              {...props}
              draft={draft}
              markHint={say.form.standingMarkHint}
              details={typed ?? known}
              isComing={before !== null && isOnItsWay(before, known)}
              onChange={change}
              onDetails={setTyped}
            />
          </div>
          <div class="orders-take">
            {missing.map((one) => (
              <p key={one} class="desk-quiet">
                {say.standing.missing[one]}
              </p>
            ))}
            <div class="desk-line">
              <button type="button" class="desk-strong desk-large" disabled={missing.length > 0} onClick={save}>
                {say.standing.save}
              </button>
              {before !== null && <End {...props} standing={before} back={back} />}
            </div>
          </div>
        </div>
      </Panel>
    </>
  )
}

/** Ends it, after one question. */
function End({
  store,
  say,
  standing,
  back,
}: OrdersParts & { readonly standing: StandingOrder; readonly back: string }) {
  const [isAsked, setAsked] = useState(false)
  if (!isAsked)
    return (
      <button type="button" onClick={() => setAsked(true)}>
        {say.standing.end}
      </button>
    )
  return (
    <span class="orders-ask" role="alert">
      <span>{say.standing.sureToEnd(standing.mark)}</span>
      <button
        type="button"
        class="desk-strong"
        onClick={() => {
          if (store.send({ type: 'endStanding', standingId: standing.id }) !== null) window.location.hash = back
        }}
      >
        {say.standing.yesEnd}
      </button>
      <button type="button" onClick={() => setAsked(false)}>
        {say.standing.no}
      </button>
    </span>
  )
}
