import { useMemo } from 'preact/hooks'
import type { PreparationDue } from '../../../shared-core/dough/preparations-due.ts'
import { preparationsDue } from '../../../shared-core/dough/preparations-due.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { Panel } from '../panel.tsx'
import type { RoomParts } from './room.ts'
import { clockOf, dayOf, timeOf } from './room-times.ts'

/** What must be begun today for the mixes to come, with the hours at which it must be. */
export function PreparationsPanel(parts: RoomParts) {
  const { state, shop, room, say } = parts
  const due = useMemo(() => preparationsDue(state, shop, room.minuteMs, room.today, room.noonOf), [state, shop, room])
  return (
    <Panel part="preparations" title={say.days.preparations} isWide>
      <p class="desk-quiet">{say.days.preparationsHint}</p>
      {due.length === 0 ? (
        <p>{say.days.noPreparations}</p>
      ) : (
        <table class="desk-lines">
          <tbody>
            {due.map((one) => (
              <Due key={`${one.preparationId} ${one.forDate ?? ''} ${one.usedAtMs ?? ''}`} {...parts} due={one} />
            ))}
          </tbody>
        </table>
      )}
    </Panel>
  )
}

function Due({ due, ...parts }: RoomParts & { readonly due: PreparationDue }) {
  const { store, shop, words, say, room } = parts
  const { preparationId, forDate, milligrams, seedMilligrams, begin, status } = due
  const name = shop.preparations.get(preparationId)?.name ?? say.unknown
  const day = dayOf(begin.targetAtMs, parts)
  // Its day is said once: the hours around it are mostly of the same. Beside another day, today's is said too.
  const at = (atMs: EpochMs) => {
    const [clock, ofDay] = [clockOf(atMs, parts), dayOf(atMs, parts)]
    return ofDay === day ? clock : words.desk.trays.untilOn(clock, ofDay)
  }
  const seed = seedMilligrams === 0 ? null : room.weight(seedMilligrams)
  return (
    <tr>
      <th scope="row">
        <strong>{forDate === null ? `${say.days.feed}: ${name}` : name}</strong>
      </th>
      <td>{say.days.make(room.weight(milligrams), seed)}</td>
      <td>{forDate !== null && say.days.forDay(words.times.date(forDate))}</td>
      <td>{say.days.begin(at(begin.earliestAtMs), timeOf(begin.targetAtMs, parts), at(begin.latestAtMs))}</td>
      <td class={status === 'late' ? 'desk-trouble' : status === 'due' ? 'desk-even' : 'desk-quiet'}>
        {status === 'late' && '! '}
        {say.days.status[status]}
      </td>
      <td>
        <button
          type="button"
          aria-label={say.days.madeOf(name)}
          onClick={() => store.send({ type: 'makePreparation', preparationId, milligrams, forDate })}
        >
          {say.days.made}
        </button>
      </td>
    </tr>
  )
}
