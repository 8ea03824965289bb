import { inUse } from '../../../shared-core/shop/in-order.ts'
import { KeyGrid } from '../sheet.tsx'
import { columnsOf } from '../sheets/more-sheet.tsx'
import type { SettingsPart } from './settings-sheet.tsx'

/** Who works at this screen, chosen once: whoever does a step of a list here did it. */
export function PersonPart(props: SettingsPart) {
  const { store, live, shop, say, room } = props
  const people = inUse(shop.people)
  const items = [
    {
      id: 'nobody',
      label: say.comfort.nobody,
      chosen: live.settings.personId === null,
      onPress: () => store.changeSettings({ personId: null }),
    },
    ...people.map(({ id, name }) => ({
      id,
      label: name,
      chosen: live.settings.personId === id,
      onPress: () => store.changeSettings({ personId: id }),
    })),
  ]
  return (
    <>
      <div class="bench-quiet">{people.length === 0 ? say.comfort.noPeople : say.comfort.personHint}</div>
      <KeyGrid {...props} columns={columnsOf(props)} rows={room.rows - 1} widthPx={room.widthPx} items={items} />
    </>
  )
}
