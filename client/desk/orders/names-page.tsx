import { useState } from 'preact/hooks'
import { call } from '../call.ts'
import { Panel } from '../panel.tsx'
import { isFound, plain } from './day-view.ts'
import type { KnownName } from './names-view.ts'
import { knownNames } from './names-view.ts'
import { whenOf } from './order-times.ts'
import type { OrdersParts } from './parts.ts'

/** As many as are looked over at once. */
const NAMES_AT_FIRST = 40

/** What is known of who ordered: found, and deleted for good. */
export function NamesPage(props: OrdersParts) {
  const { state, shop, say, book } = props
  const [text, setText] = useState('')
  const [most, setMost] = useState(NAMES_AT_FIRST)
  const [asked, setAsked] = useState<string | null>(null)
  const [gone, setGone] = useState<ReadonlySet<string>>(new Set())
  const [told, setTold] = useState({ text: '', isTrouble: false })
  const all = knownNames(state, book).filter(({ id }) => !gone.has(id))
  const found = all.filter(({ mark, details }) =>
    isFound(plain(text), [mark, details.name, details.phone, details.note]),
  )
  const remove = async ({ id, details, mark }: KnownName) => {
    const name = details.name === '' ? mark : details.name
    const done = await call('DELETE', `/api/v1/orders/details/${encodeURIComponent(id)}`)
    setAsked(null)
    // What another desk deleted meanwhile is gone too.
    const isGone = done.kind === 'done' || (done.kind === 'refused' && done.status === 404)
    if (isGone) setGone((so) => new Set([...so, id]))
    setTold(
      isGone ? { text: say.names.removed(name), isTrouble: false } : { text: say.names.notRemoved, isTrouble: true },
    )
  }
  return (
    <Panel part="names" title={say.pages.names} isWide>
      <p>{say.names.lead}</p>
      <p class="desk-quiet">{say.names.forgotten(shop.orders.forgetDays)}</p>
      {told.text !== '' && (
        <p class={told.isTrouble ? 'desk-trouble' : 'desk-even'} role="status">
          {told.text}
        </p>
      )}
      {all.length === 0 ? (
        <p>{say.names.none}</p>
      ) : (
        <>
          <label class="desk-field">
            {say.names.search}
            <input type="search" value={text} onInput={(event) => setText(event.currentTarget.value)} />
          </label>
          {found.length === 0 && <p>{say.names.noneSuch}</p>}
          <ul class="orders-names">
            {found.slice(0, most).map((one) => (
              <NameRow
                key={one.id}
                {...props}
                one={one}
                isAsked={asked === one.id}
                onAsk={(isAsked) => setAsked(isAsked ? one.id : null)}
                onRemove={() => void remove(one)}
              />
            ))}
          </ul>
          {found.length > most && (
            <button type="button" onClick={() => setMost(found.length)}>
              {say.names.more(found.length - most)}
            </button>
          )}
        </>
      )}
    </Panel>
  )
}

interface NameRowProps extends OrdersParts {
  readonly one: KnownName
  readonly isAsked: boolean
  readonly onAsk: (isAsked: boolean) => void
  readonly onRemove: () => void
}

function NameRow(props: NameRowProps) {
  const { one, isAsked, say, onAsk, onRemove } = props
  const { details, mark, dueAtMs } = one
  const name = details.name === '' ? mark : details.name
  return (
    <li>
      <span class="orders-known">
        <strong>{details.name === '' ? '–' : details.name}</strong>
        {details.phone !== '' && <span>{details.phone}</span>}
        <span class="desk-quiet">
          {dueAtMs === null ? say.names.ofStanding(mark) : say.names.ofOrder(mark, whenOf(dueAtMs, props))}
        </span>
        {details.note !== '' && <span class="orders-note">“{details.note}”</span>}
      </span>
      {isAsked ? (
        <span class="orders-ask" role="alert">
          <span>{say.names.sure(name)}</span>
          <button type="button" class="desk-strong" onClick={onRemove}>
            {say.names.yes}
          </button>
          <button type="button" onClick={() => onAsk(false)}>
            {say.names.no}
          </button>
        </span>
      ) : (
        <button type="button" aria-label={say.names.removeOf(name)} onClick={() => onAsk(true)}>
          {say.names.remove}
        </button>
      )}
    </li>
  )
}
