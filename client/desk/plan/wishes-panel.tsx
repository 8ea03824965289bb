import { useState } from 'preact/hooks'
import { shelfId, varietyId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { instantOfMinute } from '../../live/clock-text.ts'
import { Panel } from '../panel.tsx'
import type { DayParts } from './parts.ts'
import { withForbid, withoutForbid, withoutPin } from './wishes.ts'

/** What people set and leave free, each in words, and a way to lift it. */
export function WishesPanel(parts: DayParts) {
  const { wishes, onWishes, say, words } = parts
  const isEmpty = wishes.pins.length === 0 && wishes.forbids.length === 0
  return (
    <Panel part="plan-wishes" title={say.wishes.title}>
      {isEmpty && <p class="desk-quiet">{say.wishes.none}</p>}
      <ul class="plan-wishes">
        {wishes.pins.map(({ key, lines, shelfId: shelf, inAtMs }) => (
          <li key={key}>
            <span>{say.wishes.pin(words.line.contents(lines), shelf && words.line.shelf(shelf), inAtMs)}</span>
            <button type="button" onClick={() => onWishes(withoutPin(wishes, key))}>
              {say.wishes.unpin}
            </button>
          </li>
        ))}
        {wishes.forbids.map((forbid) => (
          <li key={JSON.stringify(forbid)}>
            <span>{say.wishes.forbid(forbid)}</span>
            <button type="button" onClick={() => onWishes(withoutForbid(wishes, forbid))}>
              {say.wishes.lift}
            </button>
          </li>
        ))}
      </ul>
      <h3>{say.wishes.addTitle}</h3>
      <LeaveFree {...parts} />
    </Panel>
  )
}

const ANY = ''

/** A shelf, a variety or all of it, from one time to another. */
function LeaveFree({ say, shop, room, date, wishes, onWishes }: DayParts) {
  const [shelf, setShelf] = useState(ANY)
  const [variety, setVariety] = useState(ANY)
  const [from, setFrom] = useState('')
  const [to, setTo] = useState('')
  const [isWrong, setWrong] = useState(false)
  const add = () => {
    const noonMs = room.noonOf(date)
    const [fromMinute, toMinute] = [minuteOf(from), minuteOf(to)]
    const isSpan = fromMinute !== null && toMinute !== null && fromMinute < toMinute
    setWrong(!isSpan)
    if (!isSpan) return
    const [fromMs, toMs] = [fromMinute, toMinute].map((minute) => instantOfMinute(room.clock, minute, noonMs))
    if (fromMs === undefined || toMs === undefined) return
    const shelfOf = shelf === ANY ? null : shelfId(shelf)
    onWishes(
      withForbid(wishes, { shelfId: shelfOf, varietyId: variety === ANY ? null : varietyId(variety), fromMs, toMs }),
    )
  }
  return (
    <form
      class="desk-form"
      onSubmit={(event) => {
        event.preventDefault()
        add()
      }}
    >
      <Choice label={say.wishes.shelf} any={say.wishes.anyShelf} of={inUse(shop.shelves)} value={shelf} on={setShelf} />
      <Choice
        label={say.wishes.variety}
        any={say.wishes.anyVariety}
        of={inUse(shop.varieties)}
        value={variety}
        on={setVariety}
      />
      <TimeField label={say.wishes.from} value={from} on={setFrom} />
      <TimeField label={say.wishes.to} value={to} on={setTo} />
      <button type="submit">{say.wishes.add}</button>
      {isWrong && (
        <p class="desk-trouble" role="alert">
          {say.wishes.wrongSpan}
        </p>
      )}
    </form>
  )
}

interface ChoiceProps {
  readonly label: string
  readonly any: string
  readonly of: readonly { readonly id: string; readonly name: string }[]
  readonly value: string
  readonly on: (value: string) => void
}

function Choice({ label, any, of, value, on }: ChoiceProps) {
  return (
    <label class="desk-field">
      {label}
      <select value={value} onChange={(event) => on(event.currentTarget.value)}>
        <option value={ANY}>{any}</option>
        {of.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
}

export function TimeField({ label, value, on }: Pick<ChoiceProps, 'label' | 'value' | 'on'>) {
  return (
    <label class="desk-field">
      {label}
      <input type="time" value={value} onInput={(event) => on(event.currentTarget.value)} />
    </label>
  )
}

/** @example minuteOf('8:15') // 495 */
export function minuteOf(text: string): number | null {
  const found = /^(\d{1,2}):(\d{2})/.exec(text)
  return found === null ? null : Number(found[1]) * 60 + Number(found[2])
}
