import { useState } from 'preact/hooks'
import type { GridItem } from '../sheet.tsx'
import { KeyGrid } from '../sheet.tsx'
import { splitRoom } from '../sheets/split.ts'
import type { RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'

/** The longest place: a rack, a dash, a level. */
const LETTERS_MAX = 7
const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '-', '0'] as const

export interface PlacePadProps extends RoomSheetProps {
  readonly now: string | null
  readonly onPlace: (place: string | null) => void
  readonly onEnd: () => void
}

/** Rack and level, as "2-7": typed with large keys, or one of those that stand there already. */
export function PlacePad(props: PlacePadProps) {
  const { words, room, sizes, now, onPlace, onEnd } = props
  const [typed, setTyped] = useState(now ?? '')
  const { pad, shape } = words.room
  const { isNarrow, rightPx } = splitRoom(room)
  const items: readonly GridItem[] = [
    ...KEYS.map(
      (key): GridItem => ({
        id: `pad ${key}`,
        label: key,
        onPress: () =>
          setTyped((before) => `${before}${key}`.replace(/^-|--/, (text) => text.slice(1)).slice(0, LETTERS_MAX)),
      }),
    ),
    { id: 'pad clear', label: pad.clear, onPress: () => setTyped('') },
    {
      id: 'save',
      label: pad.save,
      tone: 'act',
      onPress: () => {
        onPlace(typed === '' ? null : typed)
        onEnd()
      },
    },
  ]
  return (
    <RoomSheet {...props} title={shape.place} detail={shape.placeHint} onBack={onEnd}>
      <output class={isNarrow ? 'dough-typed dough-typed-narrow' : 'dough-typed'}>
        <strong class="dough-figure">{typed === '' ? '–' : typed}</strong>
      </output>
      <div class="dough-pad">
        <KeyGrid
          words={words}
          sizes={sizes}
          room={room}
          columns={isNarrow ? 3 : 4}
          rows={Math.max(isNarrow ? 5 : 4, room.rows)}
          widthPx={isNarrow ? room.widthPx : rightPx}
          items={items}
        />
      </div>
    </RoomSheet>
  )
}
