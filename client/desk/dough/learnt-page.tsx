import { milliDifferenceOf } from '../../../shared-core/shop/temperature.ts'
import { localDate } from '../../live/clock-text.ts'
import { Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import { DividerPanel } from './divider-panel.tsx'
import { frictionTrust, pacePercent } from './learnt-view.ts'
import type { RoomParts } from './room.ts'

/** What readings, tests and weighings have taught, with what stands behind it. */
export function LearntPage(parts: RoomParts) {
  const { say } = parts
  return (
    <div class="desk-parts">
      <Panel part="friction" title={say.learnt.friction} isWide>
        <FrictionTable {...parts} />
      </Panel>
      <Panel part="pace" title={say.learnt.pace} isWide>
        <PaceTable {...parts} />
      </Panel>
      <DividerPanel {...parts} />
    </div>
  )
}

function FrictionTable({ state, shop, say, room }: RoomParts) {
  const { learnt } = say
  const frictions = [...state.frictions.values()].sort((one, other) => (one.id < other.id ? -1 : 1))
  if (frictions.length === 0) return <p>{learnt.noFriction}</p>
  const { frictionColumns: columns } = learnt
  return (
    <>
      <p class="desk-quiet">{learnt.frictionHint}</p>
      <Sideways name={learnt.friction}>
        <table>
          <thead>
            <tr>
              <th>{columns.formula}</th>
              <th>{columns.mixer}</th>
              <th class="desk-number">{columns.value}</th>
              <th class="desk-number">{columns.setUp}</th>
              <th>{columns.readings}</th>
              <th>{columns.trust}</th>
            </tr>
          </thead>
          <tbody>
            {frictions.map((friction) => {
              const formula = shop.formulas.get(friction.formulaId)
              return (
                <tr key={friction.id}>
                  <th scope="row">
                    {formula?.name ?? say.unknown}
                    {friction.factors === 4 && `, ${learnt.withPreferment}`}
                  </th>
                  <td>{friction.mixer}</td>
                  <td class="desk-number">
                    <strong>{room.difference(friction.milliCelsius)}</strong>
                  </td>
                  <td class="desk-number">
                    {formula === undefined ? '' : room.difference(milliDifferenceOf(formula.friction))}
                  </td>
                  <td>{friction.readings.map(({ milliCelsius }) => room.difference(milliCelsius)).join(', ')}</td>
                  <td class="desk-quiet">{learnt.trust[frictionTrust(friction).trust]}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </Sideways>
    </>
  )
}

function PaceTable({ state, words, say, room }: RoomParts) {
  const { learnt } = say
  const teachings = [...state.teachings.values()].sort((one, other) => (one.doughId < other.doughId ? -1 : 1))
  if (teachings.length === 0) return <p>{learnt.noPace}</p>
  return (
    <>
      <p class="desk-quiet">{learnt.paceHint}</p>
      <table class="desk-lines">
        <tbody>
          {teachings.map((teaching) => (
            <tr key={teaching.doughId}>
              <th scope="row">{words.names.dough(teaching.doughId)}</th>
              <td>
                <strong>{learnt.paceSays(pacePercent(teaching))}</strong>
              </td>
              <td class="desk-quiet">
                {teaching.tests
                  .map(({ atMs, share, passed }) =>
                    learnt.paceTest(passed, Math.round(share / 10), words.times.date(localDate(room.clock, atMs))),
                  )
                  .join('; ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}
