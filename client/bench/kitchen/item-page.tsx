import { itemIsBegun } from '../../../shared-core/orders/item-steps.ts'
import type { ItemStep, Order, OrderItem } from '../../../shared-core/orders/order.ts'
import type { ItemPart } from '../../../shared-core/orders/order-commands.ts'
import { OrderRing } from '../../parts/order-ring.tsx'
import type { GridItem } from '../sheet.tsx'
import { KeyGrid } from '../sheet.tsx'
import { splitRoom } from '../sheets/split.ts'
import type { KitchenParts } from './kitchen-parts.ts'
import { KitchenSheet } from './kitchen-sheet.tsx'

const RING_KEYS = 1.6

/** One item of an order, whole: what it is, an allergy before all else, the note, and how far each of its parts is. */
export function ItemPage(props: KitchenParts & { readonly part: ItemPart }) {
  const { part, state, words, room, sizes } = props
  const order = state.orders.get(part.orderId)
  const item = order?.items.find(({ no }) => no === part.no)
  const { kitchen, orders } = words
  if (order === undefined || item === undefined) {
    return (
      <KitchenSheet {...props} title={kitchen.item.gone}>
        {null}
      </KitchenSheet>
    )
  }
  const { leftPx, rightPx, isNarrow } = splitRoom(room)
  const note = props.noteOf(order)
  const items = [...item.steps.keys()].flatMap((at) => stepKeys(order, item, at, props))
  return (
    <KitchenSheet {...props} title={kitchen.item.order(order.mark)} detail={kitchen.item.due(order.dueAtMs)}>
      <div class="bench-column kitchen-item" style={{ width: `${leftPx}px` }}>
        <OrderRing
          {...ringOf(item)}
          mark={order.mark}
          size={Math.round(RING_KEYS * room.keyPx)}
          isAllergy={item.allergies.length > 0}
        />
        {item.allergies.length > 0 && (
          <strong class="kitchen-allergy kitchen-allergy-large">{orders.allergy(item.allergies)}</strong>
        )}
        <span class="kitchen-item-name">{orders.item({ ...item, allergies: [] }, 1)}</span>
        {note !== '' && (
          <span class="kitchen-note">
            {kitchen.item.note}: {note}
          </span>
        )}
      </div>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={isNarrow ? 1 : 2}
        rows={isNarrow ? items.length : room.rows}
        widthPx={rightPx}
        items={items}
      />
    </KitchenSheet>
  )
}

function ringOf(item: OrderItem): { readonly fraction: number; readonly state: 'running' | 'idle' } {
  const { steps } = item
  const made = steps.filter(({ madeAtMs }) => madeAtMs !== null).length
  return { fraction: 1 - made / Math.max(1, steps.length), state: itemIsBegun(item) ? 'running' : 'idle' }
}

/** What can be done with a part: begun by hand, turned, made, or made again. Into the oven it goes from its rod. */
function stepKeys(order: Order, item: OrderItem, at: number, props: KitchenParts): readonly GridItem[] {
  const { words, send } = props
  const say = words.kitchen.item
  const step = item.steps[at]
  if (step === undefined) return []
  const parts = [{ orderId: order.id, no: item.no, step: at }]
  const title = say.part(at + 1, item.steps.length, words.names.kitchenStation(step.stationId))
  const move = (to: 'begun' | 'turned' | 'made' | 'waiting') => () =>
    send({ type: 'moveItems', parts, to, shelfId: null })
  const key = (to: Parameters<typeof move>[0], label: string): GridItem => ({
    id: `${to} ${at}`,
    label,
    details: [title, stateText(step, props)],
    onPress: move(to),
  })
  if (step.madeAtMs !== null) return [key('waiting', say.again)]
  if (step.begunAtMs === null)
    return step.oven === null ? [key('begun', say.begin), key('made', say.made)] : [key('made', say.made)]
  const canTurn = step.oven !== null && step.turned < step.oven.turns.length
  return [key('made', say.made), ...(canTurn ? [key('turned', say.turned)] : []), key('waiting', say.again)]
}

function stateText({ begunAtMs, madeAtMs }: ItemStep, { words }: KitchenParts): string {
  const { item } = words.kitchen
  if (madeAtMs !== null) return `${item.isMade} ${words.times.clock(madeAtMs)}`
  return begunAtMs === null ? item.waiting : `${item.begun} ${words.times.clock(begunAtMs)}`
}
