import type { Place } from '../../../shared-core/dough/mix.ts'
import type { GridItem } from '../sheet.tsx'
import { KeyGrid } from '../sheet.tsx'
import { NumberPad } from './number-pad.tsx'
import { readingText } from './readings-view.ts'
import type { RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'

const PLACES = ['room', 'cooler', 'flour', 'tap'] as const satisfies readonly Place[]

/** How warm room, cooler, flour and tap are: a key each, and the divider check beside them. */
export function ReadingsPage(props: RoomSheetProps) {
  const { words, sizes, room, open } = props
  const say = words.room.readings
  const items = [
    ...PLACES.map(
      (place): GridItem => ({
        id: `read ${place}`,
        label: say.places[place],
        details: [readingText(place, props)],
        onPress: () => open({ kind: 'reading', place }),
      }),
    ),
    {
      id: 'check',
      label: words.room.divider.title,
      details: [],
      onPress: () => open({ kind: 'divider', doughId: null, mixId: null }),
    },
  ]
  return (
    <RoomSheet {...props} title={say.title} detail={say.hint}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={2}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
      />
    </RoomSheet>
  )
}

export function ReadingPage(props: RoomSheetProps & { readonly place: Place }) {
  const { place, shop, words, send, open } = props
  const unit = shop.profile.temperature
  const back = () => open({ kind: 'readings' })
  return (
    <NumberPad
      {...props}
      title={words.room.readings.places[place]}
      hint={readingText(place, props)}
      unit={`°${unit}`}
      canBeNegative
      onBack={back}
      onSave={(thousandths) => {
        send({ type: 'readPlace', place, read: { thousandths, unit } })
        back()
      }}
    />
  )
}
