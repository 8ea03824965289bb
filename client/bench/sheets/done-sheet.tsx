import type { Act } from '../../../shared-core/day/commands.ts'
import { Key } from '../../parts/key.tsx'
import type { DoneView } from '../done-view.ts'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'
import { ListRows } from './list-rows.tsx'

export interface DoneSheetProps extends SheetParts {
  readonly done: readonly DoneView[]
  readonly send: (act: Act) => void
}

/** What was done, this screen's last act first; each can be taken back, or says why not. */
export function DoneSheet(props: DoneSheetProps) {
  const { done, words, room, send } = props
  const items = done.map((one) => ({
    id: one.commandId,
    title: one.text,
    texts: [one.by, one.refusal ?? ''].filter((text) => text !== ''),
    one,
  }))
  return (
    <Sheet {...props} title={words.bench.done.title}>
      <ListRows
        {...props}
        items={items}
        nothing={words.bench.done.nothing}
        keysOf={({ one }) =>
          one.refusal === null && (
            <div class="bench-list-key" style={{ width: `${2 * room.keyPx}px` }}>
              <Key
                tone="strong"
                name={`${words.told.takeBack}: ${one.text}`}
                onPress={() => send({ type: 'takeBack', commandId: one.commandId })}
              >
                <span class="bench-small bench-strong">{words.told.takeBack}</span>
              </Key>
            </div>
          )
        }
      />
    </Sheet>
  )
}
