import type { ComponentChildren } from 'preact'
import { Key } from '../../parts/key.tsx'
import { Sheet } from '../sheet.tsx'
import type { RoomSheetProps } from './room-parts.ts'

export interface RoomSheetFrame extends RoomSheetProps {
  readonly title: string
  readonly detail?: string | undefined
  /** Where the way back leads, when not to the dough room itself. */
  readonly onBack?: (() => void) | undefined
  readonly children: ComponentChildren
}

/** A page over the dough room: what was done last can be taken back from it. */
export function RoomSheet(props: RoomSheetFrame) {
  const { words, lastDone, takeBack, open, onBack, detail } = props
  const back = onBack ?? (() => open(null))
  const { told } = words
  const canTakeBack = lastDone !== null && lastDone.refusal === null
  return (
    <Sheet
      {...props}
      detail={detail}
      backLabel={onBack === undefined ? words.room.back : words.room.backOne}
      onClose={back}
      keys={
        canTakeBack && (
          <div class="bench-mode">
            <Key name={`${told.takeBack}: ${lastDone.text}`} onPress={() => takeBack(lastDone)}>
              <span class="bench-small bench-strong">{told.takeBack}</span>
            </Key>
          </div>
        )
      }
    />
  )
}
