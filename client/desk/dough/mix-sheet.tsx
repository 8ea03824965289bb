import type { Mix } from '../../../shared-core/dough/mix.ts'
import { waterFor } from '../../../shared-core/dough/mix-water.ts'
import { weighedWeight } from '../../parts/shop-weight.ts'
import type { RoomParts } from './room.ts'
import { timeOf } from './room-times.ts'
import { SheetFoot } from './sheet-foot.tsx'
import type { Sheet, SheetRow } from './sheet-view.ts'

export interface SheetProps extends RoomParts {
  readonly sheet: Sheet
}

/** One mix on one page of paper: big type, a box for each line, water and ice, times and room for readings. */
export function MixSheet(props: SheetProps) {
  const { shop, words, say, sheet } = props
  const { mix, place, all, start, mixIns, doughMilligrams } = sheet
  const { formula } = mix
  const weighed = (milligrams: number) => weighedWeight(milligrams, shop.profile.weight)
  const sum = <SheetSum label={say.sheets.total} weight={weighed(doughMilligrams)} />
  return (
    <article class="dough-sheet" aria-label={`${formula.name}, ${say.sheets.head(place, all, mix.bakeDate)}`}>
      <header>
        <h2>{formula.name}</h2>
        <p>
          <strong>{say.sheets.head(place, all, words.times.date(mix.bakeDate))}</strong>
          <span>{mix.startAtMs === null ? say.sheets.startOpen : say.sheets.start(timeOf(mix.startAtMs, props))}</span>
          <span>{shop.profile.name}</span>
        </p>
      </header>
      <table>
        <thead>
          <tr>
            <th>{say.sheets.columns.done}</th>
            <th>{say.sheets.columns.what}</th>
            <th class="desk-number dough-sheet-percent">{say.sheets.columns.percent}</th>
            <th class="desk-number">{say.sheets.columns.weight}</th>
          </tr>
        </thead>
        <tbody>
          <Lines rows={start} say={say} weighed={weighed} />
          {mixIns.length > 0 && (
            <tr class="dough-sheet-part">
              <th colSpan={4}>
                {formula.mixInMs === null
                  ? say.sheets.mixIns
                  : say.sheets.mixInsFrom(Math.round(formula.mixInMs / MINUTE_MS))}
              </th>
            </tr>
          )}
          <Lines rows={mixIns} say={say} weighed={weighed} />
        </tbody>
        <tfoot>{sum}</tfoot>
      </table>
      <Water {...props} mix={mix} />
      <SheetFoot {...props} />
    </article>
  )
}

const MINUTE_MS = 60_000

interface LinesProps extends Pick<RoomParts, 'say'> {
  readonly rows: readonly SheetRow[]
  readonly weighed: (milligrams: number) => string
}

function Lines({ rows, say, weighed }: LinesProps) {
  return (
    <>
      {rows.map((row) => (
        <tr key={row.key}>
          <td>
            <span class="dough-box">{row.isWeighed ? '✓' : ''}</span>
          </td>
          <th scope="row">{row.name ?? say.unknown}</th>
          <td class="desk-number dough-sheet-percent">{row.tenths / 10} %</td>
          <td class="desk-number dough-big">{weighed(row.milligrams)}</td>
        </tr>
      ))}
    </>
  )
}

function SheetSum({ label, weight }: { readonly label: string; readonly weight: string }) {
  return (
    <tr>
      <td />
      <th scope="row">{label}</th>
      <td class="dough-sheet-percent" />
      <td class="desk-number dough-big">{weight}</td>
    </tr>
  )
}

/** With the temperatures as they are known now: what was read with the mix, else in the room, else the set-up's. */
function Water({ state, shop, say, room, mix }: RoomParts & { readonly mix: Mix }) {
  const water = mix.water ?? waterFor(state, shop, mix)
  if (water === null) return <p class="dough-water">{say.sheets.waterOpen}</p>
  const { weight } = shop.profile
  const ice = water.iceMilligrams === 0 ? null : weighedWeight(water.iceMilligrams, weight)
  const isMissed = water.reach === 'tooCold' || water.reach === 'tooWarm'
  return (
    <p class="dough-water">
      <strong>
        {say.sheets.water(room.degrees(water.milliCelsius), weighedWeight(water.waterMilligrams, weight), ice)}
      </strong>
      {water.reach !== 'reached' && <span>{say.sheets[water.reach]}</span>}
      {isMissed && <span>{say.sheets.comesTo(room.degrees(water.doughMilliCelsius))}</span>}
    </p>
  )
}
