import type { BatchId } from '../../../shared-core/ids.ts'
import { KeyGrid } from '../sheet.tsx'
import type { RoomSheetProps, StationId } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'
import { stationViews, whenOf } from './room-view.ts'
import { batchItem } from './tray-view.ts'

export interface StationPageProps extends RoomSheetProps {
  readonly station: StationId
  /** Null: all that stands there. */
  readonly batchIds: readonly BatchId[] | null
}

/** All that stands at one station, where its column has no room for it; or the trays of one of its keys. */
export function StationPage(props: StationPageProps) {
  const { station, batchIds, words, sizes, room, open, state } = props
  const view = stationViews(props).find(({ id }) => id === station)
  if (view === undefined) return null
  const trays = (batchIds ?? []).flatMap((id) => state.batches.get(id) ?? [])
  const items = batchIds === null ? view.items : trays.map((batch) => batchItem(batch, props))
  return (
    <RoomSheet {...props} title={view.title} detail={view.detail}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={Math.max(1, Math.floor((room.widthPx + room.gapPx) / (2.2 * room.keyPx + room.gapPx)))}
        rows={room.rows}
        widthPx={room.widthPx}
        nothing={view.nothing}
        items={items.map((item) => ({
          id: item.id,
          label: item.what,
          details: [whenOf(item), ...item.contents].filter((text) => text !== ''),
          tone: item.tone,
          onPress: () => open(item.page),
        }))}
      />
    </RoomSheet>
  )
}
