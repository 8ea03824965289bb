import { KeyGrid } from '../sheet.tsx'
import { columnsOf } from '../sheets/more-sheet.tsx'
import type { KitchenParts } from './kitchen-parts.ts'
import { KitchenSheet } from './kitchen-sheet.tsx'
import { rodViews } from './rods-view.ts'

/** All that is on one rod, where not all of it fits. */
export function RodPage(props: KitchenParts & { readonly rod: string }) {
  const { words, sizes, room, open } = props
  const rod = rodViews(props).find(({ key }) => key === props.rod)
  const items = (rod?.rings ?? []).map(({ key, mark, told, part, ring }) => ({
    id: key,
    label: mark,
    details: [told],
    tone: ring.state === 'late' ? ('late' as const) : ring.state === 'act' ? ('act' as const) : undefined,
    onPress: () => open({ kind: 'item', part }),
  }))
  return (
    <KitchenSheet {...props} title={rod?.name ?? words.kitchen.item.gone} detail={rod?.allergy}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
      />
    </KitchenSheet>
  )
}
