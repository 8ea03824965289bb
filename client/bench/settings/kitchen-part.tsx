import type { KitchenStationId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { kitchenRoomWords } from '../../words/bench-kitchen.ts'
import { KeyGrid } from '../sheet.tsx'
import { columnsOf } from '../sheets/more-sheet.tsx'
import type { SettingsPart } from './settings-sheet.tsx'

/** Where things are made to order that this screen is for: any number of stations. */
export function KitchenPart(props: SettingsPart) {
  const { store, live, shop, words, room } = props
  const { kitchen: chosen } = live.settings
  const say = kitchenRoomWords(words).kitchen.stations
  const toggle = (id: KitchenStationId) =>
    store.changeSettings({ kitchen: chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id] })
  const items = [
    {
      id: 'none',
      label: say.none,
      chosen: chosen.length === 0,
      onPress: () => store.changeSettings({ kitchen: [] }),
    },
    ...inUse(shop.kitchenStations).map(({ id, name }) => ({
      id,
      label: name,
      chosen: chosen.includes(id),
      onPress: () => toggle(id),
    })),
  ]
  return (
    <>
      <div class="bench-quiet">{say.hint}</div>
      <KeyGrid {...props} columns={columnsOf(props)} rows={room.rows - 1} widthPx={room.widthPx} items={items} />
    </>
  )
}
