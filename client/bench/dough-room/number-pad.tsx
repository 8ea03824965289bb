import { useState } from 'preact/hooks'
import type { GridItem } from '../sheet.tsx'
import { KeyGrid } from '../sheet.tsx'
import { splitRoom } from '../sheets/split.ts'
import type { RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'
import type { PadKey } from './typed-number.ts'
import { afterKey, typedThousandths } from './typed-number.ts'

export interface NumberPadProps extends RoomSheetProps {
  readonly title: string
  /** After the number: "°F", "g". */
  readonly unit: string
  readonly hint?: string | undefined
  readonly canBeNegative?: boolean
  /** On the key that takes the number. */
  readonly saveLabel?: string | undefined
  /** Beside the pad's own keys. */
  readonly more?: readonly GridItem[] | undefined
  readonly onSave: (thousandths: number) => void
  readonly onBack?: (() => void) | undefined
}

/** Three columns as on a telephone; with room for a fourth, the keys that correct stand beside them. */
const NARROW = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '±', '0', '.', 'back', 'clear', 'save'] as const
const WIDE = ['1', '2', '3', 'back', '4', '5', '6', 'clear', '7', '8', '9', '.', '±', '0', 'save'] as const

/** A number typed with keys that wet hands can hit. */
export function NumberPad(props: NumberPadProps) {
  const { words, title, unit, hint, canBeNegative = false, saveLabel, more = [], onSave, room, sizes } = props
  const [typed, setTyped] = useState('')
  const { pad } = words.room
  const thousandths = typedThousandths(typed)
  const { isNarrow } = splitRoom(room)
  const label = (key: PadKey) => (key === 'back' ? pad.back : key === 'clear' ? pad.clear : key)
  const item = (key: PadKey | 'save'): GridItem =>
    key === 'save'
      ? {
          id: 'save',
          label: saveLabel ?? pad.save,
          tone: 'act',
          refusal: thousandths === null ? pad.typeFirst : undefined,
          onPress: () => {
            if (thousandths === null) return
            onSave(thousandths)
            setTyped('')
          },
        }
      : { id: `pad ${key}`, label: label(key), onPress: () => setTyped((before) => afterKey(before, key)) }
  const keys = (isNarrow ? NARROW : WIDE).filter((key) => canBeNegative || key !== '±')
  return (
    <RoomSheet {...props} title={title} detail={hint}>
      <output class={isNarrow ? 'dough-typed dough-typed-narrow' : 'dough-typed'}>
        <strong class="dough-figure">{typed === '' ? '–' : typed.replace('-', '−')}</strong>
        <span class="bench-label">{unit}</span>
      </output>
      <div class="dough-pad">
        <KeyGrid
          words={words}
          sizes={sizes}
          room={room}
          columns={isNarrow ? 3 : 4}
          rows={Math.max(isNarrow ? 5 : 4, room.rows)}
          widthPx={isNarrow ? room.widthPx : splitRoom(room).rightPx}
          items={[...keys.map(item), ...more]}
        />
      </div>
    </RoomSheet>
  )
}
