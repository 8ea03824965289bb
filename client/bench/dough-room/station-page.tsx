import { KeyGrid } from '../sheet.tsx'
import type { RoomSheetProps, StationId } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'
import { stationViews, whenOf } from './room-view.ts'

/** All that stands at one station, where its column has no room for it. */
export function StationPage(props: RoomSheetProps & { readonly station: StationId }) {
  const { station, words, sizes, room, open } = props
  const view = stationViews(props).find(({ id }) => id === station)
  if (view === undefined) return null
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
        items={view.items.map((item) => ({
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
