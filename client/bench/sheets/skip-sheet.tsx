import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { expectedLoads } from '../../../shared-core/line/planned.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import { columnsOf } from './more-sheet.tsx'

export interface SkipSheetProps extends SheetParts {
  readonly state: State
  readonly nowMs: EpochMs
  readonly send: (act: Act) => void
}

/** The loads that are to come: a touch leaves one out. */
export function SkipSheet(props: SkipSheetProps) {
  const { state, nowMs, words, sizes, room, send, onClose } = props
  const { more } = words.bench
  const items = expectedLoads(state, nowMs).map(({ planned, shelf, inAtMs }) => ({
    id: planned.id,
    label: `${words.line.shelf(shelf.id)}, ${words.times.clock(inAtMs)}`,
    details: [words.line.pieces(piecesOf(planned.lines)), ...planned.lines.map((line) => words.line.contents([line]))],
    onPress: () => {
      send({ type: 'skipPlanned', plannedId: planned.id })
      onClose()
    },
  }))
  return (
    <Sheet {...props} title={more.whichLoad}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
        nothing={more.nothingToSkip}
      />
    </Sheet>
  )
}
