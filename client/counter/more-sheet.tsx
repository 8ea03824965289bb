import { piecesOf } from '../../shared-core/line/lines.ts'
import { dayOldToPut } from '../../shared-core/stock/day-old.ts'
import { Key } from '../parts/key.tsx'
import { afternoonWords } from '../words/afternoon.ts'
import { settingsWords } from '../words/settings.ts'
import { sellsHere } from './idle-view.ts'
import { hasOrdersKey, makesToOrder } from './orders-keys.ts'
import type { Sheet } from './sheet.ts'
import type { SheetProps } from './sheets.tsx'
import { Back } from './small-key.tsx'

/** Beside the wipe's key: from so many on they stand three abreast. */
const DOORS_MANY = 6

/** What the counter does now and then. */
export function MoreSheet({ live, state, words, board, onWipe }: SheetProps) {
  const { jobs, counter } = words
  const out = board.rods.reduce((sum, rod) => sum + rod.dayOld, 0)
  const doors: readonly {
    readonly kind: Exclude<Sheet['kind'], 'amounts' | 'order' | 'take'>
    readonly label: string
    readonly detail: string
  }[] = [
    { kind: 'day-old', label: jobs.dayOld.title, detail: jobs.dayOld.summary(out, piecesOf(dayOldToPut(state))) },
    ...(board.afternoon === null
      ? []
      : [{ kind: 'afternoon', label: afternoonWords(words).title, detail: '' } as const]),
    { kind: 'notes', label: jobs.notes, detail: jobs.noteCount(state.notes.size) },
    ...(state.day === null ? [] : [{ kind: 'close', label: jobs.close.title, detail: jobs.close.detail } as const]),
    ...(hasOrdersKey(state)
      ? []
      : [{ kind: 'orders', label: counter.orders.title, detail: counter.orders.summary(0, 0) } as const]),
    { kind: 'device', label: settingsWords(words).title, detail: live.settings.name },
  ]
  const hasUnnamed = makesToOrder(state) && sellsHere(state)
  const isMany = doors.length + (hasUnnamed ? 1 : 0) >= DOORS_MANY
  return (
    <section class="counter-sheet" role="dialog" aria-label={jobs.more.title}>
      <div class="counter-sheet-head">
        <h1>{jobs.more.title}</h1>
      </div>
      <div class={isMany ? 'counter-doors counter-doors-many counter-alone' : 'counter-doors counter-alone'}>
        {doors.map(({ kind, label, detail }) => (
          <Key
            key={kind}
            label={label}
            detail={detail === '' ? undefined : detail}
            onPress={() => board.openSheet({ kind })}
          />
        ))}
        {hasUnnamed && (
          <Key
            label={counter.hand.unnamed}
            detail={counter.hand.unnamedDetail}
            onPress={() => {
              board.openSheet(null)
              board.setUnnamed(true)
            }}
          />
        )}
        <Key
          label={settingsWords(words).comfort.wipe}
          detail={settingsWords(words).comfort.wipeDetail}
          onPress={() => {
            board.openSheet(null)
            onWipe()
          }}
        />
      </div>
      <div class="counter-keys">
        <Back label={counter.back} onPress={() => board.openSheet(null)} />
      </div>
    </section>
  )
}
