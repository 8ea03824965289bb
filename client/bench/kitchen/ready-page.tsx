import { KeyGrid } from '../sheet.tsx'
import { columnsOf } from '../sheets/more-sheet.tsx'
import type { KitchenParts } from './kitchen-parts.ts'
import { KitchenSheet } from './kitchen-sheet.tsx'

/** Orders of which everything is made: a touch hands one over. */
export function ReadyPage(props: KitchenParts) {
  const { queue, words, sizes, room, send } = props
  const { kitchen, line, orders } = words
  const items = queue.ready.map(({ orderId, mark, way, madeAtMs, piecesMissing }) => ({
    id: orderId,
    label: mark,
    details: [
      kitchen.readySince(madeAtMs),
      orders.way[way],
      ...(piecesMissing === 0 ? [] : [line.pieces(piecesMissing)]),
    ],
    onPress: () => send({ type: 'handOverOrder', orderId, lines: null }),
  }))
  return (
    <KitchenSheet {...props} title={kitchen.ready} detail={items.length === 0 ? undefined : kitchen.handOverHint}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
        nothing={kitchen.nothingReady}
      />
    </KitchenSheet>
  )
}
