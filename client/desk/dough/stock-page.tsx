import type { RoomParts } from './room.ts'

export function StockPage({ say }: RoomParts) {
  return <p>{say.stock.none}</p>
}
