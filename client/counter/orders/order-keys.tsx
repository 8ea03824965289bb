import type { Act } from '../../../shared-core/day/commands.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { itemIsMade } from '../../../shared-core/orders/item-steps.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import { Key } from '../../parts/key.tsx'
import { Wide } from '../small-key.tsx'
import { askedOf } from './asked.ts'
import type { Asked, OrderProps } from './order-sheet.tsx'
import { bagOf, canGoWhole, insteadOf, missingOf, orderedOf } from './pick-view.ts'

export type OrderKeysProps = OrderProps & {
  readonly asked: Asked | null
  readonly ask: (what: Asked | null) => void
}

/** What can be done with an order, or the question that stands before it. */
export function OrderKeys(props: OrderKeysProps) {
  const { store, asked, ask } = props
  const does = (act: Act) => {
    store.send(act)
    ask(null)
  }
  if (asked === 'short') return <ShortQuestion {...props} does={does} />
  if (asked !== null) return <EndQuestion {...props} asked={asked} does={does} />
  return <Doing {...props} does={does} />
}

type DoingProps = OrderKeysProps & { readonly does: (act: Act) => void }

function Doing({ state, say, board, order, pick, does, ask }: DoingProps) {
  const { one } = say
  const ordered = orderedOf(pick)
  const there = piecesOf(pick.keep)
  const inBag = piecesOf(bagOf(pick, false))
  const isKept = piecesOf(pick.kept) >= ordered
  const isMade = order.items.every(itemIsMade)
  const isWhole = canGoWhole(pick)
  const dozenPieces = state.shop?.orders.dozenPieces ?? 12
  const handOver = () => {
    if (!isWhole) return ask('short')
    does({ type: 'handOverOrder', orderId: order.id, lines: ordered === 0 ? null : bagOf(pick, false) })
    board.openSheet({ kind: 'orders' })
  }
  return (
    <div class="counter-keys counter-order-keys">
      {ordered > 0 && (
        <Wide share={3}>
          <Key
            label={one.keep(there)}
            tone={there > 0 ? 'strong' : 'plain'}
            refusal={there > 0 ? undefined : isKept ? one.allKept : one.keepNothing}
            onPress={() => does({ type: 'keep', lines: pick.keep, orderId: order.id })}
          />
        </Wide>
      )}
      <Wide share={4}>
        <Key
          label={one.handOver}
          detail={isWhole ? one.asOrdered : one.part(inBag, ordered)}
          tone={isWhole && isMade ? 'act' : 'strong'}
          onPress={handOver}
        />
      </Wide>
      <Wide share={2}>
        <Key
          label={order.isPaid ? one.nowUnpaid : one.nowPaid}
          onPress={() =>
            does({ type: 'changeOrder', orderId: order.id, keepsItems: true, ...paidTurned(order, dozenPieces) })
          }
        />
      </Wide>
      <Wide share={2}>
        <Key label={one.missed} detail={one.missedDetail} onPress={() => ask('missed')} />
      </Wide>
    </div>
  )
}

/** The same order said anew, paid where it was not. */
function paidTurned(order: Order, dozenPieces: number) {
  const { mark, dueAtMs, way, runId, stop, lines, isPaid } = order
  return { mark, dueAtMs, way, runId, stop, lines: askedOf(lines, dozenPieces), items: [], isPaid: !isPaid } as const
}

function ShortQuestion({ say, board, order, pick, does, ask }: DoingProps) {
  const { one } = say
  const instead = insteadOf(pick)
  const missing = missingOf(pick)
  const hand = (isReplaced: boolean) => {
    does({ type: 'handOverOrder', orderId: order.id, lines: bagOf(pick, isReplaced) })
    board.openSheet({ kind: 'orders' })
  }
  return (
    <div class="counter-keys counter-question" role="alert">
      <div class="counter-question-text">
        <strong>{instead.length > 0 ? one.replaceAsk(missing, instead) : one.shortAsk(missing)}</strong>
      </div>
      {instead.length > 0 && <Key label={one.replaceYes} tone="act" onPress={() => hand(true)} />}
      <Key label={one.shortYes} tone="strong" onPress={() => hand(false)} />
      <Key label={one.waitNo} onPress={() => ask(null)} />
    </div>
  )
}

type EndProps = Omit<DoingProps, 'asked'> & { readonly asked: Exclude<Asked, 'short'> }

function EndQuestion({ say, board, order, asked, does, ask }: EndProps) {
  const { one } = say
  const end = () => {
    does({ type: asked === 'missed' ? 'missOrder' : 'cancelOrder', orderId: order.id })
    board.openSheet({ kind: 'orders' })
  }
  return (
    <div class="counter-keys counter-question" role="alert">
      <div class="counter-question-text">
        <strong>{asked === 'missed' ? one.sureMissed : one.sureCancelled}</strong>
      </div>
      <Key label={one.yes} tone="act" onPress={end} />
      <Key label={one.no} tone="strong" onPress={() => ask(null)} />
    </div>
  )
}
