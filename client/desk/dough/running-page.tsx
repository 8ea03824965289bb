import type { EpochMs } from '../../../shared-core/units.ts'
import { stuffOf } from '../../words/names.ts'
import { Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { ClockRow } from './clock-rows.ts'
import { clockRows } from './clock-rows.ts'
import { DoughAccountPanel } from './dough-account-panel.tsx'
import type { RoomParts } from './room.ts'
import { timeOf } from './room-times.ts'
import { TempsPanel } from './temps-panel.tsx'

/** What runs in the dough room now. */
export function RunningPage(parts: RoomParts) {
  return (
    <div class="desk-parts">
      <ClocksPanel {...parts} />
      <TempsPanel {...parts} />
      <DoughAccountPanel {...parts} />
    </div>
  )
}

function ClocksPanel(parts: RoomParts) {
  const { state, live, say } = parts
  const rows = clockRows(state, live.nowMs)
  const { columns } = say.running
  return (
    <Panel part="clocks" title={say.running.clocks} isWide>
      <p class="desk-quiet">{say.running.clocksHint}</p>
      {rows.length === 0 ? (
        <p>{say.running.noClocks}</p>
      ) : (
        <Sideways name={say.running.clocks}>
          <table class="dough-clocks">
            <thead>
              <tr>
                <th>{columns.what}</th>
                <th>{columns.where}</th>
                <th>{columns.since}</th>
                <th>{columns.earliest}</th>
                <th>{columns.latest}</th>
                <th>{columns.state}</th>
                <td />
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <Clock key={row.key} {...parts} row={row} />
              ))}
            </tbody>
          </table>
        </Sideways>
      )}
    </Panel>
  )
}

function Clock({ row, ...parts }: RoomParts & { readonly row: ClockRow }) {
  const { say } = parts
  const at = (atMs: EpochMs) => timeOf(atMs, parts)
  const { until, status, what } = row
  return (
    <tr>
      <th scope="row">{nameOf(row, parts)}</th>
      <td>{whereIs(row, parts)}</td>
      <td class="dough-together">{at(row.sinceMs)}</td>
      <td class="dough-together">{until === null ? '' : at(until.earliestAtMs)}</td>
      <td class="dough-together">{until === null ? '' : at(until.latestAtMs)}</td>
      <td class={status === 'late' ? 'desk-trouble' : status === 'ready' ? 'desk-even' : 'desk-quiet'}>
        {status === 'late' ? '! ' : status === 'ready' ? '✓ ' : ''}
        {say.running.status[status]}
      </td>
      <td class="dough-together">
        {'build' in what && (
          <button
            type="button"
            aria-label={say.running.dropOf(nameOf(row, parts))}
            onClick={() => parts.store.send({ type: 'dropBuild', buildId: what.build.id })}
          >
            {say.running.drop}
          </button>
        )}
      </td>
    </tr>
  )
}

function nameOf({ what }: ClockRow, { shop, words, say, room }: RoomParts): string {
  if ('mix' in what) return what.mix.formula.name
  if ('build' in what) {
    const name = shop.preparations.get(what.build.preparationId)?.name ?? say.unknown
    return say.running.build(name, room.weight(what.leftMilligrams))
  }
  const pieces = what.batches.reduce((sum, batch) => sum + batch.pieces, 0)
  return `${pieces} ${stuffOf(what.batches[0] ?? {}, words.names)}`
}

/** Where it is, and on which racks where somebody said. */
function whereIs({ what }: ClockRow, { words, say }: RoomParts): string {
  if ('mix' in what) return say.running.stage[what.mix.stage]
  if ('build' in what) return say.running.ripens
  const places = what.batches.flatMap(({ place }) => place ?? [])
  const stage = what.batches.slice(0, 1).map((batch) => words.line.stage(batch.stage))
  return [...stage, ...(places.length === 0 ? [] : [places.join(', ')])].join(' · ')
}
