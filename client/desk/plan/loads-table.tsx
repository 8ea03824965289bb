import type { EpochMs } from '../../../shared-core/units.ts'
import { Panel } from '../panel.tsx'
import type { DayParts } from './parts.ts'
import type { ShownLoad } from './wishes.ts'

/** The picture in words: every load with its times, what is in it, and why. */
export function LoadsTable(parts: DayParts) {
  const { shown, say } = parts
  const { table } = say
  return (
    <Panel part="plan-loads" title={table.title} isWide>
      <p class="desk-quiet">{table.hint}</p>
      <table class="desk-cards plan-loads">
        <thead>
          <tr>
            <th>{table.in}</th>
            <th>{table.shelf}</th>
            <th>{table.kettle}</th>
            <th>{table.flip}</th>
            <th>{table.out}</th>
            <th>{table.contents}</th>
            <th>{table.state}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((one) => (
            <LoadRow key={one.key} {...parts} one={one} />
          ))}
        </tbody>
      </table>
    </Panel>
  )
}

function LoadRow({ one, say, words, chosen, onChoose }: DayParts & { readonly one: ShownLoad }) {
  const { key, load } = one
  const { table } = say
  const clock = (atMs: EpochMs | null) => (atMs === null ? '–' : words.times.clock(atMs))
  const state = [load.isPinned ? table.pinned : table.advised, ...(load.isLast ? [table.last] : [])].join(', ')
  return (
    <tr aria-current={chosen === key ? 'true' : undefined}>
      <th scope="row">
        <button type="button" class="plan-in" onClick={() => onChoose(key)}>
          {clock(load.inAtMs)}
        </button>
      </th>
      <td data-label={table.shelf}>{words.names.shelf(load.shelfId)}</td>
      <td data-label={table.kettle}>{clock(load.kettleAtMs)}</td>
      <td data-label={table.flip}>{clock(load.flipAtMs)}</td>
      <td data-label={table.out}>{clock(load.outAtMs)}</td>
      <td class="plan-contents">
        <strong>{words.line.contents(load.lines)}</strong>
        <p class="plan-reasons">{load.why.map((why) => say.why(why)).join(' · ')}</p>
        <Contacts load={load} say={say} />
      </td>
      <td>{state}</td>
    </tr>
  )
}

type Told = Pick<DayParts, 'say'> & Pick<ShownLoad, 'load'>

/** Why each line is in its load, and what it should not have met. */
export function Reasons({ load, say }: Told) {
  return (
    <>
      <ul class="plan-why">
        {load.why.map((why) => (
          <li key={why.varietyId}>{say.why(why)}</li>
        ))}
      </ul>
      <Contacts load={load} say={say} />
    </>
  )
}

function Contacts({ load, say }: Told) {
  return (
    <>
      {load.contacts.map((contact) => (
        <p key={contact.varietyId} class="desk-trouble">
          {say.contact(contact)}
        </p>
      ))}
    </>
  )
}
