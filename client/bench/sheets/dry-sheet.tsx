import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { CommandId } from '../../../shared-core/ids.ts'
import { contentsByLoad } from '../../../shared-core/line/contents.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { Key } from '../../parts/key.tsx'
import type { DryView } from '../done-view.ts'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'
import { ListRows } from './list-rows.tsx'
import type { OpenSheet } from './open-sheet.ts'

export interface DrySheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly dry: readonly DryView[]
  readonly send: (act: Act) => void
  /** Answers a notice with yes. */
  readonly confirm: (noticeId: string) => void
  /** Puts a notice away: no to a question. */
  readonly dismiss: (noticeId: string) => void
  readonly open: (sheet: OpenSheet) => void
}

/** What waits for dry hands: answers to taps of this screen, and what the board took for granted. */
export function DrySheet(props: DrySheetProps) {
  const { dry, words, send } = props
  const { done } = words.bench
  const unsureIds = dry.flatMap((one) => (one.kind === 'unsure' ? one.unsureIds : []))
  const all = unsureIds.length > 1 && (
    <div class="bench-mode">
      <Key tone="act" onPress={() => send({ type: 'confirmPresumed', unsureIds })}>
        <span class="bench-small bench-strong">{done.allRight}</span>
      </Key>
    </div>
  )
  return (
    <Sheet {...props} title={done.dryHands} keys={all}>
      <ListRows
        {...props}
        items={dry}
        nothing={done.nothingToConfirm}
        keysOf={(one) =>
          one.kind === 'notice' ? <NoticeKeys {...props} notice={one} /> : <UnsureKeys {...props} one={one} />
        }
      />
    </Sheet>
  )
}

function NoticeKeys({
  notice,
  words,
  room,
  confirm,
  dismiss,
}: DrySheetProps & { notice: DryView & { kind: 'notice' } }) {
  const { answer, id } = notice
  const style = { width: `${1.7 * room.keyPx}px` }
  return (
    <>
      {answer !== null && (
        <div class="bench-list-key" style={style}>
          <Key tone="act" onPress={() => confirm(id)}>
            <span class="bench-small">{answer.yes}</span>
          </Key>
        </div>
      )}
      <div class="bench-list-key" style={style}>
        <Key onPress={() => dismiss(id)}>
          <span class="bench-small">{answer === null ? words.bench.done.putAway : answer.no}</span>
        </Key>
      </div>
    </>
  )
}

function UnsureKeys(props: DrySheetProps & { readonly one: DryView & { kind: 'unsure' } }) {
  const { one, words, room, send, open } = props
  const { done } = words.bench
  return (
    <>
      <div class="bench-list-key" style={{ width: `${1.7 * room.keyPx}px` }}>
        <Key
          name={`${done.right}: ${one.title}`}
          onPress={() => send({ type: 'confirmPresumed', unsureIds: one.unsureIds })}
        >
          <span class="bench-small bench-strong">{done.right}</span>
        </Key>
      </div>
      <div class="bench-list-key" style={{ width: `${room.keyPx}px` }}>
        <Key name={`${done.lookAt}: ${one.title}`} onPress={() => open(placeOf(one.id, props))}>
          <span class="bench-small">{done.lookAt}</span>
        </Key>
      </div>
    </>
  )
}

/** Where it can be put right: the load that it came from while it bakes, else all that stands on the line. */
function placeOf(commandId: CommandId, { state, shop }: DrySheetProps): OpenSheet {
  const trace = state.traces.find((one) => one.commandId === commandId)
  const touched = trace?.touched.find(({ table }) => table === 'loads')
  const load = [...state.loads.values()].find(({ id }) => id === touched?.id)
  if (load === undefined) return { kind: 'on-line' }
  const lines = contentsByLoad(state, shop).get(load.id) ?? []
  const { id, shelfId, plannedId } = load
  return { kind: 'contents', start: { shelfId, loadId: id, plannedId, lines } }
}
