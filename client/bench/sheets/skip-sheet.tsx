import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { PlannedId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { expectedLoads } from '../../../shared-core/line/planned.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import { isAdvised } from '../../../shared-core/live/plan.ts'
import { leaveOut } from '../../../shared-core/plan/leave-out.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import { columnsOf } from './more-sheet.tsx'

export interface SkipSheetProps extends SheetParts {
  readonly state: State
  /** Null: loads are not advised. */
  readonly plan: Plan | null
  readonly nowMs: EpochMs
  readonly send: (act: Act) => void
}

/** The loads that are to come: a touch leaves one out. */
export function SkipSheet(props: SkipSheetProps) {
  const { state, plan, nowMs, words, sizes, room, send, onClose } = props
  const { more } = words.bench
  const items = expectedLoads(state, nowMs).map(({ planned, shelf, inAtMs }) => ({
    id: planned.id,
    label: `${words.line.shelf(shelf.id)}, ${words.times.clock(inAtMs)}`,
    details: [
      ...(plan === null ? [] : [isAdvised(planned.id) ? words.advice.advised : words.advice.set]),
      words.line.pieces(piecesOf(planned.lines)),
      ...planned.lines.map((line) => words.line.contents([line])),
    ],
    onPress: () => {
      const act = skipAct(planned.id, props)
      if (act !== null) send(act)
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

/** What people set is skipped; what is only advised is left free, or it would be advised again. */
export function skipAct(id: PlannedId, { state, plan }: Pick<SkipSheetProps, 'state' | 'plan'>): Act | null {
  if (!isAdvised(id)) return { type: 'skipPlanned', plannedId: id }
  return plan === null ? null : leaveOut(state, plan, id)
}
