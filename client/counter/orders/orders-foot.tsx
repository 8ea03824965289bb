import type { ComponentChildren } from 'preact'
import { Key } from '../../parts/key.tsx'
import { lastDoneHere, noticeView } from '../foot-view.ts'
import { Wide } from '../small-key.tsx'
import { Question } from '../told-keys.tsx'
import type { OrdersProps } from './orders-parts.ts'

/** The keys under a page of the orders; what is asked or refused stands in their place, as it does under the rack. */
export function OrdersFoot({ children, ...props }: OrdersProps & { readonly children: ComponentChildren }) {
  const notice = noticeView(props.live.notices, props.words)
  return (
    <div class="counter-orders-foot">
      {notice === null ? <div class="counter-keys">{children}</div> : <Question {...props} notice={notice} />}
    </div>
  )
}

/** Takes back what this screen did last. */
export function TakeBackKey({ store, state, words, sizes, share }: OrdersProps & { readonly share: number }) {
  const { isPhone, keyPx, quietPx } = sizes
  const room = { widthPx: keyPx * 1.8, lines: isPhone ? 1 : 2, fontPx: 0.9 * quietPx }
  const done = lastDoneHere(state, store.deviceId, words, room)
  const refusal = done === null ? words.counter.nothingDone : done.refusal
  return (
    <Wide share={share} id="take-back">
      <Key
        label={words.counter.takeBack}
        detail={done?.text}
        refusal={refusal === '' ? undefined : refusal}
        onPress={() => {
          if (done !== null) store.send({ type: 'takeBack', commandId: done.commandId })
        }}
      />
    </Wide>
  )
}
