import { useMemo, useState } from 'preact/hooks'
import type { Quote } from '../../../shared-core/kitchen/quote.ts'
import { quoteFor } from '../../../shared-core/kitchen/quote.ts'
import { nextSlip } from '../../../shared-core/orders/slip-number.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { Key } from '../../parts/key.tsx'
import { FAST_TAP_MS } from '../../parts/press-guard.ts'
import type { CounterOrderWords } from '../../words/counter-orders.ts'
import { Back, Wide } from '../small-key.tsx'
import { OrdersFoot, TakeBackKey } from './orders-foot.tsx'
import type { OrdersProps } from './orders-parts.ts'
import { QueueRow } from './queue-row.tsx'
import type { Slip } from './slip.ts'
import { EMPTY_SLIP, lacksBagel, slipCommand, withDigit } from './slip.ts'
import { Things } from './things.tsx'

/**
 * What is made to order for somebody who waits: things, and the key that starts them; the number comes by itself. Over
 * them those who wait, and the one whose order is ready.
 */
export function SlipSheet(props: OrdersProps) {
  const { shop } = props.state
  return shop === null ? <section class="counter-sheet" /> : <SlipOf {...props} shop={shop} />
}

function SlipOf(props: OrdersProps & { readonly shop: Shop }) {
  const { store, state, say, words, board } = props
  const [slip, setSlip] = useState<Slip>(EMPTY_SLIP)
  /** Null: the next number. */
  const [mark, setMark] = useState<string | null>(null)
  const [isTyping, setTyping] = useState(false)
  const number = mark === null || mark === '' ? String(nextSlip(state)) : mark
  const start = () => {
    store.send(slipCommand(slip, mark))
    setSlip(EMPTY_SLIP)
    setMark(null)
    setTyping(false)
  }
  return (
    <section class="counter-sheet counter-slip" role="dialog" aria-label={say.slip.title}>
      <QueueRow {...props} />
      {isTyping ? (
        <NumberKeys say={say} mark={mark ?? ''} setMark={setMark} onDone={() => setTyping(false)} />
      ) : (
        <Things {...props} slip={slip} setSlip={setSlip} />
      )}
      <OrdersFoot {...props}>
        <Wide share={1} id="slip-number">
          <Key
            label={say.slip.number(number)}
            detail={say.slip.otherNumber}
            chosen={isTyping}
            onPress={() => setTyping(!isTyping)}
          />
        </Wide>
        <StartKey {...props} slip={slip} number={number} onStart={start} />
        <TakeBackKey {...props} share={2} />
        <Back label={words.counter.back} onPress={() => board.openSheet(null)} />
      </OrdersFoot>
    </section>
  )
}

type StartProps = OrdersProps & {
  readonly shop: Shop
  readonly slip: Slip
  readonly number: string
  readonly onStart: () => void
}

function StartKey({ state, say, board, shop, slip, number, onStart }: StartProps) {
  const { nowMs } = board.time
  const lacking = lacksBagel(slip, shop)
  const isEmpty = slip.items.length === 0
  const quote = useMemo(
    () => (isEmpty || lacking !== null ? null : quoteFor(state, nowMs, slip.items)),
    [state, nowMs, slip, isEmpty, lacking],
  )
  const refusal = isEmpty ? say.slip.nothingYet : lacking !== null ? say.take.needsBagel(lacking.name) : undefined
  return (
    <Wide share={4} id="slip-start">
      <Key
        label={say.slip.start(number)}
        detail={quote === null ? undefined : quoteText(quote, shop, say)}
        tone={refusal !== undefined ? 'plain' : quote !== null && 'cannot' in quote ? 'late' : 'act'}
        refusal={refusal}
        onPress={onStart}
      />
    </Wide>
  )
}

/** The wait that is told before it is taken; with a word where it is longer than the shop promises. */
export function quoteText(quote: Quote, shop: Shop, { slip }: CounterOrderWords): string {
  if ('cannot' in quote) return slip.notMade[quote.cannot]
  const wait = slip.wait(quote.medianMs, quote.carefulMs)
  return quote.medianMs > shop.orders.madeInMs ? `${wait}: ${slip.promised(shop.orders.madeInMs)}` : wait
}

interface NumberProps {
  readonly say: CounterOrderWords
  readonly mark: string
  readonly setMark: (mark: string | null) => void
  readonly onDone: () => void
}

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'] as const

/** The number on the paper slip, where it is another than the next one. */
function NumberKeys({ say, mark, setMark, onDone }: NumberProps) {
  const { slip } = say
  return (
    <>
      <div class="counter-things" role="group" aria-label={slip.typeNumber}>
        {DIGITS.map((digit) => (
          <Key key={digit} label={digit} sameTouchMs={FAST_TAP_MS} onPress={() => setMark(withDigit(mark, digit))} />
        ))}
      </div>
      <div class="counter-how">
        <Key label={slip.erase} refusal={mark === '' ? '' : undefined} onPress={() => setMark(mark.slice(0, -1))} />
        <Key
          label={slip.nextNumber}
          onPress={() => {
            setMark(null)
            onDone()
          }}
        />
        <Key
          label={slip.useNumber}
          detail={mark}
          tone="strong"
          refusal={mark === '' ? '' : undefined}
          onPress={onDone}
        />
      </div>
    </>
  )
}
