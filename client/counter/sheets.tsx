import { notesWaiting } from '../../shared-core/day/notes.ts'
import { NotesSheet } from '../parts/notes-sheet.tsx'
import { noteWords } from '../words/notes.ts'
import { AfternoonSheet } from './afternoon-sheet.tsx'
import { AmountsSheet } from './amounts-sheet.tsx'
import { CloseSheet } from './close-sheet.tsx'
import type { BoardState } from './counter-board.tsx'
import type { CounterParts } from './counter-screen.tsx'
import { DayOldSheet } from './day-old-sheet.tsx'
import { DeviceSheet } from './device-sheet.tsx'
import { KeptSheet } from './kept-sheet.tsx'
import { MoreSheet } from './more-sheet.tsx'
import { OrdersLater } from './orders-later.tsx'
import type { Sheet } from './sheet.ts'
import { SweepSheet } from './sweep-sheet.tsx'
import { rodsToCount } from './sweep-view.ts'

export interface SheetProps extends CounterParts {
  readonly board: BoardState
}

/** What covers the rack. */
export function SheetOf(props: SheetProps & { readonly sheet: Sheet }) {
  const { store, state, words, board, sheet } = props
  const close = () => board.openSheet(null)
  switch (sheet.kind) {
    case 'amounts':
      return <AmountsSheet {...props} purpose={sheet.purpose} />
    case 'sweep':
      return (
        <SweepSheet {...props} varietyIds={rodsToCount(state, board.rods, board.time.nowMs)} onDone={board.sendCount} />
      )
    case 'afternoon':
      return <AfternoonSheet {...props} />
    case 'kept':
      return <KeptSheet {...props} onClose={close} />
    case 'day-old':
      return <DayOldSheet {...props} />
    case 'notes':
      return (
        <NotesSheet
          notes={notesWaiting(state)}
          words={noteWords(words)}
          onClear={(noteId) => store.send({ type: 'clearNote', noteId })}
          onWrite={(text) => store.send({ type: 'writeNote', text })}
          onClose={close}
        />
      )
    case 'close':
      return <CloseSheet {...props} />
    case 'orders':
    case 'order':
    case 'take':
    case 'slip':
      return <OrdersLater {...props} sheet={sheet} />
    case 'more':
      return <MoreSheet {...props} />
    case 'device':
      return <DeviceSheet {...props} onClose={close} />
  }
}
