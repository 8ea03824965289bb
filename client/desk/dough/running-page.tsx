import type { BatchStage } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
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
                <th>{columns.ready}</th>
                <th>{columns.latest}</th>
                <th>{columns.state}</th>
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
  const { words, say } = parts
  const at = (atMs: EpochMs) => timeOf(atMs, parts)
  const { what, until, status, stage } = row
  const name = 'mix' in what ? what.mix.formula.name : `${what.batch.pieces} ${nameOf(what.batch, words)}`
  const where = 'mix' in what ? say.running.stage[what.mix.stage] : words.line.stage(stage as BatchStage)
  const place = 'batch' in what && what.batch.place !== undefined ? ` · ${what.batch.place}` : ''
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{where + place}</td>
      <td>{at(row.sinceMs)}</td>
      <td>{until === null ? '' : at(until.earliestAtMs)}</td>
      <td>{until === null ? '' : at(until.latestAtMs)}</td>
      <td class={status === 'late' ? 'desk-trouble' : status === 'ready' ? 'desk-even' : 'desk-quiet'}>
        {status === 'late' ? '! ' : status === 'ready' ? '✓ ' : ''}
        {say.running.status[status]}
      </td>
    </tr>
  )
}

type Named = RoomParts['words']
type BatchOf = Extract<ClockRow['what'], { batch: unknown }>['batch']

function nameOf({ varietyId, doughId }: BatchOf, words: Named): string {
  return varietyId === null ? words.names.dough(doughId) : words.names.variety(varietyId)
}
