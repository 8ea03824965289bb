import type { StationId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { DeskWords } from '../../words/desk.ts'

interface StationFieldProps {
  readonly shop: Shop
  readonly words: DeskWords
  readonly title: string
  readonly stationId: StationId | null
  readonly onChoose: (stationId: StationId | null) => void
}

/** The station whose acts stand large on a screen. */
export function StationField({ shop, words, title, stationId, onChoose }: StationFieldProps) {
  const stations = inUse(shop.stations)
  return (
    <label class="desk-field">
      <span>{title}</span>
      <select
        value={stationId ?? ''}
        onChange={(event) => onChoose(stations.find(({ id }) => id === event.currentTarget.value)?.id ?? null)}
      >
        <option value="">{words.desk.screens.allStations}</option>
        {stations.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
}
