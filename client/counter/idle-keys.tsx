import { Key } from '../parts/key.tsx'
import type { FootProps } from './foot.tsx'
import type { TextRoom } from './foot-view.ts'
import { lastDoneHere } from './foot-view.ts'
import type { Does, IdleKey } from './idle-view.ts'
import { idleKeys } from './idle-view.ts'
import { Wide } from './small-key.tsx'

export function IdleKeys(props: FootProps) {
  const { store, state, words, board } = props
  const room = keyRoom(props)
  const done = lastDoneHere(state, store.deviceId, words, room)
  const { rods, time, afternoon, orders } = board
  const keys = idleKeys({ state, rods, time, afternoon, done, orders, room, labelRoom: labelRoom(props), words })
  return (
    <div class={keys.length > 4 ? 'counter-keys counter-idle counter-many' : 'counter-keys counter-idle'}>
      {keys.map((key) => (
        <Wide key={key.id} id={key.id} share={key.share}>
          <IdleKeyOf idle={key} onPress={() => doIt(key.does, props)} />
        </Wide>
      ))}
    </div>
  )
}

/** Of seven keys in a row the assorted dozen and the take-back have a fifth each; on a phone a quarter. */
function keyRoom({ glass, sizes }: FootProps): TextRoom {
  const { isPhone, quietPx, gapPx, marginPx } = sizes
  const widthPx = (glass.widthPx - 2 * marginPx) * (isPhone ? 0.25 : 0.2) - gapPx - (isPhone ? 1 : 2) * quietPx
  return { widthPx, lines: isPhone ? 2 : 3, fontPx: 0.9 * quietPx }
}

/** The key of the hour has an eighth of a tablet's row. */
function labelRoom({ glass, sizes }: FootProps): TextRoom {
  const { isPhone, namePx, quietPx, gapPx, marginPx } = sizes
  const widthPx = (glass.widthPx - 2 * marginPx) * (isPhone ? 0.25 : 0.125) - gapPx - quietPx
  return { widthPx, lines: 3, fontPx: isPhone ? quietPx : namePx, weight: 'strong' }
}

function IdleKeyOf({ idle, onPress }: { readonly idle: IdleKey; readonly onPress: () => void }) {
  const { label, detail, tone, refusal, spoken } = idle
  return (
    <Key
      label={label}
      detail={detail === '' ? undefined : detail}
      tone={tone}
      name={spoken === '' ? undefined : spoken}
      refusal={refusal === '' ? undefined : refusal}
      onPress={onPress}
    />
  )
}

function doIt(does: Does, { store, board }: FootProps): void {
  if (does.kind === 'open') board.openSheet(does.sheet)
  else if (does.kind === 'unnamed') board.setUnnamed(true)
  else if (does.kind === 'act') {
    if (does.act.type === 'lastOneGone') board.sendCount(does.act, [does.act.varietyId])
    else store.send(does.act)
  }
}

/** The day is closed: the next act of a morning opens the next one; what was closed by mistake is reopened here. */
export function ClosedKeys({ store, state, words, board }: FootProps) {
  const { close, more } = words.jobs
  const label = state.lastDay?.label ?? ''
  return (
    <div class="counter-keys counter-question">
      <div class="counter-question-text">
        <strong>{close.closed(label)}</strong>
        <span>{close.opensItself}</span>
      </div>
      <Key
        label={close.reopen(label)}
        detail={close.reopenDetail}
        tone="strong"
        onPress={() => store.send({ type: 'reopenDay', label })}
      />
      <Key label={more.title} onPress={() => board.openSheet({ kind: 'more' })} />
    </div>
  )
}
