import { useState } from 'preact/hooks'
import { specialDayId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { SpecialDay, SpecialKind } from '../../../shared-core/shop/shop.ts'
import { SPECIAL_KINDS } from '../../../shared-core/shop/stages.ts'
import { Panel } from '../panel.tsx'
import { added, hasRoom, nameMost, SPECIAL_DAYS } from '../set-up/lists.ts'
import { isOn, toggled } from './day-specials.ts'
import type { HistoryParts } from './parts.ts'

const NEW: SpecialDay = { id: specialDayId('new'), name: '', order: 0, kind: 'event', spans: [], retired: false }

/** Says what was special about a day: one of the names that there are, or a new one. */
export function SpecialsPanel(parts: HistoryParts & { readonly date: string }) {
  const { say, shop, store, date } = parts
  const known = inUse(shop.specialDays)
  const send = (value: SpecialDay) => store.send({ type: 'changeSetUp', changes: [{ entity: 'specialDay', value }] })
  return (
    <Panel part="specials" title={say.day.specialTitle}>
      <p class="desk-quiet">{say.day.specialHint}</p>
      {known.map((special) => (
        <label key={special.id} class="desk-line history-special">
          <input type="checkbox" checked={isOn(special, date)} onChange={() => send(toggled(special, date))} />
          {special.name} <span class="desk-quiet">{say.day.kinds[special.kind]}</span>
        </label>
      ))}
      {hasRoom(SPECIAL_DAYS, shop) ? <NewSpecial {...parts} send={send} /> : <p>{say.day.full}</p>}
    </Panel>
  )
}

function NewSpecial(parts: HistoryParts & { readonly date: string; readonly send: (value: SpecialDay) => unknown }) {
  const { say, shop, date, send } = parts
  const [name, setName] = useState('')
  const [kind, setKind] = useState<SpecialKind>('event')
  const typed = name.trim()
  const isTaken = inUse(shop.specialDays).some((one) => one.name.toLowerCase() === typed.toLowerCase())
  return (
    <form
      class="desk-line"
      onSubmit={(event) => {
        event.preventDefault()
        if (typed === '' || isTaken) return
        send(added(SPECIAL_DAYS, shop, { ...NEW, kind, spans: [{ from: date, to: date }] }, typed))
        setName('')
      }}
    >
      <label class="desk-line">
        {say.day.newName}
        <input
          value={name}
          maxLength={nameMost(SPECIAL_DAYS)}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <label class="desk-line">
        {say.day.newKind}
        <select
          value={kind}
          onChange={(event) => setKind(SPECIAL_KINDS.find((one) => one === event.currentTarget.value) ?? kind)}
        >
          {SPECIAL_KINDS.map((one) => (
            <option key={one} value={one}>
              {say.day.kinds[one]}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" disabled={typed === '' || isTaken}>
        {say.day.add}
      </button>
      {isTaken && <p class="desk-trouble">{say.day.nameTaken}</p>}
    </form>
  )
}
