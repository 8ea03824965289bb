import { useRef, useState } from 'preact/hooks'
import type { KnownName, KnownNames } from '../../../shared-core/live/order-details.ts'
import { call } from '../call.ts'
import { Panel } from '../panel.tsx'
import { useGot } from '../use-got.ts'
import type { OrdersParts } from './parts.ts'

const NAMES = '/api/v1/orders/names'
/** A word that is being typed asks once. */
const SETTLED_MS = 200
/** Names are deleted at other desks too, and forgotten by themselves. */
const ANEW_MS = 60_000

/** What is known of who ordered: found, and deleted for good. */
export function NamesPage(props: OrdersParts) {
  const { live, state, shop, say } = props
  const [text, setText] = useState('')
  const [asked, setAsked] = useState<string | null>(null)
  const [changes, setChanges] = useState(0)
  const [told, setTold] = useState({ text: '', isTrouble: false })
  const version = `${changes} ${state.orders.size} ${state.standing.size} ${Math.floor(live.nowMs / ANEW_MS)}`
  const got = useGot<KnownNames>(`${NAMES}?text=${encodeURIComponent(text)}`, version, SETTLED_MS)
  // What was found stays on the screen while the next word is asked for.
  const last = useRef<KnownNames | null>(null)
  if (got.kind === 'got') last.current = got.value
  const remove = async ({ id, name, mark }: KnownName) => {
    const done = await call('DELETE', `/api/v1/orders/details/${encodeURIComponent(id)}`)
    setAsked(null)
    setChanges((count) => count + 1)
    const isGone = done.kind === 'done'
    const who = calledOf(name, mark)
    setTold(
      isGone ? { text: say.names.removed(who), isTrouble: false } : { text: say.names.notRemoved, isTrouble: true },
    )
  }
  return (
    <Panel part="names" title={say.pages.names} isWide>
      <p>{say.names.lead}</p>
      <p class="desk-quiet">{say.names.forgotten(shop.orders.forgetDays)}</p>
      <label class="desk-field">
        {say.names.search}
        <input type="search" value={text} onInput={(event) => setText(event.currentTarget.value)} />
      </label>
      {told.text !== '' && (
        <p class={told.isTrouble ? 'desk-trouble' : 'desk-even'} role="status">
          {told.text}
        </p>
      )}
      {last.current === null ? (
        <p class="desk-quiet" role="status">
          {got.kind === 'waiting' ? say.waiting : say.noContact}
        </p>
      ) : (
        <Found {...props} found={last.current} text={text} asked={asked} onAsk={setAsked} onRemove={remove} />
      )}
    </Panel>
  )
}

interface FoundProps extends OrdersParts {
  readonly found: KnownNames
  readonly text: string
  /** Of whom it is asked whether it shall really go. */
  readonly asked: string | null
  readonly onAsk: (id: string | null) => void
  readonly onRemove: (one: KnownName) => Promise<void>
}

function Found(props: FoundProps) {
  const { found, text, asked, say, onAsk, onRemove } = props
  const { names } = found
  if (names.length === 0) return <p>{text === '' ? say.names.none : say.names.noneSuch}</p>
  return (
    <>
      <ul class="orders-names">
        {names.map((one) => (
          <NameRow
            key={one.id}
            {...props}
            one={one}
            isAsked={asked === one.id}
            onAsk={(isAsked) => onAsk(isAsked ? one.id : null)}
            onRemove={() => void onRemove(one)}
          />
        ))}
      </ul>
      {found.found > names.length && <p class="desk-quiet">{say.names.more(found.found - names.length)}</p>}
    </>
  )
}

/** Who has no name is called by the order. */
function calledOf(name: string, mark: string | null): string {
  return name === '' ? (mark ?? '–') : name
}

interface NameRowProps extends Pick<OrdersParts, 'say' | 'words'> {
  readonly one: KnownName
  readonly isAsked: boolean
  readonly onAsk: (isAsked: boolean) => void
  readonly onRemove: () => void
}

function NameRow(props: NameRowProps) {
  const { one, isAsked, say, words, onAsk, onRemove } = props
  const name = calledOf(one.name, one.mark)
  const date = one.day === null ? null : `${words.times.date(one.day)}, ${one.day.slice(0, 4)}`
  return (
    <li>
      <span class="orders-known">
        <strong>{one.name === '' ? '–' : one.name}</strong>
        {one.phone !== '' && <span>{one.phone}</span>}
        <span class="desk-quiet">
          {date === null ? say.names.ofStanding(one.mark ?? '') : say.names.ofOrder(one.mark, date)}
        </span>
        {one.note !== '' && <span class="orders-note">{`“${one.note}”`}</span>}
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
