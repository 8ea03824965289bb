import { portionsNow } from '../../../shared-core/kitchen/portions-now.ts'
import { KeyGrid } from '../sheet.tsx'
import { columnsOf } from '../sheets/more-sheet.tsx'
import type { KitchenParts } from './kitchen-parts.ts'
import { KitchenSheet } from './kitchen-sheet.tsx'

/** What is left of each kind of portion: a touch counts it. */
export function PortionsPage(props: KitchenParts) {
  const { state, words, sizes, room, open } = props
  const { kitchen } = words
  const items = portionsNow(state).map(({ portionId, name, left, spokenFor, countedAtMs }) => ({
    id: portionId,
    label: name,
    details: [
      left === null || countedAtMs === null ? kitchen.notCounted : kitchen.left(left, countedAtMs),
      ...(spokenFor === 0 ? [] : [kitchen.spokenFor(spokenFor)]),
    ],
    onPress: () => open({ kind: 'count', portionId }),
  }))
  return (
    <KitchenSheet {...props} title={kitchen.portions}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
        nothing={kitchen.noPortions}
      />
    </KitchenSheet>
  )
}
